package calc

import (
	"math"
	"time"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// MixRequest asks how much of a coat a job takes.
type MixRequest struct {
	Application
	Panels []PanelArea
	Ratio  Stated[coat.Ratio] // without parts where none is known
	// Prices is what a litre costs: of each part of the ratio, of the ready mix where it
	// is one, empty where it is not known.
	Prices  []float64
	Cup     Stated[unit.Volume] // of the gun, SmallestCup to LargestCup
	FromPot bool                // it has none and is fed from a pot
	Loss    Stated[unit.Volume] // left in cup and filter, 0 to 5 L
	PotLife time.Duration       // the sheet's, at SheetTemp; 0 where not given
	Booth   unit.Temp           // that the mix stands in, 5 to 40 C where there is a pot life
	Rate    coat.FluidRate      // of the gun; 0 where not given
}

// PanelArea is one entry of what is coated. Usual marks an area that is a usual one and
// not measured: Low and High are then apart.
type PanelArea struct {
	Name      string
	Low, High unit.Area
	Usual     bool
}

// MixAnswer is the answer to a MixRequest.
type MixAnswer struct {
	Coats             Stated[int]
	Area              unit.Area // between the two
	AreaLow, AreaHigh unit.Area
	Transfer          coat.Transfer
	Need              coat.Need
	Low, High         unit.Volume // of the mix
	Parts             []unit.Volume
	Cups              int     // fillings; 0 from a pot
	Cost, WasteCost   float64 // 0 where prices are not known
	Priced            bool
	Running           coat.Running
	Wrong             []WrongSetting
	PotLife           coat.PotLife  // here; zero where not given
	Trigger           time.Duration // to spray it, trigger pulled; 0 where not known
	Batches           int           // that fit the pot life; 0 where it or the rate is not known
	About             bool          // rests on estimates
	Reasons           []Reason
	Cautions          []Caution
}

// Stopped reports whether the job cannot be done as asked.
func (a *MixAnswer) Stopped() bool { return stopped(a.Cautions) }

// WrongSetting is the same job with the gun set wrong, and what that adds.
type WrongSetting struct {
	Distance unit.Length
	Choked   bool
	Transfer float64
	coat.CostOfWrong
}

// Farther is how much too far the gun is held in what a wrong setting costs.
const Farther = unit.Length(3 * unit.MetrePerInch)

// The cups that a gun may have.
const (
	SmallestCup = unit.Volume(0.06e-3)
	LargestCup  = unit.Volume(5e-3)
)

// mostMixed bounds a mix; no shop mixes more.
const mostMixed = unit.Volume(10000 * unit.CubicMetrePerL)

// Problems is everything wrong with the request.
func (r *MixRequest) Problems() []Problem {
	p := r.Application.problems()
	var low, high unit.Area
	for _, a := range r.Panels {
		low, high = low+a.Low, high+a.High
	}
	p.within("area", float64(low), &AreaBound)
	if high > low {
		p.within("area", float64(high), &AreaBound)
	}
	if !r.Held.Known {
		p.add("gun", "needed-for-landing")
	}
	if !r.FromPot {
		p.within("cup-size", float64(r.Cup.Value), &CupSizeBound)
	}
	p.within("loss", float64(r.Loss.Value), &LossBound)
	if n := len(r.Prices); n > 1 && n != len(r.Ratio.Value.Parts) {
		p.add("price", "prices-and-parts", CountFigure("prices", n), CountFigure("parts", len(r.Ratio.Value.Parts)))
	}
	for _, v := range r.Prices {
		p.within("price", v, &PriceBound)
	}
	if r.PotLife != 0 {
		p.within("pot-life", r.PotLife.Seconds(), &PotLifeBound)
		p.within("temp", float64(r.Booth), &MixTempBound)
	}
	if r.Rate != 0 {
		p.within("fluid-rate", float64(r.Rate), &FluidBound)
	}
	return p
}

// SolveMix works a request. It fails, with a *Problem, where Problems finds any or the
// mix is beyond all sense.
func SolveMix(r *MixRequest) (a MixAnswer, err error) {
	if p := r.Problems(); len(p) > 0 {
		return a, &p[0]
	}
	if a.Coats, err = r.coats(); err != nil {
		return a, err
	}
	for _, p := range r.Panels {
		a.AreaLow, a.AreaHigh = a.AreaLow+p.Low, a.AreaHigh+p.High
	}
	a.Area = (a.AreaLow + a.AreaHigh) / 2
	if a.Transfer, err = r.Held.at(r.Held.Distance); err != nil {
		return a, err
	}
	job := coat.Job{Area: a.Area, Dry: r.Dry.Value, Solids: r.Solids.Value, Transfer: a.Transfer.Value, Loss: r.Loss.Value}
	if a.Need, err = job.Need(); err != nil {
		return a, err
	}
	volume := func(area unit.Area, te float64) unit.Volume {
		return a.Need.OnPanel*unit.Volume(area/a.Area)/unit.Volume(te) + r.Loss.Value
	}
	a.Low, a.High = volume(a.AreaLow, a.Transfer.High), volume(a.AreaHigh, a.Transfer.Low)
	if a.High > mostMixed {
		return a, &Problem{"area", "beyond-any-mix", Figures{{Name: "volume", Kind: FigureVolume, Value: float64(a.High)}}}
	}
	if !r.FromPot {
		if a.Cups, err = coat.CupsFor(a.Need.Volume, r.Cup.Value); err != nil {
			return a, err
		}
	}
	price, err := a.share(r)
	if err != nil {
		return a, err
	}
	if err := a.wrong(r, job, price); err != nil {
		return a, err
	}
	coats := make([]unit.Length, a.Coats.Value)
	for i := range coats {
		coats[i] = max(r.Dry.Value/unit.Length(len(coats)), ThinnestFilm/MostCoats)
	}
	if a.Running, err = coat.RunningTotal(coats, r.Before, r.limits()); err != nil {
		return a, err
	}
	if r.PotLife > 0 {
		if a.PotLife, err = coat.PotLifeAt(r.PotLife, SheetTemp, r.Booth); err != nil {
			return a, err
		}
	}
	if r.Rate > 0 {
		a.Trigger = time.Duration(float64(a.Need.Volume-a.Need.Loss) / float64(r.Rate) * float64(time.Second))
		if r.PotLife > 0 {
			a.Batches = max(1, int(math.Ceil(a.Trigger.Seconds()/a.PotLife.Safe.Seconds())))
		}
	}
	a.About = r.Solids.rough() || !r.Held.Typed || a.AreaHigh > a.AreaLow
	a.explain(r)
	a.warn(r)
	return a, nil
}

// share splits the mix by its ratio and gives the price of a litre of it.
func (a *MixAnswer) share(r *MixRequest) (price float64, err error) {
	if len(r.Ratio.Value.Parts) > 0 {
		if a.Parts, err = r.Ratio.Value.Split(a.Need.Volume); err != nil {
			return 0, err
		}
	}
	if len(r.Prices) == 0 {
		return 0, nil
	}
	parts := []unit.Volume{a.Need.Volume}
	if len(r.Prices) > 1 {
		parts = a.Parts
	}
	if a.Cost, err = coat.Cost(parts, r.Prices); err != nil {
		return 0, err
	}
	a.Priced = true
	price = a.Cost / a.Need.Volume.Litres()
	a.WasteCost = price * a.Need.Waste().Litres()
	return price, nil
}

// wrong works the same job with the gun held farther away, and with its inlet valve
// choked besides.
func (a *MixAnswer) wrong(r *MixRequest, job coat.Job, price float64) error {
	far := min(r.Held.Distance+Farther, farthestHold)
	t, err := r.Held.at(far)
	if err != nil {
		return err
	}
	if far == r.Held.Distance {
		return nil // as far as a gun is held at all
	}
	for _, w := range []WrongSetting{
		{Distance: far, Transfer: t.Value},
		{Distance: far, Choked: true, Transfer: t.Value * r.Held.Choked},
	} {
		if w.CostOfWrong, err = job.CompareTransfer(w.Transfer, price); err != nil {
			return err
		}
		a.Wrong = append(a.Wrong, w)
	}
	return nil
}
