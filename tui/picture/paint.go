package picture

import (
	"fmt"
	"math"
	"strings"
)

// paint is what a shape is filled with: the terminal's sixteen colours by number, and
// what it has where none is asked for.
type paint uint8

const (
	ink paint = iota + 16
	paper
	paints
)

// class is the name of a paint in the picture's style sheet.
func (p paint) class() string {
	switch p {
	case ink:
		return "ink"
	case paper:
		return "paper"
	}
	return fmt.Sprint("c", uint8(p))
}

// rgb is a colour as 0xRRGGBB.
type rgb uint32

// scheme is every paint as a light or a dark page has it.
type scheme [paints]rgb

// The colours are chosen by their contrast with the paper: light, 6.2 for the first and
// 5 for the bright colours; dark, 7.5 and 10.5. The four greys stand apart likewise.
var (
	light = scheme{
		0x232629, 0xb7281e, 0x146f32, 0x7e5903, 0x215db9, 0x963996, 0x0a6a78, 0x4a5057,
		0x606971, 0xd12e22, 0x167f39, 0x916704, 0x256bd3, 0xad41ad, 0x0b798a, 0x373c40,
		ink: 0x1d2023, paper: 0xfdfdfc,
	}
	dark = scheme{
		0x808993, 0xf58b84, 0x40bf6b, 0xd7a01f, 0x79abf4, 0xe289e2, 0x35b8cd, 0xc8cdd1,
		0x969ea5, 0xf9b7b3, 0x8bd8a5, 0xe9c368, 0xabcaf8, 0xedb6ed, 0x84d4e0, 0xf3f4f4,
		ink: 0xe3e6e8, paper: 0x15191d,
	}
)

// leastContrast is what text must have against what lies behind it (WCAG 2.2, success
// criterion 1.4.3, level AA).
const leastContrast = 4.5

// Contrast is the contrast ratio of two colours, each as 0xRRGGBB.
func Contrast(a, b uint32) float64 { return contrast(rgb(a), rgb(b)) }

// contrast is the contrast ratio of two colours, 1 to 21 (WCAG 2.2, definitions of
// contrast ratio and relative luminance).
func contrast(a, b rgb) float64 {
	la, lb := a.luminance(), b.luminance()
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

// luminance is the relative luminance, 0 for black to 1 for white.
func (c rgb) luminance() float64 {
	linear := func(v rgb) float64 {
		s := float64(v&0xff) / 0xff
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c>>16) + 0.7152*linear(c>>8) + 0.0722*linear(c)
}

// readable is an error where one paint cannot be read on another in either scheme.
func readable(fg, bg paint) error {
	for _, s := range []scheme{light, dark} {
		if c := contrast(s[fg], s[bg]); c < leastContrast {
			return fmt.Errorf("%s on %s has a contrast of %.1f to 1; text needs %.1f", fg.class(), bg.class(), c, leastContrast)
		}
	}
	return nil
}

// rules is a scheme as a style sheet has it.
func (s scheme) rules() string {
	var b strings.Builder
	for p, c := range s {
		fmt.Fprintf(&b, ".%s{fill:#%06x}\n", paint(p).class(), uint32(c))
	}
	return b.String()
}
