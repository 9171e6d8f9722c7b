package tui

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// said is what an invented question says, in the language of its catalogue.
var said = map[string]map[string]string{
	"en": {
		"title": "how long the panels take", "panels": "`number` of panels; with --distance the nearest", "each": "minutes a panel takes",
		"gap": "`width` of the gap between them, in inches or mm", "note": "anything", "want-panels": "give a whole number, such as 2",
		"want-gap": "type a width, such as 2in", "panels-at": "%s on %d panels at %s and %s, %s between them.", "two": "between two of them",
		"stop": "More panels than there is room for in an invented booth, which holds five and not one more.",
		"warn": "The second row of a warning hangs under its first so that a reader sees where it begins.",
		"why":  "Reason %d is said in a row that is nearly as wide as a printed one can be.",
	},
	"es": {
		"title": "cuánto tardan los paneles", "panels": "`cantidad` de paneles; con --distance el más cercano", "each": "minutos que tarda un panel",
		"gap": "`ancho` que hay entre ellos, en pulgadas o mm", "note": "lo que sea", "want-panels": "dé un número entero, como 2",
		"want-gap": "dé un ancho, como 2in", "panels-at": "%s en %d paneles a %s y %s, %s entre ellos.", "two": "entre dos de ellos",
		"stop": "Más paneles de los que caben en una cabina inventada, que admite cinco y ni uno más.",
		"warn": "El segundo renglón de un aviso cuelga del primero para que se vea dónde empieza.",
		"why":  "La razón %d se dice en un renglón casi tan ancho como puede serlo uno impreso.",
	},
}

// invented is a question of no shop: how long the panels take, each so many minutes and
// more where it is warm.
func invented(c *presets.Catalogue) Question {
	say := said[c.Words().Lang()]
	return Question{
		Name: "wait", Title: say["title"],
		Fields: []presets.Field{
			{Name: presets.FieldCoat, Usage: "usage-coat"},
			{Name: presets.FieldTemp, Usage: "usage-temp"},
			{Name: presets.FieldPressure, Usage: "usage-pressure"},
			{Name: "panels", Usage: say["panels"], List: true},
			{Name: "each", Usage: say["each"]},
			{Name: "gap", Usage: say["gap"]},
			{Name: "note-1", Usage: say["note"]}, {Name: "note-2", Usage: say["note"]},
		},
		Ask: func(s presets.Sheet, read, show unit.System) (text func(width int) string, stopped bool, err error) {
			if f := c.Fault(presets.Answers{Temp: s[presets.FieldTemp]}, presets.FieldTemp, read); f != nil {
				return nil, false, f
			}
			air, err := unit.ParseTemp(string(s[presets.FieldTemp]), read.TempUnit())
			if err != nil {
				return nil, false, err
			}
			n := 0
			for _, p := range strings.Split(string(s["panels"]), "+") {
				k, err := strconv.Atoi(strings.TrimSpace(p))
				if err != nil {
					return nil, false, &presets.FieldError{Field: "panels", Given: string(s["panels"]), Want: say["want-panels"]}
				}
				n += k
			}
			gap := unit.Length(0)
			if t := s["gap"]; t != "" {
				if gap, err = unit.ParseLength(string(t), read.SmallUnit()); err != nil {
					return nil, false, &presets.FieldError{Field: "gap", Given: string(t), Want: say["want-gap"]}
				}
			}
			text = func(w int) string {
				rows := wrap(fmt.Sprintf(say["panels-at"], s[presets.FieldCoat], n, show.Temp(air, unit.Usual), s[presets.FieldPressure], show.Small(gap, unit.Usual)), w)
				rows = append(rows, "")
				rows = append(append(rows, hang(fmt.Sprintf("  %-12s %-9s ", "WAIT", fmt.Sprintf("%d min", 10*n)), say["two"], w)...), "")
				if n > 5 {
					rows = append(rows, hang("STOP ", say["stop"], w)...)
				}
				rows = append(rows, hang("! ", say["warn"], w)...)
				for i := range 20 {
					rows = append(rows, hang("- ", fmt.Sprintf(say["why"], i+1), w)...)
				}
				return strings.Join(rows, "\n") + "\n"
			}
			return text, n > 5, nil
		},
	}
}

// toForm is the keys to the page of the invented question.
var toForm = then(toAnswer, "7")

func formOf(r *root) *form { return r.page().(*form) }

// boxAt is the name of the field that is typed in, empty on the answer.
func boxAt(r *root) string {
	if f := formOf(r); !f.onAnswer() {
		return f.boxes[f.at].Name
	}
	return ""
}

func TestAFormOpensAtTheFieldInTheWayAndSharesWhatWasAnswered(t *testing.T) {
	r := open80x24(t)
	press(r, toForm...)
	require.Equal(t, "wait", where(r))
	require.Equal(t, "panels", boxAt(r))
	require.Contains(t, r.View(), "! panels: give a whole number")
	require.Contains(t, r.View(), "75F  as answered")
	require.Contains(t, r.View(), "26.0 psi  as answered", "the gun's pressure is the answer's")
	press(r, "2", "enter")
	require.Equal(t, "each", boxAt(r))
	require.Contains(t, r.View(), "clear on 2 panels at 75 F and 26.0 psi")
}

func TestOvertypingAFormLeavesTheAnswerAlone(t *testing.T) {
	r := open80x24(t)
	press(r, toForm...)
	before := r.result()
	press(r, "2", "enter", "up", "up", "up", "90", "enter")
	require.Contains(t, r.View(), "at 90 F")
	require.Equal(t, before, r.result())
	press(r, "up", "ctrl+u")
	require.Contains(t, r.View(), "at 75 F", "cleared, what was answered counts again")
}

