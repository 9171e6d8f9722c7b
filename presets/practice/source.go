package practice

import (
	"boothset/presets/catalogue"
	"boothset/presets/demo"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"
)

// Source is what jobs are drawn from: booths, the guns that are sprayed with in them, and the
// weather.
type Source struct {
	Invented bool // of the invented shop
	reader   *question.Reader
	booths   []*shop.Booth
	guns     []string
	bands    []shop.Band
}

// Of is the source that a shop's folder makes: its booths and guns, the catalogue's guns where
// it has none of its own. Without a booth that will do it is the invented shop. The faults are
// what in the folder is left out or only told.
func Of(r *question.Reader, f *shop.Folder) (*Source, []*shop.Fault, error) {
	booths, faults := f.Booths(r)
	if len(current(booths, func(b *shop.Booth) bool { return b.Retired })) == 0 {
		s, err := Invented(r.Words())
		return s, faults, err
	}
	guns, more := f.Guns(r)
	bands, wrong := f.Bands()
	faults = append(append(faults, more...), wrong...)
	s, err := sourceOf(r, booths, guns, bands)
	return s, faults, err
}

// Invented is the invented shop as a source, in a language, with the catalogue's guns besides its
// own. Nothing is written, and what a shop has of its own has no part in it.
func Invented(w *words.Words) (*Source, error) {
	c, err := catalogue.LoadIn(w, words.Locale{}, nil, "")
	if err != nil {
		return nil, err
	}
	r, err := question.New(c)
	if err != nil {
		return nil, err
	}
	booths, guns, err := demo.Shop(r)
	if err != nil {
		return nil, err
	}
	s, err := sourceOf(r, booths, guns, shop.ShippedBands())
	if err != nil {
		return nil, err
	}
	s.Invented, s.guns = true, append(s.guns, r.Guns.IDs()...)
	return s, nil
}

func sourceOf(r *question.Reader, booths []*shop.Booth, guns []*shop.Gun, bands []shop.Band) (*Source, error) {
	with, err := shop.WithGuns(r, guns...)
	if err != nil {
		return nil, err
	}
	s := &Source{reader: with, booths: current(booths, func(b *shop.Booth) bool { return b.Retired }), bands: bands}
	for _, g := range current(guns, func(g *shop.Gun) bool { return g.Retired }) {
		s.guns = append(s.guns, g.ID)
	}
	if len(s.guns) == 0 {
		s.guns = r.Guns.IDs()
	}
	return s, nil
}

// current is what is not retired.
func current[T any](all []T, retired func(T) bool) (left []T) {
	for _, x := range all {
		if !retired(x) {
			left = append(left, x)
		}
	}
	return left
}

// Booths is the ids of the booths that jobs are drawn from.
func (s *Source) Booths() (ids []string) {
	for _, b := range s.booths {
		ids = append(ids, b.ID)
	}
	return ids
}

// Only leaves the booth of an id alone; false where there is none.
func (s *Source) Only(id string) bool {
	for _, b := range s.booths {
		if b.ID == id {
			s.booths = []*shop.Booth{b}
			return true
		}
	}
	return false
}
