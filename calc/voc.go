package calc

import (
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// VOC is what is known of a coat's volatile organic compounds as it is sprayed. Without a basis
// of Ready it is not known.
type VOC struct {
	Ready   Stated[unit.Density] // of the ready mix, before any thinner beyond its ratio
	Thinner Stated[unit.Density] // of what it is thinned with; does not count for water
	Water   bool                 // it is thinned with water, which rules leave out
	Limit   unit.Density         // as the shop has set it; 0 where it has none
}

// Known reports whether the ready mix's is known.
func (v *VOC) Known() bool { return v.Ready.Basis != "" }

// typed reports whether nothing of it, with thinner or without, is a usual value.
func (v *VOC) typed(add float64) bool {
	return !v.Ready.rough() && (add == 0 || v.Water || !v.Thinner.rough())
}

// VOCAnswer is a mix's VOC as sprayed; 0 where it is not known.
type VOCAnswer struct {
	Sprayed unit.Density
	About   bool // it rests on usual values
	Over    bool // it is above the shop's limit
}

func (v *VOC) problems(p *problems) {
	if !v.Known() {
		return
	}
	p.within("voc", float64(v.Ready.Value), &VOCBound)
	p.within("thinner-voc", float64(v.Thinner.Value), &VOCBound)
	p.within("voc-limit", float64(v.Limit), &VOCBound)
}

// with is the VOC after thinner was added by a share of the mix's volume.
func (v *VOC) with(add float64) (a VOCAnswer, err error) {
	if !v.Known() {
		return a, nil
	}
	if v.Water {
		add = 0
	}
	if a.Sprayed, err = coat.VOCWith(v.Ready.Value, v.Thinner.Value, add); err != nil {
		return a, problemAt("voc", err)
	}
	// What is the same in lb/gal to a tenth may part by so much: 3.5 lb/gal are 419 g/L.
	const rounding = 0.005
	a.About, a.Over = !v.typed(add), v.Limit > 0 && a.Sprayed > v.Limit*(1+rounding)
	return a, nil
}

// explain gives the reasons of the VOC with so much thinner.
func (v *VOC) explain(a VOCAnswer, add float64, why *reasons) {
	if !v.Known() {
		return
	}
	why.add("voc", "voc-ready", v.Ready.Ground, FigureOf("voc", FigureVOC, v.Ready.Value))
	switch {
	case add == 0:
	case v.Water:
		why.add("voc", "voc-water", Ground{Basis: Estimate, Source: "source-voc-water"})
	default:
		why.add("voc", "voc-thinned", v.Thinner.Ground, BriefFigure("add", FigureShare, add), FigureOf("thinner", FigureVOC, v.Thinner.Value), FigureOf("voc", FigureVOC, a.Sprayed))
	}
}

// warn speaks up where the VOC is over the shop's limit: which rule holds is for the local
// air rules to say.
func (v *VOC) warn(a VOCAnswer, to *cautions) {
	if !a.Over {
		return
	}
	id := "voc-over"
	if a.About {
		id = "voc-may-be-over"
	}
	to.add(Warn, id, FigureOf("voc", FigureVOC, a.Sprayed), FigureOf("limit", FigureVOC, v.Limit))
}
