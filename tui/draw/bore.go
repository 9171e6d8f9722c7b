package draw

// Opening is a share of a bore that is open, 0 to 1, with the rows told under it.
type Opening struct {
	Share float64
	Texts []string
}

// Bore is a round bore, its open share as area: as it stands, and beside it as it would
// stand otherwise. An Opening without texts is not drawn.
//
//	draw.Bore{Now: draw.Opening{Share: 0.81, Texts: []string{"81 % open", "set"}}, Else: ...}
type Bore struct {
	Now, Else    Opening
	Open, Closed string // what the two fillings mean; none is told where empty
}

// Rows draws the bores. It needs 14 columns and 6 rows.
func (b Bore) Rows(w, h int, g Glyphs, ink Ink) []string { return nil }
