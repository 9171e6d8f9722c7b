package command

import (
	"strings"
	"testing"

	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// lineOf is flags that give a line part by part.
func lineOf(parts ...string) (flags []string) {
	for _, p := range parts {
		flags = append(flags, "--line", p)
	}
	return flags
}

// twoRegulators is a line with a regulator at the wall and one at the gun's foot.
var twoRegulators = []string{"regulator=1/2in", "coupling=slim", "hose=25ft,3/8in", "coupling=large-bore", "regulator=1/4in"}

// A line is answered in the order its parts were given, and echoed so.
func TestALineInItsOrder(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob(lineOf("dryer=refrigerated", "regulator=1/2in", "coupling=sl", "hose=25ft,3/8in", "coupling=ordinary", "valve=ball")...))
	assert.Equal(t, []string{"dryer", "regulator", "coupling", "hose", "coupling", "valve", "valve", "passages", "cap"}, kinds(a))
	line, ok := a.Input["line"].([]any)
	require.True(t, ok)
	require.Len(t, line, 6)
	assert.Equal(t, map[string]any{"kind": "dryer", "entry": "refrigerated"}, line[0])
	assert.Equal(t, "slim", line[2].(map[string]any)["entry"], "a beginning stands for its entry")
	assert.InDelta(t, 0.375, line[3].(map[string]any)["bore"].(map[string]any)["in"], 1e-9)
	assert.Nil(t, a.Input["coupling"], "there are two kinds of them")
	assert.Equal(t, "1/2in", a.Input["regulator"])
	assert.Contains(t, reasonsOf(a), "valve-in-line-open")
	assert.InDelta(t, 90, a.Line[0].In["psi"], 1e-9, "the dryer stands at the supply")
}

func reasonsOf(a planJSON) (ids []string) {
	for _, r := range a.Reasons {
		ids = append(ids, r.ID)
	}
	return ids
}

// The usual line by its flags and part by part is one line: every surface says the same.
func TestTheUsualLineEitherWay(t *testing.T) {
	short := boothset("", append(clearJob("--filter", "clogged", "--hose", "25ft,3/8in", "--hose", "6ft,5/16in"), "--json")...)
	parts := boothset("", append(clearJob(lineOf("regulator=1/2in", "filter=clogged", "coupling=large-bore", "hose=25ft,3/8in", "coupling=large-bore", "hose=6ft,5/16in", "coupling=large-bore")...), "--json")...)
	require.Zero(t, short.code, short.err)
	assert.Equal(t, short.out, parts.out)
}

// With two regulators the card, the JSON and the exit say what to set at each, and that the
// valve stays open.
func TestTwoRegulatorsAreBothSet(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob(lineOf(twoRegulators...)...))
	require.NotNil(t, a.Foot)
	assert.Equal(t, 1.0, a.Valve.Opening)
	assert.Zero(t, a.Valve.Reserve["psi"])
	assert.Equal(t, a.Foot.Open, a.Foot.Flowing)
	assert.Greater(t, a.Wall.Flowing["psi"], a.Wall.Open["psi"]+0.9)
	assert.Greater(t, a.Wall.Open["psi"], a.Foot.Flowing["psi"]+5, "slim coupling, hose and seat are between")
	assert.InDelta(t, a.part(t, "regulator at the gun inlet (1/4in)").Out["psi"], a.Foot.Flowing["psi"], 1e-9)
	assert.InDelta(t, a.part(t, "wall regulator (1/2in)").Out["psi"], a.Wall.Flowing["psi"], 1e-9)
	assert.Subset(t, reasonsOf(a), []string{"wall-feeds", "foot-sets", "valve-open-foot"})
	card := boothset("", clearJob(lineOf(twoRegulators...)...)...)
	assert.Contains(t, card.out, "WALL         "+unit.US.Gauge(unit.PSIG(a.Wall.Flowing["psi"]), unit.Usual))
	assert.Contains(t, card.out, "GUN INLET    "+unit.US.Gauge(unit.PSIG(a.Foot.Flowing["psi"]), unit.Usual))
	assert.Contains(t, card.out, "leave it open: the regulator nearer the gun sets")
	assert.Nil(t, planned(t, ExitAnswered, clearJob()).Foot)

	starved := planned(t, ExitCannot, clearJob(append(lineOf(twoRegulators...), "--supply", "30psi")...))
	require.NotNil(t, starved.Short)
	assert.Greater(t, starved.Short.SupplyNeeded["psi"], 30.0)
}

// The wall as it stands is told of a line that has a regulator in its list, and of no other.
func TestTheWallOfALineOfParts(t *testing.T) {
	a := planned(t, ExitAnswered, clearJob(append(lineOf("regulator=1/2in", "hose=25ft,3/8in"), "--wall", "70psi", "--mark", "2psi")...))
	require.NotNil(t, a.Now)
	assert.InDelta(t, 70, a.Now.Wall["psi"], 1e-9)
	held := planned(t, ExitAnswered, clearJob(append(lineOf(twoRegulators...), "--wall", "70psi")...))
	assert.Contains(t, reasonsOf(held), "now-foot")
	assert.InDelta(t, 26, held.Now.GunIfOpen["psi"], 1e-6, "the one nearer the gun holds it back")
	low := planned(t, ExitAnswered, clearJob(append(lineOf(twoRegulators...), "--wall", "25psi")...))
	assert.Contains(t, reasonsOf(low), "now-too-low")
	assert.Less(t, low.Now.GunIfOpen["psi"], 25.0)
	r := boothset("", clearJob(append(lineOf("hose=25ft,3/8in"), "--wall", "70psi")...)...)
	assert.Equal(t, ExitBadInput, r.code)
	assert.Contains(t, r.err, "regulator")
}

