//go:build unix

package server

import (
	"crypto/rand"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"boothset/calc"
	"boothset/cmd/boothset/command"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	gossh "golang.org/x/crypto/ssh"
)

// refused is what the program says where it does not start, and its exit code.
func refused(t *testing.T, home string, args ...string) (says string, code int) {
	t.Helper()
	var errs text
	code = command.Run(program(&errs, inHome(home), Run), append([]string{command.Serving, "--listen", "0"}, args...))
	return errs.String(), code
}

// A row of the file that will not do costs itself: keys with options, certificates, keys of weak
// kinds, and what is no key at all.
func TestARowThatWillNotDoCostsItself(t *testing.T) {
	good, other := newKey(t), newKey(t)
	plain := strings.TrimSpace(row(good.PublicKey(), ""))
	certificate := &gossh.Certificate{Key: other.PublicKey(), CertType: gossh.UserCert, ValidPrincipals: []string{"painter"}, ValidBefore: gossh.CertTimeInfinity}
	require.NoError(t, certificate.SignCert(rand.Reader, other))
	rows := []string{
		"# keys of an invented shop", "", "  \t\r",
		`command="sh" ` + plain, `no-pty,restrict ` + plain, `from="192.0.2.0/24" ` + plain, `cert-authority ` + plain,
		strings.TrimSpace(row(certificate, "certificate")),
		"ssh-dss AAAAB3NzaC1kc3MAAACBAP1/U4EddRIpUt9KnC7s5Of2EbdSPO9EAMMeP4C2USZpRV1AIlH7WT2NWPq/xfW6MPbLm1Vs14E7 old",
		"ssh-ed25519 AAAA short", "ssh-ed25519", "nonsense \x00\xff", strings.Repeat("x", 1<<16),
		strings.TrimSpace(row(other.PublicKey(), "")) + "\r", plain + " tablet by\x1b the mixing bench \r",
	}
	names, wrong := keysIn([]byte(strings.Join(rows, "\n")))
	assert.Equal(t, map[string]string{
		string(good.PublicKey().Marshal()):  "tablet by\x1b the mixing bench",
		string(other.PublicKey().Marshal()): gossh.FingerprintSHA256(other.PublicKey()),
	}, names)
	var said []string
	for _, w := range wrong {
		said = append(said, w.id+" "+fmt.Sprint(calc.Figures(w.figures)[0].Value))
	}
	assert.Equal(t, []string{
		"keys-options 4", "keys-options 5", "keys-options 6", "keys-options 7", "keys-row 8", "keys-row 9",
		"keys-row 10", "keys-row 11", "keys-row 12", "keys-row 13",
	}, said)
}

// Whatever stands in the file, each row is a key, is told of, or says nothing.
func FuzzKeys(f *testing.F) {
	f.Add([]byte("ssh-ed25519 AAAAC3NzaC1lZDI1NTE5AAAAIGPcnoJ8nY4F0Y6yLxNq3zVgNfLqBf8qcpK5VYcD3Vnv name\n# no\noption ssh-rsa AAAA"))
	f.Add([]byte("\x00\n\r\n=\"\n a"))
	f.Fuzz(func(t *testing.T, data []byte) {
		names, wrong := keysIn(data)
		if rows := strings.Count(string(data), "\n") + 1; len(names)+len(wrong) > rows {
			t.Fatal(len(names), len(wrong), rows)
		}
		for _, name := range names {
			if name == "" {
				t.Fatal("a key without a name")
			}
		}
	})
}

// Without a key that may come in the program does not start, nor on a file that others can write
// or that is none.
func TestItDoesNotStartWithoutKeys(t *testing.T) {
	key := newKey(t)
	for name, c := range map[string]struct {
		make func(file string) error
		says string
	}{
		"absent":    {func(string) error { return nil }, "is not there"},
		"empty":     {func(file string) error { return os.WriteFile(file, nil, 0o600) }, "holds no key"},
		"no key":    {func(file string) error { return os.WriteFile(file, []byte("# none\nx\n"), 0o600) }, "holds no key"},
		"a folder":  {func(file string) error { return os.Mkdir(file, 0o700) }, "it is a folder"},
		"a pipe":    {func(file string) error { return syscall.Mkfifo(file, 0o600) }, "it is a pipe"},
		"a device":  {func(file string) error { return os.Symlink("/dev/zero", file) }, "can be written by others"},
		"too large": {func(file string) error { return os.WriteFile(file, make([]byte, 1<<20+1), 0o600) }, "it is larger than 1 MB"},
		"anybody's": {func(file string) error {
			if err := os.WriteFile(file, []byte(row(key.PublicKey(), "")), 0o600); err != nil {
				return err
			}
			return os.Chmod(file, 0o620)
		}, "can be written by others"},
	} {
		dir := home(t)
		file := keysFile(inHome(dir))
		require.NoError(t, os.Remove(file))
		require.NoError(t, c.make(file), name)
		says, code := refused(t, dir)
		assert.Equal(t, command.ExitBadInput, code, name)
		assert.Contains(t, says, c.says, name)
		assert.Contains(t, says, filepath.Base(file), name)
		assert.NotContains(t, says, "Open at", name)
	}
	says, code := refused(t, home(t), "--keys", filepath.Join(t.TempDir(), "other"))
	assert.Equal(t, command.ExitBadInput, code)
	assert.Contains(t, says, "other is not there")
}

