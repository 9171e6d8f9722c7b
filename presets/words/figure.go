package words

import (
	"strconv"
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// PressureDecimals is how many decimals a pressure is printed with where small
// differences matter: a set pressure beside the one it falls to.
func PressureDecimals(sys unit.System) int {
	if sys == unit.Metric {
		return 2
	}
	return 1
}

// SpeedDecimals is how many decimals a gun's speed is printed with.
const SpeedDecimals = 2

// FilmDecimals is how many decimals a film is printed with: a base's coat is a few
// tenths of a mil.
func FilmDecimals(sys unit.System, l unit.Length) int {
	if sys == unit.US && l < unit.MetrePerMil {
		return 2
	}
	return unit.Usual
}

// AppendFigure appends a figure's value as a person reads it in a system's units.
func (w *Words) AppendFigure(dst []byte, sys unit.System, f *calc.Figure) []byte {
	if f.Brief {
		return w.appendBrief(dst, sys, f)
	}
	switch f.Kind {
	case calc.FigureGauge:
		return sys.AppendGauge(dst, unit.Gauge(f.Value), PressureDecimals(sys))
	case calc.FigureDrop:
		return sys.AppendDrop(dst, unit.Drop(f.Value), unit.Usual)
	case calc.FigureDistance:
		return sys.AppendSmall(dst, unit.Length(f.Value), unit.Usual)
	case calc.FigureRun:
		return sys.AppendLong(dst, unit.Length(f.Value), unit.Usual)
	case calc.FigureTemp:
		return sys.AppendTemp(dst, unit.Temp(f.Value), unit.Usual)
	case calc.FigureTempDiff:
		return sys.AppendTempDiff(dst, unit.TempDiff(f.Value), unit.Usual)
	case calc.FigureFlow:
		return sys.AppendFlow(dst, unit.Flow(f.Value), unit.Usual)
	case calc.FigureShare:
		return unit.AppendPercent(dst, f.Value, unit.Usual)
	case calc.FigureRatio:
		return unit.AppendNumber(dst, f.Value)
	case calc.FigureMinutes:
		return w.appendMinutes(dst, f.Value)
	case calc.FigureVolume:
		return sys.AppendVolume(dst, unit.Volume(f.Value), unit.Usual)
	case calc.FigureLitres:
		return unit.Metric.AppendVolume(dst, unit.Litres(f.Value), unit.Usual)
	case calc.FigureFilm:
		return sys.AppendFilm(dst, unit.Length(f.Value), FilmDecimals(sys, unit.Length(f.Value)))
	case calc.FigureArea:
		return sys.AppendArea(dst, unit.Area(f.Value), unit.Usual)
	case calc.FigureSpeed:
		return sys.AppendSpeed(dst, unit.Speed(f.Value), SpeedDecimals)
	case calc.FigureFluid:
		return append(strconv.AppendFloat(dst, coat.FluidRate(f.Value).MLPerMin(), 'f', 0, 64), " mL/min"...)
	case calc.FigureCount:
		return strconv.AppendFloat(dst, f.Value, 'f', 0, 64)
	case calc.FigureMoney:
		return strconv.AppendFloat(dst, f.Value, 'f', 2, 64)
	case calc.FigureTimes:
		return append(dst, TimesText(f.Value)...)
	case calc.FigureClock:
		return w.AppendClock(dst, sys, calc.Clock(f.Value*float64(time.Second)))
	case calc.FigureCup:
		return append(dst, CupText(f.Value)...)
	case calc.FigureViscosity:
		return unit.AppendKinematic(dst, unit.Kinematic(f.Value), unit.Usual)
	case calc.FigureNamed:
		return append(dst, w.Say(f.Text)...)
	}
	return append(dst, f.Text...)
}
