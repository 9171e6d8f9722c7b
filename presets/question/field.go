package question

import (
	"cmp"
	"slices"
	"strings"
	"unicode"

	"boothset/calc"
	"boothset/calc/unit"
)

// Field is one thing that a question asks for.
type Field struct {
	// Name is what flags and messages call it. Requests of a batch have an underscore for
	// each hyphen. Its sentences stand under it: see Sentence.
	Name string
	// InShop is its key in the line of a shop's file, where that is not its name.
	InShop string
	// Read reads its text.
	Read reading
	// Of is its quantity, or both of a pair with a comma between, such as a hose's length
	// and bore. None where it is chosen from a list or has a form of its own.
	Of [2]*unit.Quantity
	// Apart is what parts the pair's texts where it is no comma.
	Apart string
	// SecondLeftOut: the second of the pair may be left out.
	SecondLeftOut bool
	// SecondWord may be typed in place of the second of the pair, empty where none may.
	SecondWord string
	// Entries is the catalogue's kind whose entries it is chosen from, Options what may be
	// chosen besides, before the entries where OptionsFirst.
	Entries      string
	Options      []string
	OptionsFirst bool
	// SayOption is the sentence of what an option is called, nil where it is choice-NAME-OPTION.
	SayOption func(option string) string
	// Repeats: it may be given more than once; in one text "+" parts the values.
	Repeats bool
	// Bounds are those of its quantities; none where its own question finds out. One without
	// a sentence only holds steps: what lies outside it is told where a request is judged or
	// solved, in other words.
	Bounds [2]*calc.Bound
	// Want is the sentence of what would do where its text cannot be read; its quantity's
	// own where empty.
	Want string
	// Missing is the sentence of what would do where it must be answered and was not; what an
	// empty text says where empty.
	Missing string
	// Default is where the value comes from where nothing is answered.
	Default Default
	// Part is the part of the job that the assistant asks for it in, empty where it does
	// not ask.
	Part Part
	// Step is what one press moves its quantities by where that is not their usual step, by
	// the system; Begin where counting begins in an empty field that nothing counts for.
	Step  [2][2]float64
	Begin [2]string
	// Counts is what of a plan's request counts where the field was not answered; nil where
	// nothing does.
	Counts func(*calc.Request) float64
}

// Amount is a field that no question asks for: a quantity above 0 and within a bound.
func Amount(name string, of *unit.Quantity, within calc.Bound) *Field {
	return &Field{Name: name, Read: positive, Of: [2]*unit.Quantity{of}, Bounds: [2]*calc.Bound{&within}, Default: LeftOut}
}

// Default is where a field's value comes from where nothing is answered.
type Default uint8

// The defaults.
const (
	Required  Default = iota // it must be answered
	LeftOut                  // nothing: it does not count
	ShopOrAsk                // the shop's usual line, else it must be answered
	ShopOrOut                // the shop's usual line, else it does not count
	OfEntry                  // the coat's or the gun's entry, else it must be answered
	OfOther                  // another field, such as the air's temperature
	Fixed                    // a value that stands beside the field's row
)

// ShopKey is the field's key in the line of a shop's file.
func (f *Field) ShopKey() string { return cmp.Or(f.InShop, f.Name) }

// OfShop reports whether the shop's usual line may answer the field.
func (f *Field) OfShop() bool { return f.Default == ShopOrAsk || f.Default == ShopOrOut }

// Optional reports whether the field may be left empty where the shop has no usual.
func (f *Field) Optional() bool { return f.Default != Required && f.Default != ShopOrAsk }

// Part is a part of the job.
type Part string

// The parts, in the order of the job.
const (
	PartCoat   Part = "part-coat"
	PartGun    Part = "part-gun"
	PartDay    Part = "part-day"
	PartAir    Part = "part-air"
	PartLine   Part = "part-line" // of the air: gone through part by part where wanted
	PartSupply Part = "part-supply"
	PartSheet  Part = "part-sheet" // asked for on one page, which may be passed by
)

// Sentence is the id of what the part is called; the line's is the air's.
func (p Part) Sentence() string {
	if p == PartLine {
		p = PartAir
	}
	return string(p)
}

// Listed reports whether the field is chosen from a list.
func (f *Field) Listed() bool {
	return f.Entries != "" || len(f.Options) > 0 && f.Of[0] == nil && !f.Repeats
}

// Joined is the text of a pair with those of its quantities.
func (f *Field) Joined(one, other string) string {
	if f.Apart != "" {
		return one + f.Apart + other
	}
	return one + ", " + other
}

// Pair reports whether the field's values are two quantities.
func (f *Field) Pair() bool { return f.Of[1] != nil }

// Takes reports whether a character can be part of the field's text as it is typed: of its
// quantities, of its options; any can where it has a form of its own.
func (f *Field) Takes(c rune) bool {
	if f.Of[0] == nil {
		return true
	}
	for _, q := range f.Of {
		if q != nil && q.Takes(c) {
			return true
		}
	}
	c = unicode.ToLower(c)
	return strings.ContainsRune(f.SecondWord, c) || slices.ContainsFunc(f.Options, func(id string) bool { return strings.ContainsRune(id, c) })
}

// Key is the field's name in a request of a batch.
func (f *Field) Key() string { return strings.ReplaceAll(f.Name, "-", "_") }

// Sentence is the id of one of the field's sentences: SayLabel and so on.
func (f *Field) Sentence(prefix string) string { return prefix + f.Name }

// What a field's sentences are called, before its name.
const (
	SayLabel = "short-" // its name in words
	// SayFirst and SaySecond: what the quantities of a pair are called.
	SayFirst  = "first-"
	SaySecond = "second-"
	SayAsk    = "ask-"   // the question
	SayWhy    = "why-"   // why it is asked
	SayUsage  = "usage-" // what it takes, as help and the pages say it
	SayEmpty  = "empty-" // what an empty answer means
	SayForm   = "field-" // how its text is written, where a unit alone does not say it
	SayHow    = "how-"   // how it is measured, where it is typed
)

// Row is a field as a question has it.
type Row struct {
	*Field
	usage string // the sentence of its use in this question, where it is one of its own
}

// Usage is the id of the sentence that says what the field takes; the value's name stands
// in it in back quotes.
func (r Row) Usage() string {
	if r.usage != "" {
		return r.usage
	}
	return r.Sentence(SayUsage)
}

// Question is something that can be asked: a sub-command, a page of the assistant.
type Question struct {
	Name   string
	Fields []Row // in the order of the job
}

// Questions is those that a page of the assistant asks, in the order they come up at the bench.
func Questions() []*Question { return []*Question{Plan, Day, Thin, Film, Mix} }

// Commands is those that have a command: Questions, what makes a gun spray badly,
// what readings say of a line, and what proves a plan at the gun.
func Commands() []*Question { return append(Questions(), Trouble, Learn, Prove) }

// Field is the row of a name; false where the question has none.
func (q *Question) Field(name string) (Row, bool) {
	for i := range q.Fields {
		if q.Fields[i].Name == name {
			return q.Fields[i], true
		}
	}
	return Row{}, false
}

// Keys is the names of its fields in a request of a batch.
func (q *Question) Keys() []string {
	keys := make([]string, len(q.Fields))
	for i, r := range q.Fields {
		keys[i] = r.Key()
	}
	return keys
}

// Has reports whether the question asks for a field.
func (q *Question) Has(f *Field) bool {
	return slices.ContainsFunc(q.Fields, func(r Row) bool { return r.Field == f })
}
