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
	colour                                        bool
	Title, Question, Focus, Number, Key, Note, Go lipgloss.Style
	// Value is a setting, Moved what a trial changed, Caption what is beside a value, Tab the one
	// that shows.
	Value, Moved, Caption, Tab lipgloss.Style
	// Badge is a verdict in its box.
	Badge   map[calc.Verdict]lipgloss.Style
	level   map[calc.Level]lipgloss.Style
	picture map[draw.Role]lipgloss.Style // as it is where there is none
}

// newTheme is the theme in colour, or with no attributes at all.
func newTheme(colour bool) theme {
	r := lipgloss.NewRenderer(io.Discard)
	r.SetHasDarkBackground(true) // else it asks the terminal
	r.SetColorProfile(termenv.Ascii)
	if colour {
		r.SetColorProfile(termenv.ANSI)
	}
	style := r.NewStyle
	red, green, yellow, cyan := lipgloss.Color("1"), lipgloss.Color("2"), lipgloss.Color("3"), lipgloss.Color("6")
	return theme{
		colour:   colour,
		Title:    style().Bold(true),
		Question: style().Bold(true),
		Focus:    style().Bold(true).Foreground(cyan),
		Number:   style().Bold(true),
		Key:      style().Foreground(cyan),
		Note:     style().Foreground(cyan),
		Go:       style().Bold(true).Foreground(green),
		Value:    style().Bold(true),
		Moved:    style().Bold(true).Foreground(cyan),
		Caption:  style(),
		Tab:      style().Bold(true).Reverse(true),
		Badge: map[calc.Verdict]lipgloss.Style{
			calc.VerdictGo:    style().Bold(true).Reverse(true).Foreground(green),
			calc.VerdictWatch: style().Bold(true).Reverse(true).Foreground(yellow),
			calc.VerdictWait:  style().Bold(true).Reverse(true).Foreground(yellow),
			calc.VerdictStop:  style().Bold(true).Reverse(true).Foreground(red),
		},
		level: map[calc.Level]lipgloss.Style{
			calc.Stop: style().Bold(true).Foreground(red),
			calc.Warn: style().Foreground(yellow),
			calc.Note: style(),
		},
		picture: map[draw.Role]lipgloss.Style{
			draw.RoleMark:  style().Bold(true).Foreground(cyan),
			draw.RoleRest:  style().Foreground(cyan),
			draw.RoleKeep:  style().Foreground(green),
			draw.RoleBand:  style().Foreground(cyan),
			draw.RoleLimit: style().Foreground(red),
			draw.RoleLost:  style().Foreground(yellow),
			draw.RoleWorst: style().Bold(true).Foreground(red),
			draw.RoleGo:    style().Foreground(green),
			draw.RoleWatch: style().Foreground(yellow),
			draw.RoleWait:  style().Bold(true).Foreground(yellow),
			draw.RoleStop:  style().Foreground(red),
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

// coloured reports whether the environment wants colour: NO_COLOR, where it is set to
// anything, does not.
func coloured(getenv func(string) string) bool { return getenv("NO_COLOR") == "" }

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
