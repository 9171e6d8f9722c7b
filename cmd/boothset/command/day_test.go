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

// dayJSON is an answer of day as a reader of its JSON sees it.
type dayJSON struct {
	Schema string
	judgedJSON
	Landing *float64
	Remedy  *struct {
		ID       string
		To, By   both
		Least    both
		Humidity float64
		Lift     float64
	}
	DewPoint    both `json:"dew_point"`
	WetBulb     both `json:"wet_bulb"`
	PanelMargin both `json:"panel_margin"`
	Drying      float64
	FlashOff    struct {
		Factor float64
		OrMore bool `json:"or_more"`
	} `json:"flash_off"`
	Grade   string
	PotLife *struct {
		Life float64 `json:"life_s"`
		Ends *struct {
			Clock  string
			DaysOn int `json:"days_on"`
		}
	} `json:"pot_life"`
	Reasons  []struct{ About, ID, Text, Basis, Source string }
	Cautions []struct{ Level, ID, Text string }
}

func dayArgs(coat, temp, humidity string, more ...string) []string {
	return append([]string{"day", "--coat", coat, "--temp", temp, "--humidity", humidity}, more...)
}

// The damp morning: 15 C and 85 % under a waterborne base. It is not to be sprayed; the
// same air at 25 C dries it several times as fast.
func TestDampMorningForAWaterborneBase(t *testing.T) {
	var a dayJSON
	answered(t, ExitCannot, &a, dayArgs("waterborne-base", "15C", "85")...)
	assert.Equal(t, "boothset.day/1", a.Schema)
	assert.True(t, a.Stopped)
	assert.Equal(t, "stop", a.Verdict)
	require.NotNil(t, a.Remedy)
	assert.InDelta(t, 25, a.Remedy.To["c"], 1e-9)
	assert.InDelta(t, .46, a.Remedy.Humidity, .005)
	assert.Greater(t, a.Remedy.Lift, 4.0)
	require.NotNil(t, a.Turn)
	assert.Contains(t, *a.Turn, "Warm booth air, panel and paint to 77 F: the same air is then at 46%")
	assert.Less(t, a.Remedy.Least["c"], a.Remedy.To["c"])
	assert.Nil(t, a.PotLife)
	assert.Equal(t, "fast", a.Grade)
}

func TestDayOfAClear(t *testing.T) {
	var a dayJSON
	answered(t, ExitAnswered, &a, dayArgs("clear", "30C", "40", "--pot-life", "4h", "--started", "22:30")...)
	assert.Equal(t, "go", a.Verdict)
	assert.Nil(t, a.Turn)
	assert.Nil(t, a.Remedy)
	assert.Empty(t, a.Against)
	assert.InDelta(t, 1.6, *a.Landing, .05)
	assert.InDelta(t, 14.9, a.DewPoint["c"], .05, "a psychrometrics library")
	assert.InDelta(t, 20.06, a.WetBulb["c"], .01, "a psychrometrics library")
	assert.InDelta(t, 15.1, a.PanelMargin["c"], .05)
	assert.Equal(t, "slow", a.Grade)
	assert.Less(t, a.FlashOff.Factor, .7)
	require.NotNil(t, a.PotLife)
	assert.InDelta(t, 2*3600, a.PotLife.Life, 1, "half for 10 C")
	assert.Equal(t, "00:30", a.PotLife.Ends.Clock)
	assert.Equal(t, 1, a.PotLife.Ends.DaysOn)
	ids := map[string]bool{}
	for _, r := range a.Reasons {
		ids[r.ID] = true
		assert.NotEmpty(t, r.Basis)
	}
	assert.True(t, ids["day-grade-hardener"] && ids["pot-life-ends"])
	assert.Equal(t, "safety", a.Cautions[len(a.Cautions)-1].ID)
}

// dayJobs are days of every kind.
var dayJobs = map[string][]string{
	"mild":             dayArgs("clear", "75F", "45"),
	"hot and dry":      dayArgs("clear", "40C", "12", "--pot-life", "4h", "--started", "2:30pm"),
	"hot and damp":     dayArgs("surfacer", "38C", "90", "--units", "metric"),
	"damp heat, water": dayArgs("waterborne-base", "33C", "95"),
	"saturated":        dayArgs("waterborne-base", "20C", "100"),
	"cold":             dayArgs("epoxy-primer", "2C", "60", "--pot-life", "1h"),
	"cold panel":       dayArgs("single-stage", "75F", "60", "--panel", "58F", "--panels", "5"),
	"cold paint":       dayArgs("sealer", "75F", "60", "--paint", "40F"),
	"high up":          dayArgs("waterborne-base", "60F", "60", "--altitude", "10000ft"),
	"coldest, driest":  dayArgs("clear", "-10C", "1"),
}

