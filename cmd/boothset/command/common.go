package command

import (
	"flag"

	"boothset/calc/unit"
	"boothset/presets"
	"boothset/presets/words"
)

// flagLang is the flag that chooses the language.
const flagLang = "lang"

// common is the flags that the assistant and every sub-command have.
type common struct{ units, lang string }

func (c *common) flags(f *flag.FlagSet) {
	f.StringVar(&c.units, presets.FieldUnits, "", "usage-units")
	f.StringVar(&c.lang, flagLang, "", "usage-lang")
}

// words is the sentences asked for, else the locale's. Where there is no such language
// the error is told in the locale's.
func (c *common) words(getenv func(string) string) (*words.Words, error) {
	local, _ := words.For(words.LocaleOf(getenv).Lang)
	if c.lang == "" {
		return local, nil
	}
	if w, ok := words.For(c.lang); ok {
		return w, nil
	}
	return local, &presets.FieldError{Field: flagLang, Given: c.lang, Want: local.Choose(words.Languages())}
}

// open opens the catalogue in the language and the units asked for.
func (c *common) open(o *opened, getenv func(string) string) (err error) {
	if o.words, err = c.words(getenv); err != nil {
		return err
	}
	if o.catalogue, err = presets.Open(getenv, o.words); err != nil {
		return err
	}
	o.sys, err = systemOf(c.units, o.catalogue)
	return err
}

// system is the units that help is told in, which needs no shop's file: those asked for,
// else the locale's.
func (c *common) system(getenv func(string) string) unit.System {
	switch {
	case c.units == presets.UnitsMetric:
		return unit.Metric
	case c.units == presets.UnitsUS:
		return unit.US
	}
	return words.LocaleOf(getenv).System
}
