package draw_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
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
		at("bands", bands(31), 30, 6),
		at("bands-off", bands(41), 30, 6),
		at("curve-thin", thin(), 30, 8),
		at("curve-wall", response(), 30, 8),
		at("layers", layers(), 31, 7),
		at("cup", cup(), 24, 5),
		at("clock", clock(22), 30, 6),
		{"patterns", allPatterns{}, [][2]int{{72, 14}, {100, 14}}},
	}
}

func layers() draw.Layers {
	return draw.Layers{Scale: draw.NewScale(0, 8, 5, whole), Unit: "mil", Stacks: []draw.Stack{
		{Name: "wet", Coats: []draw.Coat{{Thick: 2.5, Text: "coat 1  2.5"}, {Thick: 2.5, Text: "coat 2  2.5"}, {Thick: 1.2, Text: "coat 3  1.2"}}},
		{Name: "dry", Coats: []draw.Coat{{Thick: 1.1, Text: "coat 1  1.1"}, {Thick: 1.1, Text: "coat 2  1.1"}, {Thick: 0.5, Text: "coat 3  0.5"}}, Low: draw.Mark{At: 2, Text: "from 2"}, High: draw.Mark{At: 3.5, Text: "to 3.5"}},
	}}
}

func cup() draw.Cup {
	return draw.Cup{Holds: 32, Pours: []draw.Pour{{Name: "clear", Amount: 16, Text: "16 oz", Mark: "16"}, {Name: "hardener", Amount: 4, Text: "4 oz", Mark: "20"}, {Name: "thinner", Amount: 1, Text: "1 oz", Mark: "21"}}}
}

func clock(now float64) draw.Clock {
	return draw.Clock{Scale: draw.NewScale(0, 120, 9, whole), Unit: "min", Now: draw.Mark{At: now, Text: "now " + whole(now)}, Lanes: []draw.Lane{
		{Name: "coats", Stages: []draw.Stage{{From: 0, To: 8, Text: "1", Role: draw.RoleKept}, {From: 8, To: 20, Text: "flash-off", Look: draw.Thin, Role: draw.RoleAxis}, {From: 20, To: 28, Text: "2", Role: draw.RoleKept},
			{From: 28, To: 42, Text: "flash-off", Look: draw.Thin, Role: draw.RoleAxis}, {From: 42, To: 50, Text: "3", Role: draw.RoleKept}}},
		{Name: "recoat", Stages: []draw.Stage{{From: 18, To: 60, Text: "recoat from 18 to 60", Look: draw.Open, Role: draw.RoleKeep}}},
		{Name: "pot life", Stages: []draw.Stage{{From: 0, To: 100, Text: "mixed", Look: draw.Open, Role: draw.RoleBand}, {From: 100, To: 1e9, Text: "too thick", Role: draw.RoleLimit}}},
	}}
}

// spray are patterns on paper, as they should be and not.
var spray = []struct {
	name string
	draw.Pattern
}{
	{"even", draw.Pattern{Wide: 0.55, High: 0.95, Wet: 0.8}}, {"split", draw.Pattern{Wide: 0.55, High: 0.95, Wet: 0.9, Ends: 0.95}}, {"heavy centre", draw.Pattern{Wide: 0.55, High: 0.95, Wet: 1, Ends: -0.95}},
	{"crescent left", draw.Pattern{Wide: 0.7, High: 0.95, Wet: 0.9, Bend: -0.9}}, {"crescent right", draw.Pattern{Wide: 0.7, High: 0.95, Wet: 0.9, Bend: 0.9}}, {"heavy top", draw.Pattern{Wide: 0.55, High: 0.95, Wet: 0.95, Lean: 0.95}},
	{"heavy bottom", draw.Pattern{Wide: 0.55, High: 0.95, Wet: 0.95, Lean: -0.95}}, {"sputter", draw.Pattern{Wide: 0.55, High: 0.95, Wet: 0.8, Sputter: 0.6}}, {"wide and thin", draw.Pattern{Wide: 0.8, High: 1, Wet: 0.3}}, {"narrow", draw.Pattern{Wide: 0.35, High: 0.6, Wet: 1}},
}

// allPatterns are those beside each other, in two rows.
type allPatterns struct{}

func (allPatterns) Rows(w, h int, g draw.Glyphs, ink draw.Ink) []string {
	var rows []string
	each, high := w*2/len(spray), h/2
	for i := 0; i < len(spray); i += len(spray) / 2 {
		for y := range high {
			row := ""
			for _, s := range spray[i : i+len(spray)/2] {
				cell := s.name
				if y > 0 {
					cell = s.Rows(each-2, high-1, g, ink)[y-1]
				}
				row += cell + strings.Repeat(" ", max(each-ansi.StringWidth(cell), 0))
			}
			rows = append(rows, strings.TrimRight(row, " "))
		}
	}
	return rows
}

