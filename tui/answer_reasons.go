package tui

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
)

// atGun is the gun with the trigger pulled.
func (a *answer) atGun() string {
	sys, w := a.s.sys, a.shown().Working
	if short := a.shown().Short; short.Is {
		return "At the gun " + sys.Gauge(short.Best, unit.Usual) + " at most; " + sys.Gauge(w.Pressure, unit.Usual) + " is wanted."
	}
	text := "At the gun " + sys.Gauge(w.Pressure, unit.Usual)
	if a.request.Gauge == calc.AtFoot {
		text += " (its gauge shows " + sys.Gauge(w.Reads, unit.Usual) + ")"
	}
	return text + ", " + sys.Flow(w.Flow, unit.Usual) + ", " + sys.Gauge(w.Cap, unit.Usual) + " at the cap."
}

// isNow reports whether a reason speaks of the wall as it stands.
func isNow(id string) bool { return strings.HasPrefix(id, "now-") }

// now is what the wall as it stands, or as tried, does.
func (a *answer) now(w int) (rows []string) {
	for _, r := range a.shown().Reasons {
		if isNow(r.ID) {
			rows = append(rows, each(hang("> ", a.s.words.Text(a.s.sys, r.ID, r.Figures), w), a.s.theme.Focus.Render)...)
		}
	}
	return rows
}

// first is the first reason of what it is about, empty where there is none.
func (a *answer) first(about string) string {
	for _, r := range a.shown().Reasons {
		if r.About == about && !isNow(r.ID) {
			return a.s.words.Text(a.s.sys, r.ID, r.Figures)
		}
	}
	return ""
}

// mainReasons is the first reason of each number.
func (a *answer) mainReasons() [3]string {
	return [3]string{a.first("wall"), a.first("distance"), a.first("valve")}
}

// allReasons is every reason, grouped by what it is about, with what it rests on.
func (a *answer) allReasons(w int) (rows []string) {
	th := a.s.theme
	var groups []string
	of := map[string][]calc.Reason{}
	for _, r := range a.shown().Reasons {
		if isNow(r.ID) {
			continue
		}
		if of[r.About] == nil {
			groups = append(groups, r.About)
		}
		of[r.About] = append(of[r.About], r)
	}
	for _, g := range groups {
		rows = append(rows, th.Title.Render("why: the "+g))
		for _, r := range of[g] {
			rows = append(rows, hang("- ", a.s.words.Text(a.s.sys, r.ID, r.Figures), w)...)
			rows = append(rows, each(hang("  ", "["+a.s.words.Standing(r.Standing)+"]", w), th.Note.Render)...)
		}
	}
	return rows
}

// howSure is how far the numbers may be off, and what to measure to know better.
func (a *answer) howSure(w int) (rows []string) {
	if a.spread == nil {
		return nil
	}
	rows = append(rows, a.s.theme.Title.Render("how sure"))
	for _, text := range a.s.words.Spread(a.s.sys, a.spread) {
		rows = append(rows, hang("- ", text, w)...)
	}
	return rows
}

// wouldHelp is what in the line to change, none where nothing wins enough.
func (a *answer) wouldHelp(w int) (rows []string) {
	fixes := a.shown().Fixes
	if len(fixes) == 0 {
		return nil
	}
	rows = append(rows, a.s.theme.Title.Render("what would help"))
	for i := range fixes {
		f := &fixes[i]
		rows = append(rows, hang("- ", a.s.words.Text(a.s.sys, f.ID(), f.Figures()), w)...)
	}
	return rows
}

// supply is whether the shop's air lasts and where its water goes, or that nobody
// looked.
func (a *answer) supply(w int) (rows []string) {
	rows = append(rows, a.s.theme.Title.Render("the supply"))
	for _, r := range a.shown().Reasons {
		if r.About == "supply" {
			rows = append(rows, hang("- ", a.s.words.Text(a.s.sys, r.ID, r.Figures), w)...)
		}
	}
	return rows
}
