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

func (w *reasons) add(about, id string, ground Ground, f ...Figure) {
	w.list = append(w.list, Reason{About: about, ID: id, Figures: w.room.keep(f), Ground: ground})
}

// keep appends figures to those that are there, and gives them as they are there.
func (room *Figures) keep(f Figures) Figures {
	start := len(*room)
	*room = append(*room, f...)
	return (*room)[start:len(*room):len(*room)]
}

// cautions gathers cautions, the gravest first, with one room for the figures of all.
type cautions struct {
	list         []Caution
	stops, warns int // how many of the list
	room         Figures
}

func (c *cautions) add(l Level, id string, f ...Figure) {
	at := len(c.list)
	switch l {
	case Stop:
		at = c.stops
		c.stops++
	case Warn:
		at = c.stops + c.warns
		c.warns++
	}
	c.list = slices.Insert(c.list, at, Caution{l, id, c.room.keep(f)})
}

// stopped reports whether there is a stop among cautions.
func stopped(all []Caution) bool {
	return slices.ContainsFunc(all, func(c Caution) bool { return c.Level == Stop })
}
