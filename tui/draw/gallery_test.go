package draw_test

import (
	"fmt"
	"math"
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
		at("frame", frame(), 5, 3),
		at("gauge", gauge(31), 20, 8),
		at("gauge-off", gauge(72), 20, 8),
		at("gauge-metric", metricGauge(), 20, 8),
		at("knob", knob(0.375), 18, 8),
		at("knob-far", knob(1.75), 18, 8),
		at("knob-three", draw.Knob{Shut: 3.25, Anticlock: true, Set: draw.Mark{At: 2.5, Text: "2 1/2 turns closed"}, Open: "open", Closed: "shut"}, 18, 8),
		at("reach", reach(5.5), 24, 5),
		at("reach-off", reach(12), 24, 5),
		at("pipe", pipe(), 30, 9),
		{"pipe-long", longPipe(), [][2]int{{60, 9}, {60, 18}, {90, 28}, {120, 30}}},
		at("weather", weather(75, 45), 30, 8),
		at("weather-off", weather(120, 45), 30, 8),
	}
}

func weather(temperature, humidity float64) draw.Weather {
	old := climate(temperature, humidity)
	return draw.Weather{Temperature: old.Temperature, Humidity: old.Humidity, TemperatureUnit: "F", HumidityUnit: "% humidity",
		At: func(t, rh float64) draw.Region {
			dew := 100 * math.Exp((55-t)/29)
			switch {
			case rh > 1.15*dew || t < 53 || t > 106:
				return draw.Stop
			case rh > 0.95*dew || rh > 80 || t < 60 || t > 98:
				return draw.Wait
			case t > 86-(rh-50)/8 || t < 65:
				return draw.Watch
			}
			return draw.Go
		}, Dew: old.Dew, DewText: "panel draws water",
		Today: old.Today, Ghost: old.Ghost, TemperatureError: 2, HumidityError: 5, Go: "go", Watch: "watch", Wait: "wait", Stop: "stop",
	}
}

func pipe() draw.Pipe {
	return draw.Pipe{Pressure: draw.NewScale(0, 40, 5, whole), Title: "psi", Worst: "costs most: 2.3", Parts: []draw.PipePart{
		{Name: "wall coupling", In: 31, Out: 30.6, Bore: 8}, {Name: "main hose 25 ft", In: 30.6, Out: 28.3, Bore: 9.5, Length: 25, Worst: true},
		{Name: "coupling", In: 28.3, Out: 27.9, Bore: 8}, {Name: "whip hose 4 ft", In: 27.9, Out: 27.2, Bore: 8, Length: 4}, {Name: "inlet valve", In: 27.2, Out: 26, Bore: 7},
		{Name: "passages", In: 26, Out: 15.5, Bore: 4, Own: true}, {Name: "cap", In: 15.5, Out: 0, Bore: 5, Own: true},
	}}
}

// longPipe has a regulator in it and as many parts as a shop's line may have.
func longPipe() draw.Pipe {
	p := draw.Pipe{Pressure: draw.NewScale(0, 100, 6, whole), Title: "psi", Worst: "costs most: 6"}
	at := 98.0
	for i, name := range []string{"main 3/4", "ball valve", "filter", "dryer", "coupling", "hose 30 ft", "regulator", "filter", "coupling", "main hose 25 ft", "coupling", "foot regulator",
		"whip hose 4 ft", "swivel", "gun coupling", "inlet valve", "passages", "cap"} {
		k := draw.PipePart{Name: name, In: at, Out: at - 1, Bore: 9.5 - float64(i%3), Own: i >= 16}
		switch name {
		case "regulator":
			k.Out = 45
		case "hose 30 ft":
			k.Length = 30
		case "main hose 25 ft":
			k.Length, k.Worst, k.Out = 25, true, at-6
		case "whip hose 4 ft":
			k.Length = 4
		case "passages":
			k.Out, k.Bore = 15, 4
		case "cap":
			k.Out, k.Bore = 0, 5
		}
		p.Parts = append(p.Parts, k)
		at = k.Out
	}
	return p
}

func reach(set float64) draw.Reach {
	return draw.Reach{Scale: draw.NewScale(0, 9, 10, whole), Unit: "in", Set: draw.Mark{At: set, Text: whole(set) + " in"}, Ghost: draw.Mark{At: 7, Text: "was 7"},
		Keep: draw.Span{Low: set - 0.5, High: set + 0.5, Text: "keep " + whole(set-0.5) + " to " + whole(set+0.5)}, Likely: draw.Span{Low: 4.8, High: 6.3, Text: "likely 4.8 to 6.3"}, Gun: "cap", Panel: "panel"}
}

func knob(set float64) draw.Knob {
	return draw.Knob{Shut: 2.25, Set: draw.Mark{At: set, Text: eighths(set) + " turn closed"}, Ghost: draw.Mark{At: 0.75, Text: "was 3/4"},
		Limit: draw.Mark{At: 1.25, Text: "not past 1 1/4"}, Open: "open", Closed: "shut"}
}

// eighths is a count in eighths as a fraction.
func eighths(v float64) string {
	n := int(math.Round(v * 8))
	text := ""
	if n >= 8 {
		text = fmt.Sprintf("%d ", n/8)
	}
	part, of := n%8, 8
	for part > 0 && part%2 == 0 {
		part, of = part/2, of/2
	}
	if part > 0 {
		text += fmt.Sprintf("%d/%d", part, of)
	}
	return strings.TrimSpace(text)
}

func gauge(set float64) draw.Gauge {
	return draw.Gauge{
		Scale: draw.NewScale(0, 60, 7, whole), Minor: 5, Set: draw.Mark{At: set, Text: "set " + whole(set)},
		Rest: draw.Mark{At: set + 2, Text: "released " + whole(set+2)}, Ghost: draw.Mark{At: 14, Text: "was 14"},
		Likely: draw.Span{Low: set - 3, High: set + 4, Text: "likely " + whole(set-3) + " to " + whole(set+4)},
		Limit:  draw.Mark{At: 46, Text: "stamp 46"}, Name: "WALL", Value: whole(set) + " psi",
	}
}

func metricGauge() draw.Gauge {
	return draw.Gauge{Scale: draw.NewScale(0, 1000, 6, whole), Minor: 4, Set: draw.Mark{At: 215, Text: "215"}, Limit: draw.Mark{At: 850, Text: "850"}, Name: "WANDDRUCK", Value: "215 kPa"}
}

// framed is a picture in a frame.
type framed struct {
	draw.Frame
	inside picture
}

func (f framed) Rows(w, h int, g draw.Glyphs, ink draw.Ink) []string {
	f.Inside = f.inside.Rows(w-draw.FrameAcross, h-draw.FrameDown, g, ink)
	return f.Frame.Rows(w, h, g, ink)
}

func frame() picture {
	return framed{draw.Frame{Title: "1 WALL", Right: "trigger pulled"}, number("31")}
}

// number is a number as large as fits.
type number string

func (n number) Rows(w, h int, g draw.Glyphs, ink draw.Ink) []string {
	rows := draw.FitDigits(string(n), w, h, g)
	for i, row := range rows {
		rows[i] = strings.TrimRight(row, " ")
		if ink != nil {
			rows[i] = ink(draw.RoleMark, rows[i])
		}
	}
	return rows
}
