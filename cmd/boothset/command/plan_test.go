package command

import (
	"encoding/json"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCommonPracticeReducedPressureClearOnTheUsualLine(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob())
	assert.InDelta(t, 26, a.Gun.Working["psi"], 0.05)
	assert.GreaterOrEqual(t, a.Wall.Flowing["psi"], 28.0)
	assert.LessOrEqual(t, a.Wall.Flowing["psi"], 31.0+1e-9)
	assert.GreaterOrEqual(t, a.Valve.Opening, 0.8)
	assert.GreaterOrEqual(t, a.Distance.Target["in"], 5.0)
	assert.LessOrEqual(t, a.Distance.Target["in"], 6.0)
	assert.False(t, a.Stopped)
	assert.Nil(t, a.Short)
	assert.Nil(t, a.Now)
	assert.Nil(t, a.Gun.CapLimit, "this class has none")
	assert.GreaterOrEqual(t, a.Valve.Opening, a.Valve.Floor)
	assert.InDelta(t, 3.0/8, a.Valve.Turns, 1.0/16, "to the nearest eighth")
	assert.InDelta(t, 2, a.Valve.OfTurns, 1e-12)
	assert.InDelta(t, 2, a.Valve.Turns+a.Valve.FromShut, 1e-9)
	assert.Less(t, a.Wall.Open["psi"], a.Wall.Flowing["psi"])
	assert.Less(t, a.Wall.Flowing["psi"], a.Wall.Static["psi"], "a regulator droops when air moves")
}

// A wall left at 70 psi: the valve is closed to a tenth to a fifth of its area.
func TestCommonPracticeWallLeftAt70(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob("--wall", "70psi"))
	require.NotNil(t, a.Now)
	assert.InDelta(t, 70, a.Now.Wall["psi"], 1e-9)
	assert.Less(t, a.Now.AreaNeeded, 0.2)
	assert.Greater(t, a.Now.AreaNeeded, 0.1)
	assert.Greater(t, a.Now.Mach, 0.7, "near choking")
	assert.Greater(t, a.Now.GunIfOpen["psi"], 50.0)
	assert.True(t, a.Now.Enough)
	assert.Contains(t, a.cautioned("warn"), "now-over-stamp")
	assert.Equal(t, "go", a.Verdict, "what was read at the wall does not count")
	require.NotNil(t, a.First)
	assert.Equal(t, "Turn the wall regulator down to 31.0 psi first.", *a.First)
}

// A wall pinned at 140 psi: choked, below a tenth of its area.
func TestCommonPracticeWallPinnedAt140(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob("--wall", "140psi", "--supply", "150psi"))
	require.NotNil(t, a.Now)
	assert.True(t, a.Now.Choked)
	assert.Less(t, a.Now.AreaNeeded, 0.1)
	assert.Greater(t, a.Now.AreaNeeded, 0.0)
	assert.InDelta(t, 1, a.Now.Mach, 1e-9)
}

func TestWallTooLowForTheGun(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob("--wall", "24psi"))
	require.NotNil(t, a.Now)
	assert.False(t, a.Now.Enough)
	assert.Less(t, a.Now.GunIfOpen["psi"], 24.0)
	assert.InDelta(t, 1, a.Now.OpeningNeeded, 1e-12)
}

// Slim long-necked couplings: 10 psi or more goes in them, and one is named.
func TestCommonPracticeSlimCouplings(t *testing.T) {
	usual := planned(t, ExitAnswered, clearJob())
	a := planned(t, ExitAnswered, clearJob("--coupling", "slim"))
	assert.Equal(t, "coupling", a.part(t, a.Bottleneck).Kind)
	var lost float64
	for _, s := range a.Line {
		if s.Kind == "coupling" {
			lost += s.Loss["psi"]
		}
	}
	assert.GreaterOrEqual(t, lost, 10.0)
	assert.Greater(t, a.Wall.Flowing["psi"], usual.Wall.Flowing["psi"]+8)
	assert.InDelta(t, usual.Gun.Working["psi"], a.Gun.Working["psi"], 1e-9)
}

