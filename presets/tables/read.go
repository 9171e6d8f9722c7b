package tables

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"boothset/calc"

	"github.com/pelletier/go-toml/v2/unstable"
)

// deepest is how many tables and lists may lie in one another: far more than anything needs.
const deepest = 32

// reader puts the rows of a text into tables, by the rules of TOML on what may be said twice.
type reader struct {
	parser unstable.Parser
	data   []byte
	lines  []int // where each begins
	root   *Table
	into   *Table // that of the last header
	header []string
}

// Read reads a text.
func Read(data []byte) (*Table, *Fault) {
	root := &Table{At: Place{1, 1}}
	r := &reader{data: data, lines: []int{0}, root: root, into: root}
	for i, c := range data {
		if c == '\n' {
			r.lines = append(r.lines, i+1)
		}
	}
	r.parser.Reset(data)
	for r.parser.NextExpression() {
		if f := r.row(r.parser.Expression()); f != nil {
			return nil, f
		}
	}
	var wrong *unstable.ParserError
	if errors.As(r.parser.Error(), &wrong) {
		return nil, r.unreadable(int(r.parser.Range(wrong.Highlight).Offset))
	}
	return root, nil
}

// at is the place of a byte.
func (r *reader) at(offset int) Place {
	line, exact := slices.BinarySearch(r.lines, offset)
	if exact {
		line++
	}
	return Place{line, offset - r.lines[line-1] + 1}
}

// row takes a header, or a key with its value.
func (r *reader) row(n *unstable.Node) *Fault {
	keys, offsets, end := keysOf(n)
	if len(keys) > deepest {
		return &Fault{At: r.at(offsets[0]), ID: "file-deep"}
	}
	switch n.Kind {
	case unstable.Table:
		return r.open(keys, r.at(r.bracket(offsets[0])))
	case unstable.ArrayTable:
		return &Fault{r.at(r.bracket(r.bracket(offsets[0]))), "file-list-of-tables", calc.Figures{calc.GivenFigure("key", strings.Join(keys, "."))}}
	}
	return r.set(r.into, r.header, n, keys, offsets, end, 0)
}

// keysOf is the parts of a node's key, where each begins, and where the last one ends.
func keysOf(n *unstable.Node) (keys []string, offsets []int, end int) {
	for it := n.Key(); it.Next(); {
		k := it.Node()
		keys, offsets = append(keys, string(k.Data)), append(offsets, int(k.Raw.Offset))
		end = int(k.Raw.Offset + k.Raw.Length)
	}
	return keys, offsets, end
}

// bracket is where the bracket before a header's key stands.
func (r *reader) bracket(offset int) int {
	return strings.LastIndexByte(string(r.data[r.lines[r.at(offset).Line-1]:offset]), '[') + r.lines[r.at(offset).Line-1]
}

// open makes the table of a header the one that the rows below are of.
func (r *reader) open(keys []string, at Place) *Fault {
	t := r.root
	for i, name := range keys {
		v, last := t.of[name], i == len(keys)-1
		if v == nil {
			made := onTheWay
			if last {
				made = byHeader
			}
			t = t.below(name, at, made)
			continue
		}
		sub, isTable := v.Of.(*Table)
		switch {
		case !isTable, sub.made == inOnePart, last && sub.made != onTheWay:
			return twice(keys[:i+1], at, v)
		case last:
			sub.made, sub.At = byHeader, at
		}
		t = sub
	}
	r.into, r.header = t, keys
	return nil
}

// set puts a value at a key below a table, whose own key is path.
func (r *reader) set(t *Table, path []string, n *unstable.Node, keys []string, offsets []int, end, depth int) *Fault {
	last := len(keys) - 1
	for i, name := range keys[:last] {
		v := t.of[name]
		if v == nil {
			t = t.below(name, r.at(offsets[i]), byDots)
			continue
		}
		sub, isTable := v.Of.(*Table)
		if !isTable || sub.made != byDots {
			return twice(append(slices.Clone(path), keys[:i+1]...), r.at(offsets[i]), v)
		}
		t = sub
	}
	path = append(slices.Clone(path), keys...)
	key := r.at(offsets[last])
	if v := t.of[keys[last]]; v != nil {
		return twice(path, key, v)
	}
	for strings.IndexByte(" \t=", r.data[end]) >= 0 {
		end++
	}
	v, f := r.value(n.Value(), path, end, depth)
	if f != nil {
		return f
	}
	v.Key = key
	t.put(keys[last], v)
	return nil
}

// twice is the fault of a key, or a table, that is there already.
func twice(path []string, at Place, first *Value) *Fault {
	return &Fault{at, "file-twice", calc.Figures{calc.GivenFigure("key", strings.Join(path, ".")), calc.CountFigure("line", first.Key.Line)}}
}

// value is a value that begins at an offset.
func (r *reader) value(n *unstable.Node, path []string, offset, depth int) (*Value, *Fault) {
	if n.Raw.Length > 0 {
		offset = int(n.Raw.Offset)
	}
	v := &Value{At: r.at(offset), Text: string(n.Data)}
	v.Key = v.At
	if depth > deepest {
		return nil, &Fault{At: v.At, ID: "file-deep"}
	}
	var err error
	plain := strings.ReplaceAll(v.Text, "_", "") // between digits it says nothing
	switch n.Kind {
	case unstable.String:
		v.Of = v.Text
	case unstable.Bool:
		v.Of = v.Text == "true"
	case unstable.Integer:
		v.Of, err = strconv.ParseInt(plain, 0, 64)
	case unstable.Float:
		if strings.HasSuffix(plain, "nan") || strings.HasSuffix(plain, "inf") {
			return nil, &Fault{v.At, "file-no-number", calc.Figures{calc.GivenFigure("given", v.Text)}}
		}
		v.Of, err = strconv.ParseFloat(plain, 64)
	case unstable.Array:
		var list List
		for it := n.Children(); it.Next(); {
			one, f := r.value(it.Node(), path, offset, depth+1)
			if f != nil {
				return nil, f
			}
			list = append(list, one)
		}
		v.Of = list
	case unstable.InlineTable:
		t := &Table{At: v.At, made: inOnePart}
		for it := n.Children(); it.Next(); {
			keys, offsets, end := keysOf(it.Node())
			if len(keys) > deepest {
				return nil, &Fault{At: r.at(offsets[0]), ID: "file-deep"}
			}
			if f := r.set(t, path, it.Node(), keys, offsets, end, depth+1); f != nil {
				return nil, f
			}
		}
		v.Of = t
	default:
		v.Of = Date{}
	}
	if err != nil {
		return nil, &Fault{v.At, "file-long-number", calc.Figures{calc.GivenFigure("given", v.Text)}}
	}
	return v, nil
}
