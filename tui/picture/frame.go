package picture

import (
	"fmt"
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// pen is how a character is written.
type pen struct {
	fg, bg                   paint
	bold, reverse, underline bool
}

var plain = pen{fg: ink, bg: paper}

// inks is what the character and what lies behind it are painted with.
func (p pen) inks() (fg, bg paint) {
	if p.reverse {
		return p.bg, p.fg
	}
	return p.fg, p.bg
}

// cell is one character of a frame.
type cell struct {
	char rune
	pen
}

// cells reads a frame row by row: characters one column wide, coloured by SGR sequences.
// Anything else in it is an error.
func cells(frame string) ([][]cell, error) {
	rows := [][]cell{nil}
	p := plain
	parser := ansi.NewParser()
	var state byte
	for len(frame) > 0 {
		seq, width, n, next := ansi.DecodeSequence(frame, state, parser)
		frame, state = frame[n:], next
		row := &rows[len(rows)-1]
		chars := []rune(seq)
		switch {
		case seq == "\n":
			rows = append(rows, nil)
		case width == 1 && len(chars) == 1 && chars[0] != '\uFFFD':
			*row = append(*row, cell{chars[0], p})
		case strings.HasPrefix(seq, "\x1b[") && parser.Command() == 'm':
			if err := p.set(parser.Params()); err != nil {
				return nil, fmt.Errorf("row %d: %q: %w", len(rows), seq, err)
			}
		default:
			return nil, fmt.Errorf("row %d: %q is neither a character one column wide nor a colour", len(rows), seq)
		}
	}
	return rows, nil
}

// set changes the pen as an SGR sequence asks.
func (p *pen) set(params ansi.Params) error {
	if len(params) == 0 {
		*p = plain
	}
	for _, param := range params {
		switch n := param.Param(0); {
		case param.HasMore():
			return fmt.Errorf("sub-parameters are not known")
		case n == 0:
			*p = plain
		case n == 1:
			p.bold = true
		case n == 4:
			p.underline = true
		case n == 7:
			p.reverse = true
		case n == 22:
			p.bold = false
		case n == 24:
			p.underline = false
		case n == 27:
			p.reverse = false
		case n >= 30 && n <= 37:
			p.fg = paint(n - 30)
		case n == 39:
			p.fg = ink
		case n >= 40 && n <= 47:
			p.bg = paint(n - 40)
		case n == 49:
			p.bg = paper
		case n >= 90 && n <= 97:
			p.fg = paint(n - 90 + 8)
		case n >= 100 && n <= 107:
			p.bg = paint(n - 100 + 8)
		default:
			return fmt.Errorf("%d is not known", n)
		}
	}
	return nil
}
