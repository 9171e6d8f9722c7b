package command

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// settingJSON is a setting as a reader of JSON sees it.
type settingJSON struct {
	Schema, ID, Booth, Coat, Stage, Gun, Band, By, Why, Knobs string
	Number                                                    int
	Replaces                                                  []string
	Set                                                       struct {
		Wall, Gun, Distance, Tip both
		Opening                  float64
	}
	Worked struct {
		Temp     both
		Humidity float64
		Gun      string
		Line     []string
	}
	Stands, Twins, Void bool
	Changes             []struct{ Was, Is string }
}

// agreement is what agreeing answers.
type agreement struct {
	Schema   string
	Kept     bool
	Setting  settingJSON
	Replaced []settingJSON
	Cautions []struct{ ID, Text string }
}

// agreeJob is a job in booth two without a day.
var agreeJob = []string{"agree", "--booth", "two", "--coat", "clear", "--gun", "number-four"}

func agreedBy(t testing.TB, env func(string) string, args ...string) (a agreement) {
	t.Helper()
	r := boothsetIn(env, "", append(append(agreeJob, "--json"), args...)...)
	require.Equal(t, ExitAnswered, r.code, r.err)
	require.NoError(t, json.Unmarshal([]byte(r.out), &a))
	return a
}

func settingsOf(t testing.TB, env func(string) string, args ...string) []settingJSON {
	t.Helper()
	r := boothsetIn(env, "", append([]string{"settings", "--json"}, args...)...)
	require.Equal(t, ExitAnswered, r.code, r.err)
	var l struct {
		Schema   string
		Settings []settingJSON
	}
	require.NoError(t, json.Unmarshal([]byte(r.out), &l))
	assert.Equal(t, "boothset.settings/1", l.Schema)
	return l.Settings
}

func settingFiles(t testing.TB, dir string) []string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(dir, "settings", "two", "*.toml"))
	require.NoError(t, err)
	return files
}

// What a plan answers is agreed on as it stands, and by hand; what stood for the same is
// replaced and named.
func TestASettingIsAgreedOn(t *testing.T) {
	dir, env := quarryLane(t)
	day := []string{"--temp", "72F", "--humidity", "45"}
	dry := agreedBy(t, env, append(day, "--dry-run")...)
	assert.False(t, dry.Kept)
	assert.Empty(t, settingFiles(t, dir))
	assert.Empty(t, dry.Setting.ID)

	first := agreedBy(t, env, day...)
	assert.Equal(t, "boothset.agree/1", first.Schema)
	assert.Equal(t, "boothset.setting/1", first.Setting.Schema)
	assert.Equal(t, []string{"two", "clear", "full", "number-four", "mild"}, []string{first.Setting.Booth, first.Setting.Coat, first.Setting.Stage, first.Setting.Gun, first.Setting.Band})
	plan := decoded(t, boothsetIn(env, "", append([]string{"plan", "--json"}, append(agreeJob[1:], day...)...)...).out)
	assert.InDelta(t, plan.Wall.Flowing["psi"], first.Setting.Set.Wall["psi"], 1e-6)
	assert.InDelta(t, plan.Valve.Opening, first.Setting.Set.Opening, 1e-6)
	assert.Len(t, first.Setting.Worked.Line, 4)
	assert.NotEmpty(t, first.Cautions)

	second := agreedBy(t, env, append(day, "--set", "wall=60psi", "--why", "lays \x1b[31mflat", "--knobs", "fan full")...)
	assert.Equal(t, []string{first.Setting.ID}, second.Setting.Replaces)
	require.Len(t, second.Replaced, 1)
	assert.InDelta(t, 60, second.Setting.Set.Wall["psi"], 1e-6)
	assert.Less(t, second.Setting.Set.Opening, first.Setting.Set.Opening, "the valve takes up what the wall stands higher")
	assert.Equal(t, `lays \x1b[31mflat`, second.Setting.Why)
	assert.Len(t, settingFiles(t, dir), 2, "a revision is never changed")
	now := decoded(t, boothsetIn(env, "", append([]string{"plan", "--json", "--wall", "60psi"}, append(agreeJob[1:], day...)...)...).out)
	assert.InDelta(t, now.Now.OpeningNeeded, second.Setting.Set.Opening, 1e-6)

	assert.Len(t, settingsOf(t, env), 1)
	all := settingsOf(t, env, "--all", "--booth", "two")
	require.Len(t, all, 2)
	assert.False(t, all[0].Stands)
	assert.True(t, all[1].Stands)
	assert.Equal(t, "fan full", all[1].Knobs)
	assert.Empty(t, settingsOf(t, env, "--booth", "three"))
}

// A setting may be for any stage, gun and band, and for a band's own day.
func TestWhatASettingIsFor(t *testing.T) {
	_, env := quarryLane(t)
	hot := agreedBy(t, env, "--band", "hot-dry", "--any", "stage", "--any", "gun").Setting
	assert.Equal(t, []string{"any", "any", "hot-dry"}, []string{hot.Stage, hot.Gun, hot.Band})
	assert.InDelta(t, 32, hot.Worked.Temp["c"], 1e-9, "that band's own day")
	warm := agreedBy(t, env, "--band", "hot-dry", "--temp", "95F", "--humidity", "30").Setting
	assert.InDelta(t, 95, warm.Worked.Temp["f"], 1e-6)
	assert.Equal(t, "any", agreedBy(t, env, "--temp", "72F", "--humidity", "45", "--any", "band").Setting.Band)
	assert.Len(t, settingsOf(t, env), 3, "none of them is for what another is for")
	byHand := agreedBy(t, env, "--band", "mild", "--set", "opening=50", "--set", "distance=7in", "--set", "tip=1.2mm").Setting
	assert.InDelta(t, 0.5, byHand.Set.Opening, 1e-9)
	assert.InDelta(t, 7, byHand.Set.Distance["in"], 1e-9)
	assert.InDelta(t, 1.2, byHand.Set.Tip["mm"], 1e-9)
	assert.Empty(t, byHand.Set.Gun, "what the gauge shows at that opening nobody has worked out")
}

