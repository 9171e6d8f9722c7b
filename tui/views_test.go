package tui

import (
	"bufio"
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// withViews is an assistant at its answer with so many views, the shipped ones over and over.
func withViews(t test, n int) *root {
	r := open80x24(t)
	r.bench.views = nil
	for i := range n {
		r.bench.views = append(r.bench.views, views[i%len(views)])
	}
	press(r, toAnswer...)
	require.Equal(t, "bench", where(r))
	return r
}

// pageNames is the coat's pages in their order.
var pageNames = []string{"day", "thin", "film", "mix", "prove", "trouble"}

func TestEveryViewAndEveryPageHasAKeyOfItsOwn(t *testing.T) {
	for n, keys := range map[int]string{
		6:  "1234567890pt", // as a person knows them
		7:  "1234567890ept",
		12: "1234567890efghilpt",
	} {
		r := withViews(t, n)
		b := r.bench
		require.Len(t, b.destinations(), n+len(pageNames))
		require.Contains(t, bodyText(b.tabs(1000, b.looksAt)), "["+keys[:1]+" "+r.s.say("view-"+b.views[0].id)+"]")
		for i, k := range strings.Split(keys, "") {
			require.Contains(t, bodyText(b.tabs(1000, b.looksAt)), k+" "+b.destinations()[i].name)
			b.view = (i + 1) % n
			press(r, k)
			if i < n {
				require.Equal(t, "bench", where(r))
				require.Equal(t, i, b.view, k)
				continue
			}
			require.Equal(t, pageNames[i-n], where(r), k)
			press(r, "esc")
		}
	}
}

// The lines of text go by the same keys.
func TestEveryViewAndEveryPageHasItsKeyInLines(t *testing.T) {
	for _, n := range []int{6, 7, 12} {
		r := withViews(t, n)
		b := r.bench
		for i, d := range b.destinations() {
			var out bytes.Buffer
			p := &dialogue{r: r, out: bufio.NewWriter(&out)}
			require.NoError(t, p.do(b, d.key, nil))
			require.NoError(t, p.out.Flush())
			if i < n {
				require.Equal(t, "bench", where(r))
				require.Contains(t, out.String(), d.name)
				require.Contains(t, out.String(), b.views[i].inWords(b, plainWidth)[0][0], d.key)
				continue
			}
			require.Equal(t, pageNames[i-n], where(r), d.key)
			press(r, "esc")
		}
		require.Contains(t, strings.Join(b.menu(), " "), b.destinations()[n+3].key+" mix")
	}
}

// No key leads to two things, nor to what else is done there, with as many views as there
// are keys for.
func TestTheKeysOfDestinationsAreFree(t *testing.T) {
	r := withViews(t, len(destinationKeys)-len(pageNames)+2)
	for _, tried := range []bool{false, true} {
		if tried {
			press(r, "right")
		}
		seen := map[string]string{}
		for _, b := range r.keys() {
			for _, k := range b.Keys() {
				require.Empty(t, seen[k], k)
				seen[k] = b.does
			}
		}
		require.Equal(t, "do-prove", seen[proveKey])
		require.Equal(t, "do-trouble", seen[troubleKey])
		for _, k := range strings.Split(destinationKeys+proveKey+troubleKey, "") {
			require.Contains(t, []string{"do-view", "do-page", "do-prove", "do-trouble"}, seen[k], k)
			require.False(t, slices.Contains([]string{plainBack, plainHelp, plainClear, plainUnits, plainQuit, plainChange, plainAgain, plainAnswer}, k), k)
		}
	}
}
