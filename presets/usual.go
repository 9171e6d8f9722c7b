package presets

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// checkLine resolves the shop's usual line, so that a fault in it shows at once.
func (c *Catalogue) checkLine() *said {
	l := &c.entries.Line
	switch l.Units {
	case "", UnitsUS, UnitsMetric:
	default:
		return answer(&FieldError{FieldUnits, l.Units, c.words.Choose([]string{UnitsUS, UnitsMetric})})
	}
	answers := c.only(Answers{}, "")
	answers.Supply, answers.Receiver = Typed(l.Supply).or("100psi"), ""
	us, faults := c.Resolve(answers, unit.US)
	if len(faults) > 0 {
		return answer(faults[0])
	}
	metric, faults := c.Resolve(answers, unit.Metric)
	if len(faults) > 0 {
		return answer(faults[0])
	}
	if field := unlike(us, metric, l.Mark != ""); field != "" {
		return answer(&FieldError{field, c.Usual(field), c.words.Say("file-units")})
	}
	return nil
}

// answer is a usual answer that will not do.
func answer(f *FieldError) *said { return &said{own: f.Error()} }

// unlike is the first field that two readings of the same answers differ in: a number
// without a unit, read in either system.
func unlike(a, b *calc.Request, marked bool) string {
	switch {
	case a.Supply != b.Supply:
		return FieldSupply
	case a.Day.Altitude != b.Day.Altitude:
		return FieldAltitude
	case marked && a.Mark != b.Mark:
		return FieldMark
	}
	for i := range a.Line {
		if a.Line[i].Hose != b.Line[i].Hose {
			return FieldHose
		}
	}
	x, y := &a.Shop, &b.Shop
	switch {
	case x.System.Rated != y.System.Rated:
		return FieldCompressor
	case x.System.Receiver != y.System.Receiver:
		return FieldReceiver
	case x.System.CutIn != y.System.CutIn:
		return FieldCutIn
	case x.System.CutOut != y.System.CutOut:
		return FieldCutOut
	case x.System.Main != y.System.Main:
		return FieldMain
	case x.ReceiverTemp != y.ReceiverTemp:
		return FieldReceiverTemp
	case x.LineTemp != y.LineTemp:
		return FieldLineTemp
	}
	for i := range x.System.Others {
		if x.System.Others[i] != y.System.Others[i] {
			return FieldOther
		}
	}
	return ""
}
