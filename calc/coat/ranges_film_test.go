package coat_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

func TestRangesOfFilm(t *testing.T) {
	total := func(before unit.Length, limits coat.Limits, coats ...unit.Length) error {
		return only(coat.RunningTotal(coats, before, limits))
	}
	wide := coat.Limits{Low: um(10), High: um(5000)}
	comb := func(wetted, next, solids float64) error {
		_, _, err := coat.CombRange(um(wetted), um(next), solids)
		return err
	}
	coats := func(total, most float64) error {
		_, _, err := coat.CoatsFor(um(total), um(most))
		return err
	}
	cover := func(litres, film, solids, te float64) error {
		return only(coat.Coverage(unit.Litres(litres), um(film), solids, te))
	}
	for _, b := range []bound{
		{"part-amount", 0, 1e6, func(v float64) error {
			return only(coat.ReadySolids([]coat.Part{{Amount: 1, Solids: 0.5}, {Amount: v, Solids: 0.5}}))
		}},
		{"part-solids", 0, 100, func(v float64) error {
			return only(coat.ReadySolids([]coat.Part{{Amount: 1, Solids: v / 100}}))
		}},
		{"dry-film", 0.1, 5000, func(v float64) error { return only(coat.WetFromDry(um(v), 0.4, 0)) }},
		{"volume-solids", 1, 100, func(v float64) error { return only(coat.WetFromDry(um(50), v/100, 0)) }},
		{"thinner", 0, 200, func(v float64) error { return only(coat.WetFromDry(um(50), 0.4, v/100)) }},
		{"wet-film", 0.1, 5000, func(v float64) error { return only(coat.DryFromWet(um(v), 0.4, 0)) }},
		{"volume-solids", 1, 100, func(v float64) error { return only(coat.DryFromWet(um(50), v/100, 0)) }},
		{"thinner", 0, 200, func(v float64) error { return only(coat.DryFromWet(um(50), 0.4, v/100)) }},
		{"next-tooth", 50, 5000, func(v float64) error { return comb(50, v, 0.4) }},
		{"volume-solids", 1, 100, func(v float64) error { return comb(50, 75, v/100) }},
		{"volume", 0, 1e4, func(v float64) error { return cover(v, 50, 0.4, 0.6) }},
		{"dry-film", 0.1, 5000, func(v float64) error { return cover(1, v, 0.4, 0.6) }},
		{"volume-solids", 1, 100, func(v float64) error { return cover(1, 50, v/100, 0.6) }},
		{"transfer-efficiency", 1, 100, func(v float64) error { return cover(1, 50, 0.4, v/100) }},
		{"film-before", 0, 1e4, func(v float64) error { return total(um(v), wide) }},
		{"upper-film-limit", 10, 5000, func(v float64) error { return total(0, coat.Limits{Low: um(10), High: um(v)}) }},
		{"coat-film", 0.1, 5000, func(v float64) error { return total(0, wide, um(20), um(v)) }},
		{"dry-film", 0.1, 5000, func(v float64) error { return coats(v, 50) }},
		{"most-a-coat", 0.1, 5000, func(v float64) error { return coats(50, v) }},
	} {
		b.check(t)
	}
	assert.ErrorContains(t, comb(0.09, 50, 0.4), "wet-film 0.09 um: give 0.1 to 5000 um")
	assert.ErrorContains(t, total(0, coat.Limits{Low: um(0.09), High: um(50)}), "lower-film-limit 0.09 um: give 0.1 to 5000 um")
	assert.NoError(t, total(0, coat.Limits{Low: um(0.1), High: um(50)}))
	_, err := coat.ReadySolids([]coat.Part{{Amount: 0.0009, Solids: 0.5}})
	assert.ErrorContains(t, err, "mix-amount 0.0009 parts: give 0.001 to 1e+07 parts")
	s, err := coat.ReadySolids([]coat.Part{{Amount: 0.001, Solids: 0.5}})
	assert.NoError(t, err)
	assert.InEpsilon(t, 0.5, s, 1e-12)
	eleven := make([]coat.Part, 11)
	for i := range eleven {
		eleven[i].Amount = 1e6
	}
	_, err = coat.ReadySolids(eleven[:10])
	assert.NoError(t, err)
	_, err = coat.ReadySolids(eleven)
	assert.ErrorContains(t, err, "mix-amount")
}

