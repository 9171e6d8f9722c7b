package presets

import (
	"math"
	"strconv"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// step is how far one press moves a quantity.
type step struct {
	field string
	piece int
	// size is in the unit that each system reads: psi and bar, F and C, ft and m, cfm and
	// L/min, gal and L; in %, min and hp in both.
	size [2]float64
	kind *kind                                   // nil for a bore, which goes along the catalogue's
	is   func(r *calc.Request, part int) float64 // in SI; NaN where there is none
}

// steps is the step of every quantity: what a hand would change it by.
var steps = []step{
	{FieldTemp, 0, [2]float64{2, 1}, &temperatures, func(r *calc.Request, _ int) float64 { return float64(r.Day.Air) }},
	{FieldHumidity, 0, [2]float64{5, 5}, &shares, func(r *calc.Request, _ int) float64 { return r.Day.Humidity }},
	{FieldPanel, 0, [2]float64{2, 1}, &temperatures, func(r *calc.Request, _ int) float64 { return float64(r.Day.Panel) }},
	{FieldAltitude, 0, [2]float64{500, 100}, &runs, func(r *calc.Request, _ int) float64 { return float64(r.Day.Altitude) }},
	{FieldSupply, 0, [2]float64{1, 0.1}, &pressures, func(r *calc.Request, _ int) float64 { return float64(r.Supply) }},
	{FieldHose, 0, [2]float64{5, 1}, &runs, func(r *calc.Request, part int) float64 { return float64(hoseOf(r, part).Length) }},
	{FieldHose, 1, [2]float64{}, nil, func(r *calc.Request, part int) float64 { return float64(hoseOf(r, part).Bore) }},
	{FieldWall, 0, markStep, &pressures, now}, // or the mark of its gauge
	{FieldMark, 0, markStep, &pressures, func(r *calc.Request, _ int) float64 { return float64(r.Mark) }},

	{FieldCompressor, 0, [2]float64{1, 50}, &flows, func(r *calc.Request, _ int) float64 { return float64(r.Shop.System.Rated) }},
	{FieldReceiver, 0, [2]float64{10, 50}, &volumes, func(r *calc.Request, _ int) float64 { return float64(r.Shop.System.Receiver.Volume) }},
	{FieldCutIn, 0, [2]float64{1, 0.1}, &pressures, func(r *calc.Request, _ int) float64 { return float64(r.Shop.System.CutIn) }},
	{FieldCutOut, 0, [2]float64{1, 0.1}, &pressures, func(r *calc.Request, _ int) float64 { return float64(r.Shop.System.CutOut) }},
	{FieldMain, 0, [2]float64{5, 1}, &runs, func(r *calc.Request, _ int) float64 { return float64(r.Shop.System.Main.Length) }},
	{FieldMain, 1, [2]float64{}, nil, func(r *calc.Request, _ int) float64 { return float64(r.Shop.System.Main.Bore) }},
	{FieldOther, 0, [2]float64{1, 50}, &flows, func(r *calc.Request, part int) float64 { return float64(r.Shop.System.Others[part].Flow) }},
	{FieldOther, 1, [2]float64{10, 10}, &shares, func(r *calc.Request, part int) float64 { return r.Shop.System.Others[part].Duty }},
	{FieldSprayTime, 0, [2]float64{1, 1}, &times, func(r *calc.Request, _ int) float64 { return r.Shop.Spraying.Seconds() }},
	{FieldReceiverTemp, 0, [2]float64{2, 1}, &temperatures, func(r *calc.Request, _ int) float64 { return float64(r.Shop.ReceiverTemp) }},
	{FieldLineTemp, 0, [2]float64{2, 1}, &temperatures, func(r *calc.Request, _ int) float64 { return float64(r.Shop.LineTemp) }},
}

// markStep is the mark that a wall gauge is taken to have where it is not told.
var markStep = [2]float64{1, 0.05}

// usualMark is markStep as a difference of pressures.
func usualMark(sys unit.System) unit.Drop {
	if sys == unit.Metric {
		return unit.Drop(unit.BarG(markStep[sys]))
	}
	return unit.Drop(unit.PSIG(markStep[sys]))
}

// firsts is where counting begins, by the system, in a field that is empty and that
// nothing counts for. It claims nothing: the arrows lead on from there.
var firsts = table[[2]string]{
	{FieldTemp, [2]string{"70 F", "20 C"}},
	{FieldHumidity, [2]string{"50%", "50%"}},
	{FieldSupply, [2]string{"90 psi", "6 bar"}},
	{FieldWall, [2]string{"30 psi", "2 bar"}},
	{FieldCompressor, [2]string{"10 cfm", "300 L/min"}},
	{FieldReceiver, [2]string{"60 gal", "200 L"}},
	{FieldMain, [2]string{"50 ft, 3/4 in", "15 m, 20 mm"}},
	{FieldOther, [2]string{"5 cfm, 50%", "150 L/min, 50%"}},
}

// powerStep is the step of a compressor that is told by its motor.
var powerStep = step{field: FieldCompressor, size: [2]float64{1, 1}, kind: &powers}

func now(r *calc.Request, _ int) float64 {
	if !r.HasNow {
		return math.NaN()
	}
	return float64(r.Now)
}

// hoseOf is a request's hose by its place among the hoses.
func hoseOf(r *calc.Request, part int) line.Hose {
	for i := range r.Line {
		if r.Line[i].Kind != line.HoseKind {
			continue
		}
		if part == 0 {
			return r.Line[i].Hose
		}
		part--
	}
	return line.Hose{}
}

// kind is how a kind of quantity is counted and written, by the system.
type kind [2]scale

type scale struct {
	count func(si float64) float64
	text  func(v float64, decimals int) string
}

var (
	pressures = kind{
		{func(si float64) float64 { return unit.Gauge(si).PSI() }, func(v float64, d int) string { return unit.US.Gauge(unit.PSIG(v), d) }},
		{func(si float64) float64 { return unit.Gauge(si).Bar() }, func(v float64, d int) string { return unit.Metric.Gauge(unit.BarG(v), d) }},
	}
	temperatures = kind{
		{func(si float64) float64 { return unit.Temp(si).F() }, func(v float64, d int) string { return unit.US.Temp(unit.Fahrenheit(v), d) }},
		{func(si float64) float64 { return unit.Temp(si).C() }, func(v float64, d int) string { return unit.Metric.Temp(unit.Celsius(v), d) }},
	}
	runs = kind{
		{func(si float64) float64 { return unit.Length(si).Feet() }, func(v float64, d int) string { return unit.US.Long(unit.Feet(v), d) }},
		{func(si float64) float64 { return si }, func(v float64, d int) string { return unit.Metric.Long(unit.Length(v), d) }},
	}
	flows = kind{
		{func(si float64) float64 { return unit.Flow(si).SCFM() }, func(v float64, d int) string { return unit.US.Flow(unit.SCFM(v), d) }},
		{func(si float64) float64 { return unit.Flow(si).LPM() }, func(v float64, d int) string { return unit.Metric.Flow(unit.LPM(v), d) }},
	}
	volumes = kind{
		{func(si float64) float64 { return unit.Volume(si).USGallons() }, func(v float64, d int) string { return unit.US.Volume(unit.USGallons(v), d) }},
		{func(si float64) float64 { return unit.Volume(si).Litres() }, func(v float64, d int) string { return unit.Metric.Volume(unit.Litres(v), d) }},
	}
	shares = kind{{percents, percentText}, {percents, percentText}}
	times  = kind{{minutes, minuteText}, {minutes, minuteText}}
	powers = kind{{horses, horseText}, {horses, horseText}}
)

func percents(si float64) float64 { return si / 0.01 }
func minutes(si float64) float64  { return si / unit.SecondPerMinute }
func horses(hp float64) float64   { return hp }

func percentText(v float64, decimals int) string { return labelled(v, decimals, "%") }
func minuteText(v float64, decimals int) string  { return labelled(v, decimals, " min") }
func horseText(v float64, decimals int) string   { return labelled(v, decimals, " hp") }

// labelled is a number with the same unit behind it in both systems.
func labelled(v float64, decimals int, label string) string {
	return strconv.FormatFloat(v, 'f', decimals, 64) + label
}

// same is how near two counts are that differ by the rounding of their units alone.
const same = 1e-6

// path gives what stands so many steps from where the input stands.
// False where it stands nowhere.
func (n *nudge) path(part Typed, toward int) (to func(steps int) string, ok bool) {
	s := n.step(part)
	at := s.is(n.r, n.part)
	if math.IsNaN(at) {
		return nil, false
	}
	if s.kind == nil {
		return n.along(unit.Length(at), toward)
	}
	sc, size := s.kind[n.sys], s.size[n.sys]
	count := sc.count(at) / size
	if math.Abs(count-math.Round(count)) < same {
		count = math.Round(count)
	}
	from := math.Floor(count)
	if toward < 0 {
		from = math.Ceil(count)
	}
	decimals, _ := decimalsOf(size)
	return func(steps int) string { return sc.text((from+float64(toward*steps))*size, decimals) }, true
}

// step is the input's step: of a compressor told by its motor that of its power, of the
// wall the mark of its gauge where that is a plain number in the system's unit.
func (n *nudge) step(part Typed) step {
	if hp, ok := horsepower(part); ok && n.in.Field == FieldCompressor {
		s := powerStep
		s.is = func(*calc.Request, int) float64 { return hp }
		return s
	}
	var s step
	for _, s = range steps {
		if s.field == n.in.Field && s.piece == n.in.Piece {
			break
		}
	}
	if n.in.Field == FieldWall {
		mark := s.kind[n.sys].count(float64(n.r.Mark))
		if _, plain := decimalsOf(mark); plain {
			s.size[n.sys] = mark
		}
	}
	return s
}

// decimalsOf is how many decimals a step is written with, and whether these few say it.
func decimalsOf(size float64) (decimals int, plain bool) {
	const most = 2
	for ; decimals <= most; decimals++ {
		if v := size * math.Pow10(decimals); v >= 1-same && math.Abs(v-math.Round(v)) < same {
			return decimals, true
		}
	}
	return most, false
}
