// Package early keeps the terminal library from asking the terminal for its
// background colour. The question is put in that library's init, and a terminal that
// does not answer makes every start of the program, screen or not, five seconds slower.
//
// Go initializes packages in the order of their import paths as soon as what they
// import is ready. This one imports nothing but the style library, and its path sorts
// before github.com/, so it has said what the background is before anyone asks.
package early

import "github.com/charmbracelet/lipgloss"

// The value is never used: no style of ours depends on the background.
func init() { lipgloss.SetHasDarkBackground(true) }