func TestDayInBothSystemsAndInRows(t *testing.T) {
	for name, args := range dayJobs {
		t.Run(name, func(t *testing.T) {
			r := boothset("", append(args, "--json")...)
			require.Contains(t, []int{ExitAnswered, ExitCannot}, r.code, r.err)
			assert.Empty(t, faultsOf(t, r.out))
			assert.Equal(t, 1, strings.Count(r.out, "\n"))
			text := boothset("", args...)
			assert.Equal(t, r.code, text.code)
			for _, row := range strings.Split(text.out, "\n") {
				assert.LessOrEqual(t, ansi.StringWidth(row), answer.Width, row)
				assert.Equal(t, strings.TrimRight(row, " "), row)
				assert.NotContains(t, row, "{")
			}
			figures, _, _ := strings.Cut(text.out, "\nWhy\n")
			assert.LessOrEqual(t, strings.Count(figures, "\n"), 24, "one screen before the reasons")
		})
	}
}

func TestDayText(t *testing.T) {
	r := boothset("", dayArgs("clear", "75F", "60", "--panel", "58F", "--pot-life", "4", "--started", "22:30", "--panels", "5")...)
	assert.Equal(t, ExitCannot, r.code)
	for _, s := range []string{
		"Clearcoat. Air 75 F at 60% humidity, panel 58 F, paint 75 F.", "STOP: do not spray. Warm the panel by",
		"panel 2.2 F below it; at least 5.4 F above", "FLASH-OFF    about 52% longer than on a 70 F, 50% day", "THINNER      standard",
		"POT LIFE     about 3 h 5 min", "over at about 1:33 am next day", "STOP The panel at 58 F is at or below the dew point",
		"5 panels in one go: use a thinner half a grade slower", "Why\n", "[published: ISO 8502-4",
	} {
		assert.Contains(t, strings.Join(strings.Fields(r.out), " "), strings.Join(strings.Fields(s), " "))
	}
	metric := boothset("", dayArgs("waterborne-base", "15", "70", "--units", "metric")...)
	assert.Contains(t, metric.out, "WAIT: conditions are not right yet. Warm booth air, panel and paint to 25.0 C")
	assert.Contains(t, metric.out, "REDUCER      fast")
	assert.Contains(t, boothset("", dayArgs("clear", "75F", "45")...).out, "GO: temperature and humidity are fine for spraying.\n")
}

func TestDayBadInputAndHelp(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"day"}, "coat: choose epoxy-primer"},
		{dayArgs("clear", "", "45"), "temp: type a number with F or C"},
		{dayArgs("clear", "75F", "450"), `humidity "450"`},
		{dayArgs("clear", "75F", "45", "--started", "14:30"), "pot-life: needed beside started"},
		{dayArgs("clear", "75F", "45", "--panels", "many"), `panels "many": give a whole number`},
		{dayArgs("clear", "75F", "45", "--supply", "90psi"), "see boothset day --help"},
	} {
		r := boothset("", c.args...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Empty(t, r.out)
		assert.Contains(t, r.err, c.says)
		assert.Equal(t, 1, strings.Count(r.err, "\n"))
	}
	help := boothset("", "day", "--help")
	assert.Equal(t, ExitAnswered, help.code)
	for _, f := range question.Day.Fields {
		assert.Contains(t, help.out, "--"+f.Name+" ")
	}
	assert.Contains(t, boothset("", "--help").out, "boothset day ")
}

func TestDayBatch(t *testing.T) {
	r := boothset(`{"coat":"clear","temp":75,"humidity":45,"pot_life":"4h"}
{"coat":"waterborne-base","temp":15,"humidity":85,"units":"metric"}
{"coat":"clear","temp":75}
`, "day", "--batch")
	assert.Equal(t, ExitBadInput, r.code)
	lines := strings.Split(strings.TrimSpace(r.out), "\n")
	require.Len(t, lines, 3)
	var a, b dayJSON
	require.NoError(t, json.Unmarshal([]byte(lines[0]), &a))
	assert.Equal(t, "go", a.Verdict)
	assert.NotNil(t, a.PotLife)
	require.NoError(t, json.Unmarshal([]byte(lines[1]), &b))
	assert.Equal(t, "stop", b.Verdict)
	assert.Contains(t, *b.Turn, "25.0 C")
	assert.Contains(t, lines[2], `"field":"humidity"`)
	assert.Equal(t, ExitCannot, boothset(`{"coat":"waterborne-base","temp":"15C","humidity":85}`, "day", "--batch").code)
}
