package catalogue_test

import (
	"os"
	"path/filepath"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// env is an environment of nothing but these.
func env(vars map[string]string) func(string) string {
	return func(name string) string { return vars[name] }
}

func TestShopFileFollowsTheXDGRules(t *testing.T) {
	for name, c := range map[string]struct {
		vars map[string]string
		want string
	}{
		"config folder":                   {map[string]string{"XDG_CONFIG_HOME": "/etc/painter", "HOME": "/home/painter"}, "/etc/painter/boothset/shop.toml"},
		"home alone":                      {map[string]string{"HOME": "/home/painter"}, "/home/painter/.config/boothset/shop.toml"},
		"relative config folder ignored":  {map[string]string{"XDG_CONFIG_HOME": "etc", "HOME": "/home/painter"}, "/home/painter/.config/boothset/shop.toml"},
		"relative config folder, no home": {map[string]string{"XDG_CONFIG_HOME": "etc"}, ""},
		"neither":                         {nil, ""},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Equal(t, c.want, filepath.ToSlash(catalogue.ShopFile(env(c.vars))))
		})
	}
}

// inShop writes a shop's file into a new config folder and gives its environment.
func inShop(t *testing.T, toml string) (vars func(string) string, file string) {
	t.Helper()
	dir := t.TempDir()
	file = filepath.Join(dir, "boothset", "shop.toml")
	require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
	require.NoError(t, os.WriteFile(file, []byte(toml), 0o644))
	return env(map[string]string{"XDG_CONFIG_HOME": dir}), file
}

func TestOpenWithoutAShopFileIsTheShippedCatalogue(t *testing.T) {
	notAFolder := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(notAFolder, nil, 0o644))
	for name, vars := range map[string]map[string]string{
		"no home":           nil,
		"empty folder":      {"XDG_CONFIG_HOME": t.TempDir()},
		"folder is missing": {"HOME": filepath.Join(t.TempDir(), "nobody")},
		"home is a file":    {"HOME": notAFolder},
	} {
		t.Run(name, func(t *testing.T) {
			c, err := catalogue.Open(env(vars), words.English())
			require.NoError(t, err)
			assert.False(t, c.HasShop())
			assert.Equal(t, ids(shipped(t).Choices(catalogue.KindCoat)), ids(c.Choices(catalogue.KindCoat)))
		})
	}
}

func TestOpenReadsTheShopFile(t *testing.T) {
	vars, _ := inShop(t, "[line]\nunits = \"metric\"\n")
	c, err := catalogue.Open(vars, words.English())
	require.NoError(t, err)
	assert.True(t, c.HasShop())
	assert.Equal(t, unit.Metric, c.System())
}

// The shop's units win over the locale's, and these over none.
func TestUnitsOfTheShopAndOfTheLocale(t *testing.T) {
	for _, c := range []struct {
		shop, lang string
		want       unit.System
	}{
		{"", "", unit.US},
		{"", "C.UTF-8", unit.US},
		{"", "en_US.UTF-8", unit.US},
		{"", "es_MX.UTF-8", unit.Metric},
		{`units = "us"`, "es_MX.UTF-8", unit.US},
		{`units = "metric"`, "en_US.UTF-8", unit.Metric},
	} {
		shop, _ := inShop(t, "[line]\n"+c.shop+"\n")
		spoken := func(name string) string {
			if name == "LANG" {
				return c.lang
			}
			return shop(name)
		}
		opened, err := catalogue.Open(spoken, words.English())
		require.NoError(t, err)
		assert.Equal(t, c.want, opened.System(), "%q in %s", c.shop, c.lang)
	}
}

func TestOpenNamesTheFileThatIsWrong(t *testing.T) {
	vars, file := inShop(t, "[coat.clear]\n\nname = 3\n")
	_, err := catalogue.Open(vars, words.English())
	assert.EqualError(t, err, file+`:3:8: key "coat.clear.name" takes text in quotes`)
}

func TestOpenSaysWhyAFileCannotBeRead(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "boothset", "shop.toml")
	require.NoError(t, os.MkdirAll(file, 0o755), "a folder where the file should be")
	_, err := catalogue.Open(env(map[string]string{"XDG_CONFIG_HOME": dir}), words.English())
	assert.EqualError(t, err, file+": cannot be read: it is a folder. Put a plain text file of at most 1 MB there that you may read, or take it away.")
}

// Without a shop's file three files are read, of some 500 rows in all.
func BenchmarkOpen(b *testing.B) {
	vars := env(map[string]string{"XDG_CONFIG_HOME": b.TempDir()})
	b.ReportAllocs()
	for b.Loop() {
		if _, err := catalogue.Open(vars, words.English()); err != nil {
			b.Fatal(err)
		}
	}
}
