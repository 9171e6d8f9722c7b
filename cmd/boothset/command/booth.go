package command

import (
	"errors"
	"sync"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/spf13/cobra"
)

// booths is what a run has from the shop's folder. Nothing is looked up on the disk before a
// booth, or a gun that the catalogue does not know, is asked for.
type booths struct {
	p       *Program
	lock    sync.Mutex // lines of a batch are answered side by side
	folder  *shop.Folder
	readers map[[2]string]*jobReader // by booth and gun
	tell    func(...*shop.Fault)     // what is to be known of the files
}

// booths is the shop's folder, from which nothing is read yet; what is to be known of its files
// goes to standard error.
func (p *Program) booths(w *words.Words) *booths {
	return &booths{p: p, tell: func(faults ...*shop.Fault) { p.warn(w, faults) }}
}

// booths is the folder that was opened, for a job.
func (s *shopOpened) booths(p *Program) *booths { return &booths{p: p, folder: s.folder, tell: s.tell} }

// mostReaders is how many readers are kept at once: a batch may name anything.
const mostReaders = 300

// jobReader is a reader with what of the folder it answers with.
type jobReader struct {
	*question.Reader
	booth *shop.Booth      // nil where none is named
	gun   question.Answers // of the gun that is named, where that is the folder's
}

// reader is a reader that answers with a booth and knows a gun of the shop's folder, by what
// was typed of both; either may be empty.
func (b *booths) reader(o opened, booth, gun string) (*jobReader, error) {
	b.lock.Lock()
	defer b.lock.Unlock()
	return b.kept(booth, gun, func() (*jobReader, error) { return b.read(o, booth, gun) })
}

// kept is the reader that is kept for a booth and a gun, else the one that is made.
func (b *booths) kept(booth, gun string, read func() (*jobReader, error)) (*jobReader, error) {
	key := [2]string{booth, gun}
	if r, ok := b.readers[key]; ok {
		return r, nil
	}
	r, err := read()
	if err != nil {
		return nil, err
	}
	if b.readers == nil || len(b.readers) == mostReaders {
		b.readers = map[[2]string]*jobReader{}
	}
	b.readers[key] = r
	return r, nil
}

func (b *booths) read(o opened, booth, gun string) (r *jobReader, err error) {
	if knowsGun(o.reader, gun) {
		gun = ""
	}
	if booth == "" && (gun == "" || shop.Where(b.p.Getenv, b.p.common.shop) == "") {
		return &jobReader{Reader: o.reader}, nil
	}
	if b.folder == nil {
		if b.folder, err = b.p.folder(o.words); err != nil {
			return nil, err
		}
	}
	var found *shop.Booth
	if booth != "" {
		var faults []*shop.Fault
		if found, faults = b.folder.Booth(o.reader, booth); found == nil {
			return nil, (&shopOpened{opened: o, folder: b.folder}).noBooth(booth, faults...)
		}
		b.tell(faults...)
	}
	r = &jobReader{Reader: o.reader}
	if gun != "" { // which takes a catalogue of its own: once for all booths
		r, err = b.kept("", gun, func() (*jobReader, error) { return b.withGun(o, gun) })
	}
	if err != nil || found == nil {
		return r, err
	}
	reader := r.Over(found.Answers).Over(r.gun)
	return &jobReader{reader.WithLearnt(b.learntOf(o, booth, reader)), found, r.gun}, nil
}

func knowsGun(r *question.Reader, gun string) bool {
	return gun == "" || r.Read(question.Gun, r.Expand(question.Gun, gun), unit.US).Fault == nil
}

// withGun is a reader that knows a gun of the folder. Where there is none of that name it knows
// all of them: what was typed may be the beginning of one, and who chooses is told of each.
func (b *booths) withGun(o opened, gun string) (*jobReader, error) {
	var guns []*shop.Gun
	if shop.IsID(gun) {
		g, faults := b.folder.Gun(o.reader, gun)
		if g != nil {
			guns = []*shop.Gun{g}
		}
		if g == nil && len(faults) > 0 {
			return nil, errors.New(faults[0].In(o.words))
		}
		b.tell(faults...)
	}
	if guns == nil {
		guns, _ = b.folder.Guns(o.reader)
	}
	with, err := shop.WithGuns(o.reader, guns...)
	if err != nil {
		return nil, err
	}
	r := &jobReader{Reader: with}
	chosen := with.Read(question.Gun, with.Expand(question.Gun, gun), unit.US).ID
	for _, g := range guns {
		if g.ID == chosen {
			r.Reader, r.gun = with.Over(g.Answers), g.Answers
		}
	}
	return r, nil
}

// ownGuns is the guns of the shop's folder as a shell completes them.
func (p *Program) ownGuns(o opened) (all []string) {
	f, err := p.folder(o.words)
	if err != nil {
		return nil
	}
	guns, _ := f.Guns(o.reader)
	for _, g := range guns {
		if !g.Retired {
			all = append(all, g.ID+"\t"+g.Name)
		}
	}
	return all
}

// completeBooth completes the id of a booth.
func (p *Program) completeBooth(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
	o, err := p.open()
	if err != nil {
		return nil, cobra.ShellCompDirectiveError
	}
	f, err := p.folder(o.words)
	if err != nil {
		return nil, cobra.ShellCompDirectiveError
	}
	var all []string
	found, _ := f.Booths(o.reader)
	for _, b := range found {
		if !b.Retired {
			all = append(all, b.ID+"\t"+b.Name)
		}
	}
	return all, cobra.ShellCompDirectiveNoFileComp
}
