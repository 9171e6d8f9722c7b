package practice

import (
	"math"
	"math/rand/v2"

	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"
)

// Job is a job to practise on, with its answer.
type Job struct {
	*answer.Plan
	Booth   *shop.Booth
	Band    shop.Band        // of weather that its day was drawn from
	Answers question.Answers // what was drawn of it, over what the booth answers
	reader  *question.Reader // with the booth's answers and the shop's guns
}

// What jobs are drawn within, where a band of weather or a booth leaves more open. Judgement:
// what a booth sees, and a supply that other users draw down.
const (
	coldestDrawn, hottestDrawn = unit.Temp(unit.ZeroCelsius + 5), unit.Temp(unit.ZeroCelsius + 39)
	driestDrawn, dampestDrawn  = 0.15, 0.95
	mildDays                   = 0.5  // how often the day is of the band that holds the reference day
	coldPanel                  = 0.15 // how often the panel is colder than the air
	mostColder                 = 8.0  // by how much, K
	lowSupply                  = 0.15 // how often the supply is drawn down
	leastSupply, mostSupply    = 0.25, 0.8
	usualSupply                = unit.Gauge(100 * unit.PascalPerPSI)
)

// mostDraws is how many jobs are drawn before it is given up that one can be worked out.
const mostDraws = 200

// one draws a job that can be worked out, in a system's units; nil where none of so many can.
func (s *Source) one(rng *rand.Rand, sys unit.System) *Job {
	for range mostDraws {
		b, band := pick(rng, s.booths), pick(rng, s.bands)
		if mild, ok := shop.BandOf(s.bands, coat.ReferenceTemp, coat.ReferenceHumidity); ok && rng.Float64() < mildDays {
			band = mild
		}
		j := &Job{Booth: b, Band: band, reader: s.reader.Over(b.Answers)}
		if s.draw(j, rng, sys); j.work(sys) {
			return j
		}
	}
	return nil
}

func pick[T any](rng *rand.Rand, all []T) T { return all[rng.IntN(len(all))] }

// draw draws the answers of a job, as they would be typed.
func (s *Source) draw(j *Job, rng *rand.Rand, sys unit.System) {
	set := func(f *question.Field, text string) { j.Answers = j.Answers.With(f, j.reader.Read(f, text, sys)) }
	shown := func(f *question.Field, si float64, step float64) {
		q := f.Of[0]
		count := math.Round(q.Count(sys, si)/step) * step
		set(f, q.Text(sys, q.Of(sys, count), unit.Usual))
	}
	family := pick(rng, s.reader.Coats.IDs())
	set(question.Coat, family)
	set(question.Gun, pick(rng, s.guns))
	if stages := s.reader.StagesOf(family); len(stages) > 1 {
		set(question.Stage, pick(rng, stages))
	}
	between := func(low, high float64) float64 { return low + rng.Float64()*(high-low) }
	// of is a draw between limits, as far as they lie within what is drawn; usual where they do not.
	of := func(low, high, least, most, usual float64) float64 {
		if low, high = max(low, least), min(high, most); low >= high {
			return usual
		}
		return between(low, high)
	}
	band := &j.Band
	air := of(float64(band.Temp[0]), float64(band.Temp[1]), float64(coldestDrawn), float64(hottestDrawn), float64(band.Air))
	shown(question.Temp, air, 1)
	shown(question.Humidity, of(band.Humidity[0], band.Humidity[1], driestDrawn, dampestDrawn, band.Damp), 1)
	if rng.Float64() < coldPanel {
		shown(question.Panel, air-between(0, mostColder), 1)
	}
	if rng.Float64() < lowSupply {
		const step = 5 * unit.PascalPerPSI
		supply := between(leastSupply, mostSupply) * float64(s.supply(j.reader))
		shown(question.Supply, math.Max(math.Round(supply/step), 1)*step, unit.Pressure.Step[sys])
	} else if !j.reader.Usual().Has(question.Supply) {
		shown(question.Supply, float64(usualSupply), unit.Pressure.Step[sys])
	}
}

// supply is what a booth has at its regulator.
func (s *Source) supply(r *question.Reader) unit.Gauge {
	if v, ok := r.Usual().One(question.Supply); ok {
		return unit.Gauge(v.SI[0])
	}
	return usualSupply
}

// work works the job out; false where it cannot be.
func (j *Job) work(sys unit.System) bool {
	var err error
	j.Plan, err = answer.AskPlan(j.reader, j.Answers, sys)
	return err == nil
}

// GaugeSpan is where the scale of the gauge ends that the pressure is set by.
func (j *Job) GaugeSpan() unit.Gauge {
	v, _ := j.reader.Usual().One(question.GaugeSpan)
	return unit.Gauge(v.SI[0])
}
