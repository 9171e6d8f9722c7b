package catalogue_test

import (
	"testing"

	"boothset/presets/catalogue"

	"github.com/stretchr/testify/require"
)

// shipped is the catalogue without a shop's file.
func shipped(t testing.TB) *catalogue.Catalogue {
	t.Helper()
	c, err := catalogue.Load(nil, "")
	require.NoError(t, err)
	return c
}

// shop is the catalogue with an invented shop's file over it.
func shop(t testing.TB, toml string) *catalogue.Catalogue {
	t.Helper()
	c, err := catalogue.Load([]byte(toml), "shop.toml")
	require.NoError(t, err)
	return c
}

// get is the entry of an id, which there must be.
func get[E any](t testing.TB, table catalogue.Table[E], id string) E {
	t.Helper()
	e, ok := table.Get(id)
	require.True(t, ok, id)
	return e
}

func ids(all []catalogue.Choice) (out []string) {
	for _, c := range all {
		out = append(out, c.ID)
	}
	return out
}

// choice is the choice of an id, empty where there is none.
func choice(all []catalogue.Choice, id string) catalogue.Choice {
	for _, c := range all {
		if c.ID == id {
			return c
		}
	}
	return catalogue.Choice{}
}
