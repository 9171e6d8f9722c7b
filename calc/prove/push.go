package prove

import (
	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/unit"
)

// Push is where the firm push of the air was felt.
type Push struct {
	Felt unit.Length
	// Low and High are where it was expected, 80 % sure, and Known whether it was: not where the
	// product's sheet gives the distance.
	Known     bool
	Low, High unit.Length
	// Hold is how far the gun is to be held for it.
	Hold calc.Distance
}

// PushOf is where the push is expected, by what the readings left.
func PushOf(plan *calc.Request, found *learn.Answer) (p Push) {
	if found.After.Distance.Held == calc.HeldBySheet {
		return p
	}
	d := found.Sure.Distance
	return Push{Known: true, Low: plan.PushFor(d.Low), High: plan.PushFor(d.High)}
}

// Off is how far the push was felt outside of where it was expected: below 0 where nearer.
func (p *Push) Off() unit.Length {
	switch {
	case p.Known && p.Felt < p.Low:
		return p.Felt - p.Low
	case p.Known && p.Felt > p.High:
		return p.Felt - p.High
	}
	return 0
}
