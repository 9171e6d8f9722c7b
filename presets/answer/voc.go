package answer

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// voc is the row of a mix's volatile organic compounds as it is sprayed, beside the shop's
// limit; none where they are not known.
func (p *speaker) voc(v *calc.VOC, a calc.VOCAnswer) []Row {
	if !v.Known() {
		return nil
	}
	more := p.say("voc-no-limit")
	if v.Limit > 0 {
		more = p.say("voc-limit", calc.FigureOf("limit", calc.FigureVOC, v.Limit))
	}
	return []Row{{Role: Value, About: "voc", Name: p.say("label-voc"), Text: p.about(a.About, unit.VOC.Text(p.sys, float64(a.Sprayed), unit.Usual)), More: more}}
}
