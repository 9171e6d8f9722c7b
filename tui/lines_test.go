package tui

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/last"
	"boothset/presets/words"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/require"
)

// realLines is the lines of real kinds that the command line is held to, in an invented shop.
type realLines struct {
	Shop string
	Job  map[string]string
	Line []struct {
		Name  string
		Flags map[string]string
		Parts []string
	}
}

func readRealLines(t test) (all realLines) {
	data, err := os.ReadFile(filepath.Join("..", "cmd", "boothset", "command", "testdata", "lines.toml"))
	require.NoError(t, err)
	require.NoError(t, toml.Unmarshal(data, &all))
	return all
}

// onScreen is the assistant at the answer of a line of a real kind.
func (all *realLines) onScreen(t test, i int, l look) *root {
	l.shop = all.Shop
	r := start(t, l)
	flags := maps.Clone(all.Job)
	maps.Copy(flags, all.Line[i].Flags)
	d := last.Draft{Answers: last.Texts{"line": all.Line[i].Parts}, At: atBench, Units: flags["units"], Check: checkSkip}
	if flags["compressor"] != "" {
		d.Check = checkKeep
	}
	delete(flags, "units")
	for name, text := range flags {
		d.Answers[name] = []string{text}
	}
	run := r.s.read(d)
	r.take(run)
	at, _ := r.place(run)
	r.goTo(at)
	return r
}

// Every line of a real kind is answered on screen in every window and language, and tells in
// the view of the line each of its parts.
func TestRealLinesOnScreen(t *testing.T) {
	all := readRealLines(t)
	for i := range all.Line {
		for n, lang := range words.Languages() {
			l := look{lang: lang, size: theSizes[(i+n)%len(theSizes)]}
			r := all.onScreen(t, i, l)
			require.Equal(t, "bench", where(r), all.Line[i].Name)
			require.NoError(t, r.bench.err)
			for view := range views {
				press(r, viewKeys()[view])
				requireFits(t, r.View(), l.size)
			}
			s := r.bench.kept.Setup
			if !s.Stopped() {
				wall := unit.Pressure.Number(r.s.sys, float64(s.Wall.Flowing), unit.Usual)
				require.Contains(t, strings.Join(r.bench.settingsInWords(l.size.w), " "), wall, all.Line[i].Name)
			}
			if s.Foot.Is && !s.Stopped() {
				foot := r.s.text("number-foot-set", calc.FigureOf("foot", calc.FigureGauge, s.Foot.Flowing))
				require.Contains(t, strings.Join(r.bench.settingsInWords(l.size.w), " "), foot)
			}
			told := strings.Join(r.bench.lineInWords(70)[1], " ")
			for _, p := range r.bench.kept.Request.Line {
				require.Contains(t, strings.ToLower(strings.Join(strings.Fields(told), " ")), strings.ToLower(plain(p.Name)), all.Line[i].Name)
			}
		}
	}
}
