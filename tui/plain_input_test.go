package tui

import (
	"errors"
	"io"
	"slices"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

func TestPlainTakesLinesHoweverTheyEnd(t *testing.T) {
	want := dialogueOf(t, look{}, lines(append(slices.Clone(linesToAnswer), "")...))
	require.NotNil(t, want.left.Plan)
	for name, input := range map[string]string{
		"CRLF":            strings.Join(linesToAnswer, "\r\n") + "\r\n\r\n",
		"byte-order mark": "\ufeff" + lines(linesToAnswer...) + "\n",
		"look-alikes":     strings.NewReplacer("75F", "７５\u00a0℉", "90psi", "９０ psi").Replace(lines(linesToAnswer...)) + "\n",
		"blanks":          "  8\t\n 2 \n" + lines(linesToAnswer[2:]...) + " \n",
		"at the menu it ends without a last line": lines(linesToAnswer...),
	} {
		got := dialogueOf(t, look{}, input)
		require.NoError(t, got.err, name)
		require.Equal(t, want.left, got.left, name)
	}
	got := dialogueOf(t, look{}, strings.TrimSuffix(lines(linesToAnswer[:3]...), "\n"))
	var ended *InputError
	require.ErrorAs(t, got.err, &ended)
	require.Equal(t, "How humid is the air in the booth?", ended.At, "the last line counts without its end")
}

func TestPlainSaysWhereTheInputEnded(t *testing.T) {
	bench := slices.Clone(linesToAnswer)
	for _, c := range []struct {
		input []string
		at    string
	}{
		{nil, "What are you spraying?"},
		{linesToAnswer[:6], "What does the gauge before the regulator read with the trigger pulled?"},
		{append(slices.Clone(bench), "c"), "Which one? Type its number; nothing goes back."},
		{append(slices.Clone(bench), "c", "5"), "Air: type the value to try, or + or - for a step; nothing leaves it as it is."},
		{append(slices.Clone(bench), "c", "5", "+"), "Tried, not kept."},
		{append(slices.Clone(bench), pageKey(question.Thin), ""), "cup"},
	} {
		input := ""
		if len(c.input) > 0 {
			input = lines(c.input...)
		}
		got := dialogueOf(t, look{}, input)
		var ended *InputError
		require.ErrorAs(t, got.err, &ended, "%q", c.input)
		require.Nil(t, got.left.Plan)
		switch c.at {
		case "cup":
			require.Contains(t, got.out, ended.At+":")
		default:
			require.Equal(t, c.at, ended.At)
		}
	}
}

func TestPlainRefusesWhatIsNoLineOfText(t *testing.T) {
	s := start(t, look{}).s
	want := s.text("plain-line", calc.CountFigure("most", longestText))
	for name, junk := range map[string]string{
		"NUL":            "7\x005F",
		"an escape":      "\x1b[31m75F",
		"not UTF-8":      "75F\xff\xfe",
		"a long line":    strings.Repeat("7", longestText+1),
		"a longer line":  strings.Repeat("75F ", 1<<20),
		"blanks at last": strings.Repeat(" ", 1<<16) + "75F",
		"C1":             "\u009b31m75F",
		"a lone return":  "75F\r45",
	} {
		got := dialogueOf(t, look{}, lines("8", "2", junk, "75F", "45", "", "", "90psi", "1", "", "", ""))
		require.NoError(t, got.err, name)
		require.Equal(t, 1, strings.Count(got.out, "! "+want), name)
		require.NotNil(t, got.left.Plan, name)
	}
}

func TestPlainEmptiesAnAnswer(t *testing.T) {
	// A wall that was typed, gone back to and emptied: only what to set is worked out.
	got := dialogueOf(t, look{}, lines("8", "2", "75F", "45", "", "", "90psi", "1", "60psi", "<", plainClear, "", "1", ""))
	require.NoError(t, got.err)
	require.NotNil(t, got.left.Plan)
	require.False(t, got.left.Plan.Request.HasNow)
	got = dialogueOf(t, look{}, lines("8", "2", "75F", "45", "", "", "90psi", "1", "60psi", "<", "", "1", ""))
	require.True(t, got.left.Plan.Request.HasNow, "nothing typed takes what stood there")
}

func TestPlainOffersWhatStoodThereAndNotWhatWasWrong(t *testing.T) {
	got := dialogueOf(t, look{}, lines("8", "2", "75F", "<", "300F", "", ""))
	require.Contains(t, got.out, "Left empty: 75F")
	require.NotContains(t, got.out, "Left empty: 300F")
}

func TestPlainLeavesAnywhereWithQ(t *testing.T) {
	for at := range len(linesToAnswer) + 1 {
		got := dialogueOf(t, look{}, lines(append(slices.Clone(linesToAnswer[:at]), plainQuit)...))
		require.NoError(t, got.err)
		require.Equal(t, at == len(linesToAnswer), got.left.Plan != nil, at)
	}
	got := dialogueOf(t, look{}, lines(append(slices.Clone(linesToAnswer), pageKey(question.Day), "", plainQuit)...))
	require.NoError(t, got.err)
	require.NotNil(t, got.left.Plan, "from a page of the answer too")
}

// A page is gone through field by field, back and out, and said as the screen says it.
func TestPlainPages(t *testing.T) {
	job := func(more ...string) []string { return append(slices.Clone(linesToAnswer), more...) }
	for name, c := range map[string]struct {
		more []string
		want string
	}{
		"every field":            {[]string{pageKey(question.Day), "", "", "", "", "", "", "", "", "", "", "", ""}, "Clearcoat. Air 75 F"},
		"straight to the answer": {[]string{pageKey(question.Thin), "", "", "din4", "22", "=", ""}, "Clearcoat. 22 s in the"},
		"what is in its way":     {[]string{pageKey(question.Mix), "=", "30ft2", "=", ""}, "Clearcoat, reduced-pressure gun, 30 ft2"},
		"picked":                 {[]string{pageKey(question.Day), "surfacer", "=", ""}, "Primer surfacer. Air 75 F"},
		"picked and emptied":     {[]string{pageKey(question.Day), "2", "<", plainClear, "", "=", ""}, "Clearcoat. Air 75 F"},
		"wrong, then right":      {[]string{pageKey(question.Thin), "", "", "tin", "din4", "22", "=", ""}, "! cup \"tin\": choose"},
		"back out":               {[]string{pageKey(question.Day), "", "<", "<", ""}, "At the gun"},
		"units":                  {[]string{pageKey(question.Thin), "", "", "din4", "22", "90", plainUnits, "=", ""}, "32.2 C"},
	} {
		got := dialogueOf(t, look{}, lines(job(c.more...)...))
		require.NoError(t, got.err, name)
		require.NotNil(t, got.left.Plan, name)
		require.Contains(t, strings.Join(strings.Fields(got.out), " "), c.want, name)
	}
}

// broken is an output that takes no more.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errBroken }

// torn is an input that fails.
type torn struct{}

func (torn) Read([]byte) (int, error) { return 0, errBroken }

var errBroken = errors.New("the other end is closed")

func TestPlainStopsWhereItCannotBeHeardOrHear(t *testing.T) {
	o := look{}.options(t)
	o.In, o.Out = strings.NewReader(lines(linesToAnswer...)), broken{}
	_, err := Plain(o)
	require.ErrorIs(t, err, errBroken)
	o.In, o.Out = torn{}, io.Discard
	_, err = Plain(o)
	require.ErrorIs(t, err, errBroken)
}

// Whatever is typed, every line is taken once and the end of the input is the end.
func FuzzPlain(f *testing.F) {
	for _, seed := range []string{lines(linesOfAll...), lines(linesToAnswer...), "<\n<\n?\nu\nq\n", "\n\n20\n1\n\n\n1\n\n\n1\nc\n\nA0", "8\n2\n75F\x00\n\xff\n", lines(append(slices.Clone(linesToAnswer), pageKey(question.Day), "x", "=", "99999999999999999999", "c", "11", "1e400", "=")...)} {
		f.Add(seed, false)
		f.Add(seed, true)
	}
	f.Fuzz(func(t *testing.T, input string, spanish bool) {
		l := look{}
		if spanish {
			l.lang = words.Languages()[1]
		}
		got := dialogueOf(t, l, input)
		var ended *InputError
		if got.err != nil {
			require.ErrorAs(t, got.err, &ended)
		}
	})
}

// What is tried is said without what it leaves as it was; a caution that comes with it is.
func TestPlainSaysOfWhatIsTriedWhatMoves(t *testing.T) {
	s := start(t, look{}).s
	tried := func(more ...string) string {
		got := dialogueOf(t, look{}, lines(append(slices.Clone(linesToAnswer), more...)...))
		_, after, ok := strings.Cut(got.out, s.say("tried"))
		require.True(t, ok)
		return strings.Join(strings.Fields(after), " ")
	}
	warm := tried("c", "5", "+", "2", "")
	require.Contains(t, warm, "WALL ")
	require.NotContains(t, warm, "isocyanate", "it was said and stays")
	short := tried("c", "9", "20psi", "2", "")
	require.Contains(t, short, "STOP Not enough air")
	require.NotContains(t, short, ", was", "nothing is set")
	low := tried("c", "9", "28psi", "2", "")
	require.Contains(t, low, "WAIT Not enough air")
	require.Contains(t, low, ", was 31 psi;")
}
