package words

import (
	"strconv"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
)

// FigureText is a figure's value as a person reads it in a system's units.
func (w *Words) FigureText(sys unit.System, f calc.Figure) string {
	return string(w.AppendFigure(nil, sys, &f))
}

// AppendFigure appends a figure's value as a person reads it in a system's units.
func (w *Words) AppendFigure(dst []byte, sys unit.System, f *calc.Figure) []byte {
	if q := f.Kind.Quantity(); q != nil {
		decimals := unit.Usual
		switch {
		case f.Brief:
			if f.Past != nil {
				return q.AppendPast(dst, sys, f.Value, *f.Past, !f.WithoutUnit)
			}
			return q.AppendBrief(dst, sys, f.Value, !f.WithoutUnit)
		case f.Kind == calc.FigureGauge:
			decimals = q.Fine(sys)
		}
		return q.Append(dst, sys, f.Value, decimals)
	}
	switch f.Kind {
	case calc.FigureRatio:
		if f.Brief {
			return appendBrief(dst, f)
		}
		return unit.AppendNumber(dst, f.Value)
	case calc.FigureCount:
		if f.Brief {
			return appendBrief(dst, f)
		}
		return strconv.AppendFloat(dst, f.Value, 'f', 0, 64)
	case calc.FigureMoney:
		if f.Brief {
			return appendBrief(dst, f)
		}
		return strconv.AppendFloat(dst, f.Value, 'f', 2, 64)
	case calc.FigureMinutes:
		return w.appendMinutes(dst, f.Value)
	case calc.FigureLitres:
		return unit.Tank.Append(dst, unit.Metric, float64(unit.Litres(f.Value)), unit.Usual)
	case calc.FigureTimes:
		return append(dst, TimesText(f.Value)...)
	case calc.FigureClock:
		return w.AppendClock(dst, sys, calc.Clock(f.Value*float64(time.Second)))
	case calc.FigureCup:
		return append(dst, CupText(f.Value)...)
	case calc.FigureTurns:
		return w.appendTurns(dst, f.Value, f.WithoutUnit)
	case calc.FigureClosed:
		return w.appendKnob(dst, sys, "knob-closed", f.Value)
	case calc.FigureOpened:
		return w.appendKnob(dst, sys, "knob-opened", f.Value)
	case calc.FigureGiven:
		return append(dst, Short(f.Text)...)
	case calc.FigurePath:
		return append(dst, Path(f.Text)...)
	case calc.FigureSentence:
		return append(dst, w.Say(f.Text)...)
	}
	return append(dst, f.Text...)
}

// appendBrief appends a number without a unit to three digits, or to as many as tell it from
// what it is past.
func appendBrief(dst []byte, f *calc.Figure) []byte {
	if f.Past == nil {
		return unit.AppendDigits(dst, f.Value)
	}
	return unit.AppendApart(dst, f.Value, *f.Past)
}
