package words

import (
	"embed"
	"strings"
	"sync"
)

// files is a file a language, named by the language's code.
//
//go:embed *.toml
var files embed.FS

const (
	extension = ".toml"

	// fallback is the code of the language that is taken where none is asked for.
	fallback = "en"
)

// language is one of the files, which is read when its words are first asked for.
type language struct {
	code  string
	words func() *Words
}

var languages = sync.OnceValue(func() []language {
	entries, err := files.ReadDir(".")
	if err != nil {
		panic(err) // the program was built without its files
	}
	all := make([]language, len(entries))
	for i, e := range entries {
		code := strings.TrimSuffix(e.Name(), extension)
		all[i] = language{code, sync.OnceValue(func() *Words { return load(code) })}
	}
	return all
})

// load reads a language's file. A file that will not do is a fault of the program, which
// the tests find.
func load(code string) *Words {
	text, err := files.ReadFile(code + extension)
	if err != nil {
		panic(err)
	}
	sentences, err := scan(string(text))
	if err != nil {
		panic(code + extension + ": " + err.Error())
	}
	return &Words{code, sentences, false}
}

// find is a language by its code; false where there is none.
func find(code string) (language, bool) {
	for _, l := range languages() {
		if l.code == code {
			return l, true
		}
	}
	return language{}, false
}

// Languages is the code of every language there is, sorted.
func Languages() []string {
	var codes []string
	for _, l := range languages() {
		codes = append(codes, l.code)
	}
	return codes
}

// For is the sentences of a language by its code; false where there is none.
func For(code string) (*Words, bool) {
	l, ok := find(code)
	if !ok {
		return nil, false
	}
	return l.words(), true
}

// At is the sentences of a language by its code, with that of the place where it is spoken behind
// it or without: "es", "es-ES", "es_MX.UTF-8"; false where there is no such language.
func At(tag string) (*Words, bool) {
	lang, territory := parts(tag)
	w, ok := For(lang)
	if !ok {
		return nil, false
	}
	return w.WithComma(comma(lang, territory)), true
}

// English is the English sentences.
func English() *Words {
	w, _ := For(fallback)
	return w
}
