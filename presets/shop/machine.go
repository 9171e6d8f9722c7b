package shop

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"boothset/presets/last"
	"boothset/presets/textfile"

	"github.com/gofrs/flock"
	"github.com/google/uuid"
)

// Machine is the machine that keeps records, by an id drawn at random once.
type Machine struct {
	ID   string
	lock string // the file whose lock a record is written under
}

// The files of the folder where the machine's own state is kept.
const (
	machineFile = "machine"
	lockFile    = "shop.lock"
)

// MachineOf is this machine; its id is made where there is none yet, in the folder where the
// last answers are kept.
func MachineOf(getenv func(string) string) (*Machine, error) {
	kept := last.File(getenv)
	if kept == "" {
		return nil, &Error{ID: "shop-no-state"}
	}
	return machineIn(filepath.Dir(kept))
}

func machineIn(dir string) (*Machine, error) {
	file := filepath.Join(dir, machineFile)
	failed := func(err error) (*Machine, error) { return nil, &Error{file, "shop-unwritable", textfile.Cause(err)} }
	if err := os.MkdirAll(dir, ownFolder); err != nil {
		return failed(err)
	}
	m := &Machine{lock: filepath.Join(dir, lockFile)}
	held, err := m.hold()
	if err != nil {
		return failed(err)
	}
	defer held.Close()
	data, err := os.ReadFile(file)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return failed(err)
	}
	id, err := uuid.Parse(strings.TrimSpace(string(data)))
	if m.ID = id.String(); err == nil {
		return m, nil
	}
	if id, err = uuid.NewRandom(); err != nil {
		return failed(err)
	}
	m.ID = id.String()
	if err := os.WriteFile(file, []byte(m.ID+"\n"), ownFile); err != nil {
		return failed(err)
	}
	return m, nil
}

// hold waits for the machine's lock. Whoever is killed lets go of it.
func (m *Machine) hold() (*flock.Flock, error) {
	l := flock.New(m.lock, flock.SetPermissions(ownFile))
	return l, l.Lock()
}
