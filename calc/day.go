package calc

import (
	"time"

	"boothset/calc/air"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// DayRequest asks what the day does to a coat.
type DayRequest struct {
	Coat Coat
	// Gun is what it is sprayed with, on which Coat has its working pressure; without either
	// nothing is said of how it lands.
	Gun Gun
	Day
	Instruments Instruments
	Paint       unit.Temp // the material, -10 to 60 C
	Panels      int       // size of the job, 1 to MostPanels
	// PotLife is the sheet's, a minute to a week, at PotLifeAt; 0 where not given.
	PotLife   time.Duration
	PotLifeAt unit.Temp
	// Started is when it was mixed; used where HasStarted.
	Started    Clock
	HasStarted bool
	Coats      int // that it is laid in; 0 where not known
}

// DayOf is the day of a plan's request, as the question about the day has it.
func DayOf(r *Request) *DayRequest {
	return &DayRequest{
		Coat: r.Coat, Gun: r.Gun, Day: r.Day, Paint: r.Day.Air, Panels: 1,
		Instruments: Instruments{r.Tolerances.Thermometer, r.Tolerances.HygrometerShare},
		Coats:       r.firstCoats(), PotLife: r.PotLife, PotLifeAt: r.PotLifeAt,
	}
}

// firstCoats is how many coats the first stage has, 0 where that is not known.
func (r *Request) firstCoats() int {
	if len(r.Stages) == 0 {
		return 0
	}
	return r.Stages[0].Stage.Coats.Value
}

// MostPanels is the largest job that a request may hold.
const MostPanels = 100

// Clock is a time of day since midnight; past 24 h it is that of a later day.
type Clock time.Duration

// DayAnswer is the answer to a DayRequest.
type DayAnswer struct {
	Judgement
	Remedy      DayRemedy // what makes the day fit for spraying; its ID is empty where it is
	DewPoint    unit.Temp
	WetBulb     unit.Temp
	PanelMargin unit.TempDiff // panel less dew point
	// Drying is how fast the coat dries relative to the reference day: a solvent coat by
	// the panel's temperature, a waterborne one by the air.
	Drying float64
	// Flash is how many times as long flash-off takes as on the reference day; at least
	// so many where Flash is coat.LongestFlash.
	Flash    float64
	InFlight InFlight // how dry it lands; its levers are left out
	Grade    Grade
	PotLife  PotLife
	Reasons  []Reason
	Cautions []Caution
}

// Grade is the speed of a thinner or hardener, in the trade's words.
type Grade string

// The grades.
const (
	GradeFast     Grade = "fast"
	GradeStandard Grade = "standard"
	GradeSlow     Grade = "slow"
	GradeSlowest  Grade = "slowest"
)

// The bands of the grades. Published on one sealer's sheet: fast below 18 C, standard to
// 25 C, slow above. That more than a few panels want half a band slower is judgement.
const (
	fastBelow = unit.Temp(18 + unit.ZeroCelsius)
	slowAbove = unit.Temp(25 + unit.ZeroCelsius)
	// slowestAbove is one band's width further up: an estimate, no sheet was found that
	// prints where the slowest grade of a range begins.
	slowestAbove = slowAbove + (slowAbove - fastBelow)
	fewPanels    = 3
)

// GradeFor is the thinner's and the hardener's speed for a booth and a panel, taken at
// the middle of the two; a job of more than three panels half a band slower.
func GradeFor(booth, panel unit.Temp, panels int) Grade {
	t := (booth + panel) / 2
	if panels > fewPanels {
		t += (slowAbove - fastBelow) / 2
	}
	switch {
	case t < fastBelow:
		return GradeFast
	case t <= slowAbove:
		return GradeStandard
	case t <= slowestAbove:
		return GradeSlow
	}
	return GradeSlowest
}

// PotLife is how long a mix can be used on a day; Known is false where no pot life was
// given or the rule does not reach to the temperature.
type PotLife struct {
	Known bool
	At    unit.Temp // the warmer of material and booth
	coat.PotLife
	LastFill time.Duration // after which no cup is filled any more
	// Ends and FillBy are on the clock, where the start is known.
	Ends, FillBy Clock
}

// The pot lives that a request may hold.
const (
	ShortestPotLife = time.Minute
	LongestPotLife  = 7 * 24 * time.Hour
)

// potLifeUsed is the part of a pot life after which no cup is filled: judgement.
const potLifeUsed = 0.75

// SheetTemp is the temperature that a sheet's figures are for where it says none: common
// practice.
const SheetTemp = unit.Temp(20 + unit.ZeroCelsius)

func (r *DayRequest) potLife() (p PotLife) {
	p.At = max(r.Paint, r.Air)
	if r.PotLife == 0 {
		return p
	}
	var err error
	if p.PotLife, err = coat.PotLifeAt(r.PotLife, r.PotLifeAt, p.At); err != nil {
		return p // too cold or too hot for the rule; the length was checked
	}
	p.Known = true
	p.LastFill = min(time.Duration(potLifeUsed*float64(p.Life)), p.Safe)
	p.Ends, p.FillBy = r.Started+Clock(p.Life), r.Started+Clock(p.LastFill)
	return p
}

// potLife adds what is wrong with a pot life, where one is given.
func (p *problems) potLife(life time.Duration, at unit.Temp) {
	if life == 0 {
		return
	}
	p.within("pot-life", life.Seconds(), &PotLifeBound)
	p.within("pot-life", float64(at), &PotLifeAtBound)
}

// Problems is everything wrong with the request.
func (r *DayRequest) Problems() []Problem {
	p := r.Day.problems()
	p.within("paint", float64(r.Paint), &AirTempBound)
	p.within("panels", float64(r.Panels), &PanelsBound)
	p.potLife(r.PotLife, r.PotLifeAt)
	if r.HasStarted && (r.Started < 0 || r.Started >= Clock(24*time.Hour)) {
		p.add("started", "want-clock")
	}
	return p
}

// Waits is how long a coat of the request's stage flashes off and when it is recoated at the
// latest, as dry as the day is: a stage's times on the reference day times Flash. One without
// a basis is not known; neither is on a day so slow that Flash is coat.LongestFlash.
func (a *DayAnswer) Waits(r *DayRequest) (flash, recoat Between[time.Duration]) {
	if a.Flash >= coat.LongestFlash {
		return flash, recoat
	}
	s := &r.Coat.Stage
	return onDay(s.Flash, a.Drying, a.Drying, a.Drying), onDay(s.Recoat, a.Drying, a.Drying, a.Drying)
}

// SolveDay works a request. It fails, with a *Problem, where Problems finds any.
func SolveDay(r *DayRequest) (a DayAnswer, err error) {
	if p := r.Problems(); len(p) > 0 {
		return a, &p[0]
	}
	a.DewPoint = air.DewPoint(r.Air, r.Humidity)
	a.WetBulb = air.WetBulb(r.Air, r.Humidity, air.AtAltitude(r.Altitude))
	a.PanelMargin = unit.TempDiff(r.Panel - a.DewPoint)
	if a.Drying, err = r.drying(r.Day); err != nil {
		return a, err
	}
	a.Flash = coat.FlashFactor(a.Drying)
	a.Grade = GradeFor(r.Air, r.Panel, r.Panels)
	a.PotLife = r.potLife()
	o := outlook{r: r, flight: newEvaporation(&r.Coat, &r.Gun, r.Day, air.AtAltitude(r.Altitude))}
	a.InFlight = o.flight.atStart()
	o.inFlight = &a.InFlight
	a.InFlight.Drier = o.flight.drierOn(o.inFlight, r.Day)
	o.judge(&a.Judgement, &a.Remedy)
	a.judgePotLife(r, &a.PotLife, a.Flash)
	a.explain(r)
	a.warn(r)
	return a, nil
}

// drying is how fast the coat dries, relative to the reference day: a solvent coat by
// the vapour pressure of its solvent in a film that is as warm as the panel, a
// waterborne one by the wet bulb.
func (r *DayRequest) drying(d Day) (float64, error) {
	if r.Coat.Waterborne {
		return coat.WaterDrive(d.Air, d.Humidity, air.AtAltitude(d.Altitude))
	}
	if !r.Coat.Dries() {
		return 1, nil
	}
	return coat.SolventDrive(r.Coat.Solvent, d.Panel, air.AtAltitude(d.Altitude)), nil
}
