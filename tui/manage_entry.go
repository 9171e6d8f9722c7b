package tui

import (
	"cmp"
	"errors"
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/shop"
)

// ownField is a key of a booth's or a gun's file that is no field of a question: its box is
// called own, a hyphen and the key.
const (
	ofOwn    = "own"
	ownField = ofOwn + "-"
)

// ownKey is a key with what it holds now; a day as files write it.
type ownKey struct {
	name, text string
	isDate     bool
	choices    []catalogue.Choice
}

// keyBox is the box of a key.
func keyBox(k ownKey) box {
	b := entryBox(ownField+k.name, k.choices)
	b.typed.set(k.text)
	if k.choices != nil {
		b.picked = max(b.choice(k.text), 0)
	}
	return b
}

// fieldBox is the box of a question's field, with what a file says to it.
func (s *session) fieldBox(f *question.Field, said question.Answers) box {
	b := box{Row: question.Row{Field: f}, picked: -1}
	if choices := s.desk.base.Choices(f); choices != nil {
		b.choices = append([]catalogue.Choice{choiceOf(pickOther, s.say("entry-unsaid"))}, choices...)
		b.picked = max(b.choice(said.ID(f)), 0)
		return b
	}
	b.typed.set(said.Text(f))
	return b
}

// fits reports whether what a file says fits into a box.
func fits(text string) bool { return len([]rune(text)) <= longestText }

// boothEntry is the page that describes a booth: one that there is, or a new one like it.
func (s *session) boothEntry(from *pickPage, b *shop.Booth, isNew bool) *entryPage {
	own := []ownKey{
		{name: "filter-changed", text: b.FilterChanged.Text(), isDate: true}, {name: "gauge-checked", text: b.GaugeChecked.Text(), isDate: true},
		{name: "notes", text: b.Notes},
	}
	var fields []*question.Field
	for _, f := range question.ShopFields() {
		if f == question.Line || question.Whole(b.Answers) && slices.Contains(question.LineFields(), f) {
			continue // it is changed part by part, at an answer
		}
		fields = append(fields, f)
	}
	base := s.desk.base
	return s.ownEntry(from, ownFile{
		id: b.ID, name: b.Name, isNew: isNew, isBooth: true, own: own, fields: fields, said: b.Answers,
		there: func(f *shop.Folder) []string { return f.BoothIDs() },
		save: func(f *shop.Folder, id string, keys []shop.Key) error {
			return f.SaveBoothLike(base, id, b.ID, keys...)
		},
	})
}

// gunEntry is boothEntry of a gun.
func (s *session) gunEntry(from *pickPage, g *shop.Gun, isNew bool) *entryPage {
	var classes []catalogue.Choice
	for _, c := range s.desk.base.Choices(question.Gun) {
		if e, ok := s.desk.base.Guns.Get(c.ID); ok && e.Class == "" {
			classes = append(classes, c)
		}
	}
	own := []ownKey{{name: "class", text: g.Says("class"), choices: classes}}
	for _, key := range []string{"inlet", "flow", "cap"} {
		own = append(own, ownKey{name: key, text: g.Says(key)})
	}
	own = append(own, ownKey{name: "cap-fitted", text: g.Cap}, ownKey{name: "serviced", text: g.Serviced.Text(), isDate: true}, ownKey{name: "notes", text: g.Notes})
	base := s.desk.base
	return s.ownEntry(from, ownFile{
		id: g.ID, name: g.Name, isNew: isNew, own: own, fields: []*question.Field{question.Tip}, said: g.Answers,
		there: func(f *shop.Folder) []string { return f.GunIDs() },
		save:  func(f *shop.Folder, id string, keys []shop.Key) error { return f.SaveGunLike(base, id, g.ID, keys...) },
	})
}

// ownFile is a booth's or a gun's file on its way to being changed.
type ownFile struct {
	id, name       string
	isNew, isBooth bool
	own            []ownKey
	fields         []*question.Field
	said           question.Answers
	there          func(*shop.Folder) []string
	save           func(f *shop.Folder, id string, keys []shop.Key) error
}

