package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"testing"
	"time"

	"boothset/cmd/boothset/command"

	"github.com/stretchr/testify/require"
)

// Each module that is linked in on any target has a licence to hand on.
func TestEveryModuleHasALicence(t *testing.T) {
	t.Chdir(filepath.Join("..", ".."))
	for _, on := range targets {
		packages, err := on.linked()
		require.NoError(t, err)
		folders, roots := modules(packages)
		require.Greater(t, len(folders), 10)
		for id, dirs := range folders {
			require.NoError(t, texts(io.Discard, id, roots[id], dirs), on)
		}
	}
}

func TestAModuleWithoutALicenceIsRefused(t *testing.T) {
	root := t.TempDir()
	write := func(name, text string) {
		require.NoError(t, os.MkdirAll(filepath.Dir(filepath.Join(root, name)), 0o700))
		require.NoError(t, os.WriteFile(filepath.Join(root, name), []byte(text), 0o600))
	}
	write("license.go", "package license")
	write("NOTICE", "something else")
	deeper := filepath.Join(root, "a", "b")
	write("a/LICENSE", "of a")
	write("a/b/b.go", "package b")
	write("c/LICENSE", "of c, which is not linked in")
	require.ErrorContains(t, texts(io.Discard, "m v1", root, []string{deeper}), "no licence")
	write("LICENCE.txt", "of all")
	var b bytes.Buffer
	require.NoError(t, texts(&b, "m v1", root, []string{deeper}))
	require.Equal(t, "\n======== m v1: LICENCE.txt\n\nof all\n\n======== m v1: NOTICE\n\nsomething else\n\n======== m v1: a/LICENSE\n\nof a\n", b.String())
}

func TestVersions(t *testing.T) {
	for build, want := range map[string]string{
		"v1.2.3":                               "1.2.3",
		"v1.2.3-rc.1":                          "1.2.3~rc.1",
		"v0.0.0-20261130031959-12792e5caf13":   "0.0.0~20261130031959.12792e5caf13",
		"v1.2.4-0.20261130031959-12792e5caf13": "1.2.4~20261130031959.12792e5caf13",
	} {
		got, err := versionOf(build)
		require.NoError(t, err)
		require.Equal(t, want, got)
	}
	for _, build := range []string{"", "(devel)", "v0.0.0-20261130031959-12792e5caf13+dirty"} {
		_, err := versionOf(build)
		require.Error(t, err, build)
	}
}

// An archive goes by its files and the time alone, in whatever order they come.
func TestArchivesAreTheSameEachTime(t *testing.T) {
	made := time.Date(2031, time.March, 14, 9, 26, 0, 0, time.UTC)
	a, b := file{"a", 0o755, []byte("one")}, file{"b/c", 0o644, []byte("two")}
	for name, pack := range map[string]func(string, []file, time.Time) ([]byte, error){"tar.gz": tarred, "zip": zipped} {
		one, err := pack("dir", []file{a, b}, made)
		require.NoError(t, err)
		other, err := pack("dir", []file{b, a}, made.In(time.FixedZone("", 3600)))
		require.NoError(t, err)
		require.Equal(t, one, other, name)
	}
}

func TestWhereThingsLie(t *testing.T) {
	for name, want := range map[string][2]string{ // in a .deb and an .rpm
		"boothset":                    {"/usr/bin/boothset", "/usr/bin/boothset"},
		"boothset-serve":              {"/usr/bin/boothset-serve", "/usr/bin/boothset-serve"},
		"licences.txt":                {"/usr/share/doc/boothset/copyright", "/usr/share/doc/boothset/licences.txt"},
		"man/en/boothset-plan.1":      {"/usr/share/man/man1/boothset-plan.1.gz", "/usr/share/man/man1/boothset-plan.1.gz"},
		"man/es/boothset-plan.1":      {"/usr/share/man/es/man1/boothset-plan.1.gz", "/usr/share/man/es/man1/boothset-plan.1.gz"},
		"completions/_boothset":       {"/usr/share/zsh/vendor-completions/_boothset", "/usr/share/zsh/site-functions/_boothset"},
		"completions/boothset.ps1":    {"", ""},
		"demo/booths/two.toml":        {"/usr/share/boothset/demo/booths/two.toml", "/usr/share/boothset/demo/booths/two.toml"},
		"completions/boothset.bash":   {"/usr/share/bash-completion/completions/boothset", "/usr/share/bash-completion/completions/boothset"},
		"README.md":                   {"/usr/share/doc/boothset/README.md", "/usr/share/doc/boothset/README.md"},
		"something that is new to it": {"", ""},
	} {
		require.Equal(t, want, [2]string{place(name, "deb"), place(name, "rpm")}, name)
	}
}

// The demo shop is the same each time, whenever it is made, and nothing in it will not do.
func TestTheDemoShopIsTheSameEachTime(t *testing.T) {
	made := time.Date(2025, time.March, 14, 9, 26, 0, 0, time.UTC)
	one, err := (&release{work: t.TempDir(), made: made}).demo()
	require.NoError(t, err)
	other, err := (&release{work: t.TempDir(), made: made}).demo()
	require.NoError(t, err)
	require.Equal(t, one, other)

	dir := t.TempDir()
	settings := 0
	for _, f := range one {
		at := filepath.Join(dir, filepath.FromSlash(f.name))
		require.NoError(t, os.MkdirAll(filepath.Dir(at), 0o700))
		require.NoError(t, os.WriteFile(at, f.data, 0o600))
		if agreed.MatchString(f.name) {
			settings++
		}
	}
	require.Greater(t, settings, 3)
	var out bytes.Buffer
	p := &command.Program{Std: command.Stdio{Out: &out, Err: &out}, Getenv: func(string) string { return "" }}
	require.Zero(t, command.Run(p, []string{"shop", "check", "--shop", filepath.Join(dir, "demo")}), out.String())
}
