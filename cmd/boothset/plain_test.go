package main

import (
	"strings"
	"testing"

	"boothset/presets/catalogue"
	"boothset/presets/words"
	"boothset/tui/golden"

	"github.com/stretchr/testify/require"
)

// hereDocument is a whole job: the line and the supply part by part, every view, a value
// tried and kept, another put back, the coat's four pages, and out.
const hereDocument = `8
2
75F
45
70F
500ft
100psi
2
60psi
2
3
1
1
25ft,3/8in
2
1
12cfm
60gal


none




95F
70F

1
2
3
4
5
6
c
9
90psi
1
c
5
+
2
7
=
8


din4
22
=
9
=
0
=
hood
=

`

// From a here-document the whole job is done, in every language and both units, and ends with
// the card that the same answers give on the command line.
func TestTheWholeJobFromAHereDocument(t *testing.T) {
	var all [][2]string
	for _, lang := range words.Languages() {
		all = append(all, [2]string{lang, catalogue.UnitsUS}, [2]string{lang, catalogue.UnitsMetric})
	}
	for _, x := range all {
		lang, units := x[0], x[1]
		name := lang + "-" + units
		t.Run(name, func(t *testing.T) {
			args := []string{"--lang", lang, "--units", units}
			r := boothset(hereDocument, append([]string{"--plain", "--card"}, args...)...)
			require.Zero(t, r.code, r.err)
			require.Empty(t, r.err)
			require.NotContains(t, r.out, "\x1b")
			require.Equal(t, 1, strings.Count(r.out, "> ! "), "the mix cannot do without an area; nothing else was wrong")
			golden.Equal(t, "job-"+name+".txt", r.out)

			card := boothset("", append(strings.Fields("plan --coat clear --gun reduced-pressure --temp 75F --humidity 45 --panel 70F --altitude 500ft --supply 90psi --regulator 1/2in --regulator-at wall --filter none --hose 25ft,3/8in --coupling ordinary --gauge handle --wall 60psi --compressor 12cfm --receiver 60gal --main none --receiver-temp 95F --line-temp 70F"), args...)...)
			require.Equal(t, r.code, card.code)
			require.True(t, strings.HasSuffix(r.out, card.out), "the same card")
			w, ok := words.For(lang)
			require.True(t, ok)
			left := boothset(hereDocument, append([]string{"--plain"}, args...)...)
			require.Equal(t, strings.TrimSuffix(r.out, card.out), left.out[:len(r.out)-len(card.out)])
			require.LessOrEqual(t, strings.Count(left.out[len(r.out)-len(card.out):], "\n"), 6, "else the settings in a few lines")
			require.Equal(t, 4, strings.Count(r.out, "\n"+w.Say("form-answer")+"\n")+strings.Count(r.out, "> "+w.Say("form-answer")+"\n"))
		})
	}
}
