package tui

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/words"
	"boothset/tui/golden"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// lines is an input of so many lines.
func lines(all ...string) string { return strings.Join(all, "\n") + "\n" }

// written is what Plain wrote and how it was left.
type written struct {
	out  string
	left Result
	err  error
}

// dialogueOf is the plain assistant over an input. Whatever that is, what is written keeps to
// its width and is text alone.
func dialogueOf(t test, l look, input string) written {
	t.Helper()
	return dialogueIn(t, l.options(t), input)
}

// dialogueIn is what is written for an input in an assistant of its own.
func dialogueIn(t test, o Options, input string) written {
	t.Helper()
	var out bytes.Buffer
	o.In, o.Out = strings.NewReader(input), &out
	left, err := Plain(o)
	requireText(t, out.String())
	return written{out.String(), left, err}
}

func requireText(t test, out string) {
	t.Helper()
	for row := range strings.SplitSeq(out, "\n") {
		require.LessOrEqual(t, ansi.StringWidth(row), 78, "%q", row)
		for _, c := range row {
			require.False(t, c < ' ' || c == 0x7f || c >= 0x80 && c < 0xa0, "%q", row)
		}
	}
	require.NotContains(t, out, "NaN")
	require.NotContains(t, out, "%!")
}

// The lines of a job to the answer, as toAnswer is its keys.
var linesToAnswer = []string{"8", "2", "75F", "45", "", "", "90psi", "1", "", "", ""}

// The job that goes through all there is: the line and the supply part by part, every
// view, what-if kept and put back, a page, the units, back and forth.
var linesOfAll = slices.Concat([]string{
	"8", "2", "<", "reduced-pressure", "seventy", "75F", "450", "45", "", "", "90psi",
	"2", "60psi", "2", "3/8in", "at the wall", "2", "50ft,3/8in", "2", "2", "18cfm", "60gal", "100psi", "130psi", "100ft,3/4in", "10cfm,50", "2min", "4", "", "95F", "70F", "2 9psi", "8 x", "3 6 cm", "3 6in", "2", "",
}, viewKeys(), []string{
	"?", "nonsense",
	"c", "4", "95F", "1", "c", "8", "-", "2", "c", "14", "1", "2", "c", "99", "",
	pageKey(question.Thin), "", "", "din4", "22", "", "=", "<", "8", "3",
	pageKey(question.Mix), "=", "hood", "=", pageKey(question.Day), "=", "u", "n", "<",
	"8", "2", "", "", "", "", "", "1", "", "", "", "",
})

// What is said of the whole job is held to what a person has looked at once in each language;
// the other units come to the same end.
func TestPlainTellsTheWholeJob(t *testing.T) {
	english := words.English()
	atWall := "choice-" + question.RegulatorAt.Name + "-" + question.AtWall
	for _, lang := range words.Languages() {
		for _, units := range []string{catalogue.UnitsUS, catalogue.UnitsMetric} {
			t.Run(lang+" "+units, func(t *testing.T) {
				l := look{lang: lang, metric: units == catalogue.UnitsMetric}
				w, ok := words.For(lang)
				require.True(t, ok)
				all := slices.Clone(linesOfAll)
				all[slices.Index(all, english.Say(atWall))] = w.Say(atWall) // a name is of its language
				got := dialogueOf(t, l, lines(all...))
				require.NoError(t, got.err)
				require.NotNil(t, got.left.Plan)
				if l.metric == (lang != english.Lang()) {
					golden.Equal(t, "plain-"+lang+"-"+units+".txt", got.out+"\n")
				}
			})
		}
	}
}

