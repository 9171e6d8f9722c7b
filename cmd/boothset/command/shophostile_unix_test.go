//go:build unix

package command

import (
	"encoding/csv"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"

	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// evil is what no terminal, page or file name may be given as it is.
const evil = "=1+\x1b[2J\x1b]0;x\x07\u202etxt\u2066\u009b31m\u200b</td><script>\r\n"

// hostileShop is a folder in which whatever a person or a program could put there is hostile, but
// for booth two and gun number-four: names, notes, ids, names of files, links out of it.
func hostileShop(t *testing.T) (dir, outside string, env func(string) string) {
	t.Helper()
	dir, _ = quarryLane(t)
	outside = t.TempDir()
	state := map[string]string{shop.Environment: dir, "XDG_STATE_HOME": t.TempDir()}
	env = func(name string) string { return state[name] }
	quoted := `"` + strings.NewReplacer("\x1b", `\u001b`, "\x07", `\u0007`, "\u202e", `\u202e`, "\u2066", `\u2066`, "\u009b", `\u009b`, "\u200b", `\u200b`, "\r", `\r`, "\n", `\n`).Replace(evil) + `"`
	for name, text := range map[string]string{
		"booths/evil.toml":    "format = \"boothset.booth/1\"\nname = " + quoted + "\nnotes = " + quoted + "\nsupply = \"90psi\"\n" + quoted + " = 1\n",
		"booths/worse.toml":   "format = " + quoted + "\n",
		"booths/torn.toml":    "format = \"boothset.booth/1\"\nsupply = " + quoted + "\n",
		"guns/evil.toml":      "format = \"boothset.gun/1\"\nname = " + quoted + "\nclass = \"reduced-pressure\"\ninlet = \"30psi\"\nflow = \"9cfm\"\ncap-fitted = " + quoted + "\n",
		"painters.toml":       "format = \"boothset.painters/1\"\n[painter]\n\"ad458a7a-b031-4ee4-98d0-f706dc48e2e6\" = " + quoted + "\n",
		"bands.toml":          "format = \"boothset.bands/1\"\n[[band]]\nid = \"mild\"\nname = " + quoted + "\nday = [\"21C\", \"50%\"]\n",
		"booths/two (1).toml": "", "booths/two-conflict-\u202e\x1b[31m.toml": "", "guns/\x1b]0;evil.toml": "",
		"settings/two/0001-01a22a44-c89f-79fe-8818-85f0feeca52e.toml": "format = 'boothset.setting/1'\ncoat = \"clear\"\nstage = \"any\"\ngun = \"any\"\nband = \"any\"\nreplaces = [" + quoted + "]\nagreed = 2031-03-04T09:30:00Z\nby = " + quoted + "\nwhy = " + quoted + "\nknobs = " + quoted + "\n[set]\nwall = '31 psi'\n[worked]\n[worked.gun]\nkind = \"gun\"\nentry = " + quoted + "\n[[worked.line]]\nkind = \"hose\"\nentry = " + quoted + "\nfigures = [1.0]\n[worked.answer]\nwall = '31 psi'\n",
		"settings/two/0002-01a22a44-c89f-79fe-8818-85f0feeca52f.toml": "format = 'boothset.setting/1'\ncoat = " + quoted + "\nstage = \"any\"\ngun = \"any\"\nband = \"any\"\n",
		"log/two/2031-03-01a22a44-c89f-79fe-8818-85f0feeca52e.jsonl":  `{"format":"boothset.record/1","id":"01a22a44-c89f-79fe-8818-85f0feeca52e","at":"2025-03-04T09:30:00Z","coat":` + quoted + `,"stage":` + quoted + `,"gun":` + quoted + `,"asked":{` + quoted + `:[` + quoted + `]},"outcome":[` + quoted + `],"then":` + quoted + `,"painter":` + quoted + `,"note":` + quoted + "}\n" + evil + "\n",
	} {
		at := filepath.Join(dir, filepath.FromSlash(name))
		require.NoError(t, os.MkdirAll(filepath.Dir(at), 0o700))
		require.NoError(t, os.WriteFile(at, []byte(text), 0o600))
	}
	require.NoError(t, os.WriteFile(filepath.Join(outside, "secret.toml"), []byte("format = \"boothset.booth/1\"\nname = \"SECRET\"\n"), 0o600))
	for link, to := range map[string]string{"booths/link.toml": "secret.toml", "guns/link.toml": "secret.toml", "settings/three": ".", "log/three": "."} {
		require.NoError(t, os.Symlink(filepath.Join(outside, to), filepath.Join(dir, filepath.FromSlash(link))))
	}
	return dir, outside, env
}

// Nothing that stands in the folder reaches a terminal or a table raw, nor keeps the rest from
// being used; nothing outside of it is read or written.
func TestAHostileFolder(t *testing.T) {
	dir, outside, env := hostileShop(t)
	before := tree(t, outside)
	job := []string{"--coat", "clear", "--gun", "number-four", "--temp", "70F", "--humidity", "50"}
	at := func(booth string, args ...string) []string { return append(append(args, "--booth", booth), job...) }
	for _, args := range [][]string{
		{"shop"}, {"shop", "--json"}, {"shop", "check"}, {"shop", "check", "--json"}, {"settings", "--all"}, {"settings", "--json"}, {"log"}, {"log", "--json"}, {"log", "--csv"},
		{"drift"}, {"drift", "--json"}, {"sheet", "--booth", "two"}, {"sheet", "--booth", "evil", "--json"}, {"sheet"}, {"shop", "painter"}, {"shop", "painter", "--json"},
		at("two", "plan"), at("two", "card"), at("evil", "card"), at("two", "card", "--format", "html"), at("two", "card", "--json"), at("two", "compare"), at("evil", "compare", "--json"),
		at("two", "agree"), at("two", "log", "record", "--note", evil), {"log", "outcome", "--booth", "two", "--outcome", "good"}, at("three", "agree"), at("three", "log", "record"), at("link", "plan"),
		{"plan", "--booth", "two", "--gun", "evil", "--coat", "clear", "--temp", "70F", "--humidity", "50"}, {"shop", "add", filepath.Join(outside, "secret.toml"), "--dry-run"},
		{"shop", "--shop", dir + "/../" + filepath.Base(dir)}, at(evil, "plan"), {"shop", "add", evil}, {"demo", dir},
	} {
		r := boothsetIn(env, "", args...)
		for _, c := range r.out + r.err {
			if !unicode.IsPrint(c) && c != '\n' {
				require.Failf(t, "raw", "%U of %q", c, args)
			}
		}
		assert.NotContains(t, r.out+r.err, "SECRET", args)
		if slices.Contains(args, "html") {
			assert.NotContains(t, r.out, "<script", args)
		}
	}
	assert.Equal(t, before, tree(t, outside), "nothing was written outside")
	assert.Equal(t, ExitAnswered, boothsetIn(env, "", at("two", "plan")...).code, "the rest goes on")

	checked := boothsetIn(env, "", "shop", "check").out
	for _, says := range []string{"booths/worse.toml", "booths/two (1).toml: a copy", "two-conflict", "booths/link.toml: is a link out", "guns/link.toml: is a link out", "settings/three", "log/three"} {
		assert.Contains(t, checked, says)
	}
	rows, err := csv.NewReader(strings.NewReader(boothsetIn(env, "", "log", "--csv").out)).ReadAll()
	require.NoError(t, err)
	for _, row := range rows[1:] {
		for _, cell := range row {
			assert.False(t, cell != "" && strings.ContainsRune("=+-@\t\r", rune(cell[0])), "%q would be worked out", cell)
		}
	}
}

// tree is every file below a folder with what it holds.
func tree(t *testing.T, dir string) map[string]string {
	t.Helper()
	all := map[string]string{}
	require.NoError(t, filepath.WalkDir(dir, func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := os.ReadFile(name)
		all[name] = string(data)
		return err
	}))
	return all
}

