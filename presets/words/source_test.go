package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"boothset/presets/signs"
	"boothset/presets/words"

	"github.com/charmbracelet/x/ansi"
	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const root = "../.."

// sources is every Go file below a folder, without its tests.
func sources(t *testing.T, dir string) (files []*ast.File) {
	t.Helper()
	require.NoError(t, filepath.WalkDir(filepath.Join(root, dir), func(path string, e fs.DirEntry, err error) error {
		if err == nil && e.IsDir() && e.Name() == "testdata" {
			return filepath.SkipDir
		}
		if err != nil || e.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ParseComments)
		files = append(files, f)
		return err
	}))
	require.NotEmpty(t, files)
	return files
}

func literal(n ast.Node) (string, bool) {
	l, ok := n.(*ast.BasicLit)
	if !ok || l.Kind != token.STRING {
		return "", false
	}
	s, err := strconv.Unquote(l.Value)
	return s, err == nil
}

// literals is every text written below a node.
func literals(n ast.Node) (all []string) {
	ast.Inspect(n, func(n ast.Node) bool {
		if s, ok := literal(n); ok {
			all = append(all, s)
		}
		return true
	})
	return all
}

// name is a function's or a method's name where it is called.
func name(called ast.Expr) string {
	switch called := called.(type) {
	case *ast.Ident:
		return called.Name
	case *ast.SelectorExpr:
		return called.Sel.Name
	}
	return ""
}

// emitted is the ids that calc gives its reasons and cautions, as its source writes
// them: the second argument of add, reason or safety, what is assigned to id, what a function called
// ...ID returns.
func emitted(t *testing.T) map[string]bool {
	ids := map[string]bool{}
	id := regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)
	take := func(all ...string) {
		for _, s := range all {
			if id.MatchString(s) {
				ids[s] = true
			}
		}
	}
	for _, f := range sources(t, "calc") {
		if f.Name.Name != "calc" {
			continue
		}
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				if called := n.Fun; slices.Contains([]string{"add", "reason", "safety"}, name(called)) && len(n.Args) > 1 {
					if s, ok := literal(n.Args[1]); ok {
						take(s)
					}
				}
			case *ast.AssignStmt:
				if name, ok := n.Lhs[0].(*ast.Ident); ok && name.Name == "id" {
					take(literals(n.Rhs[0])...)
				}
			case *ast.FuncDecl:
				if strings.HasSuffix(n.Name.Name, "ID") {
					take(literals(n.Body)...)
				}
			}
			return true
		})
	}
	return ids
}

func TestEveryReasonAndCautionHasASentence(t *testing.T) {
	w := words.English()
	ids := emitted(t)
	for _, known := range []string{"gun-start", "wall-set", "now-choked", "dew-near", "supply-short", "booth-clear", "cold"} {
		require.True(t, ids[known], "the search no longer finds %s", known)
	}
	for id := range ids {
		assert.True(t, w.Has(id), "calc gives %s; en.toml has no sentence for it", id)
	}
}

// sentenceAt is where functions take the id of a sentence, by their name: the place among
// what they are called with.
var sentenceAt = map[string]int{
	"Say": 0, "say": 0, "sentence": 0, "because": 0, "under": 0, "part": 0,
	"Text": 1, "add": 1, "safety": 1, "appendCount": 1, "bound": 1, "spoken": 1, "Append": 2, "fault": 2,
}

