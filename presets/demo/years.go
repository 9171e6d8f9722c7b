package demo

import (
	"math"
	"math/rand/v2"
	"slices"
	"time"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/shop"

	"github.com/google/uuid"
)

// seed is of all that is drawn: the same shop each time, but for its dates.
const seed = 14

// job is a coat as a booth sprays it.
type job struct{ coat, gun string }

// jobs is what each booth sprays, by turns.
var jobs = map[string][]job{
	One:   {{"metallic-base", "base-1"}, {"clear", "clear-1"}},
	Two:   {{"metallic-base", "base-2"}, {"clear", "clear-2"}},
	Three: {{"surfacer", "primer-3"}, {"clear", "primer-3"}},
}

// offs is what each gun's gauge shows too much.
var offs = map[string]unit.Gauge{
	"base-1": unit.PSIG(0.3), "clear-1": unit.PSIG(-0.4), "base-2": unit.PSIG(0.2), "clear-2": unit.PSIG(0.5), "primer-3": unit.PSIG(-0.2),
}

// noise is the standard deviation of a reading.
const noise = unit.Gauge(0.25 * unit.PascalPerPSI)

// years is the two years of the shop as they are made.
type years struct {
	folder *shop.Folder
	reader *question.Reader // with the shop's guns
	bands  []shop.Band
	today  time.Time
	booths map[string]*shop.Booth
	rng    *rand.Rand
}

func open(f *shop.Folder, r *question.Reader, today time.Time) (*years, error) {
	guns, faults := f.Guns(r)
	booths, more := f.Booths(r)
	bands, wrong := f.Bands()
	if all := slices.Concat(faults, more, wrong); len(all) > 0 {
		return nil, all[0]
	}
	with, err := shop.WithGuns(r, guns...)
	if err != nil {
		return nil, err
	}
	y := &years{f, with, bands, today, map[string]*shop.Booth{}, rand.New(rand.NewPCG(seed, seed))}
	for _, b := range booths {
		y.booths[b.ID] = b
	}
	return y, nil
}

// agree agrees on a setting for each job, as it was worked out a year and a half ago.
func (y *years) agree() error {
	const agreed = 540
	for _, id := range []string{One, Two, Three} {
		for _, j := range jobs[id] {
			s := shop.Setting{
				Booth: id, Subject: shop.Subject{Coat: j.coat, Stage: y.reader.FirstStage(j.coat), Gun: j.gun, Band: "mild"},
				Agreed: y.today.AddDate(0, 0, -agreed), Why: y.reader.Words().Say("demo-note"),
			}
			q, err := shop.Request(y.reader, y.booths[id], s.Subject)
			if err != nil {
				return err
			}
			setup, err := calc.Solve(q)
			if err != nil {
				return err
			}
			s.Worked = shop.WorkedOf(q, setup)
			s.Values = s.Worked.Answer
			s.Values.Supply, s.Values.Flow = 0, 0 // neither is agreed on
			if _, err := y.folder.Agree(s, unit.US); err != nil {
				return err
			}
		}
	}
	return nil
}

// log is the jobs of two years, one a working day in each booth, up to the day before the
// folder is made.
func (y *years) log() (all []shop.Record, err error) {
	for _, id := range []string{One, Two, Three} {
		n := 0
		for before := Days; before > 0; before-- {
			day := y.today.AddDate(0, 0, -before)
			if day.Weekday() == time.Saturday || day.Weekday() == time.Sunday {
				continue
			}
			r, err := y.sprayed(id, jobs[id][n%len(jobs[id])], day, before)
			if err != nil {
				return nil, err
			}
			all = append(all, *r)
			n++
		}
	}
	return all, nil
}

