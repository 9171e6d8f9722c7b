package tui

import (
	"cmp"
	"errors"
	"slices"
	"strings"
	"unicode"

	"boothset/calc"
	"boothset/presets/question"
	"boothset/presets/shop"
)

// The fields that name a booth or a gun.
const (
	ownName = "own-name"
	ownID   = "own-id" // of its file
)

// newSavePage is the page over the answer that keeps the line of what shows as a booth.
func newSavePage(s *session, from *bench) *entryPage {
	p := newEntryPage(s, "save", "save-title", "do-save")
	p.from, p.tab = from, p
	p.fill = func() {
		if p.all == nil {
			p.all = []box{entryBox(ownName, nil), entryBox(ownID, nil)}
		}
		p.all[0].typed.set(s.desk.boothName())
		p.all[1].typed.set("")
		if s.desk.booth != nil {
			p.all[1].typed.set(s.desk.booth.ID)
		}
	}
	p.over = func(w int) []string { return wrap(from.lineText(), w) }
	p.note = func(b *box) string { return p.idNote(b) }
	p.take = func() (move, string) { return from.saveLine(p) }
	return p
}

// idNote is what the id comes to where none is typed.
func (p *entryPage) idNote(b *box) string {
	if b.Name != ownID {
		return ""
	}
	return idOf(p.text(ownName))
}

// id is the id that was typed, else the one that the name comes to.
func (p *entryPage) idText() string {
	if id := p.text(ownID); id != "" {
		return id
	}
	return idOf(p.text(ownName))
}

// idOf is an id made of a name: its letters and digits, with hyphens between its words; letters
// beyond a to z are left out.
func idOf(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) })
	id := strings.Map(func(c rune) rune {
		if c == '-' || 'a' <= c && c <= 'z' || '0' <= c && c <= '9' {
			return c
		}
		return -1
	}, strings.Join(words, "-"))
	const most = 40 // of a file's name
	return strings.Trim(id[:min(len(id), most)], "-")
}

// lineText is the line of what shows, in a sentence.
func (b *bench) lineText() string {
	s := b.s
	var parts []string
	for i := range b.tried.Request.Line {
		parts = append(parts, plain(b.tried.Request.Line[i].Name))
	}
	return s.text("save-line", calc.TextFigure("line", strings.Join(parts, ", ")))
}

// saveLine keeps the line of what shows as the booth that is named.
func (b *bench) saveLine(p *entryPage) (move, string) {
	s := b.s
	id, name := p.idText(), p.text(ownName)
	there := s.text("save-there", calc.TextFigure("id", id))
	own := s.desk.booth != nil && s.desk.booth.ID == id
	switch {
	case !shop.IsID(id):
		return nil, s.say("save-no-id")
	case !own && s.desk.boothOf(id) != nil:
		return nil, there
	}
	a := b.tried.answers.Or(s.usual)
	keys := []shop.Key{{Name: "name", Value: orNil(name)}}
	said := shop.KeysOf(s.desk.base, a, s.sys)
	keys = append(keys, said...)
	for _, f := range question.LineFields() { // what it said of the line in another way
		if !slices.ContainsFunc(said, func(k shop.Key) bool { return k.Name == f.Name }) {
			keys = append(keys, shop.Key{Name: f.Name})
		}
	}
	base := s.desk.base
	told := s.text("save-kept", calc.TextFigure("booth", cmp.Or(name, id)))
	write := func(f *shop.Folder) (string, error) {
		if !own && slices.Contains(f.BoothIDs(), id) { // from elsewhere, or one that is not offered
			return "", errors.New(there)
		}
		return told, f.SaveBooth(base, id, keys...)
	}
	return func(r *root) {
		back(r)
		r.toFolder(id, write)
	}, ""
}

// orNil is a text as a key's value, which an empty one takes out.
func orNil(text string) any {
	if text == "" {
		return nil
	}
	return text
}
