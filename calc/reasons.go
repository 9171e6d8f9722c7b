package calc

import "slices"

// reasons gathers the reasons of an answer.
type reasons []Reason

// newReasons has room for as many as most answers give.
func newReasons() *reasons {
	r := make(reasons, 0, 16)
	return &r
}

func (r *reasons) add(about, id string, ground Ground, f ...Figure) {
	*r = append(*r, Reason{About: about, ID: id, Figures: f, Ground: ground})
}

// cautions gathers cautions, the gravest first.
type cautions struct {
	list         []Caution
	stops, warns int // how many of the list
}

func (c *cautions) add(l Level, id string, f ...Figure) { c.put(Caution{Level: l, ID: id, Figures: f}) }

// safety adds one that protects people; the ground is none where what it says has none.
func (c *cautions) safety(l Level, id string, g Ground, f ...Figure) {
	c.put(Caution{Level: l, ID: id, Figures: f, Safety: true, Ground: g})
}

func (c *cautions) put(x Caution) {
	at := len(c.list)
	switch x.Level {
	case Stop:
		at = c.stops
		c.stops++
	case Warn:
		at = c.stops + c.warns
		c.warns++
	}
	c.list = slices.Insert(c.list, at, x)
}

// stopped reports whether there is a stop among cautions.
func stopped(all []Caution) bool {
	return slices.ContainsFunc(all, func(c Caution) bool { return c.Level == Stop })
}
