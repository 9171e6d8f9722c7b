package words

import (
	"strconv"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/spread"
	"boothset/calc/unit"
)

// Words is the sentences of one language.
type Words struct {
	lang  string
	table *table
}

// Lang is the language's code, such as "en".
func (w *Words) Lang() string { return w.lang }

// IDs is the id of every sentence, sorted.
func (w *Words) IDs() []string {
	ids := make([]string, len(w.table.ends)-1)
	for i := range ids {
		ids[i] = w.table.id(i + 1)
	}
	return ids
}

// Needs is the names of the figures that a sentence has places for.
func (w *Words) Needs(id string) (names []string) {
	for rest, _ := w.table.get(id); rest != ""; {
		var name string
		if _, name, rest = place(rest); name != "" {
			names = append(names, name)
		}
	}
	return names
}

// place parts a sentence at its first place for a figure: the text before it, the
// figure's name and what follows. Without a place, before is the whole sentence.
func place(sentence string) (before, name, rest string) {
	before, rest, found := strings.Cut(sentence, "{")
	if !found {
		return before, "", ""
	}
	name, rest, _ = strings.Cut(rest, "}")
	return before, name, rest
}

// Has reports whether there is a sentence with an id.
func (w *Words) Has(id string) bool {
	_, ok := w.table.get(id)
	return ok
}

// Say is a sentence that needs no figures; the id itself where there is none.
func (w *Words) Say(id string) string {
	if s, ok := w.table.get(id); ok {
		return s
	}
	return id
}

// Append appends the sentence of an id with its figures printed in a system's units.
// A missing sentence is its id, a missing figure its name in braces, so that neither
// can pass unseen.
func (w *Words) Append(dst []byte, sys unit.System, id string, figures calc.Figures) []byte {
	rest, ok := w.table.get(id)
	if !ok {
		return append(dst, id...)
	}
	start, named := len(dst), strings.HasPrefix(rest, "{")
	for rest != "" {
		var before, name string
		before, name, rest = place(rest)
		dst = append(dst, before...)
		if name != "" {
			dst = w.appendNamed(dst, sys, name, figures)
		}
	}
	// A sentence that begins with a name begins with a capital all the same.
	if named && len(dst) > start && 'a' <= dst[start] && dst[start] <= 'z' {
		dst[start] -= 'a' - 'A'
	}
	return dst
}

// Text is Append as a string.
func (w *Words) Text(sys unit.System, id string, figures calc.Figures) string {
	return string(w.Append(nil, sys, id, figures))
}

func (w *Words) appendNamed(dst []byte, sys unit.System, name string, figures calc.Figures) []byte {
	for i := range figures {
		if figures[i].Name == name {
			if f := &figures[i]; f.Kind != calc.FigureSentence {
				return w.AppendFigure(dst, sys, f)
			}
			return w.Append(dst, sys, figures[i].Text, figures)
		}
	}
	dst = append(dst, '{')
	dst = append(dst, name...)
	return append(dst, '}')
}

// PressureDecimals is how many decimals a pressure is printed with where small
// differences matter: a set pressure beside the one it falls to.
func PressureDecimals(sys unit.System) int {
	if sys == unit.Metric {
		return 2
	}
	return 1
}

// SpeedDecimals is how many decimals a gun's speed is printed with.
const SpeedDecimals = 2

// FilmDecimals is how many decimals a film is printed with: a base's coat is a few
// tenths of a mil.
func FilmDecimals(sys unit.System, l unit.Length) int {
	if sys == unit.US && l < unit.MetrePerMil {
		return 2
	}
	return unit.Usual
}

