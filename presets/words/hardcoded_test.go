package words_test

import (
	"go/ast"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// hardcoded is text that looks like a language's: two words running, a word between two
// blanks, a mark of half a day.
var hardcoded = regexp.MustCompile(`\pL{2,} \pL{2,}|^ \pL+ $|(^| )[ap]m$`)

// exempt is texts that look so and are not said to anyone, or that people say in any
// language. Each is somewhere in the source.
var exempt = []string{
	// the ids of bases, and where figures come from that are not shown
	"common practice", "this booth's readings", "the product's sheet, as typed",
	"published: a solvent supplier's guide and a glossary of evaporation rates", "by definition of the scale",

	// a unit, the sign of a product, and what a shop's file may hold
	" fl oz", " x ", `{ start = "26psi", low = "23psi", high = "30psi" }`,

	// faults of a language's file, which only programmers see
	"line %d: want id = \"sentence\", have %s", "line %d: %s is there twice",

	// what a package's own fields and notices say, and faults of making it
	"Whoever built this package <root@localhost>", "not chosen yet",
	"%s itself has no licence yet: that is its owner's to choose.\nIts programs hold the following.\n",
	"the programs name other modules than their packages come from:\n%v\n%v", "%s has no licence in %s",
	"version %q: not a commit that is checked out whole, in a clone of its own",
}

// checks is the functions that are called with the name of a quantity and its unit, which
// only programmers see.
var checks = []string{"within", "share", "film", "sprayable", "paintTemp", "pressure", "distance", "checkFlow", "checkTemp", "check"}

// notShown is the texts of a file that people are not shown: all of Error methods, since an
// error below presets is said by its ID, keys of maps, and names of quantities.
func notShown(f *ast.File) map[ast.Node]bool {
	skip := map[ast.Node]bool{}
	all := func(n ast.Node) {
		ast.Inspect(n, func(n ast.Node) bool {
			skip[n] = true
			return true
		})
	}
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncDecl:
			if n.Recv != nil && n.Name.Name == "Error" {
				all(n)
			}
		case *ast.KeyValueExpr:
			skip[n.Key] = true
		case *ast.CallExpr:
			if slices.Contains(checks, name(n.Fun)) {
				for _, arg := range n.Args {
					skip[arg] = true
				}
			}
		case *ast.CompositeLit:
			if t, ok := n.Type.(*ast.Ident); ok && t.Name == "InputError" {
				skip[n.Elts[0]] = true
			}
		}
		return true
	})
	return skip
}

// What people read or type in words is in the files of the languages: no text of the
// program's source looks like it, but for commands as they are typed and the above.
func TestTheSourceHoldsNoLanguage(t *testing.T) {
	for _, text := range []string{"trigger pulled", " to ", "3:04 pm"} {
		require.Regexp(t, hardcoded, text)
	}
	unmet := map[string]bool{}
	for _, text := range exempt {
		unmet[text] = true
	}
	seen := map[string]int{}
	for _, dir := range []string{"calc", "presets", "cmd", "tui"} {
		for _, f := range sources(t, dir) {
			if f.Name.Name == "picture" || dir == "tui" && f.Name.Name == "main" {
				continue // draws the README's pictures, and measures the start
			}
			skip := notShown(f)
			ast.Inspect(f, func(n ast.Node) bool {
				s, ok := literal(n)
				if !ok {
					return true
				}
				delete(unmet, s)
				if skip[n] {
					return true
				}
				seen[dir]++
				typed := strings.HasPrefix(strings.TrimSpace(s), "boothset")
				assert.False(t, hardcoded.MatchString(s) && !typed && !slices.Contains(exempt, s), "%s: %q", f.Name.Name, s)
				return true
			})
		}
	}
	for _, dir := range []string{"calc", "presets", "cmd", "tui"} {
		require.Greater(t, seen[dir], 100, dir)
	}
	assert.Empty(t, unmet, "no longer in the source")
}
