package words

import (
	"strings"

	"boothset/calc/unit"
)

// Locale is what a person's surroundings say of language and units.
type Locale struct {
	Lang      string      // one of Languages
	System    unit.System // counts where HasSystem is true
	HasSystem bool
	Comma     bool // decimals are marked with a comma
}

// LocaleOf reads the locale from the environment. The first of LC_ALL, LC_MESSAGES and
// LANG that is set decides the language; the territory of the first of LC_ALL, LC_MEASUREMENT
// and LANG the units, of the first of LC_ALL, LC_NUMERIC and LANG how decimals are marked.
func LocaleOf(getenv func(string) string) Locale {
	l := Locale{Lang: fallback}
	speech, _ := parts(firstSet(getenv, "LC_ALL", "LC_MESSAGES", "LANG"))
	if _, ok := find(speech); ok {
		l.Lang = speech
	}
	_, numbers := parts(firstSet(getenv, "LC_ALL", "LC_NUMERIC", "LANG"))
	l.Comma = comma(l.Lang, numbers)
	_, territory := parts(firstSet(getenv, "LC_ALL", "LC_MEASUREMENT", "LANG"))
	switch territory {
	case "":
	case "US", "LR", "MM", "PR": // those that keep to customary units
		l.System, l.HasSystem = unit.US, true
	default:
		l.System, l.HasSystem = unit.Metric, true
	}
	return l
}

func firstSet(getenv func(string) string, names ...string) string {
	for _, name := range names {
		if v := getenv(name); v != "" {
			return v
		}
	}
	return ""
}

// parts is language and territory of a locale's name, such as "es" and "MX" of
// "es_MX.UTF-8"; each is empty where it is not named.
func parts(locale string) (lang, territory string) {
	locale, _, _ = strings.Cut(locale, "@")
	locale, _, _ = strings.Cut(locale, ".")
	lang, territory, _ = strings.Cut(strings.ReplaceAll(locale, "-", "_"), "_")
	return strings.ToLower(lang), strings.ToUpper(territory)
}
