package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const root = "../.."

// sources is every Go file below a folder, without its tests.
func sources(t *testing.T, dir string) (files []*ast.File) {
	t.Helper()
	require.NoError(t, filepath.WalkDir(filepath.Join(root, dir), func(path string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
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
// them: the second argument of add or reason, what is assigned to id, what a function called
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
				if called := n.Fun; (name(called) == "add" || name(called) == "reason") && len(n.Args) > 1 {
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
	for _, known := range []string{"gun-start", "wall-set", "now-choked", "panel-near-dew", "safety", "cold"} {
		require.True(t, ids[known], "the search no longer finds %s", known)
	}
	for id := range ids {
		assert.True(t, w.Has(id), "calc gives %s; en.toml has no sentence for it", id)
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
	used := func(id string) bool {
		if written[id] {
			return true
		}
		for i, c := range id {
			if c == '-' && written[id[:i+1]] && written[id[i+1:]] {
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
