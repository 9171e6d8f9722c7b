package draw_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/tui/draw"

	"github.com/stretchr/testify/require"
)

// shown are the pictures of the gallery, each at its sizes: its least room first.
type shown struct {
	name  string
	p     picture
	sizes [][2]int
}

// usual are the sizes every picture must look right at, beside its least.
var usual = [][2]int{{36, 12}, {60, 18}, {90, 28}}

// at is a picture at its least room and at the usual sizes.
func at(name string, p picture, w, h int) shown {
	return shown{name, p, append([][2]int{{w, h}}, usual...)}
}

// grounds are how the roles look on a dark and a light ground, of the sixteen colours.
var grounds = map[string]map[draw.Role]string{
	"dark": {
		draw.RoleAxis: "90", draw.RoleMark: "1;96", draw.RoleRest: "36", draw.RoleGhost: "95", draw.RoleKeep: "92", draw.RoleBand: "36",
		draw.RoleLimit: "91", draw.RoleKept: "37", draw.RoleLost: "93", draw.RoleWorst: "1;91", draw.RoleGo: "92", draw.RoleWatch: "33",
		draw.RoleWait: "93", draw.RoleStop: "91", draw.RoleFill: "90", draw.RoleOwn: "37", draw.RoleTitle: "1",
	},
	"light": {
		draw.RoleAxis: "90", draw.RoleMark: "1;34", draw.RoleRest: "36", draw.RoleGhost: "35", draw.RoleKeep: "32", draw.RoleBand: "36",
		draw.RoleLimit: "31", draw.RoleKept: "90", draw.RoleLost: "33", draw.RoleWorst: "1;31", draw.RoleGo: "32", draw.RoleWatch: "33",
		draw.RoleWait: "33", draw.RoleStop: "31", draw.RoleFill: "90", draw.RoleOwn: "90", draw.RoleTitle: "1",
	},
}

// TestGallery writes every picture into the folder GALLERY, to be looked at:
//
//	GALLERY=/tmp/gallery go test -count=1 -run TestGallery ./tui/draw
func TestGallery(t *testing.T) {
	dir := os.Getenv("GALLERY")
	if dir == "" {
		t.Skip("GALLERY names no folder")
	}
	require.NoError(t, os.MkdirAll(dir, 0o755))
	for _, s := range gallery() {
		for _, size := range s.sizes {
			name := fmt.Sprintf("%s-%dx%d", s.name, size[0], size[1])
			for ground, colours := range grounds {
				ink := func(r draw.Role, text string) string {
					if colours[r] == "" {
						return text
					}
					return "\x1b[" + colours[r] + "m" + text + "\x1b[0m"
				}
				write(t, filepath.Join(dir, name+"-"+ground+".ansi"), s.p.Rows(size[0], size[1], draw.Blocks, ink))
			}
			write(t, filepath.Join(dir, name+"-ascii.txt"), s.p.Rows(size[0], size[1], draw.ASCII, nil))
		}
	}
}

func write(t *testing.T, file string, rows []string) {
	require.NotEmpty(t, rows, "%s shows something", file)
	require.NoError(t, os.WriteFile(file, []byte(strings.Join(rows, "\n")+"\n"), 0o644))
}

// gallery are all the pictures.
func gallery() []shown {
	return []shown{
		{"digits", number("1 3/8"), [][2]int{{10, 3}, {30, 5}, {40, 7}, {60, 9}}},
		{"digits-all", number("01234"), [][2]int{{20, 3}, {36, 5}, {50, 7}, {64, 9}}},
		{"digits-rest", number("56789"), [][2]int{{20, 3}, {36, 5}, {50, 7}, {64, 9}}},
		{"digits-comma", number("-2,15"), [][2]int{{20, 3}, {36, 5}, {50, 7}, {64, 9}}},
	}
}

// number is a number as large as fits.
type number string

func (n number) Rows(w, h int, g draw.Glyphs, ink draw.Ink) []string {
	rows := draw.FitDigits(string(n), w, h, g)
	for i := range rows {
		if ink != nil {
			rows[i] = ink(draw.RoleMark, rows[i])
		}
	}
	return rows
}
