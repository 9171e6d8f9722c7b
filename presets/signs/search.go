package signs

import (
	"cmp"
	"slices"
	"strings"

	"boothset/presets/words"
)

// Name is the sentence of what a sign is called.
func Name(id string) string { return "name-sign-" + id }

// Also is what else a sign is called, in any language.
func Also(id string) []string { return read().also[id] }

// named is everything that a sign is called, as search compares it, in every language.
func named(id string) (all []string) {
	all = append(all, plain(id))
	for _, lang := range words.Languages() {
		if w, ok := words.For(lang); ok {
			all = append(all, plain(w.Say(Name(id))))
		}
	}
	for _, also := range Also(id) {
		all = append(all, plain(also))
	}
	return all
}

// bare takes the accents from letters and makes blanks of hyphens and marks.
var bare = strings.NewReplacer("á", "a", "é", "e", "í", "i", "ó", "o", "ú", "u", "ü", "u", "ñ", "n", "-", " ", ",", " ", ";", " ", "'", "")

// plain is text as it is compared: small letters without accents, single blanks.
func plain(t string) string {
	return strings.Join(strings.Fields(bare.Replace(strings.ToLower(t))), " ")
}

// How well a name fits what is looked for, the best first.
const (
	fitsWhole = iota
	fitsStart
	fitsWords
	fitsNot
)

// fit is how well a name fits a text that is plain: each of the text's words begins one of the
// name's at the least.
func fit(name, text string) int {
	switch {
	case name == text:
		return fitsWhole
	case strings.HasPrefix(name, text):
		return fitsStart
	}
	of := strings.Fields(name)
	for _, word := range strings.Fields(text) {
		if !slices.ContainsFunc(of, func(n string) bool { return strings.HasPrefix(n, word) }) {
			return fitsNot
		}
	}
	return fitsWords
}

// Find is the sign that a text names whole, by its id or by what it is called in any language,
// in any case of letters, with accents or without; empty where there is none, or several.
func Find(t string) string {
	found := ""
	for _, s := range Book().Signs {
		if best(s.ID, plain(t)) != fitsWhole {
			continue
		}
		if found != "" {
			return ""
		}
		found = s.ID
	}
	return found
}

func best(id, text string) int {
	least := fitsNot
	for _, name := range named(id) {
		least = min(least, fit(name, text))
	}
	return least
}

// Search is the signs that a text may name, the best fit first, in the order of the book where
// they fit alike: all of them where the text is empty.
func Search(t string) (ids []string) {
	text := plain(t)
	fits := map[string]int{}
	for _, s := range Book().Signs {
		if fits[s.ID] = best(s.ID, text); fits[s.ID] < fitsNot {
			ids = append(ids, s.ID)
		}
	}
	slices.SortStableFunc(ids, func(a, b string) int { return cmp.Compare(fits[a], fits[b]) })
	return ids
}
