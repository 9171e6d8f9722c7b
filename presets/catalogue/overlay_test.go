package catalogue

import (
	"testing"

	"boothset/presets/words"

	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Opening trusts what ships. Here each file is read strictly, and all of it is checked as a
// shop's file is, which one that holds nothing but a remark brings about.
func TestTheShippedCatalogueWillDo(t *testing.T) {
	for _, f := range shipped {
		read, err := entriesIn(f.data, f.name)
		require.NoError(t, err)
		var want entries
		require.NoError(t, toml.Unmarshal(f.data, &want))
		assert.Equal(t, &want, read, "as the library reads it")
	}
	_, err := Load([]byte("# nothing of our own\n"), "shop.toml")
	assert.NoError(t, err)
	for _, spoiled := range []string{"[coat.clear]\nrank = \"first\"\n", "[coat.clear]\nglossy = true\n"} {
		_, err := entriesIn([]byte(spoiled), "coats.toml")
		assert.Error(t, err, "the same would find it: %s", spoiled)
	}
}

// No key ships in two files: which of them counts must not hang on the order they are read
// in. Of a coat two files say different things.
func TestWhatShipsIsInOneFile(t *testing.T) {
	seen := map[string]string{}
	for _, f := range shipped {
		var raw map[string]map[string]any
		require.NoError(t, toml.Unmarshal(f.data, &raw))
		for table, entries := range raw {
			for id, e := range entries {
				keys := []string{table + "." + id}
				if table == "coat" {
					keys = keys[:0]
					for key := range e.(map[string]any) {
						keys = append(keys, table+"."+id+"."+key)
					}
				}
				for _, key := range keys {
					assert.Empty(t, seen[key], "%s is in %s too", key, f.name)
					seen[key] = f.name
				}
			}
		}
	}
	assert.Greater(t, len(seen), 40)
}

// shippedTables are the shipped files as they stand, each laid over the others.
func shippedTables(t *testing.T) map[string]any {
	t.Helper()
	raw := map[string]any{}
	for _, f := range shipped {
		var tables map[string]any
		require.NoError(t, toml.Unmarshal(f.data, &tables))
		overlay(raw, tables)
	}
	return raw
}

// overlay lays what over holds on all, table by table and key by key.
func overlay(all, over map[string]any) {
	for key, v := range over {
		table, ok := v.(map[string]any)
		under, both := all[key].(map[string]any)
		if ok && both {
			overlay(under, table)
		} else {
			all[key] = v
		}
	}
}

func entriesOf(t *testing.T, raw map[string]any) *entries {
	t.Helper()
	data, err := toml.Marshal(raw)
	require.NoError(t, err)
	e, err := entriesIn(data, "laid.toml")
	require.NoError(t, err)
	return e
}

// entriesIn is the entries of a file by itself.
func entriesIn(data []byte, file string) (*entries, error) {
	of, err := readTables(file, data, words.English())
	if err != nil {
		return nil, err
	}
	e := &entries{}
	return e, e.decode(&of, words.English())
}

// A shop's file decoded over the shipped entries is as if its tables were laid over the
// shipped tables key by key.
func TestAShopsFileLiesOverTheShippedKeyByKey(t *testing.T) {
	for name, shop := range map[string]string{
		"nothing": "# only a remark\n",
		"values": `
[coat.clear]
name = "our clear"
[coat.clear.working.reduced-pressure]
start = "25psi"
[coat.clear.film]
typical = "2.3mil"
[coat.sealer]
working.high-pressure = { start = "40psi" }
[gun.high-volume-low-pressure]
aliases = ["green", "gravity"]
[gun.reduced-pressure.valve]
shape = 0.7
turns = 3.0
[gun.high-pressure]
valve.shape = 1.0
[line]
hose = ["30ft,3/8in", "6ft,5/16in"]
supply = "110psi"
[tolerance.gun-gauge]
within = "1psi"
`,
		"inline": `
coat = { clear = { farther = "0.5in", working = { high-pressure = { low = "30psi" } } } }
[filter."clogged"]
ratio = 0.2
`,
		"new": `
[coat.own]
working.reduced-pressure = { start = "26psi", low = "23psi", high = "30psi" }
[coat.own.cup]
cup = "din4"
low = "16s"
aim = "17s"
high = "18s"
temperature = "20C"
[gun.own]
class = "reduced-pressure"
inlet = "35psi"
[gun.own.valve]
shape = 1.0
[hose."5/16in"]
bore = "5/16in"
end = "7mm"
[line]
hose = []
`,
	} {
		t.Run(name, func(t *testing.T) {
			tables, before := shippedTables(t), shippedTables(t)
			var raw map[string]any
			require.NoError(t, toml.Unmarshal([]byte(shop), &raw))
			own, err := readTables("shop.toml", []byte(shop), words.English())
			require.NoError(t, err)
			got := entriesOf(t, before)
			require.NoError(t, got.decode(&own, words.English()))
			overlay(tables, raw)
			assert.Equal(t, entriesOf(t, tables), got)
			if name != "nothing" {
				assert.NotEqual(t, entriesOf(t, before), got)
			}
		})
	}
}
