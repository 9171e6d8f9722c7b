package command

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/words"
	"boothset/tui/golden"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tongue is a language and a system of units to print in.
type tongue struct {
	lang string
	sys  unit.System
}

func (x tongue) String() string { return x.lang + "-" + catalogue.SystemName(x.sys) }

func (x tongue) words(t *testing.T) *words.Words {
	t.Helper()
	w, ok := words.For(x.lang)
	require.True(t, ok)
	return w
}

func tongues() (all []tongue) {
	for _, lang := range words.Languages() {
		all = append(all, tongue{lang, unit.US}, tongue{lang, unit.Metric})
	}
	return all
}

// printedJobs is the jobs of each printer that are looked at.
var printedJobs = map[string][]string{
	"plan":       clearJob("--wall", "70psi"),
	"plan-short": clearJob("--supply", "28psi"),
	"plan-foot":  clearJob("--regulator-at", "gun", "--temp", "93F", "--humidity", "30"),
	"plan-stop":  clearJob("--humidity", "99", "--wall", "70psi"),
	"day-stop":   dayArgs("clear", "75F", "60", "--panel", "58F", "--pot-life", "4h", "--started", "22:30"),
	"day-wait":   dayArgs("waterborne-base", "15C", "70"),
	"thin-warm":  thinArgs("din4", "21", "62F", "--sheet-seconds", "16-18", "--max-thinner", "5"),
	"thin-usual": thinArgs("ford4", "26", "68F"),
	"film-speed": {"film", "--coat", "clear", "--gun", "reduced-pressure", "--cup-volume", "100mL", "--cup-time", "33s", "--before", "4mil", "--gun-speed", "1ft/s", "--height", "3ft"},
	"film-comb":  {"film", "--coat", "clear", "--solids", "42", "--wet", "4mil,5mil"},
	"mix":        {"mix", "--coat", "clear", "--gun", "reduced-pressure", "--area", "12ft2", "--area", "hood", "--ratio", "4:1:1", "--price", "60/L"},
	"mix-one":    {"mix", "--coat", "clear", "--gun", "reduced-pressure", "--area", "1m2", "--coats", "1"},
}

// cardIn is a job's card in a width.
func cardIn(t *testing.T, args []string, x tongue, width int) string {
	t.Helper()
	w := x.words(t)
	r, err := question.Open(noEnv, w)
	require.NoError(t, err)
	all := question.Questions()
	q := all[slices.IndexFunc(all, func(q *question.Question) bool { return q.Name == args[0] })]
	texts := question.Texts{}
	for i := 1; i < len(args); i += 2 {
		name := strings.TrimPrefix(args[i], "--")
		if row, _ := q.Field(name); !row.Repeats {
			delete(texts, name)
		}
		texts[name] = append(texts[name], args[i+1])
	}
	a, err := answer.Ask(r, q, r.ReadAll(q, texts, unit.US), unit.US)
	require.NoError(t, err)
	if plan, ok := a.(*answer.Plan); ok {
		plan.Sure()
	}
	return string(answer.Print(a.Rows(w, x.sys), width, w))
}

func TestCardsAsLookedAt(t *testing.T) {
	for name, args := range printedJobs {
		for _, x := range tongues() {
			t.Run(name+"-"+x.String(), func(t *testing.T) {
				golden.Equal(t, name+"-"+x.String()+".txt", cardIn(t, args, x, answer.Width))
			})
		}
		for _, lang := range words.Languages() {
			t.Run(name+"-40-"+lang, func(t *testing.T) {
				golden.Equal(t, name+"-40-"+lang+".txt", cardIn(t, args, tongue{lang, unit.US}, 40))
			})
		}
	}
}

// No row is wider than what is given, whatever the language and the units; nothing of a
// sentence is missing.
func TestCardsFitTheirWidth(t *testing.T) {
	for name, args := range printedJobs {
		for _, x := range tongues() {
			for _, width := range []int{40, 60, 80, 120} {
				card := cardIn(t, args, x, width)
				for _, row := range strings.Split(card, "\n") {
					assert.LessOrEqual(t, ansi.StringWidth(row), width, "%s %s: %s", name, x, row)
					assert.Equal(t, strings.TrimRight(row, " "), row, "no blanks at the end")
				}
				assert.NotContains(t, card, "{", "%s %s", name, x)
				assert.NotRegexp(t, `\b(card|label|remedy|grade|verdict)-[a-z]`, card, "%s %s", name, x)
			}
		}
	}
}

// labels is the words of a language that cards set in capitals or at the head of a list.
func labels(w *words.Words) (all []string) {
	for _, id := range w.IDs() {
		for _, start := range []string{"label-", "verdict-", "remedy-", "card-", "mix-wrong", "film-dries", "thin-at-", "thin-then", "day-flash"} {
			if strings.HasPrefix(id, start) {
				all = append(all, longestText(w.Say(id)))
			}
		}
	}
	return all
}

// longestText is the longest stretch of a sentence that holds no figure.
func longestText(sentence string) string {
	parts := regexp.MustCompile(`\{[a-z]+\}`).Split(sentence, -1)
	return slices.MaxFunc(parts, func(a, b string) int { return len(a) - len(b) })
}

// No label of one language stands in the card of another.
func TestNoLabelOfAnotherLanguage(t *testing.T) {
	english, _ := words.For("en")
	spanish, _ := words.For("es")
	// What both write alike tells nothing.
	ours, theirs := labels(english), labels(spanish)
	shown := map[string]bool{}
	for name, args := range printedJobs {
		for _, x := range []struct {
			lang       string
			own, other []string
		}{{"en", ours, theirs}, {"es", theirs, ours}} {
			card := strings.Join(strings.Fields(cardIn(t, args, tongue{x.lang, unit.US}, answer.Width)), " ")
			for _, label := range x.other {
				if label = strings.TrimSpace(label); len(label) >= 3 && !slices.Contains(x.own, label) {
					assert.False(t, regexp.MustCompile(`(^|[^\pL])`+regexp.QuoteMeta(label)+`($|[^\pL])`).MatchString(card), "%s in %s: %s", name, x.lang, label)
				}
			}
			for _, label := range x.own {
				if strings.Contains(card, label) {
					shown[x.lang+label] = true
				}
			}
		}
	}
	assert.Greater(t, len(shown), 60, "the labels are looked for where they stand: %v", slices.Sorted(maps.Keys(shown)))
}
