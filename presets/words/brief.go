package words

import (
	"math"
	"strconv"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// appendBrief prints a figure to three significant digits in its unit: a value and the bound
// that it is past then seldom look alike. A kind that has no unit of its own here is printed
// as ever.
func (w *Words) appendBrief(dst []byte, sys unit.System, f *calc.Figure) []byte {
	v, label := 0.0, ""
	either := func(us float64, inUS string, metric float64, inMetric string) {
		if v, label = us, inUS; sys == unit.Metric {
			v, label = metric, inMetric
		}
	}
	switch l := unit.Length(f.Value); f.Kind {
	case calc.FigureGauge, calc.FigureDrop:
		either(unit.Gauge(f.Value).PSI(), " psi", unit.Gauge(f.Value).Bar(), " bar")
	case calc.FigureDistance:
		either(l.Inches(), " in", l.MM(), " mm")
	case calc.FigureRun:
		either(l.Feet(), " ft", f.Value, " m")
	case calc.FigureFilm:
		either(f.Value/unit.MetrePerMil, " mil", f.Value*1e6, " um")
	case calc.FigureTemp:
		either(unit.Temp(f.Value).F(), " F", unit.Temp(f.Value).C(), " C")
		v = math.Round(v*1e9) / 1e9 // counted from absolute zero, 0 degrees are a rounding off
	case calc.FigureTempDiff:
		either(unit.TempDiff(f.Value).F(), " F", f.Value, " C")
	case calc.FigureFlow:
		either(unit.Flow(f.Value).SCFM(), " cfm", unit.Flow(f.Value).LPM(), " L/min")
	case calc.FigureVolume:
		litres := unit.Volume(f.Value)
		either(litres.USGallons()*unit.OuncePerUSGal, " fl oz", litres.Litres(), " L")
	case calc.FigureSpeed:
		either(unit.Speed(f.Value).FeetPerSecond(), " ft/s", f.Value, " m/s")
	case calc.FigureArea:
		either(f.Value/(unit.MetrePerFoot*unit.MetrePerFoot), " ft2", f.Value, " m2")
	case calc.FigureShare:
		v, label = f.Value*100, "%"
	case calc.FigureFluid:
		v, label = coat.FluidRate(f.Value).MLPerMin(), " mL/min"
	case calc.FigureViscosity:
		v, label = unit.Kinematic(f.Value).MM2PerS(), " mm2/s"
	case calc.FigureCount, calc.FigureRatio, calc.FigureMoney:
		v = f.Value
	default:
		plain := *f
		plain.Brief = false
		return w.AppendFigure(dst, sys, &plain)
	}
	if dst = appendSignificant(dst, v); f.Bare {
		return dst
	}
	return append(dst, label...)
}

// appendSignificant prints a number to three significant digits, without an exponent.
func appendSignificant(dst []byte, v float64) []byte {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 3, 64), 64)
	if err != nil {
		rounded = v // rounded past the largest number there is
	}
	return strconv.AppendFloat(dst, rounded, 'f', -1, 64)
}
