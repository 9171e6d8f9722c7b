package shop_test

import (
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// An answer as it stands becomes a setting, and a job of the log.
func TestAnAnswerIsKept(t *testing.T) {
	r := questiontest.Open(t)
	f := folder(t, "booths/two.toml", boothTwo)
	bands, faults := f.Bands()
	require.Empty(t, faults)
	over := r.Over(boothIn(t, f, r, "two").Answers)
	typed := over.ReadAll(question.Plan, questiontest.MildDay("clear", "reduced-pressure"), unit.US).With(question.Supply)
	typed = typed.With(question.Temp, over.Read(question.Temp, "72", unit.US)).With(question.Tip, over.Read(question.Tip, "1.3", unit.Metric))
	q, s := planned(t, over, typed)

	agreed := shop.SettingOf("two", q, s, bands)
	assert.Equal(t, clearMild, agreed.Subject)
	assert.Equal(t, s.Wall.Flowing, agreed.Values.Wall)
	assert.InDelta(t, 1.3, agreed.Values.Tip.MM(), 1e-9)
	assert.Zero(t, agreed.Values.Supply, "nobody sets the supply")
	kept, err := f.Agree(agreed, unit.US)
	require.NoError(t, err)
	all, _ := f.Settings("two")
	assert.Equal(t, []string{kept.ID}, idsOf(shop.Replaced(all, clearMild)))
	assert.Empty(t, shop.Replaced(all, shop.Subject{Coat: "clear", Stage: "full", Gun: shop.Any, Band: "mild"}))

	job := shop.JobOf("two", over, typed, q, s, bands, unit.US)
	assert.Equal(t, clearMild, job.Subject)
	assert.Equal(t, s.Working.Flow, job.Answered.Flow)
	assert.Equal(t, []string{"72 F"}, job.Asked["temp"], "what was typed, with its unit")
	assert.Len(t, job.Asked["line"], 5, "and what the booth answers")
	assert.Empty(t, job.Asked["hose"], "none of what does not count beside it")

	hot, s := planned(t, over, typed.With(question.Temp, over.Read(question.Temp, "40C", unit.US)).With(question.Humidity, over.Read(question.Humidity, "20", unit.US)))
	assert.Equal(t, "hot-dry", shop.SettingOf("two", hot, s, bands).Band)
	assert.Empty(t, shop.SettingOf("two", hot, s, nil).Band)
	_, err = f.Agree(shop.SettingOf("two", hot, s, nil), unit.US)
	assert.ErrorContains(t, err, "any for each", "for no weather at all")
}

func idsOf(all []*shop.Setting) (ids []string) {
	for _, s := range all {
		ids = append(ids, s.ID)
	}
	return ids
}

func TestValuesAreReadByTheirKey(t *testing.T) {
	r := questiontest.Open(t)
	for _, c := range []struct {
		key, text string
		sys       unit.System
		want      shop.Values
		says      string
	}{
		{"wall", "31", unit.US, shop.Values{Wall: unit.PSIG(31)}, ""},
		{"wall", "2.1 bar", unit.US, shop.Values{Wall: unit.BarG(2.1)}, ""},
		{"gun", "2.1", unit.Metric, shop.Values{Gun: unit.BarG(2.1)}, ""},
		{"opening", "80", unit.US, shop.Values{Opening: 0.8}, ""},
		{"tip", "1.3", unit.US, shop.Values{Tip: unit.MM(1.3)}, ""},
		{"distance", "15cm", unit.US, shop.Values{Distance: 0.15}, ""},
		{"wall", "9999psi", unit.US, shop.Values{}, "is outside 0 to"},
		{"opening", "0", unit.US, shop.Values{}, "must be above 0"},
		{"opening", "101%", unit.US, shop.Values{}, "is outside"},
		{"wall", "plenty", unit.US, shop.Values{}, "such as 90psi"},
		{"lamp", "1", unit.US, shop.Values{}, "choose supply, wall, gun, flow, distance, opening or tip"},
	} {
		var got shop.Values
		fault := got.Say(r, c.key, c.text, c.sys)
		assert.Equal(t, c.want, got, "%s=%s", c.key, c.text)
		if c.says == "" {
			assert.Nil(t, fault, "%s=%s", c.key, c.text)
		} else if assert.NotNil(t, fault, "%s=%s", c.key, c.text) {
			assert.Contains(t, fault.Error(), c.says)
		}
	}
}

func TestOutcomesAreReadInTheTradesWords(t *testing.T) {
	es, ok := words.At("es")
	require.True(t, ok)
	for _, w := range []*words.Words{words.English(), es} {
		for _, o := range shop.Outcomes() {
			for _, typed := range []string{string(o), o.In(w), " " + o.In(w) + " "} {
				got, ok := shop.OutcomeNamed(w, typed)
				assert.True(t, ok, typed)
				assert.Equal(t, o, got, typed)
			}
		}
		for _, then := range shop.Thens() {
			got, ok := shop.ThenNamed(w, then.In(w))
			assert.True(t, ok)
			assert.Equal(t, then, got)
		}
	}
	_, ok = shop.OutcomeNamed(es, "")
	assert.False(t, ok)
	assert.Equal(t, "glow", shop.Outcome("glow").In(es), "of a later program")
}

func TestTheJobsThatNobodySpokeOf(t *testing.T) {
	f, m := folder(t), machine(t)
	first, err := f.Keep(m, job(1), unit.US)
	require.NoError(t, err)
	second, err := f.Keep(m, job(2), unit.US)
	require.NoError(t, err)
	later := shop.LaterOf(first)
	later.At, later.Outcome = second.At, []shop.Outcome{shop.Good}
	_, err = f.Keep(m, later, unit.US)
	require.NoError(t, err)
	log, faults := f.Log(first.Booth)
	require.Empty(t, faults)
	jobs := shop.Jobs(log)
	require.Len(t, jobs, 2)
	unsaid := shop.Unsaid(jobs)
	if assert.Len(t, unsaid, 1) {
		assert.Equal(t, second.ID, unsaid[0].ID)
	}
	if begun := shop.Begun(jobs, " "+strings.ToUpper(first.ID)); assert.Len(t, begun, 1) {
		assert.Equal(t, first.ID, begun[0].ID)
	}
	assert.Len(t, shop.Begun(jobs, ""), 2)
	assert.Empty(t, shop.Begun(jobs, "no"))
}

func TestPaintersAreFoundByTheirInitials(t *testing.T) {
	f := folder(t)
	id, err := f.AddPainter("M.K.")
	require.NoError(t, err)
	other, err := f.AddPainter("m.k.")
	require.NoError(t, err)
	painters, faults := f.Painters()
	require.Empty(t, faults)
	assert.ElementsMatch(t, []string{id, other}, painters.Named(" M.K. "))
	assert.Empty(t, painters.Named("J.D."))
}
