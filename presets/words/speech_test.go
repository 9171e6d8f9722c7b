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

// foreign is the starts of texts of Go's own packages, which are looked for to say them in
// a language.
var foreign = []string{"flag provided but not defined: ", "flag needs an argument: ", "bad flag syntax: ", "invalid boolean value ", ": parse error", "json: unknown field "}

// ours is texts that are no sentences for people: how a unit is spelled out where it is
// typed, the ids of bases, the provenance of a figure that is not shown, the start of an
// error that is looked for, and what a shop's file may hold.
var ours = []string{
	"per second", "a second", "por segundo", "per min", "a minute", "por minuto", "por min",
	"common practice", "this booth's readings", "the product's sheet, as typed",
	"published: a solvent supplier's guide and a glossary of evaporation rates", "by definition of the scale",
	"cannot decode", " fl oz", `{ start = "26psi", low = "23psi", high = "30psi" }`,
}

// checked is what is called with the name of a quantity and its unit, which only programmers see.
var checked = []string{"within", "share", "film", "sprayable", "paintTemp", "pressure", "distance", "checkFlow", "checkTemp", "check"}

// apart is the texts of a file that people are not shown: all of Error methods, since an
// error below presets is said by its ID, keys of maps, and names of quantities.
func apart(f *ast.File) map[ast.Node]bool {
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
			if slices.Contains(checked, name(n.Fun)) {
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

// The answers hold no sentence either, and neither does what reads and resolves them.
func TestTheAnswersHoldNoSentence(t *testing.T) {
	sentence := regexp.MustCompile(`\pL{2,} \pL{2,}`)
	seen := 0
	for _, dir := range []string{"calc", "presets"} {
		for _, f := range sources(t, dir) {
			if f.Name.Name == "words" || ast.IsGenerated(f) {
				continue // its own faults are a programmer's; what is made is made of the catalogue's files
			}
			skip := apart(f)
			ast.Inspect(f, func(n ast.Node) bool {
				s, ok := literal(n)
				if !ok || skip[n] {
					return true
				}
				seen++
				assert.False(t, sentence.MatchString(s) && !slices.Contains(ours, s), "%s: %q", f.Name.Name, s)
				return true
			})
		}
	}
	require.Greater(t, seen, 500)
}

// What people read is in the files of sentences: no text written in the program's source
// has two words running, but for commands as they are typed and the above.
func TestTheProgramHoldsNoSentence(t *testing.T) {
	sentence := regexp.MustCompile(`\pL{2,} \pL{2,}`)
	require.True(t, sentence.MatchString("trigger pulled"))
	seen := 0
	for _, f := range slices.Concat(sources(t, "cmd"), sources(t, "tui")) {
		if f.Name.Name == "picture" {
			continue // what draws the README's pictures
		}
		skip := apart(f)
		ast.Inspect(f, func(n ast.Node) bool {
			s, ok := literal(n)
			if !ok || skip[n] {
				return true
			}
			seen++
			typed := strings.HasPrefix(strings.TrimSpace(s), "boothset")
			assert.False(t, sentence.MatchString(s) && !typed && !slices.Contains(foreign, s), s)
			return true
		})
	}
	require.Greater(t, seen, 300)
}
