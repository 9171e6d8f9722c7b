package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strconv"
	"testing"

	"boothset/calc"
	"boothset/tui/draw"
	"boothset/tui/picture"

	"github.com/charmbracelet/lipgloss"
	"github.com/pelletier/go-toml/v2"
	"github.com/stretchr/testify/require"
)

func TestGlyphsFollowTheLocale(t *testing.T) {
	for _, c := range []struct {
		all, ctype, lang string
		want             draw.Glyphs
	}{
		{"", "", "en_US.UTF-8", draw.Blocks},
		{"", "", "de_DE.utf8", draw.Blocks},
		{"C", "", "en_US.UTF-8", draw.ASCII},
		{"C.UTF-8", "", "C", draw.Blocks},
		{"", "POSIX", "en_US.UTF-8", draw.ASCII},
		{"", "", "en_US.ISO-8859-1", draw.ASCII},
		{"", "", "", draw.ASCII},
		{"", "", "ja_JP.UTF-8", draw.ASCII},
	} {
		env := map[string]string{"LC_ALL": c.all, "LC_CTYPE": c.ctype, "LANG": c.lang}
		require.Equal(t, c.want, glyphs(func(n string) string { return env[n] }), "%+v", c)
	}
}

// A name asked for wins over the variable of the program's own, that over NO_COLOR
// (no-color.org: a program's own settings may), and that over what the terminal says.
func TestTheLookIsTheOneAskedFor(t *testing.T) {
	for _, c := range []struct {
		asked string
		env   map[string]string
		want  Colours
	}{
		{"", nil, Dark},
		{"", map[string]string{"NO_COLOR": "1"}, None},
		{"", map[string]string{"NO_COLOR": "0", "COLORFGBG": "0;15"}, None},
		{"", map[string]string{"TERM": "dumb"}, None},
		{"", map[string]string{"COLORFGBG": "0;15"}, Light},
		{"", map[string]string{"COLORFGBG": "0;default;15"}, Light},
		{"", map[string]string{"COLORFGBG": "0;7"}, Light},
		{"", map[string]string{"COLORFGBG": "15;0"}, Dark},
		{"", map[string]string{"COLORFGBG": "15;8"}, Dark},
		{"", map[string]string{"COLORFGBG": "15;default"}, Dark},
		{"", map[string]string{"COLORFGBG": "0;99"}, Dark},
		{"", map[string]string{"COLORFGBG": "15;0", EnvColours: "light"}, Light},
		{"", map[string]string{"NO_COLOR": "1", EnvColours: "contrast"}, Contrast},
		{"dark", map[string]string{"NO_COLOR": "1", EnvColours: "contrast"}, Dark},
	} {
		look, ok := ColoursOf(c.asked, func(n string) string { return c.env[n] })
		require.True(t, ok)
		require.Equal(t, c.want, look, "%+v", c)
	}
	for _, env := range []map[string]string{{EnvColours: "pink"}, {EnvColours: "Dark"}} {
		_, ok := ColoursOf("", func(n string) string { return env[n] })
		require.False(t, ok, "%v", env)
	}
	_, ok := ColoursOf("pink", func(string) string { return "light" })
	require.False(t, ok)
}

// terminal is the colours that one comes with.
type terminal struct {
	Name, Source string
	Colours      []string // the sixteen
	Dark, Light  []string // ground and ink
}

func terminals(t *testing.T) []terminal {
	t.Helper()
	b, err := os.ReadFile(filepath.Join("testdata", "palettes.toml"))
	require.NoError(t, err)
	var all struct{ Terminal []terminal }
	require.NoError(t, toml.Unmarshal(b, &all))
	require.Len(t, all.Terminal, 5)
	for _, c := range all.Terminal {
		require.Len(t, c.Colours, 16, c.Name)
		require.NotEmpty(t, c.Source, c.Name)
	}
	return all.Terminal
}

func rgbOf(t *testing.T, hex string) uint32 {
	t.Helper()
	v, err := strconv.ParseUint(hex, 16, 32)
	require.NoError(t, err)
	return uint32(v)
}

// The least contrasts: of text (WCAG 2.1, success criterion 1.4.3, level AA) and of what a
// picture is made of (1.4.11). Text large or bold might have the latter; here it does not.
const (
	leastText    = 4.5
	leastGraphic = 3.0
)

