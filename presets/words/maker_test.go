package words

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2"
)

// Make is the sentences of a language's file: id = "sentence" a line, where {name} in a
// sentence stands for the figure of that name. The program has them as tables made of it.
func Make(lang, text string) (*Words, error) {
	var sentences map[string]string
	if err := toml.Unmarshal([]byte(text), &sentences); err != nil {
		return nil, err
	}
	for id, sentence := range sentences {
		switch {
		case strings.ContainsFunc(sentence, func(c rune) bool { return c == utf8.RuneError || !unicode.IsPrint(c) }):
			return nil, fmt.Errorf("%s: only printable text is taken", id)
		case !closed(sentence):
			return nil, fmt.Errorf("%s: a { without its name and }", id)
		}
	}
	return &Words{lang, tableOf(sentences)}, nil
}

// closed reports whether every { of a sentence has a name and a } behind it.
func closed(sentence string) bool {
	for rest := sentence; rest != ""; {
		before, name, after := place(rest)
		if name == "" && len(before) < len(rest) || name != "" && len(before)+len(name)+2+len(after) != len(rest) {
			return false
		}
		rest = after
	}
	return true
}

// tableOf makes the table of a language's sentences, at most 65,535.
func tableOf(sentences map[string]string) *table {
	size := 2
	for size < 2*len(sentences) {
		size *= 2
	}
	t := &table{ends: make([]end, 1, len(sentences)+1), slots: make([]uint16, size)}
	var ids, texts strings.Builder
	for n, id := range slices.Sorted(maps.Keys(sentences)) {
		ids.WriteString(id)
		texts.WriteString(sentences[id])
		t.ends = append(t.ends, end{uint32(ids.Len()), uint32(texts.Len())})
		slot := t.slot(hash(id))
		for t.slots[slot] != 0 {
			slot = t.slot(slot + 1)
		}
		t.slots[slot] = uint16(n + 1)
	}
	t.ids, t.sentences = ids.String(), texts.String()
	return t
}
