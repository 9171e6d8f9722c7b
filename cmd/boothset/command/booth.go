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
	readers map[[2]string]*question.Reader // by booth and gun
	tell    func(...*shop.Fault)           // what is to be known of the files
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

// reader is a reader that answers with a booth and knows a gun of the shop's folder, by what
// was typed of both; either may be empty.
func (b *booths) reader(o opened, booth, gun string) (*question.Reader, error) {
	b.lock.Lock()
	defer b.lock.Unlock()
	key := [2]string{booth, gun}
	if r, ok := b.readers[key]; ok {
		return r, nil
	}
	r, err := b.read(o, booth, gun)
	if err != nil {
		return nil, err
	}
	if b.readers == nil || len(b.readers) == mostReaders {
		b.readers = map[[2]string]*question.Reader{}
	}
	b.readers[key] = r
	return r, nil
}

func (b *booths) read(o opened, booth, gun string) (r *question.Reader, err error) {
	r = o.reader
	if knowsGun(r, gun) {
		gun = ""
	}
	if booth == "" && (gun == "" || shop.Where(b.p.Getenv, b.p.common.shop) == "") {
		return r, nil
	}
	if b.folder == nil {
		if b.folder, err = b.p.folder(o.words); err != nil {
			return nil, err
		}
	}
	if booth != "" {
		found, faults := b.folder.Booth(r, booth)
		if found == nil {
			return nil, (&shopOpened{opened: o, folder: b.folder}).noBooth(booth, faults...)
		}
		b.tell(faults...)
		r = r.Over(found.Answers)
	}
	if gun != "" {
		return b.withGun(o, r, gun)
	}
	return r, nil
}

func knowsGun(r *question.Reader, gun string) bool {
	return gun == "" || r.Read(question.Gun, r.Expand(question.Gun, gun), unit.US).Fault == nil
}

// withGun is a reader that knows a gun of the folder. Where there is none of that name it knows
// all of them: what was typed may be the beginning of one, and who chooses is told of each.
func (b *booths) withGun(o opened, r *question.Reader, gun string) (*question.Reader, error) {
	var guns []*shop.Gun
	if shop.IsID(gun) {
		g, faults := b.folder.Gun(r, gun)
		if g != nil {
			guns = []*shop.Gun{g}
		}
		if g == nil && len(faults) > 0 {
			return nil, errors.New(faults[0].In(o.words))
		}
		b.tell(faults...)
	}
	if guns == nil {
		guns, _ = b.folder.Guns(r)
	}
	with, err := shop.WithGuns(r, guns...)
	if err != nil {
		return nil, err
	}
	chosen := with.Read(question.Gun, with.Expand(question.Gun, gun), unit.US).ID
	for _, g := range guns {
		if g.ID == chosen {
			with = with.Over(g.Answers)
		}
	}
	return with, nil
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
