package command

import (
	"errors"
	"fmt"
	"slices"

	"boothset/calc"
	"boothset/presets/shop"
	"boothset/presets/words"

	"github.com/spf13/cobra"
)

// jsonAsked is the flags by which a command answers as JSON, and with what of it.
type jsonAsked struct {
	asJSON bool
	fields string
	pick   *picked // nil is all of it
}

func (a *jsonAsked) jsonFlags(c *cobra.Command) {
	c.Flags().BoolVar(&a.asJSON, flagJSON, false, "usage-json")
	c.Flags().StringVar(&a.fields, flagFields, "", "usage-fields-of")
}

// checkFields reads which of the values of a schema's documents are wanted.
func (a *jsonAsked) checkFields(of string, w *words.Words) (err error) {
	if a.fields != "" && !a.asJSON {
		return &fieldError{flagFields, a.fields, w.Say("want-beside-json")}
	}
	a.pick, err = pickOf(of, a.fields, w)
	return err
}

// document is a JSON document of a schema, as a line.
func (a *jsonAsked) document(of string, fill func(j *jsonWriter)) []byte {
	j := jsonWriter{fresh: true, pick: a.pick}
	j.object("", func() {
		j.text("schema", schema(of))
		fill(&j)
	})
	return append(j.b, '\n')
}

// shopOpened is a shop's folder with what it is read by, and what is to be known of the files
// that were read.
type shopOpened struct {
	opened
	folder *shop.Folder
	wrong  []*shop.Fault
}

func (p *Program) openShop() (s shopOpened, err error) {
	if s.opened, err = p.open(); err != nil {
		return s, err
	}
	s.folder, err = p.folder(s.words)
	return s, err
}

func (s *shopOpened) tell(faults ...*shop.Fault) { s.wrong = append(s.wrong, faults...) }

// withGuns lets the reader know the guns of the folder.
func (s *shopOpened) withGuns() (own []*shop.Gun, err error) {
	own, faults := s.folder.Guns(s.reader)
	s.tell(faults...)
	s.reader, err = shop.WithGuns(s.reader, own...)
	return own, err
}

// chosen is the booths of the folder that were asked for: the one that was named, which need not
// be among all that have something, else all.
func (s *shopOpened) chosen(booth string, all []string) ([]string, error) {
	switch {
	case booth == "":
		return all, nil
	case slices.Contains(all, booth), slices.Contains(s.folder.BoothIDs(), booth):
		return []string{booth}, nil
	}
	return nil, s.noBooth(booth)
}

// answerShop answers in words, or as a JSON document of a schema with what is to be known of
// the files; in words that goes to standard error.
func (p *Program) answerShop(s *shopOpened, a *jsonAsked, of string, stopped bool, text func() []byte, fill func(j *jsonWriter)) {
	var out []byte
	if a.asJSON {
		out = a.document(of, func(j *jsonWriter) {
			fill(j)
			appendFaults(j, s.words, s.wrong)
		})
	} else {
		p.warn(s.words, s.wrong)
		out = text()
	}
	p.code = p.write(s.words, out, stopped)
}

// levels is what the weights of faults are called in JSON.
var levels = [...]string{shop.Told: "told", shop.Mend: "mend", shop.Broken: "broken"}

func appendFaults(j *jsonWriter, w *words.Words, faults []*shop.Fault) {
	j.array("wrong", func() {
		for _, f := range faults {
			j.object("", func() {
				j.text("file", f.File)
				j.count("line", f.Line)
				j.text("level", levels[f.Weight])
				j.text("id", f.ID)
				j.text("text", f.In(w))
			})
		}
	})
}

// folder opens the shop's folder.
func (p *Program) folder(w *words.Words) (*shop.Folder, error) {
	f, err := shop.At(shop.Where(p.Getenv, p.common.shop))
	return f, shopError(w, err)
}

// shopError is an error of the shop's folder in a language.
func shopError(w *words.Words, err error) error {
	var own *shop.Error
	var fault *shop.Fault
	switch {
	case errors.As(err, &own):
		return errors.New(spoken(w, own.ID, own.Figures()...))
	case errors.As(err, &fault):
		return errors.New(fault.In(w))
	}
	return err
}

// unkept is why something could not be kept in the shop's folder: no fault of the input.
func unkept(w *words.Words, err error) error { return &failure{shopError(w, err).Error()} }

// warn says what is to be known of the files that were read.
func (p *Program) warn(w *words.Words, faults []*shop.Fault) {
	for _, f := range faults {
		fmt.Fprintln(p.Std.Err, name+":", f.In(w))
	}
}

// noBooth says why there is no such booth, or that one must be named.
func (s *shopOpened) noBooth(booth string, faults ...*shop.Fault) error {
	if len(faults) > 0 {
		return errors.New(faults[0].In(s.words))
	}
	ids := s.folder.BoothIDs()
	if len(ids) == 0 {
		return &fieldError{flagBooth, booth, spoken(s.words, "shop-no-booths", calc.TextFigure("file", s.folder.Path))}
	}
	return &fieldError{flagBooth, booth, s.words.Choose(ids)}
}
