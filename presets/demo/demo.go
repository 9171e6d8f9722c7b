// Package demo makes the folder of a shop that is invented: three booths that differ in ways
// worth knowing, five guns, agreed settings, and two years of log with a filter that clogs and
// a coupling that was swapped. What is said and read in it comes of the model itself, with
// noise drawn from a fixed seed; nothing in it was measured anywhere.
package demo

import (
	"embed"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/shop"
)

// The booths of the shop.
const (
	One   = "one"   // a short, wide line
	Two   = "two"   // a long, narrow hose between slim couplings
	Three = "three" // a second regulator at the gun inlet, high up
)

// What happened in the two years, in days before the day the folder is made.
const (
	Days    = 730 // how long the log is
	swapped = 210 // since when booth one has a slim coupling in place of an ordinary one
	clogs   = 75  // since when booth two's filter clogs
	full    = 40  // since when it is as clogged as the catalogue's clogged one
	changed = 400 // when booth two's filter was last changed
)

// Swapped is the day on which a coupling of booth one was swapped, in a folder made on a day.
func Swapped(today time.Time) time.Time { return today.AddDate(0, 0, -swapped) }

// Clogs is the day from which the filter of booth two clogs.
func Clogs(today time.Time) time.Time { return today.AddDate(0, 0, -clogs) }

// NotEmpty is the sentence of the error that the folder to make the shop in holds something.
const NotEmpty = "demo-not-empty"

//go:embed all:shop
var files embed.FS

// Make makes the shop in a folder, which must be new or empty, as of a day; else it gives a
// *shop.Error, with NotEmpty where it holds something. The reader is that of the catalogue.
func Make(dir string, r *question.Reader, today time.Time) error {
	held, err := os.ReadDir(dir)
	switch {
	case err == nil && len(held) > 0:
		return &shop.Error{Path: dir, ID: NotEmpty}
	case err != nil && !errors.Is(err, fs.ErrNotExist):
		return unmade(dir, err)
	}
	if err := copyFiles(dir); err != nil {
		return unmade(dir, err)
	}
	f, err := shop.At(dir)
	if err != nil {
		return err
	}
	defer f.Close()
	filter := shop.Key{Name: "filter-changed", Value: shop.Date{Time: today.AddDate(0, 0, -changed)}}
	if err := f.SaveBooth(r, Two, filter); err != nil {
		return err
	}
	m, forget, err := machine()
	if err != nil {
		return err
	}
	defer forget()
	y, err := open(f, r, today)
	if err != nil {
		return err
	}
	if err := y.agree(); err != nil {
		return err
	}
	records, err := y.log()
	if err != nil {
		return err
	}
	_, err = f.KeepAll(m, records, unit.US)
	return err
}

// Shop is the booths and the guns of the shop, made nowhere: as its files describe them.
func Shop(r *question.Reader) (booths []*shop.Booth, guns []*shop.Gun, err error) {
	for _, id := range [...]string{One, Two, Three} {
		file := "booths/" + id + ".toml"
		data, err := files.ReadFile("shop/" + file)
		if err != nil {
			return nil, nil, err
		}
		b, faults := shop.ReadBooth(r, id, file, data)
		if len(faults) > 0 {
			return nil, nil, faults[0]
		}
		booths = append(booths, b)
	}
	all, err := files.ReadDir("shop/guns")
	if err != nil {
		return nil, nil, err
	}
	for _, e := range all {
		file := "guns/" + e.Name()
		data, err := files.ReadFile("shop/" + file)
		if err != nil {
			return nil, nil, err
		}
		g, faults := shop.ReadGun(r, strings.TrimSuffix(e.Name(), ".toml"), file, data)
		if len(faults) > 0 {
			return nil, nil, faults[0]
		}
		guns = append(guns, g)
	}
	return booths, guns, nil
}

// unmade is why the folder cannot be made, without the path, which is told beside it.
func unmade(dir string, err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err
	}
	return &shop.Error{Path: dir, ID: "shop-unwritable", Err: err}
}

// copyFiles writes the booths and guns.
func copyFiles(dir string) error {
	const own, ownFolder = 0o600, 0o700
	return fs.WalkDir(files, "shop", func(name string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		below, err := filepath.Rel("shop", filepath.FromSlash(name))
		if err != nil {
			return err
		}
		to := filepath.Join(dir, below)
		if e.IsDir() {
			return os.MkdirAll(to, ownFolder)
		}
		data, err := files.ReadFile(name)
		if err != nil {
			return err
		}
		return os.WriteFile(to, data, own)
	})
}

// machine is a machine of the invented shop's own: the log is of none that exists.
func machine() (m *shop.Machine, forget func() error, err error) {
	state, err := os.MkdirTemp("", "boothset")
	if err != nil {
		return nil, nil, unmade(os.TempDir(), err)
	}
	forget = func() error { return os.RemoveAll(state) }
	m, err = shop.MachineOf(func(name string) string {
		return map[string]string{"XDG_STATE_HOME": state, "LocalAppData": state}[name]
	})
	if err != nil {
		return nil, nil, errors.Join(err, forget())
	}
	return m, forget, nil
}
