//go:build unix

package command

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asShop is an environment whose shop's file is what make puts at a path.
func asShop(t *testing.T, make func(path string) error) (env func(string) string, file string) {
	t.Helper()
	dir := t.TempDir()
	file = filepath.Join(dir, "boothset", "shop.toml")
	require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
	require.NoError(t, make(file))
	return func(name string) string { return map[string]string{"XDG_CONFIG_HOME": dir}[name] }, file
}

// A shop's file that is waited for without end, or has none, is refused at once, in both
// languages; help is there all the same.
func TestAShopFileThatIsNoFileIsRefusedAtOnce(t *testing.T) {
	for name, c := range map[string]struct {
		make   func(string) error
		en, es string
	}{
		"pipe":   {func(path string) error { return syscall.Mkfifo(path, 0o600) }, "it is a pipe", "es una tubería"},
		"device": {func(path string) error { return os.Symlink("/dev/zero", path) }, "it is a device", "es un dispositivo"},
		"folder": {func(path string) error { return os.Mkdir(path, 0o700) }, "it is a folder", "es una carpeta"},
		"large":  {func(path string) error { return os.WriteFile(path, make([]byte, 1<<20+1), 0o600) }, "it is larger than 1 MB", "ocupa más de 1 MB"},
	} {
		env, file := asShop(t, c.make)
		for lang, says := range map[string]string{"en": c.en, "es": c.es} {
			for _, args := range [][]string{clearJob(), {"day"}, {"thin"}, {"film"}, {"mix"}, {"plan", "--batch"}, nil} {
				got := boothsetIn(env, "", append(args, "--lang", lang)...)
				assert.Equal(t, ExitBadInput, got.code, "%s %v", name, args)
				assert.True(t, strings.HasPrefix(got.err, "boothset: "+file+": ") && strings.Contains(got.err, says), "%s %v: %s", name, args, got.err)
				assert.Empty(t, got.out)
			}
		}
		assert.Contains(t, boothsetIn(env, "", "plan", "--help").out, "--coat")
	}
}
