package shop

import (
	"math"
	"slices"
	"strings"

	"boothset/calc/drift"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
)

// Drift is how what a booth's gauges show has moved against the model.
type Drift struct {
	Jobs    []*Record // those that can be held to the model, in the order of their times
	Watched drift.Watched
	Changes []Drifted
}

// Drifted is a change of what the line loses.
type Drifted struct {
	drift.Alarm      // the first that was raised of it
	Last        int  // the last reading that still raised one
	Grows       bool // it has grown since it began; else it came at once
	Cause       Cause
	Was, Is     string // of a change of the line that was entered: before and after

	alarms int            // how many were raised of it
	blamed map[string]int // how many of them blamed which gun
}

// Cause is the likeliest cause of a change, by what is known to have changed: the sentence for
// it is "drift-cause-" and the cause.
type Cause string

// The causes.
const (
	CauseLine   Cause = "line"   // the line was entered anew just then
	CauseGun    Cause = "gun"    // one gun alone reads so: its gauge, its valve, its cap
	CauseFilter Cause = "filter" // it grows, and there is a filter to clog
	CausePart   Cause = "part"   // it came at once: a coupling, a kink, a gauge
	CauseFreer  Cause = "freer"  // less is lost: a filter changed, a wider part, a gauge
)

// Further than so from what was answered, a job was set otherwise than the model worked for.
const (
	nearWall    = unit.Gauge(3 * unit.PascalPerPSI)
	nearOpening = 0.05
)

// Held reports whether what a job's gauges showed can be held to what the model said: both are
// known, and it was set as it was answered.
func (r *Record) Held() bool {
	near := func(a, b, by float64) bool { return a == 0 || math.Abs(a-b) <= by }
	a := &r.Answered
	return a.Wall > 0 && a.Gun > 0 && a.Flow > 0 && r.Read.Wall > 0 && r.Read.Gun > 0 &&
		near(float64(r.Set.Wall), float64(a.Wall), float64(nearWall)) && near(float64(r.Read.Wall), float64(a.Wall), float64(nearWall)) &&
		near(r.Set.Opening, a.Opening, nearOpening)
}

// Over is what the gauges say was lost above what the model says.
func (r *Record) Over() unit.Drop {
	return unit.Drop((r.Read.Wall - r.Read.Gun) - (r.Answered.Wall - r.Answered.Gun))
}

// DriftOf watches the jobs of a booth's log; the booth may be nil where its file cannot be
// read. The one flow is the middle one of the jobs'.
func DriftOf(b *Booth, jobs []*Record) Drift {
	var d Drift
	var flows []float64
	for _, r := range jobs {
		if r.Held() {
			d.Jobs, flows = append(d.Jobs, r), append(flows, float64(r.Answered.Flow))
		}
	}
	if len(d.Jobs) == 0 {
		return d
	}
	slices.Sort(flows)
	middle := flows[len(flows)/2]
	readings := make([]drift.Reading, len(d.Jobs))
	for i, r := range d.Jobs {
		readings[i] = drift.Reading{Gun: r.Gun, Over: r.Over(), Flow: float64(r.Answered.Flow) / middle}
	}
	d.Watched = drift.Watch(readings)
	for _, a := range d.Watched.Alarms {
		n := len(d.Changes)
		if n == 0 || !d.Changes[n-1].goesOn(a) {
			d.Changes = append(d.Changes, Drifted{Alarm: a, blamed: map[string]int{}})
			n++
		}
		c := &d.Changes[n-1]
		c.Last, c.alarms = a.At, c.alarms+1
		c.blamed[a.Gun]++
	}
	for i := range d.Changes {
		d.Changes[i].blame()
		d.explain(b, &d.Changes[i])
	}
	return d
}

// goesOn reports whether an alarm is of the same change as the one before.
func (c *Drifted) goesOn(a drift.Alarm) bool {
	return (a.Shift > 0) == (c.Shift > 0)
}

// blame blames the gun that a third of the alarms or more blame, and no other gun is blamed by
// as many.
func (c *Drifted) blame() {
	const share = 3
	c.Gun = ""
	for gun, n := range c.blamed {
		switch {
		case gun == "" || n*share < c.alarms:
		case c.Gun != "":
			c.Gun = ""
			return
		default:
			c.Gun = gun
		}
	}
}

// explain finds the likeliest cause of a change.
func (d *Drift) explain(b *Booth, c *Drifted) {
	c.Grows = d.grows(c)
	was, is := d.entered(c.Since)
	switch {
	case was != is:
		c.Cause, c.Was, c.Is = CauseLine, was, is
	case c.Gun != "":
		c.Cause = CauseGun
	case c.Shift < 0:
		c.Cause = CauseFreer
	case c.Grows && b.filtered():
		c.Cause = CauseFilter
	default:
		c.Cause = CausePart
	}
}

// grows reports whether what is lost has gone on growing from the first third of the readings
// since a change to the last, by half of it or more.
func (d *Drift) grows(c *Drifted) bool {
	var values []float64
	for _, p := range d.Watched.Points[c.Since : c.Last+1] {
		if p.Watched {
			values = append(values, float64(p.Value))
		}
	}
	third := len(values) / 3
	if third < 2 {
		return false
	}
	return math.Abs(drift.IndividualsOf(values[len(values)-third:]).Centre-drift.IndividualsOf(values[:third]).Centre) >= math.Abs(float64(c.Shift))/2
}

// entered is the line as it was entered for the job before a change and for its first.
func (d *Drift) entered(since int) (was, is string) {
	if since == 0 {
		return "", ""
	}
	of := func(r *Record) string {
		var parts []string
		for _, f := range []string{"line", "regulator", "filter", "hose", "coupling"} {
			parts = append(parts, r.Asked[f]...)
		}
		return shownNote(strings.Join(parts, ", "))
	}
	return of(d.Jobs[since-1]), of(d.Jobs[since])
}

// filtered reports whether a booth's line has a filter.
func (b *Booth) filtered() bool {
	if b == nil {
		return false
	}
	texts := b.Answers.Texts()
	return slices.ContainsFunc(texts["line"], func(p string) bool { return strings.HasPrefix(p, catalogue.KindFilter+"=") }) ||
		len(texts["filter"]) > 0 && texts["filter"][0] != catalogue.None
}

// PaintersApart is how far apart painters set the wall from what was answered, and how far apart
// booths do, from the jobs of all booths that say who did them.
func PaintersApart(jobs []*Record) drift.Spreads {
	var values []drift.Value
	for _, r := range jobs {
		if r.Painter != "" && r.Set.Wall > 0 && r.Answered.Wall > 0 {
			values = append(values, drift.Value{Booth: r.Booth, Painter: r.Painter, V: float64(r.Set.Wall - r.Answered.Wall)})
		}
	}
	return drift.Apart(values)
}
