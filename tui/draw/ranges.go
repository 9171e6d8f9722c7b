package draw

// Answer is a value with the range it likely lies within, on a scale of its own.
type Answer struct {
	Name              string
	Scale             Scale
	Low, High, At     float64
	LowText, HighText string // the ends in figures
	Text              string // the value in figures
}

// Cause is a share, 0 to 1, of what makes an answer unsure.
type Cause struct {
	Name  string
	Share float64
}

// Ranges is how sure each answer is, and under it what causes that.
//
//	draw.Ranges{Answers: answers, Title: "what makes it unsure", Causes: causes}
type Ranges struct {
	Answers []Answer
	Title   string // over the causes
	Causes  []Cause
	Others  string // names the row of the causes that have none of their own
}

// Rows draws the ranges. It needs 30 columns and 1 row an answer.
func (r Ranges) Rows(w, h int, g Glyphs, ink Ink) []string { return nil }
