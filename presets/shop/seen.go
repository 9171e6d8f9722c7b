package shop

import (
	"regexp"
	"slices"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
)

// keptSeen is the text of a thing that was seen at the gun besides its gauges: its field, what it
// was, and what was sprayed.
var keptSeen = regexp.MustCompile(`^([a-z-]+)=(.+) coat=([^ ]+) stage=([^ ]*)$`)

// SeenOf are the things that were seen at the gun besides its gauges, among answers, as they are
// kept beside the readings.
func SeenOf(r *question.Reader, plan *calc.Request, booth string, a question.Answers, at time.Time, sys unit.System) (all []GaugeReading) {
	for _, f := range question.SeenFields {
		if !a.Has(f) {
			continue
		}
		what := a.ID(f) // of a list: in any language the same
		if what == "" {
			what = question.TextOf(r.Completed(f, a.Get(f), sys))
		}
		text := f.Name + "=" + what + " coat=" + plan.Coat.ID + " stage=" + plan.Coat.Stage.ID
		all = append(all, GaugeReading{At: at, Booth: booth, Gun: plan.Gun.ID, Line: LineOf(plan), Text: text})
	}
	return all
}

// LastSeen is what was last seen of each field with a plan's gun, coat and line, as a person reads
// it: nothing of a gun before its parts were replaced.
func LastSeen(r *question.Reader, plan *calc.Request, all []*GaugeReading, sys unit.System) (seen []question.SeenBefore) {
	line := LineOf(plan)
	for _, f := range question.SeenFields {
		for _, x := range slices.Backward(all) {
			if x.Gun == plan.Gun.ID && x.Replaced == ReplacedGun {
				break
			}
			m := keptSeen.FindStringSubmatch(x.Text)
			if m == nil || m[1] != f.Name || x.Gun != plan.Gun.ID || m[3] != plan.Coat.ID || m[4] != plan.Coat.Stage.ID || !slices.Equal(x.Line, line) {
				continue
			}
			values := r.ReadText(f, m[2], unit.US) // what names no unit is the same in any, as a fraction of an inch
			if len(values) > 0 && r.Check(f, values, unit.US) == nil {
				text := r.Shown(f, values, sys)
				if q := f.Of[0]; q != nil && !f.Pair() {
					text = q.Text(sys, values[0].SI[0], unit.Usual)
				}
				seen = append(seen, question.SeenBefore{Field: f, Text: text, At: x.At})
			}
			break
		}
	}
	return seen
}
