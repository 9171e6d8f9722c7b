package shop

import (
	"bytes"
	"path/filepath"
	"strings"

	"boothset/calc"
	"boothset/presets/question"
	"boothset/presets/textfile"
)

// Added is a file of another shop on its way into the folder.
type Added struct {
	ID   string
	Kind string // KindBooth or KindGun
	File string // in the folder
	data []byte
}

// What may be added.
const (
	KindBooth = "booth"
	KindGun   = "gun"
)

// Look reads a booth or a gun of another shop, by the name of its file, and says what keeps it
// from being added to the folder. Nothing is written.
func (f *Folder) Look(r *question.Reader, file string) (*Added, []*Fault) {
	id, isTOML := strings.CutSuffix(filepath.Base(file), ".toml")
	if !isTOML || !IsID(id) {
		return nil, []*Fault{faultOf(file, Broken, "shop-stray-id", calc.CountFigure("most", mostID))}
	}
	data, err := textfile.Read(file, mostBytes)
	if err != nil {
		return nil, []*Fault{unread(file, err)}
	}
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	a := &Added{ID: id, Kind: KindBooth, File: fileOf(boothsDir, id), data: data}
	if kind := parse(file, data, gunFormat); !costs(kind.faults) {
		a.Kind, a.File = KindGun, fileOf(gunsDir, id)
	}
	var faults []*Fault
	if a.Kind == KindGun {
		_, faults = ReadGun(r, id, file, data)
	} else {
		_, faults = ReadBooth(r, id, file, data)
	}
	if _, found, _ := f.read(a.File); found {
		faults = append(faults, faultOf(a.File, Broken, "shop-there"))
	}
	return a, faults
}

// Add puts what Look gave without a fault that costs it into the folder, as it was written.
func (f *Folder) Add(a *Added) error { return f.put(a.File, a.data) }
