package command

import (
	_ "embed"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/question"
	"boothset/presets/words"
)

// picked is what is wanted of an object of an answer: by key what of that. A nil one is
// everything, and so is one without keys.
type picked struct{ below map[string]*picked }

func (p *picked) has(key string) bool { return p == nil || p.below[key] != nil }

// within is what is wanted of the value at a key, nil where that is all of it.
func (p *picked) within(key string) *picked {
	if p == nil || len(p.below[key].below) == 0 {
		return nil
	}
	return p.below[key]
}

// add wants the value at a path, all of it.
func (p *picked) add(keys []string) {
	for i, key := range keys {
		next := p.below[key]
		switch {
		case next != nil && len(next.below) == 0:
			return // all of it is wanted already
		case next == nil || i == len(keys)-1:
			next = &picked{map[string]*picked{}}
			p.below[key] = next
		}
		p = next
	}
}

// answerPaths is the path of every value that an answer can hold, a row each behind the name of
// its schema; tests hold it to what is written.
//
//go:embed paths.txt
var answerPaths string

// pathsOf is the paths of the documents of a schema.
func pathsOf(schema string) (paths []string) {
	for row := range strings.Lines(answerPaths) {
		if of, path, _ := strings.Cut(strings.TrimSpace(row), " "); of == schema {
			paths = append(paths, path)
		}
	}
	return paths
}

// pickOf reads the paths that are wanted of a schema's documents, with commas between; nil
// where none are named.
func pickOf(schema string, given string, w *words.Words) (*picked, error) {
	if given == "" {
		return nil, nil
	}
	known := pathsOf(schema)
	p := &picked{map[string]*picked{}}
	for path := range strings.SplitSeq(given, ",") {
		path = strings.ToLower(strings.TrimSpace(path))
		if !slices.Contains(known, path) {
			return nil, &fieldError{flagFields, path, wantedPath(path, known, w)}
		}
		p.add(strings.Split(path, "."))
	}
	return p, nil
}

// wantedPath says what would do for a path that there is not: the nearest, else the first keys.
func wantedPath(path string, known []string, w *words.Words) string {
	if near := question.Nearest(path, known); near != "" {
		return spoken(w, "want-path-nearest", calc.TextFigure("nearest", near))
	}
	first := slices.DeleteFunc(known, func(path string) bool { return strings.Contains(path, ".") })
	return spoken(w, "want-path", calc.TextFigure("names", strings.Join(first, ", ")))
}