// No sentence that is asked for is missing, in any language.
func TestNoSentenceIsMissing(t *testing.T) {
	seen := 0
	check := func(id string) {
		seen++
		for _, lang := range words.Languages() {
			w, _ := words.For(lang)
			assert.True(t, w.Has(id), "%s.toml has no %s", lang, id)
		}
	}
	id := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)+$`)
	sourced := regexp.MustCompile(`^(source|usage|want|needed|outside|file|takes|typed|choice)-[a-z-]*[a-z]$`)
	for _, dir := range []string{"calc", "cmd", "presets", "tui"} {
		for _, f := range sources(t, dir) {
			ast.Inspect(f, func(n ast.Node) bool {
				if s, ok := literal(n); ok && sourced.MatchString(s) {
					check(s)
				}
				call, ok := n.(*ast.CallExpr)
				if !ok {
					return true
				}
				if at, ok := sentenceAt[name(call.Fun)]; ok && at < len(call.Args) {
					if s, ok := literal(call.Args[at]); ok && id.MatchString(s) {
						check(s)
					}
				}
				return true
			})
		}
	}
	require.Greater(t, seen, 300)
}

// catalogue is the names and sources that the shipped entries stand for.
func catalogue(t *testing.T) (ids []string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(root, "presets", "catalogue", "*.toml"))
	require.NoError(t, err)
	var sources func(table map[string]any)
	sources = func(table map[string]any) {
		for key, v := range table {
			switch v := v.(type) {
			case map[string]any:
				if key == "then" {
					for stage := range v {
						ids = append(ids, "name-stage-"+stage)
					}
				}
				sources(v)
			case string:
				switch key {
				case "source":
					ids = append(ids, v)
				case "first":
					ids = append(ids, "name-stage-"+v)
				}
			}
		}
	}
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		var all map[string]map[string]any
		require.NoError(t, toml.Unmarshal(data, &all))
		for table, entries := range all {
			for id := range entries {
				ids = append(ids, "name-"+table+"-"+id)
				if slices.Contains([]string{"coupling", "filter", "dryer", "valve"}, table) {
					ids = append(ids, "kind-"+table+"-"+id)
				}
			}
			sources(entries)
		}
	}
	require.NotEmpty(t, ids)
	return append(append(ids, bands(t)...), ofSigns()...)
}

// ofSigns is the names, sentences and sources of the signs, their causes and their checks.
func ofSigns() (ids []string) {
	b := signs.Book()
	for _, s := range b.Signs {
		ids = append(ids, signs.Name(s.ID), "look-sign-"+s.ID, s.Source)
		if s.Wet != "" {
			ids = append(ids, "wet-"+s.Wet)
		}
	}
	for _, c := range b.Causes {
		ids = append(ids, "name-cause-"+c.ID, "move-cause-"+c.ID)
	}
	for _, c := range b.Checks {
		ids = append(ids, "ask-check-"+c.ID)
		for _, f := range c.Findings {
			ids = append(ids, "finding-"+c.ID+"-"+f.ID)
		}
	}
	for id := range b.Raised {
		ids = append(ids, "fact-"+id)
	}
	return ids
}

// bands is the names of the shipped weather bands.
func bands(t *testing.T) (ids []string) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(root, "presets", "shop", "bands.toml"))
	require.NoError(t, err)
	var all struct {
		Band []struct{ ID string }
	}
	require.NoError(t, toml.Unmarshal(data, &all))
	require.NotEmpty(t, all.Band)
	for _, b := range all.Band {
		ids = append(ids, "band-"+b.ID)
	}
	return ids
}

func TestEveryEntryHasItsNameAndItsSource(t *testing.T) {
	for _, id := range catalogue(t) {
		unnamed := regexp.MustCompile("^name-(hose|regulator|tolerance|line)-") // known by their size, or not shown
		for _, lang := range words.Languages() {
			w, _ := words.For(lang)
			assert.True(t, w.Has(id) || unnamed.MatchString(id), "%s.toml has no %s", lang, id)
		}
	}
}

// Every language says the same things of the same figures.
func TestLanguagesSayTheSame(t *testing.T) {
	english := words.English()
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		assert.Equal(t, english.IDs(), w.IDs(), lang)
		for _, id := range w.IDs() {
			of := func(w *words.Words) []string {
				names := w.Needs(id)
				slices.Sort(names)
				return slices.Compact(names)
			}
			assert.Equal(t, of(english), of(w), "%s of %s", id, lang)
			for _, r := range w.Say(id) {
				assert.True(t, unicode.IsPrint(r), "%s of %s", id, lang)
				assert.Equal(t, 1, ansi.StringWidth(string(r)), "%q in %s of %s", r, id, lang)
			}
		}
	}
}

// Where a sentence holds a number, it is a figure. What stays is a source's own numbers,
// none and one and all, and what may be typed: an example runs its unit on ("75F"), or
// follows "such as". Other languages have the numbers that English has.
func TestNumbersAreFigures(t *testing.T) {
	example := regexp.MustCompile(`(such as|as|write) .*`)
	number := regexp.MustCompile(`(^|[ (])\d[\d.]*( ?%| [a-zA-Z]+2?)?`)
	common := regexp.MustCompile(`^[ (]*([01](\.0)?|100%)( [a-z]+)?$`)
	typed := []string{"field-hose", "field-main", "field-other", "plain-parts"} // how to type it, all through
	require.True(t, number.MatchString("at least 15 C"))
	english := words.English()
	for _, id := range english.IDs() {
		if strings.HasPrefix(id, "source-") || slices.Contains(typed, id) {
			continue
		}
		for _, n := range number.FindAllString(example.ReplaceAllString(english.Say(id), ""), -1) {
			glued := regexp.MustCompile(regexp.QuoteMeta(strings.TrimRight(n, " ")) + `[A-Za-z/,:]`).MatchString(english.Say(id))
			assert.True(t, glued || common.MatchString(n), "%q in %s", n, id)
		}
	}
	digits := regexp.MustCompile(`\d+([.,:/]\d+)*`)
	for _, lang := range words.Languages() {
		w, _ := words.For(lang)
		for _, id := range w.IDs() {
			assert.ElementsMatch(t, digits.FindAllString(english.Say(id), -1), digits.FindAllString(w.Say(id), -1), "%s of %s", id, lang)
		}
	}
}

// A sentence is used where its id is written, or put together from a start such as
// "ask-" and the rest.
func TestEverySentenceIsUsed(t *testing.T) {
	written := map[string]bool{}
	for _, dir := range []string{"calc", "cmd", "presets", "tui"} {
		for _, f := range sources(t, dir) {
			for _, s := range literals(f) {
				written[s] = true
			}
		}
	}
	for _, id := range catalogue(t) {
		written[id] = true
	}
	used := func(id string) bool {
		if written[id] {
			return true
		}
		for i, c := range id {
			if c == '-' && written[id[:i+1]] && parted(id[i+1:], written) {
				return true
			}
		}
		return false
	}
	require.False(t, used("no-such-sentence"))
	for _, id := range words.English().IDs() {
		assert.True(t, used(id), "nothing uses the sentence %s", id)
	}
}

// parted reports whether a text is written, or is two texts that are, with a hyphen
// between: the name of a field and what may be chosen for it.
func parted(text string, written map[string]bool) bool {
	if written[text] {
		return true
	}
	for i, c := range text {
		if c == '-' && written[text[:i]] && written[text[i+1:]] {
			return true
		}
	}
	return false
}