// Twins are told until they are agreed on anew; so is what a change of the booth makes void.
func TestTwinsAndVoidSettingsAreTold(t *testing.T) {
	dir, env := quarryLane(t)
	agreedBy(t, env, "--band", "mild")
	apart := t.TempDir()
	require.NoError(t, os.CopyFS(apart, os.DirFS(dir)))
	there := agreedBy(t, env, "--band", "mild", "--shop", apart, "--set", "wall=55psi").Setting
	agreedBy(t, env, "--band", "mild", "--set", "wall=56psi")
	name := filepath.Join("settings", "two", "0002-"+there.ID+".toml")
	data, err := os.ReadFile(filepath.Join(apart, name))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(dir, name), data, 0o600), "as synchronising brings it")
	twins := settingsOf(t, env)
	require.Len(t, twins, 2)
	assert.True(t, twins[0].Twins && twins[1].Twins)
	assert.Contains(t, boothsetIn(env, "", "settings").out, "agreed on twice apart")
	anew := agreedBy(t, env, "--band", "mild", "--set", "wall=57psi")
	assert.ElementsMatch(t, []string{twins[0].ID, twins[1].ID}, anew.Setting.Replaces)
	require.Len(t, settingsOf(t, env), 1)

	booth := filepath.Join(dir, "booths", "two.toml")
	text, err := os.ReadFile(booth)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(booth, []byte(strings.Replace(string(text), "50ft", "35ft", 1)), 0o600))
	void := settingsOf(t, env)
	require.Len(t, void, 1)
	assert.True(t, void[0].Void)
	assert.Equal(t, "hose=50ft,5/16in", void[0].Changes[0].Was)
	assert.Contains(t, boothsetIn(env, "", "settings").out, "Void until it is agreed anew")
	agreedBy(t, env, "--band", "mild")
	assert.False(t, settingsOf(t, env)[0].Void)
}

func TestWhatCannotBeAgreedOn(t *testing.T) {
	dir, env := quarryLane(t)
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"agree", "--coat", "clear"}, "booth: choose three or two"},
		{append(agreeJob, "--band", "sunny"), `band "sunny": choose cold, mild`},
		{append(agreeJob, "--band", "mild", "--temp", "95F"), "another band"},
		{append(agreeJob, "--band", "mild", "--any", "roof"), `any "roof": choose stage, gun or band`},
		{append(agreeJob, "--band", "mild", "--set", "wall"), `set "wall": give key=amount`},
		{append(agreeJob, "--band", "mild", "--set", "lamp=1"), `set "lamp=1": choose supply, wall`},
		{append(agreeJob, "--band", "mild", "--set", "opening=0"), "must be above 0"},
		{append(agreeJob, "--band", "mild", "--by", "MK"), "boothset shop painter INITIALS adds one"},
		{agreeJob, "temp: "},
		{append(agreeJob, "--band", "mild", "--booth", "nine"), `booth "nine": choose`},
		{[]string{"settings", "--booth", "../two"}, `booth "../two": choose`},
	} {
		r := boothsetIn(env, "", c.args...)
		assert.Equal(t, ExitBadInput, r.code, c.args)
		assert.Contains(t, r.err, c.says)
		assert.Empty(t, r.out)
	}
	r := boothsetIn(env, "", append(agreeJob, "--temp", "110F", "--humidity", "95")...)
	assert.Equal(t, ExitCannot, r.code, "a day that stops the job")
	assert.Empty(t, settingFiles(t, dir))
	r = boothsetIn(env, "", append(agreeJob, "--band", "mild", "--shop", filepath.Join(dir, "booths", "two.toml"))...)
	assert.Equal(t, ExitBadInput, r.code)
	assert.Contains(t, r.err, "is no folder")
}

// A painter is named by initials that the shop keeps.
func TestAPainterIsNamed(t *testing.T) {
	_, env := quarryLane(t)
	assert.Contains(t, boothsetIn(env, "", "shop", "painter").out, "Nobody can be named")
	assert.Contains(t, boothsetIn(env, "", "shop", "painter", "MK", "--dry-run").out, "would be added")
	r := boothsetIn(env, "", "shop", "painter", "MK", "--json")
	var added struct {
		Schema, Added string
		Kept          bool
		Painters      []struct{ ID, Initials string }
	}
	require.NoError(t, json.Unmarshal([]byte(r.out), &added), r.err)
	assert.Equal(t, "boothset.painter/1", added.Schema)
	require.Len(t, added.Painters, 1)
	assert.Equal(t, "MK", added.Painters[0].Initials)
	assert.Contains(t, boothsetIn(env, "", "shop", "painter", "mk").err, "known already")
	assert.Contains(t, boothsetIn(env, "", "shop", "painter", " ").err, "give initials")
	assert.Contains(t, boothsetIn(env, "", "shop", "painter").out, "MK")
	assert.Equal(t, "MK", agreedBy(t, env, "--band", "mild", "--by", "mk").Setting.By)
	assert.Contains(t, boothsetIn(env, "", "settings").out, "by MK.")
	assert.Contains(t, boothsetIn(env, "", append(agreeJob, "--band", "mild", "--by", "JD")...).err, "choose MK")
}
