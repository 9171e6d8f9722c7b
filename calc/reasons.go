package calc

import "slices"

// reasons gathers the reasons of an answer, with one room for the figures of all.
type reasons struct {
	list []Reason
	room Figures
}

func newReasons() *reasons {
	return &reasons{list: make([]Reason, 0, 16), room: make(Figures, 0, 64)}
}

func (w *reasons) add(about, id string, st Standing, f ...Figure) {
	start := len(w.room)
	w.room = append(w.room, f...)
	w.list = append(w.list, Reason{About: about, ID: id, Figures: w.room[start:len(w.room):len(w.room)], Standing: st})
}

// cautions gathers cautions by how much they weigh.
type cautions struct{ stops, warns, notes []Caution }

func (c *cautions) add(l Level, id string, f ...Figure) {
	to := &c.notes
	switch l {
	case Stop:
		to = &c.stops
	case Warn:
		to = &c.warns
	}
	*to = append(*to, Caution{l, id, f})
}

// list is the gravest first.
func (c *cautions) list() []Caution { return slices.Concat(c.stops, c.warns, c.notes) }

// stopped reports whether there is a stop among cautions.
func stopped(all []Caution) bool {
	return slices.ContainsFunc(all, func(c Caution) bool { return c.Level == Stop })
}