// AppendFigure appends a figure's value as a person reads it in a system's units.
func (w *Words) AppendFigure(dst []byte, sys unit.System, f *calc.Figure) []byte {
	if f.Brief {
		return w.appendBrief(dst, sys, f)
	}
	switch f.Kind {
	case calc.FigureGauge:
		return sys.AppendGauge(dst, unit.Gauge(f.Value), PressureDecimals(sys))
	case calc.FigureDrop:
		return sys.AppendDrop(dst, unit.Drop(f.Value), unit.Usual)
	case calc.FigureDistance:
		return sys.AppendSmall(dst, unit.Length(f.Value), unit.Usual)
	case calc.FigureRun:
		return sys.AppendLong(dst, unit.Length(f.Value), unit.Usual)
	case calc.FigureTemp:
		return sys.AppendTemp(dst, unit.Temp(f.Value), unit.Usual)
	case calc.FigureTempDiff:
		return sys.AppendTempDiff(dst, unit.TempDiff(f.Value), unit.Usual)
	case calc.FigureFlow:
		return sys.AppendFlow(dst, unit.Flow(f.Value), unit.Usual)
	case calc.FigureShare:
		return unit.AppendPercent(dst, f.Value, unit.Usual)
	case calc.FigureRatio:
		return unit.AppendNumber(dst, f.Value)
	case calc.FigureMinutes:
		return w.appendMinutes(dst, f.Value)
	case calc.FigureVolume:
		return sys.AppendVolume(dst, unit.Volume(f.Value), unit.Usual)
	case calc.FigureLitres:
		return unit.Metric.AppendVolume(dst, unit.Litres(f.Value), unit.Usual)
	case calc.FigureFilm:
		return sys.AppendFilm(dst, unit.Length(f.Value), FilmDecimals(sys, unit.Length(f.Value)))
	case calc.FigureArea:
		return sys.AppendArea(dst, unit.Area(f.Value), unit.Usual)
	case calc.FigureSpeed:
		return sys.AppendSpeed(dst, unit.Speed(f.Value), SpeedDecimals)
	case calc.FigureFluid:
		return append(strconv.AppendFloat(dst, coat.FluidRate(f.Value).MLPerMin(), 'f', 0, 64), " mL/min"...)
	case calc.FigureCount:
		return strconv.AppendFloat(dst, f.Value, 'f', 0, 64)
	case calc.FigureMoney:
		return strconv.AppendFloat(dst, f.Value, 'f', 2, 64)
	case calc.FigureTimes:
		return append(dst, TimesText(f.Value)...)
	case calc.FigureClock:
		return w.AppendClock(dst, sys, calc.Clock(f.Value*float64(time.Second)))
	case calc.FigureCup:
		return append(dst, CupText(f.Value)...)
	case calc.FigureViscosity:
		return unit.AppendKinematic(dst, unit.Kinematic(f.Value), unit.Usual)
	case calc.FigureSentence:
		return append(dst, w.Say(f.Text)...)
	}
	return append(dst, f.Text...)
}

// Standing is a basis and its source as they stand behind a reason.
func (w *Words) Standing(s calc.Ground) string {
	basis, source := w.Basis(s.Basis), w.Source(s)
	switch {
	case source == "":
		return basis
	case strings.HasPrefix(source, basis):
		return source
	}
	return basis + ": " + source
}

// Source is where a value comes from, in words; empty where its basis says it all.
func (w *Words) Source(s calc.Ground) string {
	if s.Figures == nil {
		return w.Say(s.Source)
	}
	return w.Text(unit.US, s.Source, *s.Figures)
}

// Basis is what a value rests on, in words.
func (w *Words) Basis(b calc.Basis) string {
	switch b {
	case calc.Published:
		return w.Say("basis-published")
	case calc.CommonPractice:
		return w.Say("basis-common-practice")
	case calc.Computed:
		return w.Say("basis-computed")
	case calc.Estimate:
		return w.Say("basis-estimate")
	case calc.OwnReadings:
		return w.Say("basis-own-readings")
	case calc.Sheet:
		return w.Say("basis-sheet")
	}
	return string(b)
}

// Spread is how sure a setup is, in sentences; none where it has no spread.
func (w *Words) Spread(sys unit.System, s *spread.Spread) []string {
	if s == nil {
		return nil
	}
	f := s.Figures()
	all := []string{w.Text(sys, "spread-bounds", f)}
	if len(s.Causes) > 0 {
		id := s.Causes[0].ID
		for i := range f {
			if f[i].Name == "cause" {
				f[i].Text = w.Text(sys, "cause-"+id, nil)
			}
		}
		f = append(f, calc.Figure{Name: "measure", Text: w.Text(sys, "measure-"+id, nil)})
		all = append(all, w.Text(sys, "spread-cause", f))
	}
	return all
}
