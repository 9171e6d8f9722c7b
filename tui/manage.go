package tui

import (
	"strings"

	"boothset/calc"
	"boothset/presets/shop"
)

// manageBindings is the key to the page that changes booths and guns.
func manageBindings(s *session) []binding {
	return []binding{bindKey(digit(manageKey), "do-manage", func(string) move { return open(managePage(s, nil)) })}
}

// What a page of booths and guns picks: a booth or a gun by its id behind these, or a new one.
const (
	ofBooths = "booth/"
	ofGuns   = "gun/"
)

// managePage is the page that lists the booths and guns of the shop to be changed, those that
// are no longer offered too.
func managePage(s *session, from *bench) *pickPage {
	p := &pickPage{s: s, id: "manage", title: "manage-title"}
	if from != nil {
		p.from, p.tab = from, p
	}
	p.over = func(w int) []string { return wrap(s.desk.told, w) }
	p.fill = func() {
		l := list{}
		for _, b := range s.desk.holds.allBooths {
			l.items = append(l.items, choiceOf(ofBooths+b.ID, s.managed("manage-booth", b.Name, b.Retired)))
		}
		l.items = append(l.items, choiceOf(ofBooths, s.say("manage-new-booth")))
		for _, g := range s.desk.holds.allGuns {
			l.items = append(l.items, choiceOf(ofGuns+g.ID, s.managed("manage-gun", g.Name, g.Retired)))
		}
		l.items = append(l.items, choiceOf(ofGuns, s.say("manage-new-gun")))
		if len(p.list.items) > 0 {
			l.point(p.list.id())
		}
		p.list = l
	}
	p.take = func(picked string) move {
		s.desk.told = ""
		switch picked {
		case ofBooths:
			return open(s.boothEntry(p, &shop.Booth{}, true))
		case ofGuns:
			return open(s.gunEntry(p, &shop.Gun{}, true))
		}
		return open(s.manageOne(p, picked))
	}
	return p
}

// managed is a booth or a gun in the list.
func (s *session) managed(id, name string, retired bool) string {
	text := s.text(id, calc.TextFigure("name", plain(name)))
	if retired {
		text = s.text("manage-retired", calc.TextFigure("name", text))
	}
	return text
}

// manageOne is the page that asks what is to be done with a booth or a gun.
func (s *session) manageOne(from *pickPage, picked string) *pickPage {
	p := &pickPage{overAnswer: from.overAnswer, s: s, id: "manage-one", title: "manage-title"}
	id, isBooth := strings.CutPrefix(picked, ofBooths)
	if !isBooth {
		id = strings.TrimPrefix(picked, ofGuns)
	}
	p.over = func(w int) []string { return wrap(from.list.picked().Name, w) }
	p.fill = func() {
		last := "retire"
		if s.isRetired(id, isBooth) {
			last = "offer"
		}
		p.list = s.listOf("manage-", "edit", "copy", last)
	}
	p.take = func(what string) move {
		switch what {
		case "retire", "offer":
			return s.retire(id, isBooth, what == "retire")
		}
		for _, b := range s.desk.holds.allBooths {
			if isBooth && b.ID == id {
				return inPlace(s.boothEntry(from, b, what == "copy"))
			}
		}
		for _, g := range s.desk.holds.allGuns {
			if !isBooth && g.ID == id {
				return inPlace(s.gunEntry(from, g, what == "copy"))
			}
		}
		return back // it is gone meanwhile
	}
	return p
}

// inPlace opens a page in the place of the one that the person is on.
func inPlace(p page) move {
	return func(r *root) {
		r.over = r.over[:len(r.over)-1]
		open(p)(r)
	}
}

func (s *session) isRetired(id string, isBooth bool) bool {
	if isBooth {
		return s.desk.boothOf(id) == nil
	}
	return s.desk.gunOf(id) == nil
}

// retire takes a booth or a gun out of those that are offered, or puts it back.
func (s *session) retire(id string, isBooth, retired bool) move {
	base, key := s.desk.base, shop.Key{Name: "retired"}
	if retired {
		key.Value = true
	}
	told := s.text("manage-kept", calc.TextFigure("name", id))
	return func(r *root) {
		back(r)
		r.toFolder("", func(f *shop.Folder) (string, error) {
			if isBooth {
				return told, f.SaveBooth(base, id, key)
			}
			return told, f.SaveGun(base, id, key)
		})
	}
}