// A file of more than 1 MB costs itself, wherever it is.
func TestTooLargeFilesCostThemselves(t *testing.T) {
	dir, env := quarryLane(t, "booths/huge.toml", "format = \"boothset.booth/1\"\nnotes = \""+strings.Repeat("x", 1<<20)+"\"\n", "bands.toml", strings.Repeat("#", 1<<20+1))
	agreedOn(t, dir, 41)
	large := filepath.Join(dir, "log", "two", "2025-01-01a22a44-c89f-79fe-8818-85f0feeca52e.jsonl")
	require.NoError(t, os.MkdirAll(filepath.Dir(large), 0o700))
	require.NoError(t, os.WriteFile(large, []byte(strings.Repeat(" ", 1<<20+1)), 0o600))
	r := boothsetIn(env, "", "shop", "check")
	assert.Equal(t, ExitCannot, r.code)
	for _, name := range []string{"booths/huge.toml", "bands.toml", "log/two/2025-01-"} {
		assert.Contains(t, r.out, name)
	}
	assert.Equal(t, 3, strings.Count(r.out, "it is larger than 1 MB"))
	assert.Equal(t, ExitAnswered, boothsetIn(env, "", "sheet", "--booth", "two", "--coat", "clear").code)
}

// What is made is for its owner alone, unless the folder's own mode says more, whatever the
// umask.
func TestTheModesOfWhatCommandsMake(t *testing.T) {
	for folder, want := range map[fs.FileMode][2]fs.FileMode{0o700: {0o700, 0o600}, 0o770: {0o770, 0o660}, 0o755: {0o755, 0o644}} {
		dir, env := quarryLane(t)
		require.NoError(t, os.Chmod(dir, folder))
		for _, args := range [][]string{append(agreeJob, "--band", "mild"), recordJob, {"shop", "painter", "MK"}} {
			require.Equal(t, ExitAnswered, boothsetIn(env, "", args...).code, args)
		}
		made := 0
		for _, below := range []string{"settings", "settings/two", "log", "log/two", "painters.toml"} {
			name := filepath.Join(dir, below)
			files := []string{name}
			more, err := filepath.Glob(filepath.Join(name, "*.*"))
			require.NoError(t, err)
			for _, f := range append(files, more...) {
				info, err := os.Stat(f)
				require.NoError(t, err)
				of := want[1]
				if info.IsDir() {
					of = want[0]
				}
				assert.Equal(t, of, info.Mode().Perm(), "%s in a folder of %v", below, folder)
				made++
			}
		}
		assert.GreaterOrEqual(t, made, 7)
	}
}
