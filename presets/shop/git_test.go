package shop_test

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// repository runs git in a folder, with nobody's settings.
func repository(t *testing.T, dir string) func(ok bool, args ...string) string {
	t.Helper()
	return func(ok bool, args ...string) string {
		t.Helper()
		git := exec.Command("git", args...)
		git.Dir = dir
		git.Env = append(os.Environ(), "GIT_CONFIG_GLOBAL="+os.DevNull, "GIT_CONFIG_SYSTEM="+os.DevNull, "HOME="+dir,
			"GIT_AUTHOR_NAME=north", "GIT_AUTHOR_EMAIL=north@example.invalid", "GIT_COMMITTER_NAME=north", "GIT_COMMITTER_EMAIL=north@example.invalid")
		out, err := git.CombinedOutput()
		if ok {
			require.NoError(t, err, string(out))
		}
		return string(out)
	}
}

// Two clones of a shop's repository are each written to, settings and log, and merged by git
// without a conflict and without a loss; settings agreed on both sides are twins, both there. A
// booth edited on both sides is a conflict that costs itself alone.
func TestTwoClonesMerge(t *testing.T) {
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("there is no git here")
	}
	r := questiontest.Open(t)
	base := t.TempDir()
	north, south := filepath.Join(base, "north"), filepath.Join(base, "south")
	put(t, north, "booths/two.toml", boothTwo, "booths/three.toml", boothTwo, "guns/four.toml", gunFour, ".gitattributes", "* -text\n")
	f := at(t, north)
	_, err := f.Agree(agreed(t, r, boothIn(t, f, r, "two"), clearMild), unit.US)
	require.NoError(t, err)
	gitNorth := repository(t, north)
	gitNorth(true, "init", "-q", "-b", "main")
	gitNorth(true, "add", "-A")
	gitNorth(true, "commit", "-qm", "the shop")
	repository(t, base)(true, "clone", "-q", north, south)
	gitSouth := repository(t, south)

	const each = 1000
	confirmed := map[string]bool{}
	for dir, git := range map[string]func(bool, ...string) string{north: gitNorth, south: gitSouth} {
		f, m := at(t, dir), machine(t)
		for i := range each {
			kept, err := f.Keep(m, job(i%500), unit.US)
			require.NoError(t, err)
			confirmed[kept.ID] = true
		}
		for _, of := range []shop.Subject{clearMild, {Coat: "clear", Stage: "any", Gun: "any", Band: "any"}} {
			kept, err := f.Agree(agreed(t, r, boothIn(t, f, r, "two"), of), unit.US)
			require.NoError(t, err)
			confirmed[kept.ID] = true
		}
		git(true, "add", "-A")
		git(true, "commit", "-qm", "a week")
	}
	gitNorth(true, "pull", "-q", "--no-rebase", "--no-edit", south, "main")

	f = at(t, north)
	there := map[string]bool{}
	log, faults := f.Log("two")
	require.Empty(t, faults)
	assert.Len(t, log, 2*each)
	for _, r := range log {
		there[r.ID] = true
	}
	settings, faults := f.Settings("two")
	require.Empty(t, faults)
	for _, s := range settings {
		there[s.ID] = true
	}
	for id := range confirmed {
		require.True(t, there[id], id)
	}
	_, faults = f.Check(r, aDay.AddDate(1, 0, 0))
	assert.Equal(t, []string{"shop-twins", "shop-twins"}, ids(faults))
	assert.Len(t, shop.For(shop.Standing(settings), clearMild), 2, "both are shown")
	kept, err := f.Agree(agreed(t, r, boothIn(t, f, r, "two"), clearMild), unit.US)
	require.NoError(t, err)
	assert.Len(t, kept.Replaces, 2, "agreed anew it stands in place of both")
	_, faults = f.Check(r, aDay.AddDate(1, 0, 0))
	assert.Equal(t, []string{"shop-twins"}, ids(faults))

	for i, side := range []struct {
		dir string
		git func(bool, ...string) string
	}{{north, gitNorth}, {south, gitSouth}} {
		put(t, side.dir, "booths/three.toml", fmt.Sprintf("format = \"boothset.booth/1\"\nsupply = \"%dpsi\"\n", 90+5*i))
		side.git(true, "add", "-A")
		side.git(true, "commit", "-qm", "the supply of three")
	}
	assert.Contains(t, gitNorth(false, "pull", "-q", "--no-rebase", "--no-edit", south, "main"), "CONFLICT")
	booths, faults := f.Booths(r)
	require.Len(t, booths, 1, "three costs itself alone")
	assert.Equal(t, "two", booths[0].ID)
	require.Equal(t, []string{"shop-merge"}, ids(faults))
	assert.Equal(t, "booths/three.toml:2", faults[0].Where())
}
