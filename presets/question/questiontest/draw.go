package questiontest

import (
	"fmt"
	"slices"

	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/question"

	"pgregory.net/rapid"
)

// Drawer draws what is typed.
type Drawer struct{ T *rapid.T }

// Number is a number between two in a format.
func (d Drawer) Number(label, format string, low, high float64) string {
	return fmt.Sprintf(format, rapid.Float64Range(low, high).Draw(d.T, label))
}

// Maybe is Number, or nothing.
func (d Drawer) Maybe(label, format string, low, high float64) string {
	if rapid.Bool().Draw(d.T, "with-"+label) {
		return d.Number(label, format, low, high)
	}
	return ""
}

// Choice is one of what a field is chosen from.
func (d Drawer) Choice(r *question.Reader, f *question.Field) string {
	return rapid.SampledFrom(IDs(r.Choices(f))).Draw(d.T, f.Name)
}

// Plan draws answers to the plan: anything that the catalogue and the limits of a request
// allow, without the air upstream of the regulator.
func (d Drawer) Plan(r *question.Reader) question.Texts {
	texts := Texts(
		"temp", d.Number("temp", "%.2fC", -10, 60), "humidity", d.Number("humidity", "%.2f", 1, 100),
		"panel", d.Maybe("panel", "%.2fC", -10, 60), "altitude", d.Maybe("altitude", "%.1fm", -430, 5000),
		"supply", d.Number("supply", "%.3fpsi", 1, 300),
		"wall", d.Maybe("wall", "%.3fpsi", 1, 300), "mark", d.Maybe("mark", "%.3fpsi", 0.01, 20),
	)
	for _, row := range question.Plan.Fields {
		if row.Listed() && row.Field != question.Stage {
			texts[row.Name] = []string{d.Choice(r, row.Field)}
		}
	}
	texts["stage"] = []string{rapid.SampledFrom(r.StagesOf(texts["coat"][0])).Draw(d.T, question.Stage.Name)}
	for i := range rapid.IntRange(1, 3).Draw(d.T, "hoses") {
		label := fmt.Sprintf("hose-%d", i+1)
		texts["hose"] = append(texts["hose"], d.Number(label+"-ft", "%.3fft", 0.5, 200)+d.Number(label+"-mm", ",%.3fmm", 3, 20))
	}
	return texts
}

// AnyLine is Plan, every second time on a line of any parts in any order; with the air upstream
// of the regulator where supplied.
func (d Drawer) AnyLine(r *question.Reader, supplied bool) question.Texts {
	texts := d.Plan(r)
	if supplied {
		d.Supply(texts)
	}
	if rapid.Bool().Draw(d.T, "any-line") {
		d.Line(r, texts)
	}
	return texts
}

// Line puts a line of any parts in any order over answers to the plan, in place of the usual
// one.
func (d Drawer) Line(r *question.Reader, texts question.Texts) {
	for _, f := range question.LineFields() {
		delete(texts, f.Name)
	}
	regulators := 0
	for i := range rapid.IntRange(1, 9).Draw(d.T, "parts") {
		kind := rapid.SampledFrom(question.PartKinds()).Draw(d.T, "kind")
		if kind == catalogue.KindRegulator {
			if regulators++; regulators > calc.MostRegulators {
				continue
			}
		}
		entry := ""
		if f := question.PartField(kind); f.Listed() {
			entry = d.Choice(r, f)
		} else {
			label := fmt.Sprintf("part-%d", i+1)
			entry = d.Number(label+"-ft", "%.3fft", 0.5, 200) + d.Number(label+"-mm", ",%.3fmm", 3, 20)
		}
		texts["line"] = append(texts["line"], kind+"="+entry)
	}
}

// Supply puts the air upstream of the regulator over answers to the plan, on a line that a
// shop could have.
func (d Drawer) Supply(texts question.Texts) {
	set := func(field, typed string) { texts[field] = []string{typed} }
	set("hose", d.Number("hose-ft", "%.1fft", 1, 300)+d.Number("hose-mm", ",%.2fmm", 3, 15))
	set("compressor", d.Number("compressor", "%.2fcfm", 1, 200))
	set("receiver", d.Number("receiver", "%.1fL", 10, 3000))
	cutIn := rapid.Float64Range(40, 200).Draw(d.T, "cut-in")
	set("cut-in", fmt.Sprintf("%.2fpsi", cutIn))
	set("supply", d.Number("supply", "%.2fpsi", 2, cutIn+5)) // no receiver gives more than its cut-out
	set("cut-out", d.Maybe("cut-out", "%.2fpsi", cutIn+5, cutIn+100))
	if rapid.Bool().Draw(d.T, "with-main") {
		set("main", d.Number("main-ft", "%.1fft", 10, 500)+d.Number("main-mm", ",%.1fmm", 10, 50))
	}
	if rapid.Bool().Draw(d.T, "with-other") {
		second := ",mask"
		if rapid.Bool().Draw(d.T, "no-mask") {
			second = d.Number("duty", ",%.0f%%", 0, 100)
		}
		set("other", d.Number("other", "%.1fcfm", 0, 50)+second)
	}
	set("spray-time", d.Maybe("spray-time", "%.2fmin", 0.1, 60))
}

// Day draws answers to the question about the day.
func (d Drawer) Day(r *question.Reader) question.Texts {
	texts := Texts(
		"coat", d.Choice(r, question.Coat),
		"temp", d.Number("temp", "%.2fC", -10, 60), "humidity", d.Number("humidity", "%.2f", 1, 100),
		"panel", d.Maybe("panel", "%.2fC", -10, 60), "paint", d.Maybe("paint", "%.2fC", -10, 60), "altitude", d.Maybe("altitude", "%.1fm", -430, 5000),
		"panels", fmt.Sprint(rapid.IntRange(1, 9).Draw(d.T, "panels")), "pot-life", d.Maybe("pot-life", "%.2fh", .02, 168),
	)
	if !slices.Contains(texts["pot-life"], "") && rapid.Bool().Draw(d.T, "with-start") {
		texts["started"] = []string{fmt.Sprintf("%d:%02d", rapid.IntRange(0, 23).Draw(d.T, "h"), rapid.IntRange(0, 59).Draw(d.T, "min"))}
	}
	return texts
}
