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
	FromPot bool                // it has none and is fed from a pot: one filling holds it all
	Loss    Stated[unit.Volume] // left in cup and filter at each filling, 0 to 5 L
	Lead    Stated[unit.Length] // sprayed past each end of a pass, 0 to 300 mm
	// Densities is that of each part of the ratio, of the ready mix where it has none; empty
	// where they are not known.
	Densities Stated[[]unit.Density]
	VOC       VOC
	Thinned   float64       // thinner that was added beyond the ratio, by volume of the mix before
	PotLife   time.Duration // the sheet's, at PotLifeAt; 0 where not given
	PotLifeAt unit.Temp
	Booth     unit.Temp      // that the mix stands in, 5 to 40 C where there is a pot life
	Rate      coat.FluidRate // of the gun; 0 where not given
}

// PanelArea is one entry of what is coated. Usual marks an area that is a usual one and
// not measured: Low and High are then apart.
type PanelArea struct {
	Name      string
	Low, High unit.Area
	Usual     bool
	Count     int // of panels that it is made of, 1 or more; 0 is 1
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
	Weights           []unit.Mass // of the parts, or of the mix where it has none; empty where densities are not known
	VOC               VOCAnswer
	Cost, WasteCost   float64 // 0 where prices are not known
	Priced            bool
	Running           coat.Running
	Wrong             []WrongSetting
	PotLife           coat.PotLife  // here; zero where not given
	Trigger           time.Duration // to spray it, trigger pulled; 0 where not known
	// Elapsed is Trigger with the waits between the coats; Batches how many fit the pot life
	// one after the other, each for BatchCoats coats, or for a part of one where that is 0, of
	// Batch of mix. 0 where pot life or rate is not known.
	Elapsed    time.Duration
	Batches    int
	BatchCoats int
	Batch      unit.Volume
	About      bool // rests on estimates
	Reasons    []Reason
	Cautions   []Caution
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

// BetweenCoats is what is waited between two coats: common practice, 5 to 15 minutes.
const BetweenCoats = 10 * time.Minute

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
	p.within("lead", float64(r.Lead.Value), &LeadBound)
	if n, parts := len(r.Densities.Value), max(1, len(r.Ratio.Value.Parts)); n > 0 && n != parts {
		p.add("density", "densities-and-parts", CountFigure("densities", n), CountFigure("parts", parts))
	}
	for _, d := range r.Densities.Value {
		p.within("density", float64(d), &DensityBound)
	}
	r.VOC.problems(&p)
	if n := len(r.Prices); n > 1 && n != len(r.Ratio.Value.Parts) {
		p.add("price", "prices-and-parts", CountFigure("prices", n), CountFigure("parts", len(r.Ratio.Value.Parts)))
	}
	for _, v := range r.Prices {
		p.within("price", v, &PriceBound)
	}
	if p.potLife(r.PotLife, r.PotLifeAt); r.PotLife != 0 {
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
	lead, err := r.lead(a.Area)
	if err != nil {
		return a, err
	}
	job := coat.Job{Area: a.Area, Dry: r.Dry.Value, Solids: r.Solids.Value, Transfer: a.Transfer.Value, Lead: lead, Loss: r.Loss.Value, Cup: r.Cup.Value}
	if a.Need, err = job.Need(); err != nil {
		return a, err
	}
	volume := func(area unit.Area, te float64) (unit.Volume, error) {
		j := job
		j.Area, j.Transfer = area, te
		n, err := j.Need()
		return n.Volume, err
	}
	if a.Low, err = volume(a.AreaLow, a.Transfer.High); err != nil {
		return a, err
	}
	if a.High, err = volume(a.AreaHigh, a.Transfer.Low); err != nil {
		return a, err
	}
	if a.High > mostMixed {
		return a, &Problem{"area", "beyond-any-mix", Figures{{Name: "volume", Kind: FigureVolume, Value: float64(a.High)}}}
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
		if a.PotLife, err = coat.PotLifeAt(r.PotLife, r.PotLifeAt, r.Booth); err != nil {
			return a, err
		}
	}
	if r.Rate > 0 {
		a.Trigger = time.Duration(float64(a.Need.Sprayed()) / float64(r.Rate) * float64(time.Second))
		a.batches(r, job)
	}
	if a.VOC, err = r.VOC.with(r.Thinned); err != nil {
		return a, err
	}
	a.About = r.Solids.rough() || !r.Held.Typed || a.AreaHigh > a.AreaLow
	a.explain(r)
	a.warn(r)
	return a, nil
}

// share splits the mix by its ratio, by volume and by weight, and gives the price of a litre of it.
func (a *MixAnswer) share(r *MixRequest) (price float64, err error) {
	if len(r.Ratio.Value.Parts) > 0 {
		if a.Parts, err = r.Ratio.Value.Split(a.Need.Volume); err != nil {
			return 0, err
		}
	}
	if len(r.Densities.Value) > 0 {
		weighed := a.Parts
		if len(weighed) == 0 {
			weighed = []unit.Volume{a.Need.Volume}
		}
		if a.Weights, err = coat.Weigh(weighed, r.Densities.Value); err != nil {
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

// lead is what passes spray past their ends, as a share of what is aimed at the panels: each
// panel by its own size.
func (r *MixRequest) lead(all unit.Area) (float64, error) {
	sum := 0.0
	for i := range r.Panels {
		p := &r.Panels[i]
		area := (p.Low + p.High) / 2
		s, err := coat.LeadShare(area/unit.Area(max(1, p.Count)), r.Lead.Value)
		if err != nil {
			return 0, problemAt("area", err)
		}
		sum += s * float64(area/all)
	}
	return min(sum, mostLead), nil
}

// mostLead is the most that goes past the ends of passes, of what is aimed at the panels: a
// small part is sprayed in one go.
const mostLead = 1.0

// batches finds how many coats, with the waits between them, fit the pot life, and so how
// often the job is mixed anew.
func (a *MixAnswer) batches(r *MixRequest, job coat.Job) {
	coats := a.Coats.Value
	one := a.Trigger / time.Duration(coats)
	of := func(n int) time.Duration { return time.Duration(n)*one + time.Duration(n-1)*BetweenCoats }
	a.Elapsed = of(coats)
	if r.PotLife == 0 {
		return
	}
	fit := coats
	for fit > 0 && of(fit) > a.PotLife.Safe {
		fit--
	}
	a.BatchCoats = fit
	part := float64(fit) / float64(coats)
	if fit > 0 {
		a.Batches = (coats + fit - 1) / fit
	} else { // not even one
		a.Batches = coats * int(math.Ceil(one.Seconds()/a.PotLife.Safe.Seconds()))
		part = 1 / float64(a.Batches)
	}
	a.Batch = job.Batch(a.Need, part)
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