// graphic is the roles that no text is in where a look gives them a colour of their own.
var graphic = []draw.Role{draw.RoleLost, draw.RoleGo, draw.RoleWatch, draw.RoleWait}

// role is a style of a theme, with its name and the least contrast it must have.
type role struct {
	name  string
	style lipgloss.Style
	least float64
}

// roles is every style of a theme, so that none is forgotten.
func roles(t *testing.T, th theme) (all []role) {
	v := reflect.ValueOf(th)
	for i := range v.NumField() {
		f := v.Type().Field(i)
		if f.Type == reflect.TypeFor[lipgloss.Style]() {
			require.True(t, f.IsExported(), f.Name)
			all = append(all, role{f.Name, v.Field(i).Interface().(lipgloss.Style), leastText})
		}
	}
	for level, st := range th.level {
		all = append(all, role{fmt.Sprint("level ", level), st, leastText})
	}
	for verdict, st := range th.Badge {
		all = append(all, role{fmt.Sprint("badge ", verdict), st, leastText})
	}
	for r, st := range th.picture {
		least := leastText
		for _, g := range graphic {
			if r == g {
				least = leastGraphic
			}
		}
		all = append(all, role{fmt.Sprint("picture ", r), st, least})
	}
	return all
}

// Every role can be read on the palettes that five common terminals come with, on black and on
// white too, by the contrast ratio of WCAG 2.1.
func TestEveryRoleCanBeRead(t *testing.T) {
	for _, term := range terminals(t) {
		colour := func(c lipgloss.TerminalColor, own string) uint32 {
			number, ok := c.(lipgloss.Color)
			if !ok { // it has none
				return rgbOf(t, own)
			}
			n, err := strconv.Atoi(string(number))
			require.NoError(t, err)
			return rgbOf(t, term.Colours[n])
		}
		for look, own := range map[Colours][]string{Dark: term.Dark, Light: term.Light} {
			if own == nil {
				continue
			}
			plain := map[Colours][]string{Dark: {"000000", own[1]}, Light: {"ffffff", own[1]}}[look]
			for _, on := range [][]string{own, plain} {
				for _, r := range roles(t, newTheme(look)) {
					ink, ground := colour(r.style.GetForeground(), on[1]), colour(r.style.GetBackground(), on[0])
					ratio := picture.Contrast(ink, ground) // the same where they are reversed
					require.GreaterOrEqual(t, ratio, r.least, "%s in %s on %s of %s", r.name, look, on[0], term.Name)
				}
			}
		}
	}
}

// Without colours, roles are bold or reversed at most; without attributes, nothing.
func TestTheLooksWithoutColoursHaveNone(t *testing.T) {
	for _, r := range roles(t, newTheme(Contrast)) {
		require.IsType(t, lipgloss.NoColor{}, r.style.GetForeground(), r.name)
		require.IsType(t, lipgloss.NoColor{}, r.style.GetBackground(), r.name)
		require.False(t, r.style.GetUnderline() || r.style.GetFaint() || r.style.GetItalic() || r.style.GetBlink(), r.name)
	}
	for _, r := range roles(t, newTheme(None)) {
		require.Equal(t, "31 psi", r.style.Render("31 psi"), r.name)
	}
	require.NotEqual(t, "31 psi", newTheme(Contrast).Tab.Render("31 psi"))
}

// A verdict's word stands out in every look that has attributes, each level has a badge, and
// the settings are bold in all of them.
func TestVerdictsAndSettingsStandOut(t *testing.T) {
	for _, look := range []Colours{Dark, Light, Contrast} {
		th := newTheme(look)
		require.True(t, th.colour)
		require.True(t, th.Value.GetBold() && th.Tab.GetReverse(), look)
		for v := calc.VerdictGo; v <= calc.VerdictStop; v++ {
			st, ok := th.Badge[v]
			require.True(t, ok && st.GetBold(), "%s %v", look, v)
			_, grounded := st.GetBackground().(lipgloss.Color)
			require.True(t, st.GetReverse() || grounded, "%s %v", look, v)
		}
	}
	require.False(t, newTheme(None).colour)
}
