package tui

import (
	"strings"
	"testing"

	"boothset/calc/line"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// toParts is to the line as a list of its parts.
var toParts = then(atLine, "3")

// lineOf is the kinds of the parts of the answer's line.
func lineOf(r *root) (kinds []line.Kind) {
	for i := range r.bench.kept.Request.Line {
		kinds = append(kinds, r.bench.kept.Request.Line[i].Kind)
	}
	return kinds
}

// By one hand a part is marked, swapped for another of its kind, added, moved and removed; what
// comes of it is the line of the answer.
func TestALineIsChangedPartByPart(t *testing.T) {
	for _, lang := range words.Languages() {
		for _, l := range theSizes {
			r := start(t, look{size: l, lang: lang})
			by := func(keys ...string) {
				for _, k := range keys {
					press(r, k)
					requireFits(t, r.View(), l)
				}
			}
			by(toParts...)
			require.Equal(t, "parts", where(r))
			text := func() string { return r.s.current().Text(question.Line) }
			require.Equal(t, "regulator=1/2in + coupling=large-bore + hose=25ft, 3/8in + coupling=large-bore", text())
			by("down", "right")
			require.Contains(t, text(), "regulator=1/2in + coupling=ordinary + hose")
			by("1")
			require.Equal(t, "kinds", where(r))
			by("2")
			require.Equal(t, "parts", where(r))
			require.Contains(t, text(), "coupling=ordinary + filter=point-of-use + hose", "after the marked one")
			by("3")
			require.Contains(t, text(), "regulator=1/2in + filter=point-of-use + coupling=ordinary + hose")
			by("down", "down", "right", "down", "right")
			require.Contains(t, text(), "hose=30 ft, 1/2 in", "its length, then its bore")
			by("down", "2", "1", "1")
			require.Equal(t, "regulator=1/2in + filter=point-of-use + coupling=ordinary + hose=30 ft, 1/2 in + regulator=1/2in", text())
			by("up", "up", "up", "4")
			require.Equal(t, "regulator=1/2in + filter=point-of-use + hose=30 ft, 1/2 in + coupling=ordinary + regulator=1/2in", text())
			by("enter")
			require.Equal(t, "gauge", where(r), "what a list does not say is asked")
			by("enter", "enter", "enter", "enter")
			require.Equal(t, "bench", where(r))
			require.Equal(t, []line.Kind{line.RegulatorKind, line.FilterKind, line.HoseKind, line.CouplingKind, line.RegulatorKind}, lineOf(r))
			require.True(t, r.bench.kept.Setup.Foot.Is)
		}
	}
}

// A line keeps its last part, holds no more than it can, and is not taken with three regulators.
func TestWhatALineOfPartsRefuses(t *testing.T) {
	r := open80x24(t)
	press(r, toParts...)
	refused := func(text string) {
		t.Helper()
		require.Contains(t, strings.Join(strings.Fields(r.View()), " "), text)
	}
	press(r, "left", "left", "left")
	refused("! " + r.s.say("field-end"))
	press(r, "1", "1", "1", "1", "enter")
	require.Equal(t, "parts", where(r))
	refused("3 regulators in one line; at most 2")
	press(r, "up")
	require.NotContains(t, r.View(), "3 regulators", "the next key clears it")
	for range 20 {
		press(r, "1", "4")
	}
	refused("No more parts fit: 16 at most.")
	for range 20 {
		press(r, "2")
	}
	refused(r.s.say("parts-last"))
	require.Len(t, r.s.current().Get(question.Line), 1)
	press(r, "3")
	refused(r.s.say("field-end"))
	press(r, "esc")
	require.Equal(t, stepLine, where(r))
}

// The step that shows the line shows the list, and the questions about the usual line take its
// place again.
func TestBackToTheUsualLine(t *testing.T) {
	r := open80x24(t)
	press(r, then(toParts, "down", "right", "right", "esc")...)
	require.Contains(t, r.View(), "slim long-necked coupling")
	require.Contains(t, r.View(), "large-bore coupling")
	press(r, "2")
	require.Equal(t, "regulator", where(r))
	require.False(t, question.Whole(r.s.current()))
	press(r, "esc", "3")
	require.Equal(t, "regulator=1/2in + coupling=large-bore + hose=25ft, 3/8in + coupling=large-bore", r.s.current().Text(question.Line))

	shop := start(t, look{shop: "[line]\nparts = [\"coupling=slim\", \"hose=25ft,3/8in\"]\n"})
	press(shop, atLine...)
	require.Contains(t, shop.View(), "slim long-necked coupling")
	press(shop, "2")
	require.Equal(t, "regulator", where(shop), "the shipped usual line, in place of the shop's list")
	press(shop, "esc", "1", "enter")
}

// At the bench each part of a list can be moved.
func TestPartsAtTheBench(t *testing.T) {
	r := open80x24(t)
	press(r, then(toParts, "enter", "enter", "enter")...)
	require.Equal(t, "bench", where(r))
	walkTo(t, r, question.Line, 0)
	require.Contains(t, r.View(), "< 1 regulator 1/2 in regulator >")
	press(r, "down", "right")
	require.True(t, r.bench.changed())
	require.Equal(t, "ordinary", r.bench.tried.Request.Line[1].Entry)
	require.Equal(t, "large-bore", r.bench.tried.Request.Line[3].Entry)
}

// Plain has words for the same, and comes to the same line.
func TestPlainChangesALinePartByPart(t *testing.T) {
	for _, lang := range words.Languages() {
		l := look{lang: lang}
		got := dialogueOf(t, l, lines(append(linesToAnswer[:7:7], "3", "", "", "2 coupling=ordinary", "+2 filter=point-of-use", "3>2", "4 hose=30ft,1/2in", "-5", "+4 regulator=1/2in", "+3 coupling=hu", "-9", "what", "9>1", "", "", "", "", "", "")...))
		require.NoError(t, got.err, got.out)
		require.NotNil(t, got.left.Plan)
		var kinds []line.Kind
		for i := range got.left.Plan.Request.Line {
			kinds = append(kinds, got.left.Plan.Request.Line[i].Kind)
		}
		require.Equal(t, []line.Kind{line.RegulatorKind, line.FilterKind, line.CouplingKind, line.HoseKind, line.RegulatorKind}, kinds)
		require.Equal(t, 4, strings.Count(got.out, "> ! "), got.out)
	}
}

// A run that is left among its parts is taken up with them.
func TestALineOfPartsIsKept(t *testing.T) {
	r := open80x24(t)
	press(r, then(toParts, "down", "right")...)
	d := r.draft()
	require.Equal(t, stepLine, d.At)
	again := open80x24(t)
	again.take(again.s.read(d))
	require.Equal(t, r.s.current().Text(question.Line), again.s.current().Text(question.Line))
	require.Contains(t, again.s.current().Text(question.Line), "coupling=ordinary")
}
