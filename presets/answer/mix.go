package answer

import (
	"math"
	"slices"
	"strconv"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Mix is how much of a coat a job takes.
type Mix struct {
	Request *calc.MixRequest
	Found   *calc.MixAnswer
}

// Stopped reports whether the job cannot be done as asked.
func (m *Mix) Stopped() bool { return m.Found.Stopped() }

// Reasons is why the mix is what it is.
func (m *Mix) Reasons() []calc.Reason { return m.Found.Reasons }

// Cautions is what is to be known before spraying.
func (m *Mix) Cautions() []calc.Caution { return m.Found.Cautions }

// Rows is all that is said of it.
func (m *Mix) Rows(w *words.Words, sys unit.System) []Row {
	r, a := m.Request, m.Found
	o := &speaker{words: w, sys: sys}
	o.applied("mix-heading-gun", "mix-heading", &r.Application, calc.TextFigure("area", o.about(a.AreaHigh > a.AreaLow, sys.Area(a.Area, unit.Usual))),
		calc.FigureOf("dry", calc.FigureFilm, r.Dry.Value), calc.TextFigure("coats", o.coats(a.Coats.Value)))
	o.block(slices.Concat(m.pour(o), m.spent(o))...)
	o.cautions(a.Cautions)
	const wrong = "wrong" // what reasons of wrong settings are about
	costs := []Row{{Role: Title, ID: "mix-wrong", Text: o.say("mix-wrong")}}
	var why []calc.Reason
	for _, x := range a.Reasons {
		if x.About != wrong {
			why = append(why, x)
			continue
		}
		costs = append(costs, Row{Role: Remark, About: wrong, ID: x.ID, Text: o.say(x.ID, x.Figures...)})
	}
	o.block(costs...)
	o.why(why)
	return o.rows
}

// pour is the rows of the mix and its parts, with the mark that each is poured up to and what
// the scale then shows, of each batch where the pot life does not cover it all, and of how
// often the cup is filled.
func (m *Mix) pour(o *speaker) []Row {
	r, a := m.Request, m.Found
	mix := poured(o.sys, a.Need.Volume)
	between := ""
	if a.High > a.Low*(1+1e-9) {
		between = o.span(o.sys.Volume(a.Low, unit.Usual), o.sys.Volume(a.High, unit.Usual))
	}
	all := []Row{{Role: Value, About: "mix", Name: o.say("label-mix"), Text: o.about(a.About, o.sys.Volume(mix, unit.Usual)), More: between}}
	if a.Batches > 1 {
		id := "mix-batches"
		if a.BatchCoats == 0 {
			id = "mix-batches-part"
		}
		all = append(all, Row{Role: Value, About: "batch", Name: o.say("label-batch"), Text: o.about(a.About, o.sys.Volume(poured(o.sys, a.Batch), unit.Usual)),
			More: o.say(id, calc.CountFigure("batches", a.Batches), calc.CountFigure("coats", a.BatchCoats))})
	}
	all = append(all, m.parts(o, mix)...)
	if r.FromPot {
		return all
	}
	return append(all, Row{Role: Value, About: "fillings", Name: o.say("label-fillings"), Text: strconv.Itoa(a.Need.Fillings), More: o.say("mix-of-cup", calc.FigureOf("cup", calc.FigureVolume, r.Cup.Value))})
}

// Pour is a part of a mix, and the mark that it is poured up to.
type Pour struct{ Volume, UpTo unit.Volume }

// Pours is the parts of the mix in the order of its ratio, in all as much as a person measures
// in a system's units; the mix itself where it has no ratio.
func (m *Mix) Pours(sys unit.System) (all []Pour) {
	parts := m.Request.Ratio.Value.Parts
	if len(parts) == 0 {
		parts = []float64{1}
	}
	sum := 0.0
	for _, part := range parts {
		sum += part
	}
	mix, upTo := poured(sys, m.Found.Need.Volume), unit.Volume(0)
	for _, part := range parts {
		share := mix * unit.Volume(part/sum)
		upTo += share
		all = append(all, Pour{share, upTo})
	}
	return all
}

// parts is the rows of the parts of a mix of so much, by volume and on a scale.
func (m *Mix) parts(o *speaker, mix unit.Volume) (all []Row) {
	r, a := m.Request, m.Found
	name, mark := o.say("label-pour"), r.Ratio.Value.String()
	for i, p := range m.Pours(o.sys)[:len(r.Ratio.Value.Parts)] {
		if i > 0 {
			name, mark = "", o.say("mix-up-to", calc.FigureOf("mark", calc.FigureVolume, p.UpTo))
		}
		all = append(all, Row{Role: Value, About: "pour", Name: name, Text: o.sys.Volume(p.Volume, unit.Usual), More: mark})
	}
	name = o.say("label-weigh")
	onScale := unit.Mass(0)
	for i, w := range a.Weights {
		w *= unit.Mass(mix / a.Need.Volume)
		onScale += w
		more := ""
		if i > 0 {
			more = o.say("mix-scale", calc.FigureOf("mark", calc.FigureWeight, onScale))
		}
		all = append(all, Row{Role: Value, About: "weigh", Name: name, Text: o.about(r.Densities.Basis == calc.Estimate, unit.Weight.Text(o.sys, float64(w), 0)), More: more})
		name = ""
	}
	return all
}

// spent is the rows of what does not end on the panel and of what the mix costs.
func (m *Mix) spent(o *speaker) []Row {
	a, lost := m.Found, "mix-waste"
	if m.Request.FromPot {
		lost = "mix-waste-pot"
	}
	all := []Row{{Role: Value, About: "waste", Name: o.say("label-waste"), Text: o.about(true, o.sys.Volume(a.Need.Waste(), unit.Usual)),
		More: o.say(lost, calc.FigureOf("overspray", calc.FigureVolume, a.Need.Overspray+a.Need.Lead), calc.FigureOf("loss", calc.FigureVolume, a.Need.Loss))}}
	all = append(all, o.voc(&m.Request.VOC, a.VOC)...)
	if !a.Priced {
		return all
	}
	return append(all, Row{Role: Value, About: "cost", Name: o.say("label-cost"), Text: o.about(a.About, strconv.FormatFloat(a.Cost, 'f', 2, 64)),
		More: o.say("mix-money-waste", calc.FigureOf("waste", calc.FigureMoney, a.WasteCost))})
}

// coats is how many coats.
func (p *speaker) coats(n int) string {
	id := "mix-coats"
	if n == 1 {
		id = "mix-coat"
	}
	return p.say(id, calc.CountFigure("coats", n))
}

// poured is a volume rounded up to what a person measures: 10 mL, 50 mL from a litre and
// half a litre from ten on; half a fluid ounce, a whole one from ten on, and a tenth of a
// gallon from one on.
func poured(sys unit.System, v unit.Volume) unit.Volume {
	step := unit.Volume(10e-6)
	switch {
	case sys == unit.US && v.USGallons() > 1:
		step = unit.USGallons(0.1)
	case sys == unit.US && v.USGallons() > 10/unit.OuncePerUSGal:
		step = unit.USGallons(1 / unit.OuncePerUSGal)
	case sys == unit.US:
		step = unit.USGallons(0.5 / unit.OuncePerUSGal)
	case v.Litres() > 10:
		step = unit.Litres(0.5)
	case v.Litres() > 1:
		step = unit.Litres(0.05)
	}
	const rounding = 1e-9
	return unit.Volume(math.Ceil(float64(v/step)-rounding)) * step
}
