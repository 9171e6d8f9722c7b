package tui

import (
	"errors"
	"slices"

	"boothset/calc"
	"boothset/calc/spread"
	"boothset/presets"
)

// job is answers with what comes of them.
type job struct {
	id      int             // no two that were worked out have the same
	answers presets.Answers // as taken, without the usual ones
	request *calc.Request
	setup   *calc.Setup
	spread  *spread.Spread // nil where the supply is short; how sure it is
	day     calc.DayRequest
	today   calc.DayAnswer
}

// work solves answers with the shop's usual ones filled in. What will not do comes as a
// *presets.FieldError where one answer is to blame.
func (s *session) work(a presets.Answers) (j job, err error) {
	s.worked++
	j.id, j.answers = s.worked, a
	all := s.complete(a)
	if j.request, err = s.catalogue.Request(all, s.sys); err != nil {
		return j, err
	}
	if j.setup, err = calc.Solve(j.request); err != nil {
		return j, s.catalogue.Refused(err, s.sys, all.Field)
	}
	j.spread = s.sure(j.request, j.setup)
	sheet := presets.Sheet{}
	for _, field := range []string{presets.FieldCoat, presets.FieldTemp, presets.FieldHumidity, presets.FieldPanel, presets.FieldAltitude} {
		if v := all.Field(field); v != "" {
			sheet[field] = presets.Typed(v)
		}
	}
	var faults []*presets.FieldError
	if j.day, faults = s.catalogue.Day(sheet, s.sys); len(faults) > 0 {
		return j, faults[0]
	}
	if j.today, err = calc.SolveDay(&j.day); err != nil {
		return j, s.catalogue.Refused(err, s.sys, all.Field)
	}
	return j, nil
}

// fault is the answer that an error blames, nil where it is none.
func fault(err error) *presets.FieldError {
	var f *presets.FieldError
	errors.As(err, &f)
	return f
}

// verdict is what the job comes to, from the worst that is said of it.
type verdict string

// The verdicts, by their sentences.
const (
	verdictGo    verdict = "bench-go"
	verdictWatch verdict = "bench-watch"
	verdictWait  verdict = "bench-wait"
	verdictStop  verdict = "bench-stop"
)

func (j *job) verdict() verdict {
	worst := verdictGo
	for _, c := range j.cautions() {
		switch {
		case c.Level == calc.Stop:
			return verdictStop
		case c.Level == calc.Warn && c.ID != standingHazard:
			worst = verdictWatch
		}
	}
	if j.today.Verdict == calc.VerdictWait {
		return verdictWait
	}
	return worst
}

// standingHazard is the warning that comes with a coat on any day; it does not speak
// against this one.
const standingHazard = "isocyanate"

// cautions is what is to be said before spraying, of the setup and of the day.
func (j *job) cautions() []calc.Caution {
	all := slices.Clone(j.setup.Cautions)
	for _, c := range j.today.Cautions {
		known := slices.ContainsFunc(all, func(have calc.Caution) bool { return have.ID == c.ID })
		if c.Level == calc.Warn && !known {
			all = append(all, c)
		}
	}
	return all
}

// level is the caution's level that a verdict is shown as.
func (v verdict) level() calc.Level {
	switch v {
	case verdictStop:
		return calc.Stop
	case verdictGo:
		return calc.Note
	}
	return calc.Warn
}