func TestCommonPracticeHighVolumeLowPressureBase(t *testing.T) {
	a := planned(t, ExitAnswered, job("solvent-base", "high-volume-low-pressure"))
	assert.InDelta(t, 25, a.Gun.Working["psi"], 0.5)
	assert.InDelta(t, 10, a.Gun.CapLimit["psi"], 1e-9)
	assert.Less(t, a.Gun.Cap["psi"], 10.0)
}

// 40 C and 12 %: clear about 24 psi, base 23 to 24.
func TestCommonPracticeVeryHotVeryDryDay(t *testing.T) {
	hot := []string{"--temp", "40C", "--humidity", "12"}
	clear := planned(t, ExitAnswered, clearJob(hot...))
	assert.InDelta(t, 24, clear.Gun.Working["psi"], 0.5)
	assert.InDelta(t, clear.Gun.Working["psi"]-26, clear.Weather.Correction["psi"], 1e-9)
	for _, coat := range []string{"solvent-base", "metallic-base", "waterborne-base"} {
		for _, gun := range []string{"high-volume-low-pressure", "reduced-pressure"} {
			base := planned(t, ExitAnswered, job(coat, gun, hot...)).Gun.Working["psi"]
			assert.GreaterOrEqual(t, base, 23.0-1e-9, "%s on %s", coat, gun)
			assert.LessOrEqual(t, base, 24.5, "%s on %s", coat, gun)
		}
	}
}

func TestCommonPracticeOldGunIsHeldEightToTenInches(t *testing.T) {
	for _, coat := range []string{"clear", "metallic-base", "epoxy-primer"} {
		a := planned(t, ExitAnswered, job(coat, "high-pressure"))
		assert.GreaterOrEqual(t, a.Distance.Target["in"], 8.0-1e-9, coat)
		assert.LessOrEqual(t, a.Distance.Target["in"], 10.0+1e-9, coat)
	}
}

func TestSupplyShortNamesTheLimit(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob("--supply", "40psi", "--coupling", "slim"))
	assert.False(t, a.Stopped, "what it gives is inside the coat's band")
	assert.Equal(t, []string{"supply-short"}, a.against("wait"))
	require.NotNil(t, a.Short)
	assert.Less(t, a.Short.Best["psi"], a.Gun.Working["psi"])
	assert.Greater(t, a.Short.SupplyNeeded["psi"], 40.0)
	assert.Equal(t, "coupling", a.part(t, a.Bottleneck).Kind)
	assert.Contains(t, a.Against[0].Text, a.Bottleneck)
	assert.InDelta(t, a.Short.Best["psi"], a.part(t, "inlet valve").Out["psi"], 1e-6, "the line is shown as far as the supply goes")

	// The supply that is said to be needed is enough, and a little less is not.
	needed := a.Short.SupplyNeeded["psi"]
	assert.Equal(t, "go", planned(t, ExitAnswered, clearJob("--coupling", "slim", "--supply", fixed(needed+0.001))).Verdict)
	assert.Equal(t, "wait", planned(t, ExitAnswered, clearJob("--coupling", "slim", "--supply", fixed(needed-0.001))).Verdict)
}

func TestSupplyBelowWhatTheGunWants(t *testing.T) {
	a := planned(t, ExitCannot, clearJob("--supply", "20psi"))
	assert.Equal(t, []string{"supply-below-target"}, a.against("stop"))
	assert.Less(t, a.Short.Best["psi"], 20.0)
}

