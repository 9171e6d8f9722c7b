package tui

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/shop"
)

// The pages that ask for booth and gun, as their sentences are called.
const (
	stepBooth  = "booth"
	stepOwnGun = "own-gun"
)

// picksBooth reports whether it is asked which booth the job is in, and picksGun which of the
// shop's guns it is.
func (s *session) picksBooth() bool {
	s.openDesk()
	return !s.asBefore && len(s.desk.holds.booths)+len(s.desk.holds.wrong) > 0
}

func (s *session) picksGun() bool {
	s.openDesk()
	return !s.asBefore && len(s.desk.holds.guns) > 0
}

// picks reports whether either is asked.
func (s *session) picks() bool { return s.picksBooth() || s.picksGun() }

// pickedGun reports whether the gun is one that was picked from the shop's.
func (s *session) pickedGun() bool { return s.desk.ownGun && s.ofShop(s.answers.ID(question.Gun)) }

// ofShop reports whether a gun is one of the shop's.
func (s *session) ofShop(gun string) bool { return s.desk.gunOf(gun) != nil }

// boothPage asks which of the shop's booths the job is in.
func boothPage(s *session) *pickPage {
	p := &pickPage{s: s, id: stepBooth, title: "desk-title"}
	p.hidden = func() bool { return !s.picksBooth() }
	p.first = func() bool { return true }
	p.fill = func() {
		p.list = list{means: s.boothMeans}
		for _, b := range s.desk.holds.booths {
			p.list.items = append(p.list.items, choiceOf(b.ID, b.Name))
		}
		p.list.items = append(p.list.items, choiceOf(pickOther, s.say("booth-other")))
		p.list.point(s.desk.last)
	}
	p.over = func(w int) []string {
		if !s.desk.invented {
			return nil
		}
		return wrap(s.inventedText(), w)
	}
	p.about = s.boothAbout
	p.more = manageBindings(s)
	p.take = func(id string) move {
		was := s.answers
		s.moveTo(s.desk.boothOf(id))
		return func(r *root) {
			r.follow(was)
			forward(r)
		}
	}
	return p
}

// gunPage asks which of the shop's guns it is.
func gunPage(s *session) *pickPage {
	p := &pickPage{s: s, id: stepOwnGun, title: "desk-title"}
	p.hidden = func() bool { return !s.picksGun() }
	p.first = func() bool { return !s.picksBooth() }
	p.fill = func() {
		p.list = list{means: func(id string) string { return s.reader.Meaning(question.Gun, id, question.Answers{}, s.sys) }}
		for _, g := range s.desk.holds.guns {
			p.list.items = append(p.list.items, choiceOf(g.ID, g.Name))
		}
		p.list.items = append(p.list.items, choiceOf(pickOther, s.say("gun-other")))
		p.list.point(s.current().ID(question.Gun))
	}
	p.about = s.gunAbout
	p.more = manageBindings(s)
	p.take = func(id string) move {
		was := s.answers
		if s.desk.ownGun = s.desk.gunOf(id) != nil; s.desk.ownGun {
			s.answers = s.answers.Changed(question.Gun, s.reader.Read(question.Gun, id, s.sys))
		}
		return func(r *root) {
			r.follow(was)
			forward(r)
		}
	}
	return p
}

// pickOther is the choice of none of those in a list. It is no id.
const pickOther = "/"

// boothMeans is what a booth's line is in a few words: its hoses and what it is fed with.
func (s *session) boothMeans(id string) string {
	b := s.desk.boothOf(id)
	if b == nil {
		return ""
	}
	all := b.Answers.Or(s.desk.base.Usual())
	f, hoses := question.Hose, all.Get(question.Hose)
	if question.Whole(all) {
		f, hoses = question.Line, nil
		for _, part := range all.Get(f) {
			if part.Kind == catalogue.KindHose {
				hoses = append(hoses, part)
			}
		}
	}
	var parts []string
	if len(hoses) > 0 {
		parts = append(parts, s.text("booth-hose", calc.TextFigure("hose", s.reader.Shown(f, unread(hoses), s.sys))))
	}
	if supply, ok := all.One(question.Supply); ok {
		parts = append(parts, unit.Pressure.Text(s.sys, supply.SI[0], unit.Usual))
	}
	return strings.Join(parts, ", ")
}

// boothAbout is what is said of a booth under the list: its notes, and when its filter and its
// gauge were last seen to; under it what of the folder will not do.
func (s *session) boothAbout(id string) (texts []string) {
	if b := s.desk.boothOf(id); b != nil {
		texts = append(texts, b.Notes)
		for _, of := range []struct {
			id  string
			day shop.Date
		}{{"booth-filter", b.FilterChanged}, {"booth-gauge", b.GaugeChecked}} {
			if !of.day.IsZero() {
				texts = append(texts, s.text(of.id, calc.TextFigure("date", of.day.Text())))
			}
		}
	}
	for _, wrong := range s.desk.holds.wrong {
		texts = append(texts, "! "+wrong)
	}
	return texts
}

// gunAbout is boothAbout of a gun.
func (s *session) gunAbout(id string) (texts []string) {
	g := s.desk.gunOf(id)
	if g == nil {
		return nil
	}
	if g.Cap != "" {
		texts = append(texts, s.text("gun-cap", calc.TextFigure("cap", g.Cap)))
	}
	if g.Answers.Has(question.Tip) {
		texts = append(texts, s.label(question.Tip)+" "+s.called(question.Tip, g.Answers))
	}
	if !g.Serviced.IsZero() {
		texts = append(texts, s.text("gun-serviced", calc.TextFigure("date", g.Serviced.Text())))
	}
	return append(texts, g.Notes)
}
