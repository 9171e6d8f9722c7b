package shop_test

import (
	"strings"
	"testing"
	"unicode"

	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// told holds what is said of any file at all: a fault that costs the file where nothing came of
// it, and no character that a terminal would take for more than text.
func told(t *testing.T, cameOut bool, faults []*shop.Fault) {
	t.Helper()
	costs := false
	for _, f := range faults {
		costs = costs || f.Weight == shop.Broken
		for _, lang := range words.Languages() {
			w, _ := words.For(lang)
			said := f.In(w)
			require.False(t, strings.ContainsFunc(said, func(r rune) bool { return !unicode.IsPrint(r) }), "%q", said)
		}
	}
	require.NotEqual(t, cameOut, costs)
}

// shownText holds a text of a file to what can be shown.
func shownText(t *testing.T, texts ...string) {
	t.Helper()
	for _, s := range texts {
		require.False(t, strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsPrint(r) }), "%q", s)
	}
}

func fuzzReader(f *testing.F) *question.Reader {
	f.Helper()
	return questiontest.Open(f)
}

func FuzzBooth(f *testing.F) {
	r := fuzzReader(f)
	for _, s := range []string{"", boothTwo, "format = \"boothset.booth/1\"\nline = []\n", "format = \"boothset.booth/1\"\nother = [\"6cfm,mask\", \"x\"]\nhose = [[1]]\n[supply]\n"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		b, faults := shop.ReadBooth(r, "two", "booths/two.toml", data)
		if b == nil {
			told(t, false, faults)
			return
		}
		shownText(t, b.Name, b.Notes)
		if !broken(faults) {
			_, wrong := r.Over(b.Answers).Plan(r.Over(b.Answers).AnyJob(), 0)
			require.Empty(t, wrong)
		}
	})
}

func broken(faults []*shop.Fault) bool {
	for _, f := range faults {
		if f.Weight == shop.Broken {
			return true
		}
	}
	return false
}

func FuzzGun(f *testing.F) {
	r := fuzzReader(f)
	for _, s := range []string{"", gunFour, "format = \"boothset.gun/1\"\nclass = \"touch-up\"\nno-valve = true\nfelt = { distance = \"5in\" }\n[pot]\nloss = \"1L\"\n"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		g, faults := shop.ReadGun(r, "four", "guns/four.toml", data)
		told(t, g != nil, faults)
		if g != nil {
			shownText(t, g.Name, g.Notes, g.Cap)
			_, err := shop.WithGuns(r, g)
			require.NoError(t, err)
		}
	})
}

func FuzzSetting(f *testing.F) {
	for _, s := range []string{"", "format = 'boothset.setting/1'\ncoat = 'clear'\nstage = 'any'\ngun = 'any'\nband = 'any'\nreplaces = ['x']\n[set]\nwall = '31 psi'\n[worked]\ntemp = '72F'\n[[worked.line]]\nkind = 'hose'\nfigures = [1e400]\n"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		s, faults := shop.ReadSetting("two", "settings/two/0001-01890a5d-ac96-774b-bcce-b302099a8057.toml", data)
		told(t, s != nil, faults)
		if s != nil {
			shownText(t, s.Coat, s.Stage, s.Gun, s.Band, s.Why, s.Knobs)
			require.Len(t, shop.Standing([]*shop.Setting{s}), 1)
		}
	})
}

func FuzzLog(f *testing.F) {
	for _, s := range []string{"", "{}\n", `{"format":"boothset.record/1","id":"01890a5d-ac96-774b-bcce-b302099a8057","at":"2031-03-04T09:30:00Z","read":{"wall":"31 psi"},"outcome":["good"]}` + "\n", "<<<<<<< a\n=======\n{\"asked\":{\"\\u0000\":null}}"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		all, faults := shop.ReadLog("two", "log/two/x.jsonl", data)
		told(t, !broken(faults), faults)
		for _, r := range append(all, shop.Jobs(all)...) {
			shownText(t, r.ID, r.Of, r.Note, r.Coat, r.Gun, string(r.Then), r.Painter)
			for field, texts := range r.Asked {
				shownText(t, append(texts, field)...)
			}
			for _, o := range r.Outcome {
				shownText(t, string(o))
			}
		}
	})
}

func FuzzBandsAndPainters(f *testing.F) {
	for _, s := range []string{"", "format = \"boothset.bands/1\"\n[[band]]\nid = \"a\"\ntemp = [\"1C\", \"2C\"]\nday = [\"1C\", \"1\"]\n", "format = \"boothset.painters/1\"\n[painter]\n\"x\" = 1\n"} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		bands, faults := shop.ReadBands("bands.toml", data)
		told(t, !broken(faults), faults)
		for _, b := range bands {
			shownText(t, b.ID, b.Name)
			require.True(t, b.Holds(b.Air, b.Damp))
		}
		painters, faults := shop.ReadPainters("painters.toml", data)
		told(t, !broken(faults), faults)
		for _, initials := range painters {
			shownText(t, initials)
		}
	})
}

// Whatever a booth's file holds, saving it leaves a file that is read, or leaves it as it was.
func FuzzEdit(f *testing.F) {
	r := fuzzReader(f)
	for _, s := range []string{boothTwo, "format = \"boothset.booth/1\"", "format = \"boothset.booth/1\"\r\n\"supply\" = '''\n90psi''' # x\r\n[t]\n", "x.y = 1\nformat = \"boothset.booth/1\"\n#"} {
		f.Add([]byte(s), "95psi")
	}
	f.Fuzz(func(t *testing.T, data []byte, supply string) {
		folder := folder(t, "booths/two.toml", string(data))
		before, _ := folder.Booth(r, "two")
		err := folder.SaveBooth(r, "two", shop.Key{Name: "supply", Value: supply}, shop.Key{Name: "notes", Value: "a"})
		after, _ := folder.Booth(r, "two")
		if err != nil {
			require.Equal(t, string(data), content(t, folder, "booths/two.toml"))
			return
		}
		require.NotNil(t, after)
		require.Equal(t, "a", after.Notes)
		require.Equal(t, supply, after.Answers.Text(question.Supply))
		if before != nil {
			require.Equal(t, before.Name, after.Name)
			require.Equal(t, before.Answers.With(question.Supply).Texts(), after.Answers.With(question.Supply).Texts())
		}
	})
}