func TestAFaultyFieldOfAFormKeepsTheCursorAndNothingIsLost(t *testing.T) {
	r := open80x24(t)
	press(r, toForm...)
	press(r, "two", "enter")
	require.Equal(t, "panels", boxAt(r))
	require.Contains(t, r.View(), "! panels \"two\": give a whole number")
	press(r, "pgdown")
	require.Equal(t, "panels", boxAt(r), "no answer to go to")
	press(r, "up")
	require.Equal(t, presets.FieldPressure, boxAt(r), "back is always allowed")
	press(r, "esc")
	require.Equal(t, "bench", where(r))
	press(r, "7")
	require.Equal(t, "panels", boxAt(r))
	require.Contains(t, r.View(), "two")
	press(r, "ctrl+u", "3", "enter", "esc", "esc", "enter", "7")
	require.Equal(t, "", boxAt(r), "nothing in the way of the answer")
	require.Contains(t, r.View(), "clear on 3 panels")
}

func TestBehindTheLastFieldLiesTheAnswerOrWhatIsInItsWay(t *testing.T) {
	r := open80x24(t)
	press(r, toForm...)
	press(r, "enter", "enter", "enter", "enter")
	require.Equal(t, "note-2", boxAt(r), "an empty field holds nobody up")
	press(r, "enter")
	require.Equal(t, "panels", boxAt(r))
	press(r, "1", "enter", "enter", "enter", "enter", "enter")
	require.Equal(t, "", boxAt(r))
	require.Contains(t, r.View(), "panels 1")
	press(r, "enter")
	require.Equal(t, presets.FieldCoat, boxAt(r))
	press(r, "pgdown")
	require.Equal(t, "", boxAt(r))
}

// How wide any other character is terminals do not agree on.
func TestAFieldOfWordsTakesCharactersOfOneColumnOnly(t *testing.T) {
	r := open80x24(t)
	press(r, toForm...)
	press(r, "2é、\u0301😀x")
	require.Equal(t, "2éx", formOf(r).boxes[formOf(r).at].typed.String())
}

func TestAFormsListIsChosenFrom(t *testing.T) {
	r := open80x24(t)
	press(r, toForm...)
	press(r, "2", "enter", "up", "up", "up", "up")
	require.Equal(t, presets.FieldCoat, boxAt(r))
	press(r, "left")
	f := formOf(r)
	require.NotEmpty(t, f.boxes[0].own())
	require.NotEqual(t, "clear", f.boxes[0].own())
	require.Contains(t, f.answer.text(80), f.boxes[0].own()+" on 2 panels", "at once")
	press(r, "ctrl+u")
	require.Contains(t, f.answer.text(80), "clear on 2 panels")
}

func TestAFormsBareNumbersKeepTheUnitsTheyWereTypedIn(t *testing.T) {
	r := open80x24(t)
	press(r, toForm...)
	press(r, "2", "enter", "enter", "2", "enter", "esc", "u", "7")
	require.Contains(t, r.View(), "51 mm between them", "2 in, shown in the other units")
	require.Contains(t, r.View(), "still read in the units they were typed in")
	press(r, "u")
	require.Contains(t, r.View(), "2.0 in between them")
	require.Equal(t, unit.US, r.result().System)
}

func TestAFormThatCannotBeDoneSaysSo(t *testing.T) {
	r := open80x24(t)
	press(r, toForm...)
	press(r, "4+5", "enter", "pgdown")
	require.Contains(t, r.View(), r.s.say("form-stopped"))
	require.Contains(t, r.View(), "STOP More panels")
}

func TestEveryRowOfAFormsAnswerCanBeReachedAtAnyWidth(t *testing.T) {
	t.Parallel()
	for _, l := range []size{{40, 12}, {60, 20}, {80, 24}, {120, 40}} {
		r := start(t, look{size: l})
		press(r, toForm...)
		press(r, "2", "enter", "pgdown")
		var seen string
		for before := ""; before != r.View(); {
			before = r.View()
			requireFits(t, before, l)
			seen += before
			press(r, "down")
		}
		for _, text := range []string{"Reason 1 ", "Reason 12", "Reason 20", "WAIT"} {
			require.Contains(t, seen, text)
		}
	}
}

func TestPrintedRowsTakeTheThemeOfTheirMark(t *testing.T) {
	s := start(t, look{size: size{80, 24}, colour: true}).s
	rows := s.printed("Clear.\n\nSTOP Do not\n     spray.\n! Watch\n  out.\n- A reason.\n", 80)
	stop, warn := s.theme.level[calc.Stop].Render, s.theme.level[calc.Warn].Render
	require.Equal(t, []string{"Clear.", "", stop("STOP Do not"), stop("     spray."), warn("! Watch"), warn("  out."), "- A reason."}, rows)
	require.NotEqual(t, stop("x"), "x")
}

// A usage speaks of another field by its flag, and the page by the name it has there.
func TestAUsageSpeaksOfFieldsByTheirNames(t *testing.T) {
	for _, lang := range words.Languages() {
		r := start(t, look{lang: lang, size: size{200, 24}})
		found := 0
		for _, id := range r.s.words.IDs() {
			if !strings.HasPrefix(id, "usage-") {
				continue
			}
			for _, flag := range flagRef.FindAllString(r.s.say(id), -1) {
				found++
				require.NotEmpty(t, r.s.say("short-"+strings.TrimPrefix(flag, "--")), "%s in %s", flag, id)
			}
		}
		require.Positive(t, found)
		press(r, toForm...)
		require.NotContains(t, r.View(), "--")
		require.Contains(t, r.View(), " "+r.s.say("short-distance")+" ")
	}
}