// A list and a flag of the usual line are refused together, and both named.
func TestALineAndAFlagOfTheUsualLine(t *testing.T) {
	for flag, text := range map[string]string{"hose": "6ft,3/8in", "coupling": "slim", "filter": "none", "regulator": "none", "regulator-at": "gun"} {
		r := boothset("", clearJob(append(lineOf("hose=25ft,3/8in"), "--"+flag, text)...)...)
		assert.Equal(t, ExitBadInput, r.code)
		assert.Equal(t, "boothset: "+flag+" \""+text+"\": give "+flag+" or line, not both: line gives every part\n", r.err)
	}
}

// A batch takes the list too, or one text with a plus between.
func TestALineInABatch(t *testing.T) {
	one := strings.Replace(goodLine, "}", `,"line":["regulator=1/2in","coupling=slim","hose=25ft,3/8in"]}`, 1)
	other := strings.Replace(goodLine, "}", `,"line":"regulator=1/2in + coupling=slim + hose=25ft,3/8in"}`, 1)
	bad := strings.Replace(goodLine, "}", `,"line":["hose=25ft,3/8in"],"coupling":"slim"}`, 1)
	r := boothset(one+"\n"+other+"\n"+bad+"\n", "plan", "--batch")
	lines := strings.Split(strings.TrimSpace(r.out), "\n")
	require.Len(t, lines, 3)
	assert.Equal(t, decoded(t, lines[0]).Line, decoded(t, lines[1]).Line)
	assert.Equal(t, []string{"regulator", "coupling", "hose", "valve", "passages", "cap"}, kinds(decoded(t, lines[0])))
	assert.Contains(t, lines[2], "give coupling or line, not both")
}

// A shop's file gives its line as an array; flags give another in its place.
func TestALineInAShopsFile(t *testing.T) {
	env := shopEnv(t, "[line]\nparts = [\"regulator=1/2in\", \"coupling=slim\", \"hose=50ft,3/8in\", \"coupling=ordinary\"]\n")
	r := boothsetIn(env, "", append(clearJob(), "--json")...)
	require.Zero(t, r.code, r.err)
	assert.Equal(t, []string{"regulator", "coupling", "hose", "coupling", "valve", "passages", "cap"}, kinds(decoded(t, r.out)))
	r = boothsetIn(env, "", append(clearJob(lineOf("hose=6ft,3/8in")...), "--json")...)
	require.Zero(t, r.code, r.err)
	assert.Equal(t, []string{"hose", "valve", "passages", "cap"}, kinds(decoded(t, r.out)))
	r = boothsetIn(env, "", clearJob("--coupling", "slim")...)
	assert.Equal(t, ExitBadInput, r.code)
	assert.Contains(t, r.err, "this shop's file gives the line part by part")
	r = boothsetIn(env, "", append(clearJob("--coupling", "slim", "--line", "none"), "--json")...)
	require.Zero(t, r.code, r.err)
	assert.Equal(t, "slim", decoded(t, r.out).Input["coupling"])
}

// A shell completes a part by its kind and what of that kind there is.
func TestPartsAreCompleted(t *testing.T) {
	r := boothset("", "__complete", "plan", "--line", "")
	require.Zero(t, r.code, r.err)
	for _, part := range []string{"coupling=slim\t", "dryer=desiccant\t", "hose=\n", "regulator=1/2in\t"} {
		assert.Contains(t, r.out, part)
	}
	assert.NotContains(t, r.out, "none")
}

// Heated air takes more pressure on the way for less flow; a dryer keeps the water out of what
// is sprayed.
func TestHoseAirAndDryer(t *testing.T) {
	cool, warm := planned(t, ExitAnswered, clearJob()), planned(t, ExitAnswered, clearJob("--hose-temp", "120F"))
	assert.Less(t, warm.Gun.Flow["cfm"], cool.Gun.Flow["cfm"])
	assert.Equal(t, cool.Gun.Working, warm.Gun.Working)
	assert.InDelta(t, 120, warm.Input["hose_temp"].(map[string]any)["f"], 1e-9)

	damp := []string{"--temp", "86F", "--humidity", "80", "--compressor", "20cfm", "--receiver", "80gal", "--hose-temp", "50F"}
	wet := planned(t, ExitAnswered, clearJob(damp...))
	assert.Contains(t, wet.cautioned("warn"), "water-in-hose")
	dry := planned(t, ExitAnswered, clearJob(append(damp, lineOf("dryer=refrigerated", "regulator=1/2in", "coupling=large-bore", "hose=25ft,3/8in", "coupling=large-bore")...)...))
	assert.NotContains(t, dry.cautioned("warn"), "water-in-hose")
	assert.Contains(t, reasonsOf(dry), "water-dryer")
}
