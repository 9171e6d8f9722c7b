package tui

import (
	"io"
	"strings"

	"boothset/calc"
	"boothset/tui/draw"

	"github.com/charmbracelet/lipgloss"
	"github.com/muesli/termenv"
)

// theme is how each role looks. Colours are of the terminal's own sixteen. Nothing is
// said by colour alone.
type theme struct {
	colour   bool // it has attributes at all
	Title    lipgloss.Style
	Question lipgloss.Style
	Focus    lipgloss.Style // what the cursor is on
	Number   lipgloss.Style
	Key      lipgloss.Style
	Note     lipgloss.Style
	Go       lipgloss.Style
	Caption  lipgloss.Style // what only names or explains: quiet
	Tab      lipgloss.Style // the one that shows, reversed
	Moved    lipgloss.Style // what a trial changed
	Value    lipgloss.Style // a setting, the brightest there is

	level   map[calc.Level]lipgloss.Style
	Badge   map[calc.Verdict]lipgloss.Style // a verdict's word, reversed in its colour
	picture map[draw.Role]lipgloss.Style    // as it is where there is none
}

// palette is the colours that a look takes, by their number among the terminal's sixteen. Each
// can be read on the grounds that the look is for: theme_test.go works out its contrast on the
// palettes that terminals come with. "" is the terminal's own ink.
type palette struct {
	accent, good, warn, wait, stop lipgloss.Color
	goBadge, warnBadge             lipgloss.Color // grounds under black
	lost, watch                    lipgloss.Color // in pictures
	quiet, bright                  lipgloss.Color
}

// onDark takes the bright colours but no bright blue, magenta and black, which some terminals
// have too dark.
var onDark = palette{accent: "14", good: "10", warn: "11", wait: "11", stop: "9", lost: "11", watch: "11", quiet: "7", bright: "15"}

// onLight takes the dark ones but no green, yellow and cyan, which are too light on white: GO
// and WATCH have these as grounds under black.
var onLight = palette{accent: "4", warn: "1", wait: "1", stop: "1", goBadge: "10", warnBadge: "11", lost: "5", watch: "5"}

// newTheme is the theme of a look.
func newTheme(look Colours) theme {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetHasDarkBackground(true) // else it asks the terminal
	r.SetColorProfile(termenv.ANSI)
	switch look {
	case None:
		r.SetColorProfile(termenv.Ascii)
	case Contrast:
		return uncoloured(r.NewStyle)
	case Light:
		return coloured(r.NewStyle, onLight)
	}
	t := coloured(r.NewStyle, onDark)
	t.colour = look != None
	return t
}

// coloured is a theme in the colours of a palette.
func coloured(style func() lipgloss.Style, p palette) theme {
	in := func(c lipgloss.Color) lipgloss.Style {
		if c == "" {
			return style()
		}
		return style().Foreground(c)
	}
	bold := func(c lipgloss.Color) lipgloss.Style { return in(c).Bold(true) }
	// badge is a word on a ground: under black, or its colour and the terminal's ground reversed.
	badge := func(ground, ink lipgloss.Color) lipgloss.Style {
		if ground == "" {
			return bold(ink).Reverse(true)
		}
		return bold("0").Background(ground)
	}
	return theme{
		colour:   true,
		Title:    bold(""),
		Question: bold(""),
		Focus:    bold(p.accent),
		Number:   bold(""),
		Key:      in(p.accent),
		Note:     in(p.accent),
		Go:       bold(p.good),
		Caption:  in(p.quiet),
		Tab:      bold("").Reverse(true),
		Moved:    bold(p.accent),
		Value:    bold(p.bright),
		level: map[calc.Level]lipgloss.Style{
			calc.Stop: bold(p.stop),
			calc.Warn: in(p.warn),
			calc.Note: style(),
		},
		Badge: map[calc.Verdict]lipgloss.Style{
			calc.VerdictGo:    badge(p.goBadge, p.good),
			calc.VerdictWatch: badge(p.warnBadge, p.warn),
			calc.VerdictWait:  badge(p.warnBadge, p.wait),
			calc.VerdictStop:  badge("", p.stop),
		},
		picture: map[draw.Role]lipgloss.Style{
			draw.RoleMark:  bold(p.accent),
			draw.RoleRest:  in(p.accent),
			draw.RoleKeep:  in(p.good),
			draw.RoleBand:  in(p.accent),
			draw.RoleLimit: in(p.stop),
			draw.RoleLost:  in(p.lost),
			draw.RoleWorst: bold(p.stop),
			draw.RoleGo:    in(p.good),
			draw.RoleWatch: in(p.watch),
			draw.RoleWait:  bold(p.watch),
			draw.RoleStop:  in(p.stop),
			draw.RoleTitle: bold(""),
			draw.RoleAxis:  in(p.quiet),
			draw.RoleFill:  in(p.quiet),
			draw.RoleOwn:   in(p.quiet),
			draw.RoleGhost: in(p.quiet),
		},
	}
}

// uncoloured is the theme of bold and reversed text alone.
func uncoloured(style func() lipgloss.Style) theme {
	bold, reversed := style().Bold(true), style().Bold(true).Reverse(true)
	return theme{
		colour:   true,
		Title:    bold,
		Question: bold,
		Focus:    reversed,
		Number:   bold,
		Key:      bold,
		Note:     style(),
		Go:       bold,
		Caption:  style(),
		Tab:      reversed,
		Moved:    reversed,
		Value:    bold,
		level: map[calc.Level]lipgloss.Style{
			calc.Stop: reversed,
			calc.Warn: bold,
			calc.Note: style(),
		},
		Badge: map[calc.Verdict]lipgloss.Style{
			calc.VerdictGo: reversed, calc.VerdictWatch: reversed, calc.VerdictWait: reversed, calc.VerdictStop: reversed,
		},
		picture: map[draw.Role]lipgloss.Style{
			draw.RoleMark: bold, draw.RoleTitle: bold, draw.RoleLimit: bold, draw.RoleWorst: bold, draw.RoleWait: bold, draw.RoleStop: bold,
		},
	}
}

// verdict is how the sentence of a verdict looks.
func (th *theme) verdict(v calc.Verdict) lipgloss.Style {
	switch v {
	case calc.VerdictGo:
		return th.Go
	case calc.VerdictStop:
		return th.level[calc.Stop]
	}
	return th.level[calc.Warn]
}

// ink colours a piece of a picture.
func (s *session) ink(role draw.Role, text string) string {
	if st, ok := s.theme.picture[role]; ok {
		return st.Render(text)
	}
	return text
}

// glyphs is the set the locale can show: blocks where it is UTF-8 and not one whose
// terminals may draw them two columns wide.
func glyphs(getenv func(string) string) draw.Glyphs {
	var locale string
	for _, name := range []string{"LC_ALL", "LC_CTYPE", "LANG"} { // the first one set decides
		if locale = strings.ToLower(getenv(name)); locale != "" {
			break
		}
	}
	utf8 := strings.Contains(locale, "utf-8") || strings.Contains(locale, "utf8")
	for _, wide := range []string{"ja", "ko", "zh"} {
		utf8 = utf8 && !strings.HasPrefix(locale, wide)
	}
	if utf8 {
		return draw.Blocks
	}
	return draw.ASCII
}
