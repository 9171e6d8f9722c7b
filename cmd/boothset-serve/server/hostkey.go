package server

import (
	"crypto/ed25519"
	"crypto/rand"
	"encoding/pem"
	"os"
	"path/filepath"

	"boothset/calc"
	"boothset/presets/textfile"

	gossh "golang.org/x/crypto/ssh"
)

// hostKeyFile is the machine's own key in the server's folder.
const hostKeyFile = "host-key"

// hostKey is the machine's own key, by which those who come in know it again: as OpenSSH keeps it,
// for its owner alone. It is made where there is none yet.
func hostKey(folder string) (pemText []byte, key gossh.Signer, f *fault) {
	file := filepath.Join(folder, hostKeyFile)
	pemText, err := textfile.Read(file, textfile.Most)
	if textfile.Absent(err) {
		pemText, err = makeHostKey(file)
		if err != nil {
			return nil, nil, &fault{"host-key-unwritten", append(textfile.Unwritten(err), calc.PathFigure("file", file))}
		}
	}
	if err != nil {
		return nil, nil, unread("host-key-unread", file, err)
	}
	if info, err := os.Stat(file); err != nil || openTo(info, 0o077) {
		return nil, nil, &fault{"host-key-loose", calc.Figures{calc.PathFigure("file", file)}}
	}
	if key, err = gossh.ParsePrivateKey(pemText); err != nil {
		return nil, nil, &fault{"host-key-broken", calc.Figures{calc.PathFigure("file", file)}}
	}
	return pemText, key, nil
}

// makeHostKey makes a key and its file, which is whole whenever it is there.
func makeHostKey(file string) ([]byte, error) {
	_, key, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		return nil, err
	}
	block, err := gossh.MarshalPrivateKey(key, "boothset")
	if err != nil {
		return nil, err
	}
	text := pem.EncodeToMemory(block)
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		return nil, err
	}
	made, err := os.CreateTemp(filepath.Dir(file), hostKeyFile+"-*") // for its owner alone
	if err != nil {
		return nil, err
	}
	defer os.Remove(made.Name()) // it has another name by then, where all went well
	_, err = made.Write(text)
	if synced := made.Sync(); err == nil {
		err = synced
	}
	if closed := made.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Rename(made.Name(), file)
	}
	return text, err
}