// Plain tells in every view all that the screen shows there: each caution, each number
// with its range and what it is, each part of the line, each reason.
func TestPlainTellsAllThatShows(t *testing.T) {
	for name, c := range map[string]struct{ lines, keys []string }{
		"answer":  {linesToAnswer, toAnswer},
		"stopped": {append(slices.Clone(linesToAnswer[:6]), "20psi", "1", "", "", ""), then(atSupply, "20psi", "enter", "enter", "enter")},
	} {
		for _, lang := range words.Languages() {
			l := look{lang: lang}
			got := dialogueOf(t, l, lines(slices.Concat(c.lines, viewKeys(), []string{""})...))
			require.NoError(t, got.err)
			r := start(t, l)
			press(r, c.keys...)
			require.Equal(t, "bench", where(r), name)
			flat := strings.Join(strings.Fields(strings.ReplaceAll(got.out, "\n", " ")), " ")
			holds := func(text string) {
				t.Helper()
				require.True(t, strings.Contains(flat, strings.Join(strings.Fields(text), " ")), "%s: %s", name, text)
			}
			s, b := r.s, r.bench
			require.Equal(t, name == "stopped", b.tried.Stopped())
			for _, c := range b.tried.Setup.Against {
				holds(s.say("verdict-"+c.Level.String()) + " " + s.text(c.ID, c.Figures...))
			}
			require.NotEmpty(t, b.tried.Setup.Cautions)
			for _, c := range b.tried.Setup.Cautions {
				holds(s.say("level-"+string(c.Level)) + " " + s.text(c.ID, c.Figures...))
			}
			for _, reason := range b.tried.Setup.Reasons {
				holds(s.text(reason.ID, reason.Figures...))
			}
			set := []string{b.dialText(), b.boreText(), b.rulerText(), b.atGun()}
			for _, n := range b.settings(&b.tried) {
				set = append(append(set, n.name+" "+n.text), n.below()...)
			}
			_, answered, _ := strings.Cut(flat, " "+s.say("verdict-stop")+": ") // the questions name what may be set
			require.Equal(t, b.tried.Stopped(), answered != "")
			for _, text := range set {
				if b.tried.Stopped() {
					require.NotContains(t, answered, text, "nothing is set")
				} else {
					holds(text)
				}
			}
			for i := range b.tried.Setup.Line {
				holds(plain(b.tried.Setup.Line[i].Name)[1:] + ":") // it begins a sentence
			}
			for _, rows := range [][]string{b.daySentences(200), b.dayLimits(200), b.sureSentences(200), b.causesInWords(200)} {
				holds(strings.Join(rows, " "))
			}
		}
	}
}

// typedLines is text for a step that is typed, of all sorts; none of it is a single digit,
// which on the screen would pick.
var typedLines = map[string][]string{
	question.Temp.Name:     {"75F", "24c", "20 C", "hot", "300F", "75"},
	question.Humidity.Name: {"45", "45%", "101", "-5", "90 %"},
	question.Panel.Name:    {"", "60F", "15C", "-400F"},
	question.Altitude.Name: {"", "5000ft", "1500 m", "10000000"},
	question.Supply.Name:   {"90psi", "6.2 bar", "20psi", "1,500", "120", "0"},
	question.Hose.Name:     {"", "50ft,3/8in", "25ft,1/4in + 6ft,5/16in", "25ft", "8m,10mm"},
	question.Wall.Name:     {"", "60psi", "3 bar", "-20", "45"},

	question.Compressor.Name:   {"", "18cfm", "5hp", "500 L/min", "much"},
	question.Receiver.Name:     {"60gal", "200L", "", "0"},
	question.CutIn.Name:        {"", "100psi", "20psi"},
	question.CutOut.Name:       {"", "130psi", "60psi"},
	question.Main.Name:         {"", "100ft,3/4in", "none"},
	question.Other.Name:        {"", "10cfm,50%", "10cfm,50% + 50cfm"},
	question.SprayTime.Name:    {"", "2min", "90 s"},
	question.ReceiverTemp.Name: {"", "95F"},
	question.LineTemp.Name:     {"", "70F", "10C"},
}

