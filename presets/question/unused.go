package question

import (
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
)

// idle is a field that counts only as another one is answered.
type idle struct {
	field, other *Field
	// instead: it does not count beside the other. Else it counts only beside it, where that
	// is not answered with "none".
	instead bool
}

// idles is what does not count for what other answers, by question.
var idles = map[*Question][]idle{
	Plan: slices.Concat(only(Regulator, RegulatorAt, Wall, Mark), only(Compressor, Receiver, CutIn, CutOut, Main, Other, SprayTime, ReceiverTemp, LineTemp)),
	Thin: {{Temp, Paint, true}},
	Film: slices.Concat([]idle{{CupVolume, FluidRate, true}, {CupTime, FluidRate, true}, {Tip, FluidRate, true}, {Tip, CupVolume, true}, {Tip, CupTime, true}},
		only(Tip, Viscosity, Cup, Seconds), []idle{{Cup, Viscosity, true}, {Seconds, Viscosity, true}}),
	Prove: only(FirstGun, FirstWall, HeldSupply),
	Mix:   only(PotLife, BoothTemp, FluidRate),
}

// only is fields that count only beside another one.
func only(other *Field, fields ...*Field) (all []idle) {
	for _, f := range fields {
		all = append(all, idle{field: f, other: other})
	}
	return all
}

// Unused is the first of the answers that were typed which does not count as all of them
// stand, with the one that keeps it from counting; nil where each counts. What nobody typed,
// such as the shop's usual, may go unused.
func (r *Reader) Unused(q *Question, typed, all Answers, sys unit.System) *Fault {
	all = all.Or(r.usual)
	for _, x := range idles[q] {
		given := all.Text(x.other)
		without := !all.Has(x.other) || all.ID(x.other) == None
		if x.other == Regulator && Whole(all) {
			without = !regulated(all)
		}
		if !typed.Has(x.field) || without != !x.instead {
			continue
		}
		id := "unused-beside"
		if without && given == "" {
			id = "unused-without"
		}
		return r.Fault(x.field.Name, typed.Text(x.field), sys, id, calc.TextFigure("other", x.other.Name), calc.GivenFigure("given", given))
	}
	return nil
}
