package tui

import (
	"testing"

	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

func TestTheSupplyIsCheckedOnlyWhereItIsGoneThrough(t *testing.T) {
	r := open80x24(t)
	press(r, toSupply...)
	require.Equal(t, "bench", where(r))
	got := r.result()
	require.True(t, got.Plan.Setup.Supplied.Checked)
	require.InDelta(t, 12, got.Plan.Request.Shop.System.Rated.SCFM(), 1e-9)
	require.InDelta(t, 60, got.Plan.Request.Shop.System.Receiver.Volume.USGallons(), 1e-9)
	require.InDelta(t, 90, got.Plan.Request.Shop.System.CutIn.PSI(), 1e-9, "at the supply where nothing was said")
	require.InDelta(t, 0.5, got.Plan.Request.Shop.System.Others[0].Duty, 1e-9)
	for where(r) != stepCheck {
		press(r, "esc")
	}
	press(r, "1", "enter")
	require.Equal(t, "bench", where(r))
	require.False(t, r.result().Plan.Setup.Supplied.Checked, "skipped, though it was gone through once")
	require.NotContains(t, r.View(), "12 cfm")
	press(r, "esc", "esc", "2", "enter")
	require.Equal(t, got, r.result(), "and all of it is still there")
}

func TestWithoutACompressorNothingOfTheSupplyIsAsked(t *testing.T) {
	r := open80x24(t)
	press(r, then(atCheck, "2")...)
	require.Equal(t, question.Compressor.Name, where(r))
	press(r, "enter", "enter")
	require.Equal(t, "bench", where(r))
	require.False(t, r.result().Plan.Setup.Supplied.Checked)
}

func TestAShopsOwnSupplyIsCheckedUnlessSkipped(t *testing.T) {
	r := start(t, look{size: usualSize, shop: `[line]
compressor = "18cfm"
receiver = "60gal"
`})
	press(r, atCheck...)
	require.Contains(t, r.View(), "18cfm")
	press(r, "enter", "enter")
	require.True(t, r.result().Plan.Setup.Supplied.Checked)
	press(r, "esc", "esc", "1", "enter")
	require.False(t, r.result().Plan.Setup.Supplied.Checked)
}

func TestAFaultOfTheSupplyThatShowsInTheAnswerLeadsToItsQuestion(t *testing.T) {
	r := open80x24(t)
	press(r, then(toSupply[:17], "100", "enter", "90", "enter", "enter", "enter", "enter", "enter", "enter", "enter", "enter", "enter")...)
	require.Equal(t, question.CutOut.Name, where(r), "it stops below where it starts")
	require.NotEmpty(t, faultText(r))
	press(r, "ctrl+u", "130", "enter", "enter", "enter", "enter", "enter", "enter", "enter", "enter", "enter")
	require.Equal(t, "bench", where(r))
}

func TestBadSuppliesStayInTheirField(t *testing.T) {
	for _, c := range []struct {
		at   int
		bad  string
		want string
	}{
		{13, "5 h", "18cfm"},
		{15, "60 p", "Only"},
		{19, "100ft", "length and bore"},
		{21, "10cfm,150", "share of the time"},
		{23, "3 x", "Only"},
	} {
		r := open80x24(t)
		press(r, toSupply[:c.at]...)
		at := where(r)
		for _, k := range c.bad {
			press(r, string(k))
		}
		q := r.page().(*stepPage)
		if c.want == "Only" {
			require.Contains(t, q.fault, c.want, c.bad)
			continue
		}
		press(r, "enter")
		require.Equal(t, at, where(r))
		require.Contains(t, q.fault, c.want)
	}
}