// Random answers, right and wrong, with steps back and other units in between, leave the
// screen and the lines in the same place with the same answer, and what is wrong is said
// in the same words.
func TestPlainAnswersAsTheScreenDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := look{lang: rapid.SampledFrom(words.Languages()).Draw(t, "lang"), metric: rapid.Bool().Draw(t, "metric")}
		r := start(t, l)
		press(r, "enter")
		var input []string
		var faults []string
		for range rapid.IntRange(10, 60).Draw(t, "steps") {
			if p, ok := r.page().(*partsPage); ok {
				does := rapid.SampledFrom([][2]string{{"", "enter"}, {plainBack, "esc"}, {"-1", "2"}, {"1>2", "4"}, {plainUnits, "u"}}).Draw(t, "parts")
				p.at = 0
				input = append(input, does[0])
				press(r, does[1])
				if p.fault != "" && r.page() == page(p) {
					faults = append(faults, p.fault)
				}
				continue
			}
			if p, ok := r.page().(*groupPage); ok && p.step.id != stepSheet {
				b, onward := &p.all[p.at], "down"
				if p.at == len(p.all)-1 {
					onward = "enter"
				}
				switch chance := rapid.IntRange(0, 11).Draw(t, "chance"); {
				case chance == 0 && p.at > 0:
					input = append(input, plainBack)
					press(r, "up")
				case chance == 0:
					input = append(input, plainBack)
					press(r, "esc")
				case b.choices != nil:
					n := rapid.IntRange(1, len(b.choices)).Draw(t, "pick")
					input = append(input, fmt.Sprint(n))
					b.picked = n - 1
					press(r, onward)
				default:
					text := rapid.SampledFrom(append([]string{""}, typedLines[b.Name]...)).Draw(t, b.Name)
					input = append(input, text)
					had := b.typed
					if text != "" {
						b.typed.set(text)
						onward = "enter"
					}
					press(r, onward)
					if p.fault != "" && r.page() == page(p) {
						faults = append(faults, p.fault)
						b.typed = had // the lines offer again what was there
					}
				}
				continue
			}
			if p, ok := r.page().(*groupPage); ok {
				text := rapid.SampledFrom([]string{"", "1 26psi", "1", "2 9psi", "3 6in", "4 soon", "9 1"}).Draw(t, "sheet")
				input = append(input, text)
				if text == "" {
					press(r, "enter")
				} else if p.order(text); p.fault != "" {
					faults = append(faults, p.fault)
				}
				continue
			}
			q, ok := r.page().(*stepPage)
			if !ok {
				break
			}
			chance := rapid.IntRange(0, 11).Draw(t, "chance")
			switch {
			case chance == 0 && q.step != &r.s.steps[0]:
				input = append(input, plainBack)
				press(r, "esc")
			case chance == 1 && !q.step.typed():
				input = append(input, plainUnits)
				press(r, "u")
			case !q.step.typed():
				n := rapid.IntRange(0, min(len(q.list.items), 9)).Draw(t, "pick")
				if n == 0 {
					input = append(input, "")
					press(r, "enter")
				} else {
					input = append(input, fmt.Sprint(n))
					press(r, fmt.Sprint(n))
				}
			default:
				text := rapid.SampledFrom(append([]string{""}, typedLines[q.step.id]...)).Draw(t, q.step.id)
				input = append(input, text)
				had := q.field.String()
				if text != "" {
					q.field.set("")
					press(r, text)
				}
				press(r, "enter")
				if q.fault != "" && r.page() == page(q) {
					faults = append(faults, q.fault)
					q.field.set(had) // the lines offer again what was there
				}
			}
		}
		got := dialogueOf(t, l, lines(input...))
		flat := strings.Join(strings.Fields(got.out), " ")
		for _, f := range faults {
			require.Contains(t, flat, "! "+strings.Join(strings.Fields(f), " "))
		}
		at := ""
		switch p := r.page().(type) {
		case *stepPage:
			at = "ask-" + p.step.id
		case *groupPage:
			if at = "ask-" + p.step.id; p.step.id != stepSheet {
				at = "ask-" + p.all[p.at].Name
			}
		case *partsPage:
			at = "ask-parts"
		}
		if at != "" {
			var ended *InputError
			require.ErrorAs(t, got.err, &ended)
			require.Equal(t, r.s.say(at), ended.At)
			return
		}
		require.NoError(t, got.err)
		want := r.result()
		require.NotNil(t, want.Plan)
		require.Equal(t, want, got.left)
	})
}

// What is tried, kept and put back at the answer comes to the same on both.
func TestPlainTriesAsTheScreenDoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := open80x24(t)
		press(r, toAnswer...)
		input := slices.Clone(linesToAnswer)
		for range rapid.IntRange(1, 5).Draw(t, "tries") {
			n := rapid.IntRange(0, len(r.bench.inputs())-1).Draw(t, "input")
			up, keep := rapid.Bool().Draw(t, "up"), rapid.Bool().Draw(t, "keep")
			r.bench.input = n
			press(r, map[bool]string{true: "right", false: "left"}[up])
			input = append(input, plainChange, fmt.Sprint(n+1), map[bool]string{true: "+", false: "-"}[up])
			switch {
			case !r.bench.changed():
				input = append(input, "") // it goes no farther
			case keep:
				press(r, "enter")
				input = append(input, "1")
			default:
				press(r, "esc")
				input = append(input, "2")
			}
		}
		got := dialogueOf(t, look{}, lines(append(input, "")...))
		require.NoError(t, got.err)
		require.Equal(t, r.result(), got.left)
	})
}
