package coat

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"boothset/calc/unit"
)

// How far a cup's equation is followed outside its published seconds. Published
// comparison tables differ from the equations by up to about 30 % in the range that
// refinish paint is timed in, which is the spread stated there. Below a quarter of
// the viscosity at its shortest published time, and beyond twice its longest, a cup
// says too little and the reading is refused. Both limits are judgement, not published.
const (
	OutsideSpread = 0.30
	lowestShare   = 0.25
	longestTimes  = 2
)

// Viscosity is what a cup's reading says. About marks a reading outside the cup's
// published seconds: then Low and High are Nu less and plus OutsideSpread, an
// estimate; inside, all three are the same.
type Viscosity struct {
	Nu, Low, High unit.Kinematic
	About         bool
}

// Efflux is the seconds that a viscosity takes in a cup, with the same marks.
type Efflux struct {
	Seconds, Low, High float64
	About              bool
}

// CupRange says that a cup cannot measure this: its equation gives Nu at Seconds,
// which is no viscosity or is too far from what it was made for. Better holds the
// cups whose published range has such a viscosity in it, best first, and is empty
// where none has.
type CupRange struct {
	Cup     Cup
	Seconds float64
	Nu      unit.Kinematic
	Better  []Cup
}

func (e *CupRange) Error() string {
	way := "long"
	if e.Seconds < e.Cup.Low {
		way = "short"
	}
	s := fmt.Sprintf("%.3g s in the %s cup: too %s to tell a viscosity, it is for %.0f to %.0f s",
		e.Seconds, e.Cup.Label, way, e.Cup.Low, e.Cup.High)
	if len(e.Better) == 0 {
		return s + "; no cup measures that"
	}
	return s + "; use the " + e.Better[0].Label + " cup"
}

// Viscosity is the kinematic viscosity of a liquid that drains in the given seconds.
// Outside the cup's published seconds it is marked About; where the equation no
// longer makes sense the error is a *CupRange that names a better cup.
func (c Cup) Viscosity(seconds float64) (Viscosity, error) {
	if err := within("cup-time", seconds, 1, 1000, "s"); err != nil {
		return Viscosity{}, err
	}
	nu := c.equation(seconds)
	if err := c.sense(seconds, nu); err != nil {
		return Viscosity{}, err
	}
	v := unit.MM2PerS(nu)
	if c.published(seconds) {
		return Viscosity{Nu: v, Low: v, High: v}, nil
	}
	return Viscosity{Nu: v, Low: v * (1 - OutsideSpread), High: v * (1 + OutsideSpread), About: true}, nil
}

// Seconds is how long a liquid of viscosity nu takes to drain, with the marks and
// the error of Viscosity.
func (c Cup) Seconds(nu unit.Kinematic) (Efflux, error) {
	if err := sprayable("viscosity", nu); err != nil {
		return Efflux{}, err
	}
	v := nu.MM2PerS()
	t := c.drain(v)
	if err := c.sense(t, v); err != nil {
		return Efflux{}, err
	}
	if c.published(t) {
		return Efflux{Seconds: t, Low: t, High: t}, nil
	}
	return Efflux{Seconds: t, Low: c.drain(v * (1 - OutsideSpread)), High: c.drain(v * (1 + OutsideSpread)), About: true}, nil
}

// sprayable is nil for a viscosity of any liquid a cup or a gun sees.
func sprayable(quantity string, nu unit.Kinematic) error {
	return within(quantity, nu.MM2PerS(), 0.1, 1e5, "mm2/s")
}

func (c Cup) equation(t float64) float64 { return c.A*(t-c.Offset) - c.B/t }

// drain solves the equation for t: a quadratic, or a line where B is zero.
func (c Cup) drain(nu float64) float64 {
	m := nu + c.A*c.Offset
	return (m + math.Sqrt(m*m+4*c.A*c.B)) / (2 * c.A)
}

// published says that t lies in the published seconds, allowing for the last bits of
// a round trip.
func (c Cup) published(t float64) bool {
	const bits = 1e-9
	return t >= c.Low*(1-bits) && t <= c.High*(1+bits)
}

func (c Cup) sense(t, nu float64) error {
	floor := lowestShare * c.equation(c.Low)
	if nu >= floor && t <= longestTimes*c.High {
		return nil
	}
	return &CupRange{c, t, unit.MM2PerS(nu), betterCups(c, math.Max(nu, floor))}
}

// betterCups are the cups other than c whose published range holds nu: those of the
// same standard first, Zahn cups last (their own standard keeps them from settling
// anything), and among equals those with nu nearest the middle of their range.
func betterCups(c Cup, nu float64) []Cup {
	var found []Cup
	for _, o := range cups {
		if o.ID != c.ID && nu >= o.equation(o.Low) && nu <= o.equation(o.High) {
			found = append(found, o)
		}
	}
	rank := func(o Cup) int {
		switch o.Standard {
		case c.Standard:
			return 0
		case ZahnStandard:
			return 2
		}
		return 1
	}
	offCentre := func(o Cup) float64 {
		return math.Abs(math.Log(nu * nu / (o.equation(o.Low) * o.equation(o.High))))
	}
	slices.SortStableFunc(found, func(a, b Cup) int {
		return cmp.Or(cmp.Compare(rank(a), rank(b)), cmp.Compare(offCentre(a), offCentre(b)))
	})
	return found
}
