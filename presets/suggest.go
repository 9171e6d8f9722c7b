package presets

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
func (c *Catalogue) Suggestions(field, text string, sys unit.System) []Item {
	before, last := "", strings.TrimSpace(text)
	if at := strings.LastIndexByte(text, '+'); at >= 0 && (field == FieldArea || field == FieldPrice) {
		last = strings.TrimSpace(text[at+1:])
		if before = strings.TrimSpace(text[:at]); before != "" {
			before += " + "
		}
	}
	var all []Item
	switch field {
	case FieldCup, FieldSheetCup:
		all = c.cupsFor(last, sys)
	case FieldRatio:
		all = among(c.ratios(sys), last)
	case FieldTip, FieldCupSize:
		all = among(c.usual(field).items(sys), last)
	case FieldFan, FieldOverlap:
		all = among(c.laid(field, sys), last)
	case FieldArea:
		all = among(c.panelsFor(last), last)
	case FieldPrice:
		all = among(c.pricesFor(last, sys), last)
	case FieldStarted:
		all = c.clocksFor(last, sys)
	}
	for i := range all {
		all[i].ID = before + all[i].ID
	}
	return all
}

// among is the items that text leaves to be picked: all where it is one of them, else
// those that begin as it does, blanks and case apart; nil where none does.
func among(all []Item, text string) (left []Item) {
	if slices.ContainsFunc(all, func(i Item) bool { return i.ID == text }) {
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
func distinct(all []Item) (once []Item) {
	for _, i := range all {
		if !slices.ContainsFunc(once, func(o Item) bool { return o.ID == i.ID }) {
			once = append(once, i)
		}
	}
	return once
}

// cupsFor is every cup that calc knows, the usual ones first; where text fits several,
// such as "4" or "4 mm", those.
func (c *Catalogue) cupsFor(text string, sys unit.System) (all []Item) {
	usual := c.usual(FieldCup).of(sys)
	place := func(k coat.Cup) int {
		if at := slices.Index(usual, k.ID); at >= 0 {
			return at
		}
		return len(usual)
	}
	cups := coat.Cups()
	var several *coat.AmbiguousCup
	_, err := coat.FindCup(text)
	if errors.As(err, &several) {
		cups, text = several.Candidates, ""
	}
	slices.SortStableFunc(cups, func(a, b coat.Cup) int { return cmp.Compare(place(a), place(b)) })
	for _, k := range cups {
		all = append(all, Item{ID: k.ID, Name: k.Label, Standing: calc.Ground{Basis: calc.Published, Source: k.Standard}})
	}
	return among(all, text)
}

// ratios is those of the catalogue's coats, then the usual ones.
func (c *Catalogue) ratios(sys unit.System) (all []Item) {
	for _, k := range c.entries.Coat {
		if m := k.e.Mix; m != nil && m.Ratio != "" {
			text := strings.Join(strings.Fields(m.Ratio), "")
			all = append(all, Item{ID: text, Name: text, Standing: m.standing()})
		}
	}
	return distinct(append(all, c.usual(FieldRatio).items(sys)...))
}

// laid is the fans or the overlaps that the catalogue's coats are laid with, the smallest
// first.
func (c *Catalogue) laid(field string, sys unit.System) (all []Item) {
	var lays []*layEntry
	for _, k := range c.entries.Coat {
		if l := k.e.Lay; l != nil {
			lays = append(lays, l)
		}
	}
	value := func(l *layEntry) float64 { return float64(l.Fan.v) }
	of := fans[sys]
	if field == FieldOverlap {
		value = func(l *layEntry) float64 { return l.Overlap.v }
		of = shares[sys]
	}
	slices.SortStableFunc(lays, func(a, b *layEntry) int { return cmp.Compare(value(a), value(b)) })
	for _, l := range lays {
		count := of.count(value(l))
		decimals, _ := decimalsOf(count)
		text := of.text(count, decimals)
		all = append(all, Item{ID: text, Name: text, Standing: l.standing()})
	}
	return distinct(all)
}

var fans = kind{
	{func(si float64) float64 { return unit.Length(si).Inches() }, func(v float64, d int) string { return unit.US.Small(unit.Inches(v), d) }},
	{func(si float64) float64 { return unit.Length(si).MM() }, func(v float64, d int) string { return unit.Metric.Small(unit.MM(v), d) }},
}

// panelsFor is the panels of usual size, as many of each as text has in front.
func (c *Catalogue) panelsFor(text string) (all []Item) {
	count := text[:len(text)-len(strings.TrimLeft(text, digits))]
	if n, ok := wholeNumber(count); count != "" && (!ok || n < 1 || n > mostPanels) {
		return nil
	}
	for _, p := range coat.Panels() {
		i := Item{ID: p.ID, Name: c.words.Say("area-" + p.ID), Standing: calc.Ground{Basis: calc.Estimate, Source: coat.PanelBasis}}
		if count != "" {
			i.ID, i.Name = count+" "+i.ID, count+" x "+i.Name
		}
		all = append(all, i)
	}
	return all
}

const digits = "0123456789"

// pricesFor is the price in text for each volume that paint is sold by, the system's own
// first; nil where it is no price.
func (c *Catalogue) pricesFor(text string, sys unit.System) (all []Item) {
	number, _, _ := strings.Cut(text, "/")
	number = strings.TrimSpace(number)
	sold := []string{"gal", "qt", "L"}
	if sys == unit.Metric {
		slices.Reverse(sold)
	}
	for _, volume := range sold {
		id := number + "/" + volume
		v := newResolver(c, sys)
		if v.price(Typed(id)); len(v.faults) > 0 {
			return nil
		}
		all = append(all, Item{ID: id, Name: id, Standing: calc.AsTyped})
	}
	return all
}

// clocksFor is the time of day in text before noon and after, since a clock of twelve
// hours shows both alike; nil where it is none.
func (c *Catalogue) clocksFor(text string, sys unit.System) (all []Item) {
	v := newResolver(c, sys)
	at, ok := v.clock(FieldStarted, Typed(text))
	if !ok {
		return nil
	}
	const noon = calc.Clock(12 * time.Hour)
	for _, at := range []calc.Clock{at % noon, at%noon + noon} {
		minutes := time.Duration(at) / time.Minute
		all = append(all, Item{
			ID: fmt.Sprintf("%d:%02d", minutes/60, minutes%60), Name: string(c.words.AppendClock(nil, sys, at)), Standing: calc.AsTyped,
		})
	}
	return all
}
