package words

import (
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"
)

// ReadError is a fault in a file of sentences.
type ReadError struct {
	Lang string
	Line int // from 1
	Why  string
}

func (e *ReadError) Error() string {
	return fmt.Sprintf("words: %s.toml:%d: %s", e.Lang, e.Line, e.Why)
}

// Read takes a language's file, which its table in the program is made from: lines of
//
//	id = "sentence"
//
// where {name} in a sentence stands for the figure of that name, and lines that are
// empty or begin with #. That much of TOML is read: keys of a to z, 0 to 9 and -, basic
// strings on one line with \" and \\. A fault is a *ReadError.
func Read(lang, text string) (*Words, error) {
	sentences := make(map[string]string, strings.Count(text, "\n")+1)
	for n := 1; text != ""; n++ {
		row, rest, ended := strings.Cut(text, "\n")
		if ended {
			row = strings.TrimSuffix(row, "\r")
		}
		text = rest
		if err := readRow(sentences, row); err != nil {
			return nil, &ReadError{lang, n, err.Error()}
		}
	}
	return &Words{lang, tableOf(sentences)}, nil
}

// readRow takes one line.
func readRow(sentences map[string]string, row string) error {
	if !plain(row) {
		return errors.New("only printable UTF-8 is taken")
	}
	row = strings.TrimLeft(row, " ")
	if row == "" || row[0] == '#' {
		return nil
	}
	id := row[:keyLength(row)]
	rest, ok := strings.CutPrefix(strings.TrimLeft(row[len(id):], " "), "=")
	if id == "" || !ok {
		return errors.New(`want id = "sentence"`)
	}
	sentence, rest, ok := quoted(strings.TrimLeft(rest, " "))
	rest = strings.TrimLeft(rest, " ")
	_, given := sentences[id]
	switch {
	case !ok:
		return fmt.Errorf(`%s: want a sentence in "", with \" and \\ inside where needed`, id)
	case rest != "" && rest[0] != '#':
		return fmt.Errorf("%s: nothing but a comment may follow the sentence", id)
	case given:
		return fmt.Errorf("%s: given twice", id)
	case !closed(sentence):
		return fmt.Errorf("%s: a { without its name and }", id)
	}
	sentences[id] = sentence
	return nil
}

// plain reports whether a line is UTF-8 without control characters: those of ASCII, and
// U+0080 to U+009F, which are 0xC2 and 0x80 to 0x9F.
func plain(row string) bool {
	for i := range len(row) {
		c := row[i]
		if c < ' ' || c == 0x7f || c == 0xc2 && i+1 < len(row) && row[i+1] <= 0x9f {
			return false
		}
	}
	return utf8.ValidString(row)
}

// keyLength is how many bytes of an id a line begins with.
func keyLength(row string) int {
	n := 0
	for n < len(row) && (row[n] == '-' || 'a' <= row[n] && row[n] <= 'z' || '0' <= row[n] && row[n] <= '9') {
		n++
	}
	return n
}

// quoted reads a sentence in quotes and gives what follows it.
func quoted(s string) (sentence, rest string, ok bool) {
	s, ok = strings.CutPrefix(s, `"`)
	if !ok {
		return "", "", false
	}
	var b []byte // the sentence so far, where it holds an escape
	for {
		at := strings.IndexAny(s, `"\`)
		switch {
		case at < 0:
			return "", "", false
		case s[at] == '"' && b == nil:
			return s[:at], s[at+1:], true
		case s[at] == '"':
			return string(append(b, s[:at]...)), s[at+1:], true
		case at+1 == len(s) || s[at+1] != '"' && s[at+1] != '\\':
			return "", "", false
		}
		b = append(append(b, s[:at]...), s[at+1])
		s = s[at+2:]
	}
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
