package shop

import (
	"errors"
	"slices"

	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/question"
)

// Gun is a gun as its file describes it.
type Gun struct {
	ID, Name string
	// Answers is what is fitted to it, by the fields of the questions: its tip.
	Answers question.Answers
	// Cap is what is stamped on the air cap that is fitted.
	Cap      string
	Serviced Date
	Notes    string
	Retired  bool
	// entry is its table as the catalogue has guns: class, stamp, valve.
	entry map[string]any
	doc   *document
}

// The keys of a gun that are none of the catalogue's.
const (
	keyFitted   = "cap-fitted"
	keyServiced = "serviced"
)

// Gun reads a gun by its id. It is nil where a fault costs it, or where there is none.
func (f *Folder) Gun(r *question.Reader, id string) (*Gun, []*Fault) {
	return one(f, gunsDir, id, func(file string, data []byte) (*Gun, []*Fault) { return ReadGun(r, id, file, data) })
}

// Guns reads every gun, in the order of their ids. One that will not do is left out, with its
// faults among the others'.
func (f *Folder) Guns(r *question.Reader) ([]*Gun, []*Fault) {
	guns, faults := all(f, gunsDir, func(id string) (*Gun, []*Fault) {
		return one(f, gunsDir, id, func(file string, data []byte) (*Gun, []*Fault) { return readGun(r, id, file, data) })
	})
	if _, err := WithGuns(r, guns...); err == nil {
		return guns, faults
	}
	return slices.DeleteFunc(guns, func(g *Gun) bool {
		wrong := g.joins(r)
		if wrong != nil {
			faults = append(faults, wrong)
		}
		return wrong != nil
	}), faults
}

// GunIDs is the ids that guns' files are called by.
func (f *Folder) GunIDs() []string {
	ids, _ := f.ids(gunsDir)
	return ids
}

// ReadGun reads a gun from its file's contents; file is its name for faults.
func ReadGun(r *question.Reader, id, file string, data []byte) (*Gun, []*Fault) {
	g, faults := readGun(r, id, file, data)
	if costs(faults) {
		return nil, faults
	}
	if wrong := g.joins(r); wrong != nil {
		return nil, append(faults, wrong)
	}
	return g, faults
}

// readGun is ReadGun for a gun that has yet to join those of the catalogue.
func readGun(r *question.Reader, id, file string, data []byte) (*Gun, []*Fault) {
	d := parse(file, data, gunFormat)
	if costs(d.faults) {
		return nil, d.faults
	}
	g := &Gun{ID: id, Name: d.name(id), Notes: shownNote(d.text(keyNotes)), Retired: d.flag(keyRetired), doc: d}
	g.Cap, g.Serviced = shownName(d.text(keyFitted)), d.date(keyServiced)
	g.Answers = d.answers(r, []*question.Field{question.Tip})
	g.entry = d.gunEntry(r, g.Name)
	d.strangers()
	if _, ok := r.Guns.Get(id); ok {
		d.refuse(faultOf(file, Broken, "shop-gun-taken", calc.TextFigure("given", id)))
	}
	return g, d.faults
}

// joins is what keeps the gun from those of the catalogue, nil where nothing does.
func (g *Gun) joins(r *question.Reader) *Fault {
	_, err := WithGuns(r, g)
	if err == nil {
		return nil
	}
	f := faultOf(g.doc.file, Broken, "shop-gun", calc.TextFigure("why", shownNote(err.Error())))
	var gun *catalogue.GunError
	if errors.As(err, &gun) && gun.Key != "" {
		f.at(g.doc.line(gun.Key), 0)
	}
	return f
}

// gunEntry is the keys that the catalogue has for a gun.
func (d *document) gunEntry(r *question.Reader, name string) map[string]any {
	entry := map[string]any{keyName: name}
	for _, key := range catalogue.GunKeys() {
		if v, ok := d.get(key); ok && key != keyName {
			entry[key] = v
		}
	}
	var classes []string
	for _, g := range r.Guns {
		if g.Of.Class == "" {
			classes = append(classes, g.ID)
		}
	}
	if class := d.text("class"); !slices.Contains(classes, class) {
		d.wrong("class", Broken, "shop-gun-class", calc.TextFigure("names", r.Words().Listed(classes)))
	}
	return entry
}

// WithGuns is a reader that knows guns of the folder beside those of the catalogue.
func WithGuns(r *question.Reader, guns ...*Gun) (*question.Reader, error) {
	if len(guns) == 0 {
		return r, nil
	}
	entries := map[string]map[string]any{}
	for _, g := range guns {
		entries[g.ID] = g.entry
	}
	c, err := r.Catalogue.WithGuns(entries)
	if err != nil {
		return nil, err
	}
	return r.In(c), nil
}
