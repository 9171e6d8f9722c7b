package shop

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
)

// SubjectOf is what a job is, as settings and the log name it. It has no band where none holds
// the job's day.
func SubjectOf(q *calc.Request, bands []Band) Subject {
	of := Subject{Coat: q.Coat.ID, Stage: q.Coat.Stage.ID, Gun: q.Gun.ID}
	if band, ok := BandOf(bands, q.Day.Air, q.Day.Humidity); ok {
		of.Band = band.ID
	}
	return of
}

// SettingOf is an answer as a setting of a booth that may be agreed on as it stands: for the
// job's own subject, with the tip where it is known which is fitted. Where the wall was given as
// it reads now, it is set to that, and the valve to what then brings the gun to its target.
func SettingOf(booth string, q *calc.Request, s *calc.Setup, bands []Band) Setting {
	worked := WorkedOf(q, s)
	v := worked.Answer
	v.Supply, v.Flow = 0, 0 // neither is set
	if tip := &q.Coat.Stage.Tip; tip.Low == tip.High {
		v.Tip = tip.Usual
	}
	if now := &s.Now; now.Given {
		v.Wall, v.Opening = now.Wall, now.Opening
		if !now.Enough {
			v.Opening, v.Gun = 1, 0
		}
	}
	return Setting{Booth: booth, Subject: SubjectOf(q, bands), Values: v, Worked: worked}
}

// Lay lays values that were said by hand over those of a setting. What the gun's gauge shows
// with another wall or opening nobody has worked out: it is left open.
func (s *Setting) Lay(by Values) {
	if by.Wall > 0 && by.Wall != s.Values.Wall || by.Opening > 0 && by.Opening != s.Values.Opening {
		s.Values.Gun = 0
	}
	s.Values = by.Or(s.Values)
}

// JobOf is an answer as a job of a booth's log, of which nothing is said yet: asked is what was
// answered to the questions by the reader, which has the booth's own answers.
func JobOf(booth string, r *question.Reader, asked question.Answers, q *calc.Request, s *calc.Setup, bands []Band, sys unit.System) Record {
	record := Record{Booth: booth, Subject: SubjectOf(q, bands), Asked: askedOf(r, asked, sys)}
	if !s.Stopped() {
		record.Answered = Answered(q, s)
	}
	return record
}

// askedOf is what a plan was worked from, by field, with units named: what was answered, and
// what is usual where it counts beside that.
func askedOf(r *question.Reader, a question.Answers, sys unit.System) map[string][]string {
	all := a.Or(r.Usual())
	asked := map[string][]string{}
	for _, row := range question.Plan.Fields {
		if !question.Applies(row.Field, all) {
			continue
		}
		for _, v := range r.Completed(row.Field, all.Get(row.Field), sys) {
			asked[row.Name] = append(asked[row.Name], v.Text)
		}
	}
	return asked
}
