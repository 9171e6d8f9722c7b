package edit

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
)

// Suggestions is what may be picked with an arrow in a field that is typed, as text
// stands in it: all that is usual where it is empty or one of them, else those that begin
// as it does. To a number typed for a price, a panel or a time of day it adds what the
// number leaves open: a litre's or a gallon's, of which panel, which half of the day. In a
// field that is a list the last value is picked.
//
// An item's ID is the whole text of the field with the item picked, which the field reads
// in any language; its Name is the item alone as a person reads it. nil where there is
// nothing to pick.
func Suggestions(r *question.Reader, f *question.Field, text string, sys unit.System) []catalogue.Choice {
	before, last := "", strings.TrimSpace(text)
	if at := strings.LastIndexByte(text, '+'); at >= 0 && f.Repeats {
		last = strings.TrimSpace(text[at+1:])
		if before = strings.TrimSpace(text[:at]); before != "" {
			before += question.Between
		}
	}
	var all []catalogue.Choice
	s := suggester{r, sys}
	switch f {
	case question.Cup, question.SheetCup:
		all = s.cups(last)
	case question.Ratio:
		all = among(s.ratios(), last)
	case question.Tip, question.CupSize:
		all = among(s.usual(f), last)
	case question.Fan, question.Overlap:
		all = among(s.applied(f), last)
	case question.Area:
		all = among(s.panels(last), last)
	case question.Price:
		all = among(s.prices(last), last)
	case question.Started:
		all = s.clocks(last)
	}
	for i := range all {
		all[i].ID = before + all[i].ID
	}
	return all
}

// suggester finds what may be picked, in a system of units.
type suggester struct {
	r   *question.Reader
	sys unit.System
}

// usual is what a field is usually answered with.
func (s suggester) usual(f *question.Field) (all []catalogue.Choice) {
	texts, ground := s.r.UsualAnswers(f.Name, s.sys)
	for _, t := range texts {
		all = append(all, catalogue.Choice{ID: t, Name: t, Ground: ground})
	}
	return distinct(all)
}

// among is the items that text leaves to be picked: all where it is one of them, else
// those that begin as it does, blanks and case apart; nil where none does.
func among(all []catalogue.Choice, text string) (left []catalogue.Choice) {
	if slices.ContainsFunc(all, func(i catalogue.Choice) bool { return i.ID == text }) {
		return all
	}
	squeezed := func(s string) string { return strings.ToLower(strings.Join(strings.Fields(s), "")) }
	for _, i := range all {
		if strings.HasPrefix(squeezed(i.ID), squeezed(text)) {
			left = append(left, i)
		}
	}
	return left
}

// distinct is items without those whose text came before.
func distinct(all []catalogue.Choice) (once []catalogue.Choice) {
	for _, i := range all {
		if !slices.ContainsFunc(once, func(o catalogue.Choice) bool { return o.ID == i.ID }) {
			once = append(once, i)
		}
	}
	return once
}

// cups is every cup that calc knows, the usual ones first; where text fits several, such
// as "4" or "4 mm", those.
func (s suggester) cups(text string) (all []catalogue.Choice) {
	usual, _ := s.r.UsualAnswers(question.Cup.Name, s.sys)
	place := func(k coat.Cup) int {
		if at := slices.Index(usual, k.ID); at >= 0 {
			return at
		}
		return len(usual)
	}
	cups := coat.Cups()
	var several *coat.AmbiguousCup
	if _, err := coat.FindCup(text); errors.As(err, &several) {
		cups, text = several.Candidates, ""
	}
	slices.SortStableFunc(cups, func(a, b coat.Cup) int { return cmp.Compare(place(a), place(b)) })
	for _, k := range cups {
		all = append(all, catalogue.Choice{ID: k.ID, Name: k.Label, Ground: calc.Ground{Basis: calc.Published, Source: k.Standard}})
	}
	return among(all, text)
}

// ratios is those of the catalogue's coats, then the usual ones.
func (s suggester) ratios() (all []catalogue.Choice) {
	for _, k := range s.r.Coats {
		if m := k.Of.Mix; m != nil && m.Ratio != "" {
			text := strings.Join(strings.Fields(m.Ratio), "")
			all = append(all, catalogue.Choice{ID: text, Name: text, Ground: m.Ground()})
		}
	}
	return distinct(append(all, s.usual(question.Ratio)...))
}

// applied is the fans or the overlaps that the catalogue's coats are applied with, the
// smallest first.
func (s suggester) applied(f *question.Field) (all []catalogue.Choice) {
	type applied struct {
		si     float64
		ground calc.Ground
	}
	var as []applied
	for _, k := range s.r.Coats {
		switch o, fan := k.Of.Overlap, k.Of.Fan; {
		case f == question.Overlap && o != nil:
			as = append(as, applied{o.Usual.V, o.Ground()})
		case f == question.Fan && fan != nil:
			as = append(as, applied{float64(fan.Usual.V), fan.Ground()})
		}
	}
	slices.SortStableFunc(as, func(a, b applied) int { return cmp.Compare(a.si, b.si) })
	for _, x := range as {
		count := f.Of[0].Count(s.sys, x.si)
		decimals, _ := unit.Decimals(count)
		text := f.Of[0].CountText(s.sys, count, decimals)
		all = append(all, catalogue.Choice{ID: text, Name: text, Ground: x.ground})
	}
	return distinct(all)
}

// panels is the panels of usual size, as many of each as text has in front.
func (s suggester) panels(text string) (all []catalogue.Choice) {
	count := text[:len(text)-len(strings.TrimLeft(text, "0123456789"))]
	for _, p := range coat.Panels() {
		i := catalogue.Choice{ID: p.ID, Name: s.r.Words().Say("area-" + p.ID), Ground: calc.Ground{Basis: calc.CommonPractice, Source: coat.PanelSource}}
		if count != "" {
			i.ID, i.Name = count+" "+i.ID, count+" x "+i.Name
		}
		if s.r.Read(question.Area, i.ID, s.sys).Fault != nil {
			return nil
		}
		all = append(all, i)
	}
	return all
}

// prices is the price in text for each volume that paint is sold by, the system's own
// first; nil where it is no price.
func (s suggester) prices(text string) (all []catalogue.Choice) {
	number, _, _ := strings.Cut(text, "/")
	number = strings.TrimSpace(number)
	sold := []string{"gal", "qt", "L"}
	if s.sys == unit.Metric {
		slices.Reverse(sold)
	}
	for _, volume := range sold {
		id := number + "/" + volume
		if s.r.Read(question.Price, id, s.sys).Fault != nil {
			return nil
		}
		all = append(all, catalogue.Choice{ID: id, Name: id, Ground: calc.AsTyped})
	}
	return all
}

// clocks is the time of day in text before noon and after, since a clock of twelve hours
// shows both alike; nil where it is none.
func (s suggester) clocks(text string) (all []catalogue.Choice) {
	v := s.r.Read(question.Started, text, s.sys)
	if v.Fault != nil {
		return nil
	}
	at := time.Duration(v.SI[0]) * time.Second
	const noon = 12 * time.Hour
	for _, at := range []time.Duration{at % noon, at%noon + noon} {
		minutes := at / time.Minute
		all = append(all, catalogue.Choice{
			ID: fmt.Sprintf("%d:%02d", minutes/60, minutes%60), Name: string(s.r.Words().AppendClock(nil, s.sys, calc.Clock(at))), Ground: calc.AsTyped,
		})
	}
	return all
}
