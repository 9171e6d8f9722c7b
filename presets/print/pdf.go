package print

import (
	"bytes"
	"fmt"
	"strings"

	"boothset/presets/card"
	"boothset/presets/words"

	"codeberg.org/go-pdf/fpdf"
)

// Sizes of type, in points: the largest that lets the page hold all is taken.
const (
	largestType  = 10.5
	smallestType = 5.5
	typeStep     = 0.25

	perPoint = 25.4 / 72 // mm
	leading  = 1.2
	large    = 1.5 // times the type, of the verdict
	setting  = 1.35
	between  = 0.5 // lines between blocks
	gap      = 2.0 // mm between columns
)

// PDF is a page as a PDF of one page. It is not compressed, so that its text can be found in it.
func (p *Page) PDF() ([]byte, error) {
	s := p.sheet(p.size())
	var b bytes.Buffer
	err := s.Output(&b)
	return b.Bytes(), err
}

// size is the size of type that lets all stand on one page.
func (p *Page) size() float64 {
	size := largestType
	for size > smallestType && p.sheet(size).y > p.Paper.Height-margin {
		size -= typeStep
	}
	return size
}

// sheet is a PDF that is being written on, from the top down.
type sheet struct {
	*fpdf.Fpdf
	latin  func(string) string
	points float64 // points
	y      float64 // where the next line begins
	wide   float64
}

// sheet writes a page with a size of type.
func (p *Page) sheet(size float64) *sheet {
	s := &sheet{Fpdf: fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: p.Paper.Width, Ht: p.Paper.Height}}), points: size, y: margin, wide: p.Paper.Width - 2*margin}
	s.latin = s.UnicodeTranslatorFromDescriptor("")
	s.SetCompression(false)
	s.SetCatalogSort(true)
	s.SetCreationDate(p.Printed)
	s.SetModificationDate(p.Printed)
	s.SetTitle(p.plain(p.Title), true)
	s.SetLang(p.Words.Lang())
	s.SetAutoPageBreak(false, 0)
	s.AddPage()
	for _, b := range p.blocks() {
		switch b.Kind {
		case tableKind:
			s.table(b.Items)
		case textKind:
			for i := range b.Items {
				s.text(&b.Items[i])
			}
		default:
			s.values(b.Items, b.Kind == settingKind)
		}
		if len(b.Pictures) > 0 {
			s.pictures(b.Pictures)
		}
		s.y += between * s.line(1)
	}
	s.y -= between * s.line(1)
	return s
}

// line is how high a line is, its type so many times the usual.
func (s *sheet) line(times float64) float64 { return s.points * times * leading * perPoint }

// font chooses the type.
func (s *sheet) font(times float64, strong bool) {
	style := ""
	if strong {
		style = "B"
	}
	s.SetFont("Helvetica", style, s.points*times)
}

// coded is a text in the font's code page. A character that it does not have stands by its
// number.
func (s *sheet) coded(t string) string {
	var b strings.Builder
	for _, c := range t {
		one := s.latin(string(c))
		if one == "." && c != '.' {
			one = fmt.Sprintf(`\u%04x`, c)
		}
		b.WriteString(one)
	}
	return b.String()
}

// rows is a text wrapped to a width in the type that is chosen.
func (s *sheet) rows(t string, wide float64) (rows []string) {
	row := ""
	for word := range strings.SplitSeq(words.Bound(t), " ") {
		word = s.coded(strings.ReplaceAll(word, words.NoBreak, " "))
		longer := row + " " + word
		if row == "" {
			longer = word
		}
		if row != "" && s.GetStringWidth(longer) > wide {
			rows, longer = append(rows, row), word
		}
		row = longer
	}
	return append(rows, row)
}

// put writes rows under each other and gives how high they are.
func (s *sheet) put(rows []string, x, y, times float64) float64 {
	for i, row := range rows {
		s.Text(x, y+(float64(i)+0.8)*s.line(times), row)
	}
	return float64(len(rows)) * s.line(times)
}

