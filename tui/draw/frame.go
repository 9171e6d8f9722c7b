package draw

import (
	"strings"

	"github.com/charmbracelet/x/ansi"
)

// Frame is a region with a titled rule round it.
//
//	f := draw.Frame{Title: "1 WALL", Right: "psi"}
//	f.Inside = gauge.Rows(w-draw.FrameAcross, h-draw.FrameDown, g, ink)
//	rows := f.Rows(w, h, g, ink)
type Frame struct {
	Title, Right string   // in the upper rule: what the region is; a caption at its right end
	Marked       bool     // it is the one that is looked at
	Inside       []string // rows, inked or not; what is too wide or too many is cut
}

// What a frame takes of its room: its rules, and across a blank beside each.
const (
	FrameAcross = 4
	FrameDown   = 2
)

// Rows draws the frame as large as the room, with its rows inside. It needs 5 columns and 3
// rows. A caption that does not fit beside the title is left out.
func (f Frame) Rows(w, h int, g Glyphs, ink Ink) []string {
	if w <= FrameAcross || h <= FrameDown {
		return nil
	}
	w, h = min(w, mostSide), min(h, mostSide)
	corners := [...]rune{g.DownRight, g.DownLeft, g.UpRight, g.UpLeft}
	if g.Braille != 0 {
		corners = [...]rune{'╭', '╮', '╰', '╯'}
	}
	c := newCanvas(w, 1, g)
	rule := func(left, right rune) {
		c.run(0, 0, w, g.Rule, RoleAxis)
		c.put(0, 0, left, RoleAxis)
		c.put(w-1, 0, right, RoleAxis)
	}
	rows := make([]string, 0, h)
	rule(corners[0], corners[1])
	role := RoleTitle
	if f.Marked {
		role = RoleMark
	}
	used := c.inRule(2, cutTo(f.Title, w-6), role)
	if n := length(f.Right); n > 0 && used+n+7 <= w {
		c.inRule(w-4-n, f.Right, RoleAxis)
	}
	rows = append(rows, c.rows(ink)[0])
	side := string(g.Upright)
	if ink != nil {
		side = ink(RoleAxis, side)
	}
	for y := range h - FrameDown {
		row := ""
		if y < len(f.Inside) {
			row = ansi.Truncate(f.Inside[y], w-FrameAcross, "")
		}
		rows = append(rows, side+" "+row+strings.Repeat(" ", max(w-FrameAcross-ansi.StringWidth(row), 0))+" "+side)
	}
	rule(corners[2], corners[3])
	return append(rows, c.rows(ink)[0])
}

// inRule puts a text into a rule, a blank either side, and returns the columns it took.
func (c *canvas) inRule(x int, text string, role Role) int {
	if text == "" {
		return 0
	}
	return c.text(x, 0, " "+text+" ", role)
}