// ISO 8502-4: at least 3 C (5 F) above the dew point.
func TestPanelNearTheDewPointStopsTheJob(t *testing.T) {
	a := planned(t, ExitCannot, clearJob("--panel", "52F"))
	assert.Equal(t, []string{"dew-near"}, a.against("stop"))
	assert.Less(t, a.Weather.PanelMargin["c"], 3.0)
	b := planned(t, ExitAnswered, clearJob("--panel", "56F"))
	assert.Equal(t, []string{"cold-panel"}, b.against("wait"))
	assert.Empty(t, b.against("stop"))
	assert.Greater(t, b.Weather.PanelMargin["c"], 3.0)
	wet := planned(t, ExitCannot, clearJob("--humidity", "95"))
	assert.Equal(t, []string{"dew-near", "damp"}, wet.against("stop"), "a panel is at the air's temperature unless told")
}

func TestNoRegulatorIsACaseOfItsOwn(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob("--regulator", "none"))
	assert.Equal(t, "coupling", a.Line[0].Kind, "no regulator in the line")
	assert.InDelta(t, 90, a.Wall.Flowing["psi"], 1e-9)
	assert.InDelta(t, 90, a.Wall.Static["psi"], 1e-9)
	assert.Less(t, a.Valve.Area, 0.2)
	assert.Equal(t, []string{"no-regulator"}, a.against("wait"))
	assert.Equal(t, "none", a.Input["regulator"])
	assert.NotContains(t, a.Input, "regulator_at")
}

func TestRegulatorAtTheGunsFootStandsBehindTheHose(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob("--regulator-at", "gun"))
	assert.Equal(t, []string{"coupling", "hose", "coupling", "regulator", "valve", "passages", "cap"}, kinds(a))
	usual := planned(t, ExitAnswered, clearJob())
	assert.Less(t, a.Wall.Open["psi"], usual.Wall.Open["psi"], "the hose's loss is before it")
	assert.InDelta(t, 90, a.Line[0].In["psi"], 1e-9, "the hose stands at the supply")
	assert.Equal(t, "gun", a.Input["regulator_at"])
}

// What the gun's gauge shows is told beside what is set: 26.0 psi in the handle, 27.9 before
// the valve; without one nothing reads, and the card says what does without.
func TestWhatTheGunsGaugeShowsIsTold(t *testing.T) {
	for place, row := range map[string]string{
		"handle": `26\.0 psi +in the handle, trigger pulled`, "foot": `27\.9 psi +before the valve, trigger pulled`,
		"none": `none +count the turns, or set 29\.9 psi with the trigger\s+pulled and leave the valve wide open`,
	} {
		job := clearJob("--gauge", place)
		assert.Regexp(t, `(?m)^  GUN GAUGE +`+row+`$`, boothset("", job...).out)
		a := planned(t, ExitAnswered, job)
		assert.Equal(t, place == "none", a.Gun.Reads == nil)
		if place == "none" {
			assert.NotContains(t, boothset("", job...).out, "gauge reads")
		}
	}
}

func TestGaugeBeforeTheValveReadsMoreThanTheGunGets(t *testing.T) {
	handle := planned(t, ExitAnswered, clearJob())
	assert.InDelta(t, handle.Gun.Working["psi"], handle.Gun.Reads["psi"], 1e-9)
	foot := planned(t, ExitAnswered, clearJob("--gauge", "foot"))
	assert.Greater(t, foot.Gun.Reads["psi"], foot.Gun.Working["psi"]+0.5)
	assert.InDelta(t, foot.part(t, "inlet valve").In["psi"], foot.Gun.Reads["psi"], 1e-9)
}

func TestMainHoseAndWhip(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob("--hose", "25ft,3/8in", "--hose", "6ft,5/16in", "--filter", "point-of-use"))
	assert.Equal(t, []string{
		"wall regulator (1/2in)", "filter (point-of-use)", "wall coupling (large-bore)", "main hose", "whip coupling (large-bore)",
		"whip hose", "gun coupling (large-bore)", "inlet valve", "gun's own passages", "air cap",
	}, a.names())
	usual := planned(t, ExitAnswered, clearJob())
	assert.Greater(t, a.Wall.Open["psi"], usual.Wall.Open["psi"])
	assert.Len(t, a.Input["hose"], 2)
}

