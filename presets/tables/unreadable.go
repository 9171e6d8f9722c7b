package tables

import (
	"bytes"
	"unicode/utf8"
)

// unreadable is the fault of what is no TOML, by what stands where the reading stopped.
func (r *reader) unreadable(offset int) *Fault {
	at := r.at(offset)
	row := r.data[r.lines[at.Line-1]:]
	row, _, _ = bytes.Cut(row, []byte("\n"))
	before := row[:min(at.Column-1, len(row))]
	from := row[len(before):]
	f := &Fault{At: at, ID: "file-row"}
	switch header := bytes.HasPrefix(bytes.TrimLeft(row, " \t"), []byte("[")); {
	case !plain(from):
		f.ID = "file-character"
	case quoteOpen(before) && escapes(before, from):
		f.ID = "file-escape"
	case quoteOpen(before) || quoteOpen(row):
		f.ID = "file-open-quote"
	case header:
		f.ID = "file-open-bracket"
	case bytes.IndexByte(before, '=') >= 0:
		f.ID = "file-value"
	}
	return f
}

// plain reports whether a text begins with a character that a file may have, or is empty.
func plain(text []byte) bool {
	if len(text) == 0 {
		return true
	}
	c, size := utf8.DecodeRune(text)
	return !(c == utf8.RuneError && size == 1) && (c >= ' ' || c == '\t' || c == '\r' && len(text) == 1) && c != 0x7f
}

// escapes reports whether the reading stopped in an escape.
func escapes(before, from []byte) bool {
	return bytes.HasPrefix(from, []byte(`\`)) || bytes.IndexByte(before[max(len(before)-len(`\U0001F600`), 0):], '\\') >= 0
}

// quoteOpen reports whether a row ends inside quotes.
func quoteOpen(row []byte) bool {
	open := byte(0)
	for i := 0; i < len(row); i++ {
		switch c := row[i]; {
		case open == 0 && c == '#':
			return false
		case open == 0 && (c == '"' || c == '\''):
			open = c
		case open == '"' && c == '\\':
			i++
		case c == open:
			open = 0
		}
	}
	return open != 0
}
