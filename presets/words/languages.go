package words

// languages is every language there is, the first the one that is taken where none is
// asked for.
var languages = [...]*Words{{"en", &english}, {"es", &spanish}}

// Languages is the code of every language there is.
func Languages() []string {
	codes := make([]string, len(languages))
	for i, w := range languages {
		codes[i] = w.lang
	}
	return codes
}

// For is the sentences of a language by its code; false where there is none.
func For(lang string) (*Words, bool) {
	for _, w := range languages {
		if w.lang == lang {
			return w, true
		}
	}
	return nil, false
}

// English is the English sentences.
func English() *Words { return languages[0] }