func bands(wall float64) draw.Bands {
	return draw.Bands{
		Bands: []draw.Band{
			{Name: "WALL", Scale: draw.NewScale(20, 40, 5, whole), Low: wall - 3, High: wall + 3, At: wall, LowText: whole(wall - 3), HighText: whole(wall + 3), Text: whole(wall) + " psi"},
			{Name: "INLET VALVE", Scale: draw.NewScale(0, 2, 5, whole), Low: 0.1, High: 0.8, At: 0.375, LowText: "1/8", HighText: "3/4", Text: "3/8 turn"},
			{Name: "DISTANCE", Scale: draw.NewScale(4, 7, 4, whole), Low: 5.3, High: 5.8, At: 5.5, LowText: "5.3", HighText: "5.8", Text: "5.5 in"},
		},
		Title: "what makes it unsure", Others: "others", Figure: percent,
		Shares: []draw.Share{{Name: "inlet valve", Share: 0.52}, {Name: "gauge", Share: 0.21}, {Name: "hose's bore", Share: 0.14},
			{Name: "temperature", Share: 0.05}, {Name: "couplings", Share: 0.05}, {Name: "humidity", Share: 0.03}},
	}
}

// line is a line of points of a function.
func line(from, to float64, f func(float64) float64) (points []draw.Point) {
	for i := range 41 {
		x := from + (to-from)*float64(i)/40
		points = append(points, draw.Point{X: x, Y: f(x)})
	}
	return points
}

func thin() draw.Curve {
	as := func(x float64) float64 { return 24 * math.Exp((68-x)/28) }
	thinned := func(x float64) float64 { return 18.5 * math.Exp((68-x)/34) }
	return draw.Curve{X: draw.NewScale(50, 100, 6, whole), Y: draw.NewScale(10, 50, 5, whole), XTitle: "temperature of the mix, F", YTitle: "cup seconds",
		Lines:   []draw.CurveLine{{Points: line(50, 100, as), Text: "as mixed", Role: draw.RoleText}, {Points: line(50, 100, thinned), Text: "with 5 % thinner", Role: draw.RoleRest}},
		WantedY: draw.Span{Low: 17, High: 20, Text: "wanted 17 to 20"},
		Spots: []draw.Spot{{Point: draw.Point{X: 68, Y: as(68)}, Text: "today 24", Role: draw.RoleMark}, {Point: draw.Point{X: 68, Y: thinned(68)}, Text: "with 5 %", Role: draw.RoleRest},
			{Point: draw.Point{X: 74, Y: as(74)}, Text: "warmed to 74", Role: draw.RoleLost}}}
}

func response() draw.Curve {
	f := func(x float64) float64 { return 26 + 4.6*x/25*(1+x/80) }
	return draw.Curve{X: draw.NewScale(0, 100, 6, whole), Y: draw.NewScale(20, 50, 4, whole), XTitle: "ft", YTitle: "wall, psi", WantedX: draw.Span{Low: 25, High: 50, Text: "usual"},
		Lines: []draw.CurveLine{{Points: line(0, 100, f), Role: draw.RoleText}, {Points: line(0, 100, func(x float64) float64 { return f(x) - 3 }), Text: "1/2 in", Role: draw.RoleRest}, {Points: line(0, 100, func(x float64) float64 { return f(x) + 6 }), Text: "1/4 in", Role: draw.RoleLost}},
		Spots: []draw.Spot{{Point: draw.Point{X: 25, Y: f(25)}, Text: "today 31", Role: draw.RoleMark}, {Point: draw.Point{X: 130, Y: 45}, Text: "far", Role: draw.RoleGhost}}}
}

func weather(temperature, humidity float64) draw.Weather {
	dew := func(t float64) float64 { return 100 * math.Exp((55-t)/29) }
	return draw.Weather{Temperature: draw.NewScale(50, 110, 7, whole), Humidity: draw.NewScale(0, 100, 6, whole), TemperatureUnit: "F", HumidityUnit: "% humidity",
		At: func(t, rh float64) draw.Region {
			switch dew := dew(t); {
			case rh > 1.15*dew || t < 53 || t > 106:
				return draw.Stop
			case rh > 0.95*dew || rh > 80 || t < 60 || t > 98:
				return draw.Wait
			case t > 86-(rh-50)/8 || t < 65:
				return draw.Watch
			}
			return draw.Go
		}, Dew: dew, DewText: "panel draws water",
		Today: draw.DayPoint{Temperature: temperature, Humidity: humidity, Text: "today"}, Ghost: draw.DayPoint{Temperature: 68, Humidity: 60, Text: "was"}, TemperatureError: 2, HumidityError: 5, Go: "go", Watch: "watch", Wait: "wait", Stop: "stop",
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
