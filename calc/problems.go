package calc

import (
	"math"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Problem is a request that cannot be worked: which part of it, and the sentence that
// says why.
type Problem struct {
	Field, ID string
	Figures
}

func (p *Problem) Error() string { return p.Field + ": " + p.ID }

// problems gathers what is wrong with a request.
type problems []Problem

func (p *problems) add(field, id string, f ...Figure) { *p = append(*p, Problem{field, id, f}) }

// within adds a problem where v is not within low and high, all of a kind. What is at an
// edge but for the rounding of its unit is inside.
func (p *problems) within(field string, v, low, high float64, kind FigureKind) {
	p.bound(field, "outside", v, low, high, kind)
}

// bound is within with a sentence of its own.
func (p *problems) bound(field, id string, v, low, high float64, kind FigureKind) {
	const rounding = 1e-12
	if !(v >= low-rounding*math.Abs(low) && v <= high+rounding*math.Abs(high)) {
		p.add(field, id, Figure{Name: "given", Kind: kind, Value: v, Brief: true},
			Figure{Name: "low", Kind: kind, Value: low, Brief: true, WithoutUnit: true}, Figure{Name: "high", Kind: kind, Value: high, Brief: true})
	}
}

// fluid adds a problem where no gun has such a fluid rate.
func (p *problems) fluid(field string, q coat.FluidRate) {
	p.within(field, float64(q), float64(coat.MLPerMin(5)), float64(coat.MLPerMin(1500)), FigureFluid)
}

// temp adds a problem where the air, or what stands in it, is not as warm as a request
// may hold.
func (p *problems) temp(field string, t unit.Temp) {
	p.within(field, float64(t), float64(ColdestAir), float64(HottestAir), FigureTemp)
}
