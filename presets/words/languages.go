package words

import (
	_ "embed"
	"sync"
)

//go:embed en.toml
var english string

//go:embed es.toml
var spanish string

// languages is every language there is, the first the one that is taken where none is
// asked for. Each is read once, when it is first wanted.
var languages = []struct {
	code  string
	words func() *Words
}{
	{"en", sync.OnceValue(func() *Words { return embedded("en", english) })},
	{"es", sync.OnceValue(func() *Words { return embedded("es", spanish) })},
}

// embedded is a language of the program's own.
func embedded(lang, text string) *Words {
	w, err := Read(lang, text)
	if err != nil {
		panic(err) // a test reads every one
	}
	return w
}

// Languages is the code of every language there is.
func Languages() []string {
	codes := make([]string, len(languages))
	for i := range languages {
		codes[i] = languages[i].code
	}
	return codes
}

// For is the sentences of a language by its code; false where there is none.
func For(lang string) (*Words, bool) {
	for i := range languages {
		if languages[i].code == lang {
			return languages[i].words(), true
		}
	}
	return nil, false
}

// English is the English sentences.
func English() *Words { return languages[0].words() }