// What is wrong with the shop's own file, or with the address, is told before anybody comes in.
func TestItDoesNotStartOnAWrongFileOrAddress(t *testing.T) {
	dir := home(t, newKey(t))
	for _, address := range []string{"127.0.0.1:99999", "nowhere.invalid:2222", "127.0.0.1:x", "192.0.2.77:0", "::::"} {
		says, code := refused(t, dir, "--listen", address)
		assert.Equal(t, command.ExitBadInput, code, address)
		assert.Contains(t, says, "cannot listen at "+address)
	}
	require.NoError(t, os.WriteFile(filepath.Join(dir, ".config", "boothset", "shop.toml"), []byte("[line]\nwrong = 1\n"), 0o600))
	says, code := refused(t, dir)
	assert.Equal(t, command.ExitBadInput, code)
	assert.Contains(t, says, "shop.toml")
	says, code = refused(t, "")
	assert.Equal(t, command.ExitBadInput, code)
	assert.Contains(t, says, "XDG_STATE_HOME")
}

// A key that is taken out of the file lets nobody in any more, and one that is put into it does,
// without another start; while the file is gone nobody comes in.
func TestTheFileOfKeysIsReadAsItChanges(t *testing.T) {
	one, two := newKey(t), newKey(t)
	dir := home(t, one)
	r := serve(t, dir)
	in := func(key gossh.Signer) bool {
		client, err := r.dial("painter", key)
		if err == nil {
			client.Close()
		}
		return err == nil
	}
	require.True(t, in(one))
	require.False(t, in(two))
	file := keysFile(inHome(dir))
	require.NoError(t, os.WriteFile(file, []byte("junk\n"+row(two.PublicKey(), "two")), 0o600))
	require.False(t, in(one))
	require.True(t, in(two))
	require.NoError(t, os.Remove(file))
	for range 3 {
		require.False(t, in(two))
	}
	require.Equal(t, 1, strings.Count(r.says.String(), "is not there"))
	require.Equal(t, 1, strings.Count(r.says.String(), "line 1: no public key"))
}

// The machine's own key is made at the first start, for its owner alone, and is the same ever
// after. One that others can read, that is damaged or is no file is neither used nor replaced.
func TestTheMachinesOwnKey(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "state", "serve")
	_, first, f := hostKey(dir)
	require.Nil(t, f)
	require.Equal(t, gossh.KeyAlgoED25519, first.PublicKey().Type())
	file := filepath.Join(dir, hostKeyFile)
	info, err := os.Stat(file)
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o600), info.Mode())
	info, err = os.Stat(dir)
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o700), info.Mode().Perm())
	_, again, f := hostKey(dir)
	require.Nil(t, f)
	require.Equal(t, first.PublicKey(), again.PublicKey())
	left, err := filepath.Glob(filepath.Join(dir, "*"))
	require.NoError(t, err)
	require.Equal(t, []string{file}, left)

	whole, err := os.ReadFile(file)
	require.NoError(t, err)
	for _, mode := range []os.FileMode{0o640, 0o604, 0o620, 0o666} {
		require.NoError(t, os.Chmod(file, mode))
		_, _, f = hostKey(dir)
		require.Equal(t, "host-key-loose", f.id)
	}
	require.NoError(t, os.Chmod(file, 0o600))
	for _, torn := range [][]byte{nil, whole[:len(whole)/2], []byte("x")} {
		require.NoError(t, os.WriteFile(file, torn, 0o600))
		_, _, f = hostKey(dir)
		require.Equal(t, "host-key-broken", f.id)
		now, err := os.ReadFile(file)
		require.NoError(t, err)
		require.Equal(t, string(torn), string(now))
	}
	require.NoError(t, os.Remove(file))
	require.NoError(t, syscall.Mkfifo(file, 0o600))
	_, _, f = hostKey(dir)
	require.Equal(t, "host-key-unread", f.id)
	require.NoError(t, os.WriteFile(filepath.Join(t.TempDir(), "file"), nil, 0o600))
	_, _, f = hostKey(filepath.Join(file, "below"))
	require.Equal(t, "host-key-unwritten", f.id)
}

// No two keys share what is kept of them.
func TestNoTwoKeysShareAFolder(t *testing.T) {
	seen := map[string]bool{}
	for range 100 {
		name := folderOf(newKey(t).PublicKey())
		require.Regexp(t, "^[0-9a-f]{64}$", name)
		require.False(t, seen[name])
		seen[name] = true
	}
}

// A session that nobody types in ends, is told so in its language, and its answers are kept.
func TestAnIdleSessionEnds(t *testing.T) {
	key := newKey(t)
	dir := home(t, key)
	r := serveHere(t, dir, func(s *command.Serve) { s.Idle = 700 * time.Millisecond })
	x := r.come(key, "LANG=es")
	x.keys("antes de pintar", "\r", "pintar o aplicar", "8")
	require.Equal(t, command.ExitStopped, x.code())
	requireClean(t, x.wrote.String())
	require.Contains(t, x.wrote.String(), "No se oprimió ninguna tecla en")
	awaitKept(t, kept(dir, key), "coat", "clear")
}