// The same job in bare metric numbers gives the same answer.
func TestMetricReadsBareNumbersAsMetric(t *testing.T) {
	us := planned(t, ExitAnswered, clearJob("--temp", "20C", "--supply", "6bar", "--hose", "8m,10mm", "--mark", "0.05bar", "--altitude", "300m", "--panel", "19C", "--wall", "4bar"))
	metric := planned(t, ExitAnswered, clearJob("--units", "metric", "--temp", "20", "--supply", "6", "--hose", "8,10", "--altitude", "300", "--panel", "19", "--wall", "4"))
	require.Equal(t, "metric", metric.Input["units"])
	us.Input["units"] = "metric"
	assert.Equal(t, us.Input, metric.Input)
	assert.Equal(t, us.Wall, metric.Wall)
	assert.Equal(t, us.Line, metric.Line)
	for i, r := range metric.Reasons {
		assert.NotContains(t, r.Text, " psi", r.ID)
		assert.Equal(t, us.Reasons[i].ID, r.ID)
	}
}

func TestShopsFileChangesTheAnswer(t *testing.T) {
	shop := shopEnv(t, "[line]\ncoupling = \"slim\"\nsupply = \"95psi\"\n")
	args := []string{"plan", "--coat", "clear", "--gun", "reduced-pressure", "--temp", "72F", "--humidity", "45", "--json"}
	r := boothsetIn(shop, "", args...)
	require.Equal(t, ExitAnswered, r.code, r.err)
	a := decoded(t, r.out)
	assert.Equal(t, "slim", a.Input["coupling"])
	assert.InDelta(t, 95, a.Line[0].In["psi"], 1e-9)
	// What is given on the command line comes before it.
	r = boothsetIn(shop, "", append(args, "--coupling", "large-bore")...)
	assert.Equal(t, "large-bore", decoded(t, r.out).Input["coupling"])
	// A fault in it names file and line.
	r = boothsetIn(shopEnv(t, "[line]\n\nhoses = 3\n"), "", args...)
	assert.Equal(t, ExitBadInput, r.code)
	assert.Empty(t, r.out)
	assert.Contains(t, r.err, "shop.toml:3:1: unknown key")
}

func kinds(a planJSON) (kinds []string) {
	for _, s := range a.Line {
		kinds = append(kinds, s.Kind)
	}
	return kinds
}

func fixed(psi float64) string { return strconv.FormatFloat(psi, 'f', 6, 64) + "psi" }

// A gun without an inlet valve has no opening to set: nothing of one in JSON, and the card
// says what sets the gun.
func TestAGunWithoutAValve(t *testing.T) {
	shop := shopEnv(t, "[gun.bare]\nclass = \"reduced-pressure\"\ninlet = \"30psi\"\nflow = \"9cfm\"\nno-valve = true\n")
	args := []string{"plan", "--coat", "clear", "--gun", "bare", "--temp", "72F", "--humidity", "45", "--supply", "90psi", "--wall", "40psi"}
	r := boothsetIn(shop, "", append(args, "--json")...)
	require.Equal(t, ExitAnswered, r.code, r.err)
	var v map[string]any
	require.NoError(t, json.Unmarshal([]byte(r.out), &v))
	assert.Contains(t, v, "valve")
	assert.Nil(t, v["valve"])
	assert.NotContains(t, v["now"], "opening_needed")
	card := boothsetIn(shop, "", args...).out
	assert.Regexp(t, `(?m)^  INLET VALVE +none +the wall regulator alone sets this gun$`, card)
	for _, bad := range []string{"after the valve", "an eighth of a turn", "with the valve open", "open valve"} {
		assert.NotContains(t, strings.Join(strings.Fields(card), " "), bad)
	}
}
