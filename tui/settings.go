package tui

import (
	"math"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/tui/draw"

	"github.com/charmbracelet/x/ansi"
)

// setting is one of the three values to set, with what stands around it.
type setting struct {
	about, name string
	value       string // as a number
	unit        string // "psi", "% open"
	label       string // the unit alone, "%"
	text, short string // the value with its unit, and with that alone
	// change is what it was and is, where something was moved, and by how much.
	change, by string
	span       string   // the range it likely lies within
	likely     string   // the same in words
	notes      []string // what it is, in words
	band       draw.Range
}

// The places of the three settings, in the order of doing.
const (
	atWall = iota
	atValve
	atDistance
)

// setting is a value with its unit.
func (s *session) setting(about, name string, of *unit.Quantity, si float64) setting {
	n := setting{about: about, name: s.say(name), value: s.words.Marked(of.Number(s.sys, si, unit.Usual)), label: of.Label(s.sys, si), short: of.Text(s.sys, si, unit.Usual)}
	n.unit, n.text = n.label, n.short
	return n
}

// likelyFrom says the range that the value likely lies within.
func (n *setting) likelyFrom(s *session, low, high string) {
	f := []calc.Figure{calc.TextFigure("low", low), calc.TextFigure("high", high)}
	n.span, n.likely = s.text("number-span", f...), s.text("number-likely", f...)
}

// settings is the three of a job: wall, inlet valve, distance.
func (b *bench) settings(j *job) [3]setting {
	s, v := b.s, j.Setup
	limit, least := v.Valve.Limit()
	wall, distance, valve := "number-wall", "number-distance", "number-valve"
	if j.Request.RegulatorAt() == calc.Foot {
		wall = "number-foot"
	}
	n := [3]setting{
		atWall:     s.setting(answer.AboutWall, wall, unit.Pressure, float64(v.Wall.Flowing)),
		atValve:    b.valveSetting(valve, &v.Valve),
		atDistance: s.setting(answer.AboutDistance, distance, unit.Distance, float64(v.Distance.Target)),
	}
	s.bands(&n, j)
	n[atWall].notes = []string{s.say("number-flowing"), s.text("number-static", calc.BriefFigure("static", calc.FigureGauge, v.Wall.Static))}
	near := unit.Distance.Number(s.sys, float64(v.Distance.Low), unit.Usual)
	n[atDistance].notes = []string{s.text(map[calc.Held]string{calc.HeldNearest: "number-nearest", calc.HeldFarthest: "number-farthest", calc.NotHeld: "number-keep", calc.HeldBySheet: "number-keep"}[v.Distance.Held], calc.TextFigure("low", near), calc.FigureOf("from", calc.FigureDistance, v.Distance.Low), calc.FigureOf("high", calc.FigureDistance, v.Distance.High)), s.say("number-from")}
	n[atValve].notes = []string{
		s.text("number-opening", calc.FigureOf("opening", calc.FigureShare, v.Valve.Opening)),
		s.text("number-reserve", calc.FigureOf("reserve", calc.FigureDrop, v.Valve.Reserve)),
		s.text(limit.Text, least),
	}
	if v.Foot.Is {
		foot := "number-foot-set"
		if j.FootLabel() != answer.LabelFoot {
			foot = "number-second-set"
		}
		n[atWall].notes = append([]string{s.text(foot, calc.FigureOf("foot", calc.FigureGauge, v.Foot.Flowing))}, n[atWall].notes...)
		n[atValve].notes = []string{s.say("card-foot-sets")}
	}
	if v.Valve.None {
		n[atValve].notes = []string{s.say("card-no-valve-sets")}
	}
	if v.Short.Is { // what shows is where the supply ends
		n[atWall].notes = []string{s.say("number-no-setting"), s.say("number-flowing")}
		n[atValve].notes = []string{s.say("number-no-setting")}
	}
	if p := j.Spread; p != nil {
		if wall, ok := j.LikelyWall(); ok {
			n[atWall].likelyFrom(s, unit.Pressure.Number(s.sys, float64(wall.Low), unit.Usual), unit.Pressure.Number(s.sys, float64(wall.High), unit.Usual))
		}
		near := j.LikelyDistance()
		low, high := unit.Distance.Number(s.sys, float64(near.Low), unit.Usual), unit.Distance.Number(s.sys, float64(near.High), unit.Usual)
		if low != high { // else it is what the sheet says, or the class holds it, and sure
			n[atDistance].likelyFrom(s, low, high)
		}
		if !v.Foot.Is && !v.Valve.None {
			n[atValve].likelyFrom(s, string(unit.AppendTurns(nil, p.Knob().Low)), s.words.FigureText(s.sys, calc.FigureOf("high", calc.FigureTurns, p.Knob().High)))
		}
	}
	return n
}

// Scales of the bands under the settings. They are the thing's own: the gauge's lower part, the
// valve's turns, a hand's reach.
const (
	bandWall     = unit.Gauge(60 * unit.PascalPerPSI)
	bandDistance = unit.Length(12 * unit.MetrePerInch)
)