// text writes a text behind its mark.
func (s *sheet) text(it *item) {
	times := 1.0
	if it.Large {
		times = large
	}
	s.font(times, it.Strong)
	x := float64(margin)
	if it.Mark != "" {
		mark := s.coded(it.Mark)
		s.put([]string{mark}, x, s.y, times)
		x += s.GetStringWidth(mark + " ")
	}
	s.y += s.put(s.rows(it.Text, margin+s.wide-x), x, s.y, times)
}

// values writes names, values and what belongs to them in columns.
func (s *sheet) values(items []item, settings bool) {
	times := 1.0
	if settings {
		times = setting
	}
	names, texts := 0.0, 0.0
	for i := range items {
		s.font(times, true)
		names = max(names, s.GetStringWidth(s.coded(items[i].Name)))
		if items[i].More != "" {
			s.font(times, settings)
			texts = max(texts, s.GetStringWidth(s.coded(items[i].Text)))
		}
	}
	x := margin + names + gap
	for i := range items {
		it := &items[i]
		s.font(times, true)
		s.put([]string{s.coded(it.Name)}, margin, s.y, times)
		s.font(times, settings)
		if it.More == "" {
			s.y += s.put(s.rows(it.Text, margin+s.wide-x), x, s.y, times)
			continue
		}
		s.put([]string{s.coded(it.Text)}, x, s.y, times)
		s.font(1, false)
		at := x + texts + gap
		down := 0.8 * (s.line(times) - s.line(1)) // on the same foot
		s.y += max(s.line(times), down+s.put(s.rows(it.More, margin+s.wide-at), at, s.y+down, 1))
	}
}

// table writes rows in columns as wide as what is in them, all but the first to the right.
func (s *sheet) table(items []item) {
	var widths []float64
	s.font(1, true)
	for i := range items {
		for n, c := range items[i].Cells {
			if n == len(widths) {
				widths = append(widths, 0)
			}
			widths[n] = max(widths[n], s.GetStringWidth(s.coded(c)))
		}
	}
	for i := range items {
		s.font(1, items[i].Strong)
		right := margin + s.wide
		lefts := make([]float64, len(widths))
		for n := len(widths) - 1; n > 0; n-- {
			lefts[n] = right - s.GetStringWidth(s.coded(items[i].Cells[n]))
			right -= widths[n] + gap
		}
		lefts[0] = margin
		for n, c := range items[i].Cells {
			s.put([]string{s.coded(c)}, lefts[n], s.y, 1)
		}
		s.y += s.line(1)
		s.SetLineWidth(0.1)
		s.SetDrawColor(160, 160, 160)
		s.Line(margin, s.y, margin+s.wide, s.y)
	}
}

// pictures draws pictures beside each other.
func (s *sheet) pictures(all []card.Picture) {
	s.y += between * s.line(1)
	x, high := float64(margin), 0.0
	for i := range all {
		p := &all[i]
		for j := range p.Shapes {
			s.shape(&p.Shapes[j], x, s.y)
		}
		x += p.Width + gap
		high = max(high, p.Height)
	}
	s.y += high
}

func (s *sheet) shape(f *card.Shape, x, y float64) {
	grey := int(f.Grey * 255)
	s.SetDrawColor(grey, grey, grey)
	s.SetFillColor(grey, grey, grey)
	at := make([]fpdf.PointType, len(f.Points))
	for i, p := range f.Points {
		at[i] = fpdf.PointType{X: x + p[0], Y: y + p[1]}
	}
	switch {
	case f.Text != "":
		s.SetFont("Helvetica", "", f.Size/perPoint)
		t := s.coded(f.Text)
		left := at[0].X - [...]float64{card.Start: 0, card.Middle: 0.5, card.End: 1}[f.Anchor]*s.GetStringWidth(t)
		s.Text(left, at[0].Y, t)
	case f.Fill:
		s.Polygon(at, "F")
	default:
		s.SetLineWidth(f.Stroke)
		s.MoveTo(at[0].X, at[0].Y)
		for _, p := range at[1:] {
			s.LineTo(p.X, p.Y)
		}
		s.DrawPath("D")
	}
}
