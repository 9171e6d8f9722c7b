package command

import (
	"boothset/calc"
	"boothset/calc/coat"
	"boothset/presets/words"
)

// appendApplication appends what film and mix both start from, as it was understood.
func appendApplication(j *jsonWriter, l *calc.Application, w *words.Words) {
	j.object("input", func() {
		j.text("coat", l.CoatID)
		appendHardener(j, l.Hardener)
		if l.GunID != "" {
			j.text("gun", l.GunID)
		} else {
			j.null("gun")
		}
		if h := &l.Held; h.Known {
			j.gauge("pressure", h.Pressure)
			j.near("distance", h.Distance)
		} else {
			j.null("pressure")
			j.null("distance")
		}
		j.film("before", l.Before)
	})
	j.object("solids", func() {
		j.number("value", l.Solids.Value)
		j.ground(w, l.Solids.Ground)
	})
	j.object("film", func() {
		j.film("dry", l.Dry.Value)
		j.ground(w, l.Dry.Ground)
	})
	f := &l.Wants
	if !f.Known {
		j.null("limits")
		return
	}
	j.object("limits", func() {
		j.film("low", f.Low)
		j.film("high", f.High)
		if f.Most > 0 {
			j.film("most", f.Most)
		} else {
			j.null("most")
		}
		j.ground(w, f.Ground)
	})
}

func appendTransfer(j *jsonWriter, t coat.Transfer) {
	j.object("transfer", func() {
		j.number("value", t.Value)
		j.number("low", t.Low)
		j.number("high", t.High)
	})
}

// appendRunning appends the dry film that the coats come to, against the limits.
func appendRunning(j *jsonWriter, r *coat.Running) {
	j.object("total", func() {
		j.film("dry", r.Total)
		j.film("with_before", r.Whole)
		j.text("standing", [...]string{coat.Under: "under", coat.Inside: "inside", coat.Over: "over"}[r.State])
	})
}