// bands is each setting and the range it likely lies in, on its scale.
func (s *session) bands(n *[3]setting, j *job) {
	v := j.Setup
	pressure, distance := s.axis(unit.Pressure), s.axis(unit.Distance)
	wall := &n[atWall].band
	wall.Scale = draw.Scale{High: pressure.at(float64(max(bandWall, v.Wall.Flowing*5/4)))}
	wall.Set = draw.Mark{At: pressure.at(float64(v.Wall.Flowing)), Text: n[atWall].text}
	reach := &n[atDistance].band
	reach.Scale = draw.Scale{High: distance.at(float64(max(bandDistance, v.Distance.High)))}
	reach.Set = draw.Mark{At: distance.at(float64(v.Distance.Target)), Text: n[atDistance].text}
	knob := &n[atValve].band
	if !v.Valve.None {
		knob.Scale = draw.Scale{High: v.Valve.TurnsOf}
		knob.Set = draw.Mark{At: v.Valve.Turns, Text: n[atValve].text}
		if v.Valve.CountsFromShut {
			knob.Set.At = v.Valve.FromShut
		}
	}
	p := j.Spread
	if p == nil {
		return
	}
	if likely, ok := j.LikelyWall(); ok {
		wall.Likely = draw.Span{Low: pressure.at(float64(likely.Low)), High: pressure.at(float64(likely.High)), Text: n[atWall].text}
	}
	near := j.LikelyDistance()
	reach.Likely = draw.Span{Low: distance.at(float64(near.Low)), High: distance.at(float64(near.High)), Text: n[atDistance].text}
	if !v.Foot.Is && !v.Valve.None {
		knob.Likely = draw.Span{Low: p.Knob().Low, High: p.Knob().High, Text: n[atValve].text}
	}
}

// valveSetting is the inlet valve as a hand turns it.
func (b *bench) valveSetting(name string, v *calc.ValveMargin) setting {
	if v.None {
		text := b.s.say("card-no-valve")
		return setting{about: answer.AboutValve, name: b.s.say(name), value: text, label: text, text: text, short: text}
	}
	s, turned, turns := b.s, "number-closed", v.Turns
	if v.CountsFromShut {
		turned, turns = "number-opened", v.FromShut
	}
	n := setting{
		about: answer.AboutValve, name: s.say(name), value: string(unit.AppendTurns(nil, turns)), unit: s.say(turned), label: s.say("number-turns"),
		text: s.words.FigureText(s.sys, v.Knob("valve", v.Opening)), short: s.words.FigureText(s.sys, calc.FigureOf("turns", calc.FigureTurns, turns)),
	}
	switch rounded := unit.NearestTurns(turns); {
	case rounded == 0 && !v.CountsFromShut:
		n.unit, n.label, n.short = n.text, s.say("number-wide"), n.text
	case rounded <= 1:
		n.label = s.say("number-turn")
	}
	return n
}

// changedSettings is the three as they are tried, each with what it was where it was moved.
func (b *bench) changedSettings() [3]setting {
	all, was := b.settings(&b.tried), b.settings(&b.kept)
	for i := range all {
		if n := &all[i]; was[i].value != n.value && !b.kept.Stopped() {
			n.change = was[i].value + " -> " + n.short
			n.by = b.difference(i)
		}
	}
	return all
}

// difference is by how much a setting was moved, empty of the valve, whose turns are no plain
// number.
func (b *bench) difference(i int) string {
	now, was := b.tried.Setup, b.kept.Setup
	switch i {
	case atWall:
		return b.s.signed(unit.Pressure, float64(now.Wall.Flowing), float64(was.Wall.Flowing))
	case atDistance:
		return b.s.signed(unit.Distance, float64(now.Distance.Target), float64(was.Distance.Target))
	}
	return ""
}

// signed is what one value is more than another, as they are shown.
func (s *session) signed(of *unit.Quantity, now, was float64) string {
	more := of.Rounded(s.sys, now, unit.Usual) - of.Rounded(s.sys, was, unit.Usual)
	text := string(of.AppendBrief(nil, s.sys, math.Abs(more), false))
	if more < 0 {
		return ", -" + text
	}
	return ", +" + text
}

// compact is the three in a row, with their units alone where that is too wide.
func (b *bench) compact(w int) []string {
	var full, values, short, now []string
	for _, n := range b.changedSettings() {
		text, least := n.text, n.short
		if n.change != "" {
			text, least = n.change, n.change
		}
		full, values = append(full, n.name+" "+text), append(values, text)
		short, now = append(short, least), append(now, n.short)
	}
	row := strings.Join(full, "   ")
	for _, less := range []string{strings.Join(values, "  "), strings.Join(short, " "), strings.Join(now, "  ")} {
		if ansi.StringWidth(row) > w {
			row = less
		}
	}
	return []string{b.s.theme.Number.Render(fit(row, w))}
}

// below is what stands under the digits, the most wanted first.
func (n *setting) below() []string {
	return slices.DeleteFunc(append([]string{n.change, n.likely}, n.notes...), func(t string) bool { return t == "" })
}
