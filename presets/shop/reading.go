package shop

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"path"
	"slices"
	"strings"
	"syscall"
	"time"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/question"
)

// GaugeReading is a reading of the gauges of a booth's line as the folder keeps it, or that a
// piece of the line was replaced.
type GaugeReading struct {
	ID    string
	At    time.Time
	Booth string
	Gun   string
	// Line is each piece of the line that it was taken on, as id=entry, in order.
	Line []string
	// Text is the reading as it is typed, its pressures with their units.
	Text string
	// Replaced is the id of the piece that was replaced; ReplacedGun stands for the gun's own
	// parts. Text is empty then.
	Replaced string
}

// ReplacedGun is the id under which the parts of a gun are replaced.
const ReplacedGun = "gun"

// wireReading is a reading as its line holds it.
type wireReading struct {
	Format   string    `json:"format"`
	ID       string    `json:"id"`
	At       time.Time `json:"at"`
	Gun      string    `json:"gun,omitempty"`
	Line     []string  `json:"line,omitempty"`
	Reading  string    `json:"reading,omitempty"`
	Replaced string    `json:"replaced,omitempty"`
}

// KeepReadings appends readings to those of their booth, as Keep does records.
func (f *Folder) KeepReadings(m *Machine, booth string, all []GaugeReading) error {
	dir := path.Join(readingsDir, booth)
	if !IsID(booth) {
		return &Error{booth, "shop-id-kept", nil}
	}
	var lines []byte
	var at time.Time
	for _, x := range all {
		id, err := NewID()
		if err != nil {
			return f.unwritten(dir, err)
		}
		at = x.At.UTC().Truncate(time.Second)
		data, err := json.Marshal(wireReading{readingFormat, id, at, x.Gun, x.Line, x.Text, x.Replaced})
		if err != nil {
			return f.unwritten(dir, err)
		}
		lines = append(append(lines, data...), '\n')
	}
	if len(lines) > mostLine {
		return f.unwritten(dir, syscall.EFBIG)
	}
	if err := f.keepLines(m, dir, at, lines); err != nil {
		return f.unwritten(dir, err)
	}
	return nil
}

// Readings reads what was kept of a booth, in the order of time, of the same by their ids.
// Lines that will not do are passed over, each with its fault.
func (f *Folder) Readings(booth string) (all []*GaugeReading, faults []*Fault) {
	if !IsID(booth) {
		return nil, nil
	}
	seen := map[string]bool{}
	faults = f.eachLog(path.Join(readingsDir, booth), func(file string, data []byte) (wrong []*Fault) {
		return eachLine(data, func(line []byte) *Fault {
			x, fault := readReading(booth, file, line)
			if x != nil && !seen[x.ID] {
				seen[x.ID] = true
				all = append(all, x)
			}
			return fault
		})
	})
	slices.SortStableFunc(all, func(a, b *GaugeReading) int { return cmp.Or(a.At.Compare(b.At), strings.Compare(a.ID, b.ID)) })
	return all, faults
}

// AwayReadings reads what was kept of every booth but one, in the order of the booths and of time.
// Lines that will not do are passed over: the check tells of them.
func (f *Folder) AwayReadings(booth string) (all []*GaugeReading) {
	for _, id := range f.folders(readingsDir) {
		if id != booth {
			of, _ := f.Readings(id)
			all = append(all, of...)
		}
	}
	return all
}

// readReading reads a line; fault is why it is not used, without its place.
func readReading(booth, file string, line []byte) (*GaugeReading, *Fault) {
	var w wireReading
	switch {
	case isMergeMark(line):
		return nil, faultOf(file, Broken, "shop-merge-log")
	case json.Unmarshal(line, &w) != nil:
		return nil, faultOf(file, Broken, "shop-torn")
	}
	if f := formatFault(file, w.Format, readingFormat); f != nil {
		return nil, f
	}
	if !isUUID(w.ID) || w.At.IsZero() || (w.Reading == "") == (w.Replaced == "") {
		return nil, faultOf(file, Broken, "shop-record-lacks")
	}
	x := &GaugeReading{ID: w.ID, At: w.At, Booth: booth, Gun: shownName(w.Gun), Text: shownNote(w.Reading), Replaced: shownName(w.Replaced)}
	for _, piece := range w.Line {
		x.Line = append(x.Line, shownName(piece))
	}
	return x, nil
}

// LineOf is the pieces of a plan's line, as it is described, as a reading keeps them: a hose by its
// length and bore, however they were written, all else by its entry.
func LineOf(plan *calc.Request) []string {
	plan = plan.AsDescribed()
	wall, _ := plan.Regulators()
	ids := learn.PieceIDs(plan)
	for i := range ids {
		p := &plan.Line[wall+1+i]
		entry := p.Entry
		if p.Kind == line.HoseKind {
			entry = fmt.Sprintf("%.4gm,%.4gmm", float64(p.Hose.Length), 1e3*float64(p.Hose.Bore))
		}
		ids[i] = shownName(ids[i] + "=" + entry)
	}
	return ids
}

// History is what was read of a plan's line, with its gun or others: readings taken on a line
// that is described otherwise are of another line, those with a gun before its parts were
// replaced of another gun. gun is the plan's by its id, and other finds another one, nil where
// that cannot be.
func History(r *question.Reader, plan *calc.Request, gun string, all []*GaugeReading, other func(id string) *learn.OtherGun) (taken []learn.Taken, others []learn.OtherGun) {
	of, was, gone := LineOf(plan), map[string]int{}, map[string]bool{}
	numbers := map[string]int{gun: 0}
	for _, x := range slices.Backward(all) {
		switch {
		case x.Replaced == ReplacedGun:
			gone[x.Gun] = true
		case x.Replaced != "":
			was[x.Replaced]++
		}
		if x.Text == "" || gone[x.Gun] || !slices.Equal(x.Line, of) {
			continue
		}
		number, known := numbers[x.Gun]
		if !known {
			g := other(x.Gun)
			if g == nil || len(others)+1 == learn.MostGuns {
				continue
			}
			others = append(others, *g)
			number = len(others)
			numbers[x.Gun] = number
		}
		with := *plan
		if number > 0 {
			with.Gun, with.Gauge = others[number-1].Gun, others[number-1].Gauge
		}
		if t, ok := r.Taken(&with, x.Text, number); ok {
			t.Was = maps.Clone(was)
			taken = append(taken, t)
		}
	}
	slices.Reverse(taken)
	return taken, others
}

// ReadingsOf are readings of a plan as they are kept.
func ReadingsOf(plan *calc.Request, booth, gun string, readings []question.Value, at time.Time, sys unit.System) (all []GaugeReading) {
	for _, v := range readings {
		all = append(all, GaugeReading{At: at, Booth: booth, Gun: gun, Line: LineOf(plan), Text: v.Seen.Text(sys)})
	}
	return all
}
