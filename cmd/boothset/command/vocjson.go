package command

import (
	"boothset/calc"
	"boothset/presets/words"
)

// appendVOC appends what the mix has of volatile organic compounds as it is sprayed, null where
// that is not known.
func appendVOC(j *jsonWriter, v *calc.VOC, a calc.VOCAnswer, w *words.Words) {
	if !v.Known() {
		j.null("voc")
		return
	}
	j.object("voc", func() {
		j.object("ready", func() {
			j.voc("value", v.Ready.Value)
			j.ground(w, v.Ready.Ground)
		})
		if v.Water {
			j.null("thinner")
		} else {
			j.object("thinner", func() {
				j.voc("value", v.Thinner.Value)
				j.ground(w, v.Thinner.Ground)
			})
		}
		j.voc("sprayed", a.Sprayed)
		j.bool("about", a.About)
		if v.Limit > 0 {
			j.voc("limit", v.Limit)
			j.bool("over", a.Over)
		} else {
			j.null("limit")
			j.null("over")
		}
	})
}
