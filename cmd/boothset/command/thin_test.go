package command

import (
	"boothset/presets/answer"
	"boothset/presets/question"
	"encoding/json"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// courseJSON is what is done to a mix.
type courseJSON struct {
	WarmTo          both `json:"warm_to"`
	Add             float64
	Warmed, Reached struct{ Seconds float64 }
}

// thinJSON is an answer of thin as a reader of its JSON sees it.
type thinJSON struct {
	Schema  string
	Stopped bool
	Input   struct {
		Sheet struct {
			Cup    string
			Low    float64 `json:"low_s"`
			Basis  string
			Source string
		}
		MaxThinner struct {
			Share float64
			Basis string
		} `json:"max_thinner"`
	}
	Remedy, Text string
	About        bool
	Viscosity    struct {
		Nu    float64 `json:"mm2_s"`
		About bool
	}
	Corrected struct {
		Seconds float64
		Low     float64 `json:"low_s"`
		High    float64 `json:"high_s"`
		Change  float64 `json:"change_per_c"`
		Fitted  bool
	}
	courseJSON
	Instead  *courseJSON
	Reasons  []struct{ About, ID, Text, Basis, Source string }
	Cautions []struct{ Level, ID, Text string }
}

func thinArgs(cup, seconds, paint string, more ...string) []string {
	return append([]string{"thin", "--coat", "clear", "--cup", cup, "--seconds", seconds, "--paint", paint}, more...)
}

// By hand: 19.5 s in the DIN cup are 65.9 mm2/s, 17 s are 51.1; at 5 % a degree C that is
// 5.1 C of warming, or ln(65.9/51.1)/ln(51.1/0.83) = 6.2 % thinner.
func TestWarmItOrAddThinner(t *testing.T) {
	var a thinJSON
	answered(t, ExitAnswered, &a, thinArgs("din4", "19.5", "20C", "--sheet-seconds", "16-18", "--max-thinner", "10", "--warm-limit", "26C")...)
	assert.Equal(t, "boothset.thin/1", a.Schema)
	assert.Equal(t, "warm", a.Remedy)
	assert.Equal(t, "Warm it to 77 F, or add 6% thinner.", a.Text)
	assert.InDelta(t, 25.1, a.WarmTo["c"], .05)
	require.NotNil(t, a.Instead)
	assert.InDelta(t, .06, a.Instead.Add, 1e-12, "in whole percent")
	assert.InDelta(t, 17, a.Instead.Reached.Seconds, .1)
	assert.InDelta(t, 17, a.Reached.Seconds, 1e-6)
	assert.Equal(t, "the product's sheet, as typed", a.Input.Sheet.Basis)
	assert.Equal(t, "the product's sheet, as typed", a.Input.MaxThinner.Basis)
	assert.True(t, a.About, "under the cup's published 25 s")
	assert.Equal(t, "safety", a.Cautions[len(a.Cautions)-1].ID)
}

func TestThinWithTheCataloguesSeconds(t *testing.T) {
	var a thinJSON
	answered(t, ExitAnswered, &a, thinArgs("ford4", "19", "68F")...)
	assert.Equal(t, "as-it-is", a.Remedy)
	assert.Equal(t, "iso4", a.Input.Sheet.Cup)
	assert.Equal(t, "common practice", a.Input.Sheet.Basis)
	assert.Equal(t, "estimate", a.Input.MaxThinner.Basis)
	assert.True(t, a.About, "19 s are under the 20 s that the Ford cup is published from")
	answered(t, ExitAnswered, &a, thinArgs("din4", "30", "59F", "--sheet-seconds", "26-28", "--second-seconds", "27", "--second-temp", "68F")...)
	assert.True(t, a.Corrected.Fitted)
	assert.InDelta(t, 27, a.Corrected.Seconds, 1e-6)
	assert.InDelta(t, a.Corrected.Low, a.Corrected.High, 1e-9)
	assert.Equal(t, "Warm it to 68 F. No thinner: it is only cold.", a.Text)
	assert.False(t, a.About, "inside the cup's range, in one cup")
}

// The VOC with the thinner that is advised, beside the limit that was set: (420 + a 880)/(1 + a)
// of a share a.
func TestThinTellsTheVOC(t *testing.T) {
	var a struct {
		Add float64
		VOC struct {
			Sprayed, Limit both
			Over           bool
		}
		Cautions []struct{ ID string }
	}
	answered(t, ExitAnswered, &a, thinArgs("ford4", "26", "77F", "--voc", "420g/L", "--thinner-voc", "880g/L", "--voc-limit", "430g/L")...)
	require.Positive(t, a.Add)
	assert.InDelta(t, (420+880*a.Add)/(1+a.Add), a.VOC.Sprayed["g_l"], 1e-6)
	assert.True(t, a.VOC.Over)
	assert.Equal(t, "voc-over", a.Cautions[0].ID)
}

func TestMixThatCannotBeBroughtThere(t *testing.T) {
	var a thinJSON
	answered(t, ExitCannot, &a, thinArgs("din4", "45", "20C", "--sheet-seconds", "16-18", "--max-thinner", "5")...)
	assert.True(t, a.Stopped)
	assert.Equal(t, "cannot", a.Remedy)
	assert.InDelta(t, .05, a.Add, 1e-12, "the most that is allowed")
	assert.Equal(t, "thin-cannot", a.Cautions[0].ID)
	answered(t, ExitCannot, &a, thinArgs("din4", "14", "18C", "--sheet-seconds", "17-19")...)
	assert.Equal(t, "add-unthinned", a.Remedy)
	assert.Equal(t, "thin-over", a.Cautions[0].ID)
}

// thinJobs are mixes of every kind.
var thinJobs = map[string][]string{
	"as it is":      thinArgs("din4", "18", "20C"),
	"cold":          thinArgs("din4", "24", "50F", "--sheet-seconds", "18"),
	"thick":         thinArgs("ford4", "26", "68F", "--units", "metric"),
	"either":        thinArgs("din4", "19.5", "20C", "--sheet-seconds", "16-18", "--warm-limit", "26C"),
	"either, cold":  thinArgs("din4", "21", "62F", "--sheet-seconds", "16-18"),
	"too thick":     thinArgs("din4", "45", "20C"),
	"too thin":      thinArgs("din4", "14", "18C", "--sheet-seconds", "17-19"),
	"two readings":  thinArgs("din4", "21", "60F", "--second-seconds", "17", "--second-temp", "75F", "--sheet-seconds", "16-18"),
	"hot":           thinArgs("din4", "14", "90F", "--sheet-seconds", "16-18"),
	"another cup":   thinArgs("zahn2", "31", "70F", "--sheet-seconds", "16-18", "--sheet-cup", "din4"),
	"waterborne":    {"thin", "--coat", "waterborne-base", "--cup", "iso4", "--seconds", "70", "--temp", "70F"},
	"warmed enough": thinArgs("din4", "19", "80F", "--sheet-seconds", "16-18"),
}

func TestThinInBothSystemsAndInRows(t *testing.T) {
	for name, args := range thinJobs {
		t.Run(name, func(t *testing.T) {
			r := boothset("", append(args, "--json")...)
			require.Contains(t, []int{ExitAnswered, ExitCannot}, r.code, r.err)
			assert.Empty(t, faultsOf(t, r.out))
			text := boothset("", args...)
			assert.Equal(t, r.code, text.code)
			for _, row := range strings.Split(text.out, "\n") {
				assert.LessOrEqual(t, ansi.StringWidth(row), answer.Width, row)
				assert.NotContains(t, row, "{")
				assert.NotContains(t, row, "advice-")
			}
			figures, _, _ := strings.Cut(text.out, "\nWhy\n")
			assert.LessOrEqual(t, strings.Count(figures, "\n"), 24, "one screen before the reasons")
		})
	}
}

func TestThinText(t *testing.T) {
	r := boothset("", thinArgs("din4", "21", "62F", "--sheet-seconds", "16-18")...)
	require.Equal(t, ExitAnswered, r.code)
	for _, s := range []string{
		"Clearcoat. 21 s in the DIN 53211 4 mm cup, paint at 62 F.", "  WARM Warm it to 76 F; or only to 68 F, and add 5% thinner.",
		"  WANTED       16 to 18 s         at 68 F, the sheet's", "  YOURS        about 19 s         at 68 F, 18 to 20 s",
		"  THEN         about 17 s         at 76 F; time it again", "about 74 mm2/s (52 mm2/s to 97 mm2/s)", "[the product's sheet, as typed]",
	} {
		assert.Contains(t, strings.Join(strings.Fields(r.out), " "), strings.Join(strings.Fields(s), " "))
	}
	assert.Contains(t, boothset("", thinArgs("din4", "18", "20C")...).out, "the coat's usual")
}

// Two cups are called 4 mm, and their seconds differ by a factor of two and a half: the
// answer asks which. Past what a cup can tell, it names a better one.
func TestThinBadInput(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"thin"}, "coat: choose epoxy-primer"},
		{thinArgs("4mm", "18", "70F"), `cup "4mm": which one: iso4 (ISO 2431 4 mm) or din4 (DIN 53211 4 mm)?`},
		{thinArgs("iso4", "13", "70F"), "use the ISO 2431"},
		{thinArgs("din4", "400", "70F"), "too long to tell a viscosity"},
		{thinArgs("din4", "18", ""), "paint: give the paint's own temperature"},
		{thinArgs("din4", "18", "70F", "--sheet-seconds", "18-16"), "the lower figure first"},
		{thinArgs("din4", "18", "70F", "--second-seconds", "17", "--second-temp", "71F"), "5.4 F or more apart"},
		{thinArgs("din4", "18", "70F", "--max-thinner", "150"), `max-thinner "150"`},
		{thinArgs("din4", "18", "70F", "--glass", "1"), "see boothset thin --help"},
	} {
		r := boothset("", c.args...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Empty(t, r.out)
		assert.Contains(t, r.err, c.says)
		assert.Equal(t, 1, strings.Count(r.err, "\n"))
	}
	help := boothset("", "thin", "--help")
	for _, f := range question.Thin.Fields {
		assert.Contains(t, help.out, "--"+f.Name+" ")
	}
}

func TestThinBatch(t *testing.T) {
	r := boothset(`{"coat":"clear","cup":"din4","seconds":18,"paint":20,"sheet_seconds":"16-18","units":"metric"}
{"coat":"clear","cup":"din4","seconds":45,"paint":68,"sheet_seconds":17}
{"coat":"clear","cup":"4mm","seconds":18,"paint":68}
`, "thin", "--batch")
	assert.Equal(t, ExitBadInput, r.code)
	lines := strings.Split(strings.TrimSpace(r.out), "\n")
	require.Len(t, lines, 3)
	var a, b thinJSON
	require.NoError(t, json.Unmarshal([]byte(lines[0]), &a))
	assert.Equal(t, "as-it-is", a.Remedy)
	require.NoError(t, json.Unmarshal([]byte(lines[1]), &b))
	assert.Equal(t, "cannot", b.Remedy)
	assert.Contains(t, lines[2], `"field":"cup"`)
	assert.Equal(t, ExitCannot, boothset(`{"coat":"clear","cup":"din4","seconds":45,"paint":68}`, "thin", "--batch").code)
}