// ownEntry is the page that changes such a file.
func (s *session) ownEntry(from *pickPage, o ownFile) *entryPage {
	p := newEntryPage(s, "entry", "entry-title", "do-entry")
	p.overAnswer, p.explains, p.lead.least = from.overAnswer, true, leastRows
	var long []string
	p.fill = func() {
		if p.all != nil {
			return
		}
		p.all = []box{entryBox(ownName, nil)}
		if o.isNew {
			p.all = append(p.all, entryBox(ownID, nil))
		} else {
			p.all[0].typed.set(o.name)
		}
		var boxes []box
		for _, k := range o.own {
			if fits(k.text) {
				boxes = append(boxes, keyBox(k))
			} else {
				long = append(long, s.say(question.SayLabel+ownField+k.name))
			}
		}
		for _, f := range o.fields {
			if fits(o.said.Text(f)) {
				boxes = append(boxes, s.fieldBox(f, o.said))
			} else {
				long = append(long, s.label(f))
			}
		}
		if o.isBooth { // its line comes first
			slices.SortStableFunc(boxes, func(a, b box) int { return cmp.Compare(ownLast(&a), ownLast(&b)) })
		}
		p.all = append(p.all, boxes...)
	}
	p.note = func(b *box) string { return p.idNote(b) }
	p.over = func(w int) (rows []string) {
		if question.Whole(o.said) {
			rows = wrap(s.say("entry-line"), w)
		}
		if len(long) > 0 {
			rows = append(rows, wrap(s.text("entry-long", calc.TextFigure("fields", strings.Join(long, ", "))), w)...)
		}
		return rows
	}
	p.take = func() (move, string) { return s.keepOwn(p, o) }
	return p
}

func ownLast(b *box) int {
	if strings.HasPrefix(b.Name, ownField) {
		return 1
	}
	return 0
}

// keepOwn keeps what is entered in the file, or says what will not do and marks it.
func (s *session) keepOwn(p *entryPage, o ownFile) (move, string) {
	id, name := o.id, p.text(ownName)
	if o.isNew {
		if id = p.idText(); !shop.IsID(id) {
			p.at = 0
			return nil, s.say("save-no-id")
		}
	}
	keys := []shop.Key{{Name: "name", Value: orNil(name)}}
	if o.isNew {
		keys = append(keys, shop.Key{Name: "retired"}) // one that is copied may be
	}
	for i := range p.all {
		b := &p.all[i]
		own := b.own()
		if own == pickOther {
			own = ""
		}
		key, isOwn := strings.CutPrefix(b.Name, ownField)
		switch {
		case b.Name == ownName, b.Name == ownID:
		case isOwn:
			k := shop.Key{Name: key, Value: orNil(own)}
			if at := slices.IndexFunc(o.own, func(k ownKey) bool { return k.name == key }); own != "" && o.own[at].isDate {
				day, err := time.Parse(time.DateOnly, own)
				if err != nil {
					p.at = i
					return nil, s.text("entry-date", calc.TextFigure("example", s.now().Format(time.DateOnly)))
				}
				k.Value = shop.Date{Time: day}
			}
			keys = append(keys, k)
		default:
			values := s.desk.base.Completed(b.Field, s.desk.base.ReadText(b.Field, own, p.read), p.read)
			if len(values) > 0 {
				if fault := s.desk.base.Check(b.Field, values, p.read); fault != nil {
					p.at = i
					return nil, fault.Want()
				}
			}
			keys = append(keys, answerKey(b.Field, values))
		}
	}
	told := s.text("manage-kept", calc.TextFigure("name", cmp.Or(name, id)))
	there := s.text("save-there", calc.TextFigure("id", id))
	return func(r *root) {
		r.keepEntry(p, func(f *shop.Folder) (string, error) {
			if o.isNew && slices.Contains(o.there(f), id) {
				return "", errors.New(there)
			}
			return told, o.save(f, id, keys)
		})
	}, ""
}

// answerKey is the key of a question's field as it is answered; of one that is not it is taken out.
func answerKey(f *question.Field, values []question.Value) shop.Key {
	var texts []string
	for _, v := range values {
		texts = append(texts, v.Text)
	}
	switch {
	case len(texts) == 0:
		return shop.Key{Name: f.Name}
	case f.Repeats:
		return shop.Key{Name: f.Name, Value: texts}
	}
	return shop.Key{Name: f.Name, Value: texts[0]}
}
