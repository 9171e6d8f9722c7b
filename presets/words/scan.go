package words

import (
	"fmt"
	"strings"
)

// scan reads a language's file, which is written in a small part of TOML: a line is blank,
// a comment behind "#", or an entry id = "sentence" with \" and \\ for " and \ inside. The
// text must be printable but for the ends of its lines. The error is the first line that
// is none of these or gives an id again.
func scan(text string) (map[string]string, error) {
	sentences := make(map[string]string, strings.Count(text, "\n"))
	number := 0
	for line := range strings.Lines(text) {
		number++
		line = strings.TrimRight(line, "\r\n")
		if line == "" || line[0] == '#' {
			continue
		}
		id, quoted, _ := strings.Cut(line, " = ")
		sentence, ok := unquote(quoted)
		if !ok || !isID(id) {
			return nil, fmt.Errorf("line %d: want id = \"sentence\", have %s", number, line)
		}
		before := len(sentences)
		if sentences[id] = sentence; len(sentences) == before {
			return nil, fmt.Errorf("line %d: %s is there twice", number, id)
		}
	}
	return sentences, nil
}

// isID reports whether text is of lower-case letters, digits and hyphens.
func isID(text string) bool {
	for i := range len(text) {
		if c := text[i]; !('a' <= c && c <= 'z' || '0' <= c && c <= '9' || c == '-') {
			return false
		}
	}
	return text != ""
}

// unquote is the text between quotes, its escapes undone; false where the quotes do not
// enclose all of it, or an escape is unknown.
func unquote(quoted string) (string, bool) {
	text, opened := strings.CutPrefix(quoted, `"`)
	text, closed := strings.CutSuffix(text, `"`)
	if !opened || !closed {
		return "", false
	}
	var unescaped []byte
	for {
		plain, rest, escape := strings.Cut(text, `\`)
		switch {
		case strings.Contains(plain, `"`):
			return "", false
		case !escape && unescaped == nil:
			return plain, true
		case !escape:
			return string(unescaped) + plain, true
		case rest == "" || rest[0] != '"' && rest[0] != '\\':
			return "", false
		}
		unescaped = append(append(unescaped, plain...), rest[0])
		text = rest[1:]
	}
}
