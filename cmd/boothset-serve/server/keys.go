package server

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"sync"
	"time"

	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/textfile"

	gossh "golang.org/x/crypto/ssh"
)

// keys is the keys that may come in. Their file is read anew when it changes, so that a key that
// is taken out of it lets nobody in any more.
type keys struct {
	file string
	warn func(id string, f ...calc.Figure)

	mu    sync.Mutex
	read  stamp
	names map[string]string // what stands beside each key, by the key
}

// stamp is what tells a file from what it was; none where there is no file.
type stamp struct {
	at   time.Time
	size int64
}

// look is the file as the system tells of it, and whether others could write keys into it.
func (k *keys) look() (now stamp, loose bool) {
	info, err := os.Stat(k.file)
	if err != nil {
		return stamp{}, false
	}
	return stamp{info.ModTime(), info.Size()}, openTo(info, 0o022)
}

// keysFile is where the keys stand, unless a flag says otherwise: beside the shop's own file.
func keysFile(getenv func(string) string) string {
	own := catalogue.ShopFile(getenv)
	if own == "" {
		return ""
	}
	return filepath.Join(filepath.Dir(own), "keys")
}

// fault is why the file of the keys, or a row of it, will not do.
type fault struct {
	id      string
	figures calc.Figures
}

// load reads the file, and tells of each row that will not do. The error is a fault where that
// leaves nobody who could come in.
func (k *keys) load() *fault {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.names = nil
	var loose bool
	if k.read, loose = k.look(); loose {
		return &fault{"keys-loose", calc.Figures{calc.PathFigure("file", k.file)}}
	}
	data, err := textfile.Read(k.file, textfile.Most)
	switch {
	case textfile.Absent(err):
		return &fault{"keys-absent", calc.Figures{calc.PathFigure("file", k.file)}}
	case err != nil:
		return unread("keys-unread", k.file, err)
	}
	names, wrong := keysIn(data)
	for _, w := range wrong {
		k.warn(w.id, append(w.figures, calc.PathFigure("file", k.file))...)
	}
	if len(names) == 0 {
		return &fault{"keys-empty", calc.Figures{calc.PathFigure("file", k.file)}}
	}
	k.names = names
	return nil
}

// name is what stands beside a key in the file, or its fingerprint; ok is false for one that may
// not come in.
func (k *keys) name(key gossh.PublicKey) (name string, ok bool) {
	k.mu.Lock()
	was := k.read
	k.mu.Unlock()
	if now, _ := k.look(); now != was {
		if f := k.load(); f != nil {
			k.warn(f.id, f.figures...)
		}
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	name, ok = k.names[string(key.Marshal())]
	return name, ok
}

// count is how many keys may come in.
func (k *keys) count() int {
	k.mu.Lock()
	defer k.mu.Unlock()
	return len(k.names)
}

// keysIn is the keys of a file as OpenSSH has them (sshd(8), AUTHORIZED_KEYS FILE FORMAT), and what
// is wrong with its rows. A row with options is not read without them: they may narrow what the
// key is for.
func keysIn(data []byte) (names map[string]string, wrong []fault) {
	names = map[string]string{}
	for i, row := range bytes.Split(data, []byte("\n")) {
		if row = bytes.TrimSpace(row); len(row) == 0 || row[0] == '#' {
			continue
		}
		key, name, options, _, err := gossh.ParseAuthorizedKey(row)
		line := calc.CountFigure("line", i+1)
		switch {
		case err != nil, !known(key.Type()):
			wrong = append(wrong, fault{"keys-row", calc.Figures{line}})
		case len(options) > 0:
			wrong = append(wrong, fault{"keys-options", calc.Figures{line}})
		default:
			if name == "" {
				name = gossh.FingerprintSHA256(key)
			}
			names[string(key.Marshal())] = name
		}
	}
	return names, wrong
}

// known reports whether keys of a kind can come in: not those that are weak, and no certificates,
// whose terms nobody here would look at.
func known(kind string) bool {
	return kind == gossh.KeyAlgoRSA || slices.Contains(gossh.SupportedAlgorithms().PublicKeyAuths, kind)
}

// folderOf is the name of the folder that is a key's own: its fingerprint, in letters that every
// file system tells apart.
func folderOf(key gossh.PublicKey) string {
	sum := sha256.Sum256(key.Marshal())
	return hex.EncodeToString(sum[:])
}

// openTo reports whether others than its owner may do what some bits of its mode say, where the
// system has such bits.
func openTo(info fs.FileInfo, bits fs.FileMode) bool {
	return runtime.GOOS != "windows" && info.Mode().Perm()&bits != 0
}

// unread is the fault of a file that could not be read.
func unread(id, file string, err error) *fault {
	f := &fault{id, calc.Figures{calc.PathFigure("file", file)}}
	var own *textfile.Error
	if errors.As(err, &own) {
		f.figures = append(f.figures, own.Why()...)
	}
	return f
}
