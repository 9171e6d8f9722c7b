package unit

import (
	"math"
	"strconv"
)

// System is the set of units a person reads and, where no unit is typed, writes.
type System int

// The two systems: psi, F, in, ft, mil, cfm, gal; and bar, C, mm, m, um, L/min, L.
const (
	US System = iota
	Metric
)

// Printing turns a quantity into a number and a unit, such as "30 psi". Each
// quantity has an Append form, which allocates nothing when dst has room, and a
// string form. Values must be finite; what rounds to zero prints without a sign.

// Usual asks for the decimals that suit the quantity, its unit and its size.
// Any other negative count of decimals does too.
const Usual = -1

// usual is fine decimals for a number below ten as it will be printed, and
// coarse ones from ten on.
func usual(v float64, fine, coarse int) int {
	if math.Abs(v)+0.5*math.Pow10(-fine) < 10 {
		return fine
	}
	return coarse
}

// appendNumber prints v with the decimals given, or usual ones.
func appendNumber(dst []byte, v float64, decimals, fine, coarse int) []byte {
	if decimals < 0 {
		decimals = usual(v, fine, coarse)
	}
	start := len(dst)
	dst = strconv.AppendFloat(dst, v, 'f', decimals, 64)
	if dst[start] != '-' {
		return dst
	}
	for _, c := range dst[start+1:] {
		if c != '0' && c != '.' {
			return dst
		}
	}
	copy(dst[start:], dst[start+1:])
	return dst[:len(dst)-1]
}

// scale is how a quantity is shown in one system: its unit, and the decimals
// usual below ten and from ten on.
type scale struct {
	label        string
	fine, coarse int
}

// show prints us or metric, whichever the system is.
func (s System) show(dst []byte, decimals int, us float64, usScale scale, metric float64, metricScale scale) []byte {
	v, sc := us, usScale
	if s == Metric {
		v, sc = metric, metricScale
	}
	return append(appendNumber(dst, v, decimals, sc.fine, sc.coarse), sc.label...)
}

var (
	showPSI = scale{" psi", 1, 0}
	showBar = scale{" bar", 2, 2}
)

// AppendGauge prints a gauge pressure in psi or bar.
func (s System) AppendGauge(dst []byte, p Gauge, decimals int) []byte {
	return s.show(dst, decimals, p.PSI(), showPSI, p.Bar(), showBar)
}

// AppendDrop prints a difference of pressures in psi or bar.
func (s System) AppendDrop(dst []byte, d Drop, decimals int) []byte {
	return s.show(dst, decimals, d.PSI(), showPSI, d.Bar(), showBar)
}

// AppendAbs prints an absolute pressure in psi or bar, and says "abs".
func (s System) AppendAbs(dst []byte, p Abs, decimals int) []byte {
	return append(s.show(dst, decimals, p.PSI(), showPSI, p.Bar(), showBar), " abs"...)
}

// AppendSmall prints a length such as a gun's distance in in or mm.
func (s System) AppendSmall(dst []byte, l Length, decimals int) []byte {
	return s.show(dst, decimals, l.Inches(), scale{" in", 1, 1}, l.MM(), scale{" mm", 1, 0})
}

// AppendLong prints a length such as a hose's or an altitude in ft or m.
func (s System) AppendLong(dst []byte, l Length, decimals int) []byte {
	return s.show(dst, decimals, l.Feet(), scale{" ft", 0, 0}, float64(l), scale{" m", 1, 0})
}

// AppendFilm prints a film's thickness in mil or um.
func (s System) AppendFilm(dst []byte, l Length, decimals int) []byte {
	return s.show(dst, decimals, float64(l)/MetrePerMil, scale{" mil", 1, 1}, float64(l)*1e6, scale{" um", 1, 0})
}

