package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
)

// mutant is one change of one file.
type mutant struct {
	kind, file   string
	line, column int
	from, to     int // bytes of the file that are replaced
	with         string
	was          string // those bytes
	code         string // the line they stand in
}

func (m mutant) String() string {
	return fmt.Sprintf("%s:%d:%d %s: %s -> %s   | %s", m.file, m.line, m.column, m.kind, m.was, m.with, m.code)
}

// pkg is the folder of the mutant's package.
func (m mutant) pkg() string { return filepath.Dir(m.file) }

// apply makes the change.
func (m mutant) apply(source []byte) []byte {
	out := append([]byte{}, source[:m.from]...)
	return append(append(out, m.with...), source[m.to:]...)
}

// findAll is every mutant of the files below root that are written by hand, in their order.
func findAll(root string) (all []mutant, err error) {
	err = filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && d.Name() == "testdata":
			return filepath.SkipDir
		case d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go"):
			return nil
		}
		found, err := findIn(path)
		all = append(all, found...)
		return err
	})
	return all, err
}

// negated is the comparison that holds where another does not, and nudged the one that
// differs from it only where both sides are equal.
var (
	negated = map[token.Token]string{
		token.EQL: "!=", token.NEQ: "==", token.LSS: ">=", token.GEQ: "<", token.GTR: "<=", token.LEQ: ">",
	}
	nudged = map[token.Token]string{token.LSS: "<=", token.LEQ: "<", token.GTR: ">=", token.GEQ: ">"}
	sums   = map[token.Token]string{
		token.ADD: "-", token.SUB: "+", token.MUL: "/", token.QUO: "*", token.REM: "*",
		token.ADD_ASSIGN: "-=", token.SUB_ASSIGN: "+=", token.MUL_ASSIGN: "/=", token.QUO_ASSIGN: "*=",
		token.INC: "--", token.DEC: "++",
	}
	joined = map[token.Token]string{token.LAND: "||", token.LOR: "&&"}
	named  = map[string]string{"min": "max", "max": "min", "Min": "Max", "Max": "Min", "true": "false", "false": "true"}
)

func findIn(path string) (found []mutant, err error) {
	source, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, path, source, parser.ParseComments)
	if err != nil || ast.IsGenerated(file) {
		return nil, err
	}
	lines := strings.Split(string(source), "\n")
	change := func(kind string, from, to token.Pos, with string) {
		at := set.Position(from)
		a, b := at.Offset, set.Position(to).Offset
		found = append(found, mutant{
			kind: kind, file: filepath.ToSlash(path), line: at.Line, column: at.Column,
			from: a, to: b, with: with, was: string(source[a:b]), code: strings.TrimSpace(lines[at.Line-1]),
		})
	}
	operator := func(kind string, op token.Token, at token.Pos, with map[token.Token]string) {
		if s, ok := with[op]; ok {
			change(kind, at, at+token.Pos(len(op.String())), s)
		}
	}
	// A condition is joined to true or false, so that what it names is still used.
	condition := func(e ast.Expr) {
		text := string(source[set.Position(e.Pos()).Offset:set.Position(e.End()).Offset])
		change("condition", e.Pos(), e.End(), "(("+text+") || true)")
		change("condition", e.Pos(), e.End(), "(("+text+") && false)")
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.ArrayType:
			return false // room is no arithmetic
		case *ast.BinaryExpr:
			operator("arithmetic", n.Op, n.OpPos, sums)
			operator("comparison", n.Op, n.OpPos, negated)
			operator("boundary", n.Op, n.OpPos, nudged)
			operator("logic", n.Op, n.OpPos, joined)
		case *ast.AssignStmt:
			operator("arithmetic", n.Tok, n.TokPos, sums)
		case *ast.IncDecStmt:
			operator("arithmetic", n.Tok, n.TokPos, sums)
		case *ast.UnaryExpr:
			switch n.Op {
			case token.SUB:
				change("arithmetic", n.OpPos, n.OpPos+1, "+")
			case token.NOT:
				change("logic", n.OpPos, n.OpPos+1, "!!")
			}
		case *ast.IfStmt:
			condition(n.Cond)
		case *ast.SwitchStmt:
			if n.Tag == nil {
				for _, s := range n.Body.List {
					for _, e := range s.(*ast.CaseClause).List {
						condition(e)
					}
				}
			}
		case *ast.BasicLit:
			if with, ok := otherConstant(n); ok {
				change("constant", n.Pos(), n.End(), with)
			}
		case *ast.Ident:
			if with, ok := named[n.Name]; ok {
				kind := "extreme"
				if n.Name == "true" || n.Name == "false" {
					kind = "constant"
				}
				change(kind, n.Pos(), n.End(), with)
			}
		}
		return true
	})
	return found, nil
}

// otherConstant is a whole number and one, or a tenth more than any other number.
func otherConstant(l *ast.BasicLit) (string, bool) {
	switch l.Kind {
	case token.INT, token.CHAR:
		return "(" + l.Value + " + 1)", true
	case token.FLOAT:
		if v, err := strconv.ParseFloat(l.Value, 64); err != nil || v == 0 {
			return "1.0", err == nil
		}
		return "(" + l.Value + " * 1.1)", true
	}
	return "", false
}
