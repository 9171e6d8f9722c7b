package questiontest

import (
	"maps"
	"slices"

	"boothset/presets/catalogue"
	"boothset/presets/question"

	"github.com/stretchr/testify/require"
)

// Open is the reader of the catalogue without a shop's file.
func Open(t require.TestingT) *question.Reader { return Shop(t, "") }

// Shop is the reader of the catalogue with an invented shop's file over it.
func Shop(t require.TestingT, toml string) *question.Reader {
	c, err := catalogue.Load([]byte(toml), "shop.toml")
	require.NoError(t, err)
	r, err := question.New(c)
	require.NoError(t, err)
	return r
}

// Texts is what was typed, a field and its text by turns; the texts of a field that repeats
// follow one another.
func Texts(pairs ...string) question.Texts {
	t := question.Texts{}
	for pair := range slices.Chunk(pairs, 2) {
		t[pair[0]] = append(t[pair[0]], pair[1])
	}
	return t
}

// With is texts with one field typed anew, or left empty.
func With(texts question.Texts, field, typed string) question.Texts {
	with := maps.Clone(texts)
	with[field] = []string{typed}
	if typed == "" {
		delete(with, field)
	}
	return with
}

// MildDay is a complete set of answers to the plan on the shop's usual line.
func MildDay(coat, gun string) question.Texts {
	return Texts("coat", coat, "gun", gun, "temp", "72F", "humidity", "45", "supply", "90psi")
}

// Entries is the ids of the catalogue's entries that a field is chosen from, in their order.
func Entries(r *question.Reader, f *question.Field) []string {
	return IDs(r.Catalogue.Choices(f.Entries))
}

// Choose is what a field that is chosen from the catalogue asks for: its entries, then options.
func Choose(r *question.Reader, f *question.Field, options ...string) string {
	return r.Words().Choose(append(Entries(r, f), options...))
}

// IDs is the ids of choices.
func IDs(all []catalogue.Choice) (ids []string) {
	for _, c := range all {
		ids = append(ids, c.ID)
	}
	return ids
}
