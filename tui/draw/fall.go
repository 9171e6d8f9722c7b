package draw

// Part is one that air passes, with the pressure before and behind it.
type Part struct {
	Name    string
	In, Out float64
	Worst   bool   // it is the one told by Fall.Worst
	Note    string // shown where there is room
}

// Fall is the pressure as it falls part by part, in the order the air passes them.
//
//	draw.Fall{Parts: parts, Text: psi, Worst: "costs most", Others: "others", End: "at the cap"}
type Fall struct {
	Parts  []Part
	Text   func(float64) string // a pressure as a short figure
	Worst  string               // told of the worst part
	Others string               // names the row of those that have no row of their own
	End    string               // names the row of what is left; none where empty
}

// Rows draws the fall. It needs 30 columns and 3 rows.
func (f Fall) Rows(w, h int, g Glyphs, ink Ink) []string { return nil }