// AppendBore prints the bore of a hose or a passage. In the US system whole
// sixteenths of an inch are printed as such ("3/8 in", "1-1/2 in"), other bores
// with three decimals; in the metric one it is mm with one decimal, or none where
// that would be a zero.
func (s System) AppendBore(dst []byte, l Length) []byte {
	if s == Metric {
		if v := l.MM(); math.Abs(v-math.Round(v)) < 0.05 {
			return s.AppendSmall(dst, l, 0)
		}
		return s.AppendSmall(dst, l, 1)
	}
	sixteenths := l.Inches() * 16
	n := math.Round(sixteenths)
	const same = 1e-4 // of a sixteenth: rounding of the arithmetic, not of the bore
	if n < 1 || n > 16*100 || math.Abs(sixteenths-n) > same {
		return s.AppendSmall(dst, l, 3)
	}
	whole, over, under := int64(n)/16, int64(n)%16, int64(16)
	for over != 0 && over%2 == 0 {
		over, under = over/2, under/2
	}
	if whole > 0 {
		dst = strconv.AppendInt(dst, whole, 10)
	}
	if whole > 0 && over > 0 {
		dst = append(dst, '-')
	}
	if over > 0 {
		dst = strconv.AppendInt(dst, over, 10)
		dst = append(dst, '/')
		dst = strconv.AppendInt(dst, under, 10)
	}
	return append(dst, " in"...)
}

// AppendTemp prints a temperature in F or C.
func (s System) AppendTemp(dst []byte, t Temp, decimals int) []byte {
	return s.show(dst, decimals, t.F(), scale{" F", 0, 0}, t.C(), scale{" C", 1, 1})
}

// AppendTempDiff prints a difference of temperatures in F or C degrees.
func (s System) AppendTempDiff(dst []byte, d TempDiff, decimals int) []byte {
	return s.show(dst, decimals, d.F(), scale{" F", 1, 0}, d.C(), scale{" C", 1, 1})
}

// AppendFlow prints a flow of air in cfm or L/min.
func (s System) AppendFlow(dst []byte, q Flow, decimals int) []byte {
	return s.show(dst, decimals, q.SCFM(), scale{" cfm", 1, 1}, q.LPM(), scale{" L/min", 1, 0})
}

// AppendSpeed prints a speed in ft/s or m/s.
func (s System) AppendSpeed(dst []byte, v Speed, decimals int) []byte {
	return s.show(dst, decimals, v.FeetPerSecond(), scale{" ft/s", 1, 0}, float64(v), scale{" m/s", 2, 0})
}

// AppendVolume prints a volume in gal, or fl oz below a gallon; in L, or mL below
// a litre.
func (s System) AppendVolume(dst []byte, v Volume, decimals int) []byte {
	us, usScale := v.USGallons(), scale{" gal", 2, 1}
	if math.Abs(us) < 1 {
		us, usScale = us*OuncePerUSGal, scale{" fl oz", 1, 0}
	}
	metric, metricScale := v.Litres(), scale{" L", 2, 1}
	if math.Abs(metric) < 1 {
		metric, metricScale = metric*1000, scale{" mL", 1, 0}
	}
	return s.show(dst, decimals, us, usScale, metric, metricScale)
}

// AppendArea prints an area in ft2 or m2.
func (s System) AppendArea(dst []byte, a Area, decimals int) []byte {
	return s.show(dst, decimals, float64(a)/(MetrePerFoot*MetrePerFoot), scale{" ft2", 1, 0}, float64(a), scale{" m2", 2, 1})
}

// AppendKinematic prints a kinematic viscosity in mm2/s, which serves both
// systems.
func AppendKinematic(dst []byte, n Kinematic, decimals int) []byte {
	return append(appendNumber(dst, n.MM2PerS(), decimals, 1, 0), " mm2/s"...)
}

// AppendPercent prints a fraction as a percentage: 0.45 is "45%".
func AppendPercent(dst []byte, fraction float64, decimals int) []byte {
	return append(appendNumber(dst, fraction*100, decimals, 0, 0), '%')
}

// AppendNumber prints a number that has no unit, two decimals below ten and none
// from ten on.
func AppendNumber(dst []byte, v float64) []byte {
	return appendNumber(dst, v, Usual, 2, 0)
}
