package draw

// Ruler is the distance from the gun's cap, at 0, to the panel, at the target.
//
//	draw.Ruler{Scale: draw.NewScale(0, 8, 9, inches), Target: draw.Mark{At: 5.5, Text: "5.5 in"},
//		Keep: draw.Band{Low: 5, High: 6, Text: "keep 5 to 6"}, Gun: "cap", Panel: "panel"}
type Ruler struct {
	Scale
	Target     Mark
	Ghost      Mark // the target before
	Keep       Band // the range to keep within
	Likely     Band // the range the target likely lies within
	Gun, Panel string
}

// Rows draws the ruler. It needs 24 columns and 4 rows.
func (r Ruler) Rows(w, h int, g Glyphs, ink Ink) []string { return nil }
