package command

import (
	"boothset/presets/answer"
	"strings"
	"testing"

	"github.com/charmbracelet/x/ansi"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every card fits 80 columns, has a whole sentence for each reason, and gives the
// numbers that the JSON of the same job does.
func TestCards(t *testing.T) {
	for name, args := range jobs {
		t.Run(name, func(t *testing.T) {
			r := boothset("", args...)
			require.Contains(t, []int{ExitAnswered, ExitCannot}, r.code)
			require.Empty(t, r.err)
			for _, l := range strings.Split(r.out, "\n") {
				assert.LessOrEqual(t, ansi.StringWidth(l), answer.Width, l)
				assert.Equal(t, strings.TrimRight(l, " "), l, "no blanks at the end")
				assert.Equal(t, ansi.Strip(l), l, "no codes of a terminal")
			}
			for _, bad := range []string{"{", "}", "NaN", "Inf", "-0 ", "%!"} {
				assert.NotContains(t, r.out, bad)
			}
			a := decoded(t, boothset("", append(args, "--json")...).out)
			plain := strings.Join(strings.Fields(r.out), " ")
			for _, x := range a.Reasons {
				assert.Contains(t, plain, strings.Join(strings.Fields(x.Text), " "))
				assert.Contains(t, plain, x.Source)
			}
			for _, x := range a.Cautions {
				assert.Contains(t, plain, x.Text)
			}
			for _, s := range a.Line {
				assert.Contains(t, plain, s.Name)
			}
		})
	}
}

func TestCardShowsTheThreeNumbers(t *testing.T) {
	card := boothset("", clearJob()...).out
	assert.Regexp(t, `(?m)^  WALL +31 psi +trigger pulled; 33 psi trigger released$`, card)
	assert.Regexp(t, `(?m)^  DISTANCE +5\.5 in +between 5\.0 in and 6\.0 in$`, card)
	assert.Regexp(t, `(?m)^  INLET VALVE +closed 3/8 turn +81% open; 1\.1 psi to spare; at most 1/2 turn$`, card)
	assert.Regexp(t, `(?m)^main hose < `, card, "what costs most is marked")
	metric := boothset("", clearJob("--units", "metric")...).out
	assert.Regexp(t, `(?m)^  WALL +2\.\d\d bar +trigger pulled`, metric)
	assert.Regexp(t, `(?m)^  DISTANCE +140 mm `, metric)
	answer, _, _ := strings.Cut(metric, "\nWhy\n")
	assert.NotContains(t, answer, "psi")
	foot := boothset("", clearJob("--regulator-at", "gun")...).out
	assert.Regexp(t, `(?m)^  GUN INLET +28 psi `, foot)
}

// Safety in one line on every answer, and what stops the job before all else.
func TestCardSaysWhatStopsTheJobFirst(t *testing.T) {
	card := boothset("", clearJob("--humidity", "99")...).out
	assert.True(t, strings.HasPrefix(card, "STOP: do not spray. Warm booth air, panel and paint to"), card)
	for _, setting := range []string{"WALL", "DISTANCE", "INLET VALVE", "At the gun", "Eight times in ten", "wall regulator"} {
		assert.NotContains(t, card, setting, "nothing is set")
	}
	for name, args := range jobs {
		plain := strings.Join(strings.Fields(boothset("", args...).out), " ")
		assert.Contains(t, plain, "The safety and product data sheets, the gun's rating and local codes come before these figures.", name)
	}
}

// Where the supply is short the card says what the gun gets, not only what it wants; under
// the coat's band nothing of what it wants.
func TestCardOfAShortSupply(t *testing.T) {
	r := boothset("", clearJob("--supply", "28psi")...)
	require.Equal(t, ExitAnswered, r.code)
	assert.True(t, strings.HasPrefix(r.out, "WAIT: conditions are not right yet. Raise the supply to"), r.out)
	assert.Contains(t, r.out, "\nWAIT Not enough air: 28.0 psi gives the gun 24.")
	assert.Contains(t, r.out, "\nThe gun wants 26.0 psi after the valve, 8.7 cfm, 15.5 psi at the cap.\nIt gets 24.0 psi at most.\n")
}

// Each verdict heads its card with what turns it, and a script reads it off the exit code.
func TestEachVerdictHeadsItsCard(t *testing.T) {
	for _, x := range []struct {
		args []string
		code int
		head string
	}{
		{clearJob(), ExitAnswered, "GO: set it like this and spray.\n\nClearcoat,"},
		{clearJob("--temp", "93F", "--humidity", "30"), ExitAnswered, "WATCH: you can spray, but read the cautions first. Cool the booth to "},
		{clearJob("--regulator", "none"), ExitAnswered, "WAIT: conditions are not right yet. Fit a regulator at the wall.\nWAIT There is no regulator"},
		{clearJob("--supply", "20psi"), ExitCannot, "STOP: do not spray. Raise the supply to "},
		{clearJob("--wall", "70psi"), ExitAnswered, "GO: set it like this and spray.\n\nClearcoat, reduced-pressure gun. Air 72 F at 45% humidity, supply 90 psi.\n\nTurn the wall regulator down to 31.0 psi first.\n\n  WALL "},
	} {
		r := boothset("", x.args...)
		assert.Equal(t, x.code, r.code, x.args)
		assert.True(t, strings.HasPrefix(r.out, x.head), r.out)
	}
}

func TestALongNameOfTheShopsKeepsTheTableInItsColumns(t *testing.T) {
	shop := shopEnv(t, "[coupling.extraordinarily-long-name-of-a-coupling-of-an-invented-shop]\nconductance = 2.0\nratio = 0.3\n[line]\ncoupling = \"extraordinarily-long-name-of-a-coupling-of-an-invented-shop\"\n")
	r := boothsetIn(shop, "", clearJob()...)
	require.Equal(t, ExitAnswered, r.code, r.err)
	_, table, found := strings.Cut(r.out, "The line ")
	require.True(t, found)
	for i, l := range strings.Split(table, "\n")[1:8] {
		assert.Len(t, l, answer.Width, "row %d: %s", i, l)
	}
}