func TestRangesOfPassesAndTransfer(t *testing.T) {
	pass := func(change func(*coat.Pass, float64)) func(float64) error {
		return func(v float64) error {
			p := coat.Pass{Rate: coat.MLPerMin(180), Transfer: 0.65, Fan: unit.MM(250), Overlap: 0.5}
			change(&p, v)
			_, err := p.WetFilm(0.4)
			_, other := p.Step()
			_, third := p.Passes(0.5)
			assert.Equal(t, err, other)
			assert.Equal(t, err, third)
			return err
		}
	}
	usual := coat.Pass{Rate: coat.MLPerMin(180), Transfer: 0.65, Fan: unit.MM(250), Overlap: 0.5}
	timed := func(ml, seconds float64) error {
		_, err := coat.TimedRate(unit.Litres(ml/1e3), time.Duration(seconds*float64(time.Second)))
		return err
	}
	hold := func(change func(*coat.GunTransfer, float64)) func(float64) error {
		return func(v float64) error {
			g := hvlp
			change(&g, v)
			return only(g.At(hvlp.Pressure, hvlp.Distance))
		}
	}
	for _, b := range []bound{
		{"fluid-rate", 1, 2000, pass(func(p *coat.Pass, v float64) { p.Rate = coat.MLPerMin(v) })},
		{"transfer-efficiency", 1, 100, pass(func(p *coat.Pass, v float64) { p.Transfer = v / 100 })},
		{"fan-width", 10, 600, pass(func(p *coat.Pass, v float64) { p.Fan = unit.MM(v) })},
		{"overlap", 0, 90, pass(func(p *coat.Pass, v float64) { p.Overlap = v / 100 })},
		{"gun-speed", 0.05, 3, func(v float64) error { return only(usual.WetFilm(unit.Speed(v))) }},
		{"panel-height", 0.01, 10, func(v float64) error { return only(usual.Passes(unit.Length(v))) }},
		{"volume-sprayed", 1, 5000, func(v float64) error { return timed(v, 50) }},
		{"time", 1, 3600, func(v float64) error { return timed(30, v) }},
		{"tip", 0.5, 3, func(v float64) error { return only(coat.TipRate(unit.MM(v), unit.MM2PerS(57), 980)) }},
		{"viscosity", 5, 500, func(v float64) error { return only(coat.TipRate(unit.MM(1.3), unit.MM2PerS(v), 980)) }},
		{"density", 600, 2000, func(v float64) error { return only(coat.TipRate(unit.MM(1.3), unit.MM2PerS(57), v)) }},
		{"class-transfer", 10, 90, hold(func(g *coat.GunTransfer, v float64) { g.Transfer = v / 100 })},
		{"reference-pressure", 1, 150, hold(func(g *coat.GunTransfer, v float64) { g.Pressure = unit.PSIG(v) })},
		{"reference-distance", 2, 30, hold(func(g *coat.GunTransfer, v float64) { g.Distance = unit.Inches(v) })},
		{"pressure", 1, 150, func(v float64) error { return only(hvlp.At(unit.PSIG(v), unit.Inches(6))) }},
		{"distance", 2, 30, func(v float64) error { return only(hvlp.At(unit.PSIG(25), unit.Inches(v))) }},
	} {
		b.check(t)
	}
	// A rate that the timing makes out of range is refused as a rate.
	_, err := coat.TimedRate(unit.Litres(0.001), 70*time.Second)
	assert.ErrorContains(t, err, "fluid-rate")
}

func TestRangesOfMaterial(t *testing.T) {
	need := func(change func(*coat.Job, float64)) func(float64) error {
		return func(v float64) error {
			j := coat.Job{Area: 4, Dry: um(55), Solids: 0.45, Transfer: 0.65}
			change(&j, v)
			_, other := j.CompareTransfer(0.5, 60)
			_, err := j.Need()
			assert.Equal(t, err, other)
			return err
		}
	}
	j := coat.Job{Area: 4, Dry: um(55), Solids: 0.45, Transfer: 0.65}
	for _, b := range []bound{
		{"area", 0.001, 1000, need(func(j *coat.Job, v float64) { j.Area = unit.Area(v) })},
		{"dry-film", 0.1, 5000, need(func(j *coat.Job, v float64) { j.Dry = um(v) })},
		{"volume-solids", 1, 100, need(func(j *coat.Job, v float64) { j.Solids = v / 100 })},
		{"transfer-efficiency", 1, 100, need(func(j *coat.Job, v float64) { j.Transfer = v / 100 })},
		{"loss", 0, 5, need(func(j *coat.Job, v float64) { j.Loss = unit.Litres(v) })},
		{"transfer-efficiency", 1, 100, func(v float64) error { return only(j.CompareTransfer(v/100, 60)) }},
		{"price", 0, 1e5, func(v float64) error { return only(j.CompareTransfer(0.5, v)) }},
		{"lead", 0, 200, need(func(j *coat.Job, v float64) { j.Lead = v / 100 })},
		{"cup", 0.05, 5, need(func(j *coat.Job, v float64) { j.Cup = unit.Litres(v) })},
		{"area", 0.001, 1000, func(v float64) error { return only(coat.LeadShare(unit.Area(v), 0)) }},
		{"lead", 0, 0.3, func(v float64) error { return only(coat.LeadShare(1, unit.Length(v))) }},
		{"voc", 0, 1500, func(v float64) error { return only(coat.VOCWith(unit.Density(v), 880, 0.1)) }},
		{"thinner-voc", 0, 1500, func(v float64) error { return only(coat.VOCWith(420, unit.Density(v), 0.1)) }},
		{"thinner", 0, 200, func(v float64) error { return only(coat.VOCWith(420, 880, v/100)) }},
		{"part-volume", 0, 1e4, func(v float64) error { return only(coat.Cost([]unit.Volume{unit.Litres(v)}, []float64{50})) }},
		{"price", 0, 1e5, func(v float64) error { return only(coat.Cost([]unit.Volume{unit.Litres(1)}, []float64{v})) }},
		{"volume-to-mix", 0, 1e4, func(v float64) error { return only(coat.Ratio{Parts: []float64{4, 1}}.Split(unit.Litres(v))) }},
		{"part", 0, 10000, func(v float64) error { return only(coat.Ratio{Parts: []float64{4, v}}.Split(unit.Litres(1))) }},
	} {
		b.check(t)
	}
	_, err := coat.Ratio{Parts: []float64{0.0009, 1}}.Split(unit.Litres(1))
	assert.ErrorContains(t, err, "first-part")
	_, err = coat.Ratio{Parts: []float64{0.001, 1}}.Split(unit.Litres(1))
	assert.NoError(t, err)
	_, err = coat.Ratio{}.Split(unit.Litres(1))
	assert.EqualError(t, err, "parts 0 parts: give 1 to 6 parts")
}