// sprayed is a job: the day's plan, set as it says, and what the gauges then show.
func (y *years) sprayed(booth string, j job, day time.Time, before int) (*shop.Record, error) {
	air, humidity := y.weather(day)
	over := y.reader.Over(y.booths[booth].Answers)
	var a question.Answers
	for _, x := range []struct {
		of *question.Field
		v  question.Value
	}{
		{question.Coat, question.Value{ID: j.coat, Text: j.coat}}, {question.Gun, question.Value{ID: j.gun, Text: j.gun}},
		{question.Temp, question.Value{SI: [2]float64{float64(air)}}}, {question.Humidity, question.Value{SI: [2]float64{humidity}}},
	} {
		a = a.With(x.of, x.v)
	}
	q, faults := over.Plan(a, unit.US)
	if len(faults) > 0 {
		return nil, faults[0]
	}
	setup, err := calc.Solve(q)
	if err != nil {
		return nil, err
	}
	gets, err := y.gets(booth, q, setup, before)
	if err != nil {
		return nil, err
	}
	id, err := uuid.NewRandomFromReader(reader{y.rng})
	if err != nil {
		return nil, err
	}
	r := &shop.Record{
		ID: id.String(), At: day.Add(9 * time.Hour), Booth: booth, Answered: shop.Answered(q, setup),
		Subject: shop.Subject{Coat: j.coat, Stage: q.Coat.Stage.ID, Gun: j.gun}, Outcome: []shop.Outcome{shop.Good}, Then: shop.Nothing, Note: y.reader.Words().Say("demo-note"),
	}
	if band, ok := shop.BandOf(y.bands, air, humidity); ok {
		r.Band = band.ID
	}
	r.Set = shop.Values{Wall: r.Answered.Wall, Distance: r.Answered.Distance, Opening: r.Answered.Opening}
	r.Read = shop.Values{Wall: r.Answered.Wall, Gun: gets + offs[j.gun] + noise*unit.Gauge(y.rng.NormFloat64())}
	const poor = unit.Gauge(2 * unit.PascalPerPSI)
	if gets < r.Answered.Gun-poor { // so much less air leaves the drops large
		r.Outcome, r.Then = []shop.Outcome{shop.Peel}, shop.Polish
	}
	return r, nil
}

// weather is the booth's air: a round of the year about a mild day, and each day's own.
func (y *years) weather(day time.Time) (unit.Temp, float64) {
	const mean, swing, own = 22, 5, 1.5 // degrees C
	round := math.Cos(2 * math.Pi * float64(day.YearDay()-200) / 365)
	air := mean + swing*round + own*y.rng.NormFloat64()
	return unit.Celsius(air), min(max(0.45+0.08*y.rng.NormFloat64(), 0.2), 0.7)
}

// gets is what the gun gets on a job set as the plan says, with the line as it really is.
func (y *years) gets(booth string, q *calc.Request, s *calc.Setup, before int) (unit.Gauge, error) {
	worn := *q
	worn.Line = slices.Clone(q.Line)
	if !y.wear(booth, worn.Line, before) {
		return s.Working.Reads, nil
	}
	worn.Gun.Valve.Full = q.Gun.Valve.At(s.Valve.Opening) // as it stands, so that open is as set
	worn.HasNow, worn.Now = true, s.Wall.Flowing
	worn.Swaps = nil
	is, err := calc.Solve(&worn)
	if err != nil {
		return 0, err
	}
	return is.Now.GunIfOpen, nil
}

// wear makes of a booth's line what it has become by a day; false where it is as described.
func (y *years) wear(booth string, parts []line.Part, before int) bool {
	at := func(k line.Kind) *line.Part {
		return &parts[slices.IndexFunc(parts, func(p line.Part) bool { return p.Kind == k })]
	}
	switch {
	case booth == One && before <= swapped:
		slim, _ := y.reader.Couplings.Get("slim")
		at(line.CouplingKind).Restriction = slim.Restriction()
	case booth == Two && before < clogs:
		clogged, _ := y.reader.Filters.Get("clogged")
		filter := at(line.FilterKind)
		// What it loses grows in step with the days, and goes by the square of 1/C.
		far := min(float64(clogs-before)/(clogs-full), 1)
		square := func(c unit.Conductance) float64 { return 1 / float64(c) / float64(c) }
		clean := square(filter.Restriction.C)
		filter.Restriction.C = unit.Conductance(1 / math.Sqrt(clean+far*(square(clogged.Restriction().C)-clean)))
	default:
		return false
	}
	return true
}

// reader gives random bytes.
type reader struct{ rng *rand.Rand }

func (r reader) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = byte(r.rng.Uint32())
	}
	return len(b), nil
}
