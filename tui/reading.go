package tui

import (
	"strings"
	"unicode"

	"boothset/calc/unit"
	"boothset/presets"
)

// reading is how the text of a field is read.
type reading struct {
	runes string // what can be part of it, besides digits, space, point, comma and sign
	// unit is the one a bare number is taken in.
	unit func(unit.System) string
	// bare reports whether text is good and names no unit.
	bare func(text string) bool
}

const runesOfNumber = "0123456789 .,+-"

func (r *reading) takes(c rune) bool {
	return strings.ContainsRune(runesOfNumber, c) || strings.ContainsRune(r.runes, unicode.ToLower(c))
}

// differs makes a bare test of a parser: text without a unit reads as one thing in one
// system and as another in the other.
func differs[T ~float64, U any](parse func(string, U) (T, error), of func(unit.System) U) func(string) bool {
	return func(text string) bool {
		us, err1 := parse(text, of(unit.US))
		metric, err2 := parse(text, of(unit.Metric))
		return err1 == nil && err2 == nil && us != metric
	}
}

// unitOf is the unit at the end of a printed quantity.
func unitOf(printed string) string { return printed[strings.LastIndexByte(printed, ' ')+1:] }

var (
	pressures = reading{
		runes: "psigbarkmlb()",
		unit:  func(s unit.System) string { return unitOf(s.Gauge(0, unit.Usual)) },
		bare:  differs(unit.ParseGauge, unit.System.PressureUnit),
	}
	temperatures = reading{
		runes: "fc°degrsahnitlu",
		unit:  func(s unit.System) string { return unitOf(s.Temp(0, unit.Usual)) },
		bare:  differs(unit.ParseTemp, unit.System.TempUnit),
	}
	runs = reading{
		runes: "/\"'inchesfootmlrtz",
		unit:  func(s unit.System) string { return unitOf(s.Long(0, unit.Usual)) },
		bare:  differs(unit.ParseLength, unit.System.LongUnit),
	}
	bores = reading{
		runes: runs.runes,
		unit:  func(s unit.System) string { return unitOf(s.Small(0, unit.Usual)) },
		bare:  differs(unit.ParseLength, unit.System.SmallUnit),
	}
	flows = reading{
		runes: "scfmtlpinhd/",
		unit:  func(s unit.System) string { return unitOf(s.Flow(0, unit.Usual)) },
		bare:  differs(unit.ParseFlow, unit.System.FlowUnit),
	}
	volumes = reading{
		runes: "litresmcgaonqfz",
		unit:  func(s unit.System) string { return unitOf(s.Volume(1, unit.Usual)) },
		bare:  differs(unit.ParseVolume, unit.System.VolumeUnit),
	}
	times = reading{
		runes: "secondminuthr",
		unit:  func(unit.System) string { return "min" },
		bare: func(text string) bool {
			_, err := unit.ParseSeconds(text, unit.InMinutes)
			return err == nil && !strings.ContainsFunc(text, unicode.IsLetter)
		},
	}
	users = reading{
		runes: flows.runes + percents.runes,
		unit:  flows.unit,
		bare:  flows.bare,
	}
	percents = reading{
		runes: "%percntrh",
		unit:  func(unit.System) string { return "%" },
		bare: func(text string) bool {
			_, err := unit.ParsePercent(text)
			return err == nil && !strings.ContainsFunc(text, func(c rune) bool { return c == '%' || unicode.IsLetter(c) })
		},
	}
)

// readings is how the typed fields are read. A hose is a run and a bore.
var readings = map[string]*reading{
	presets.FieldTemp:     &temperatures,
	presets.FieldHumidity: &percents,
	presets.FieldPanel:    &temperatures,
	presets.FieldAltitude: &runs,
	presets.FieldSupply:   &pressures,
	presets.FieldHose:     &runs,
	presets.FieldWall:     &pressures,
	presets.FieldMark:     &pressures,

	presets.FieldCompressor:   &flows,
	presets.FieldReceiver:     &volumes,
	presets.FieldCutIn:        &pressures,
	presets.FieldCutOut:       &pressures,
	presets.FieldMain:         &runs,
	presets.FieldOther:        &users,
	presets.FieldSprayTime:    &times,
	presets.FieldReceiverTemp: &temperatures,
	presets.FieldLineTemp:     &temperatures,
}

// complete names the unit where text has left it to the system, so that a change of
// units later does not change what was meant.
func complete(field, text string, sys unit.System) string {
	switch field {
	case presets.FieldHose, presets.FieldMain:
		return pairs(text, sys, &runs, &bores)
	case presets.FieldOther:
		return pairs(text, sys, &flows, &percents)
	}
	if r := readings[field]; r != nil {
		return r.complete(text, sys)
	}
	return text
}

func (r *reading) complete(text string, sys unit.System) string {
	text = strings.TrimSpace(text)
	if !r.bare(text) {
		return text
	}
	if at := strings.IndexFunc(text, func(c rune) bool { return c == '°' || unicode.IsLetter(c) }); at >= 0 {
		text = strings.TrimSpace(text[:at]) // a degree mark alone
	}
	if r == &percents {
		return text + r.unit(sys)
	}
	return text + " " + r.unit(sys)
}

// pairs completes a list of two quantities each, parted by a comma: "25,3/8 + 6,1/4".
// The second may be left out where the first can stand alone.
func pairs(text string, sys unit.System, first, second *reading) string {
	all := strings.Split(text, "+")
	for i, p := range all {
		p = strings.TrimSpace(p)
		if at := strings.LastIndexByte(p, ','); at >= 0 {
			p = first.complete(p[:at], sys) + ", " + second.complete(p[at+1:], sys)
		} else if first == &flows {
			p = first.complete(p, sys)
		}
		all[i] = p
	}
	return strings.Join(all, " + ")
}
