package draw

// Dial is a wall gauge: a round scale over three quarters of a circle, as gauges have it.
//
//	draw.Dial{Scale: draw.NewScale(0, 60, 7, psi), Set: draw.Mark{At: 29, Text: "set 29"}, Label: "WALL 29 psi"}
type Dial struct {
	Scale
	Set    Mark   // the needle
	Rest   Mark   // with no air moving: a short needle at the rim
	Ghost  Mark   // where the needle stood before
	Likely Band   // an arc
	Limit  Mark   // from here to the scale's end is barred
	Label  string // under the dial
}

// Rows draws the dial. It needs 20 columns and 8 rows.
func (d Dial) Rows(w, h int, g Glyphs, ink Ink) []string { return nil }
