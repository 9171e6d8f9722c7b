package tui

import (
	"boothset/calc/unit"
	"boothset/tui/draw"
)

// sureView is how far each number may be off, what causes it, and what to measure.
func (b *bench) sureView(room size) [][]string {
	sentences := b.sureSentences(room.w)
	if b.tried.Spread == nil {
		return shareOut([][]string{sentences}, room)
	}
	ranges := b.ranges()
	if rows := ranges.Rows(room.w, room.h-len(sentences)-1, b.s.glyphs, b.s.ink); rows != nil {
		return [][]string{append(append(rows, ""), sentences...)}
	}
	if rows := ranges.Rows(room.w, room.h-1, b.s.glyphs, b.s.ink); rows != nil {
		return shareOut([][]string{rows, sentences}, room)
	}
	return shareOut([][]string{sentences}, room)
}

// sureInWords is the view without its picture.
func (b *bench) sureInWords(w int) [][]string {
	return [][]string{b.sureSentences(w), b.causesInWords(w)}
}

// sureSentences is what may be off how far, and what to measure.
func (b *bench) sureSentences(w int) (rows []string) {
	switch {
	case b.tried.Stopped():
		return b.unset(w)
	case b.tried.Spread == nil:
		return wrap(b.s.say("sure-short"), w)
	}
	for _, r := range b.tried.SureRows(b.s.words, b.s.sys) {
		rows = append(rows, hang("- ", r.Text, w)...)
	}
	return rows
}

// leastCause is the share of the wall's spread from which a cause is named by itself.
const leastCause = 0.005

// causesInWords is each cause with its share.
func (b *bench) causesInWords(w int) (rows []string) {
	if b.tried.Spread == nil {
		return nil
	}
	rows = append(rows, b.s.say("sure-causes")+":")
	for _, c := range b.ranges().Causes {
		rows = append(rows, hang("- ", c.Name+" "+unit.PercentText(c.Share, 0), w)...)
	}
	return rows
}

func (b *bench) ranges() draw.Ranges {
	s, p, v := b.s, b.tried.Spread, b.tried.Setup
	share := s.axis(unit.Share)
	r := draw.Ranges{
		Title: s.say("sure-causes"), Others: s.say("fall-others"),
		Text: func(v float64) string { return unit.PercentText(v, 0) },
	}
	settings := b.settings(&b.tried)
	pressure, distance := s.axis(unit.Pressure), s.axis(unit.Distance)
	if wall, ok := b.tried.LikelyWall(); ok {
		r.Answers = append(r.Answers, pressure.answer(s.say("short-set"), settings[atWall].text, pressure.number, float64(wall.Low), float64(wall.High), float64(v.Wall.Flowing)))
	}
	r.Answers = append(r.Answers, distance.answer(s.say("short-distance"), settings[atDistance].text, distance.number, float64(p.Distance.Low), float64(p.Distance.High), float64(v.Distance.Target)))
	if !v.Foot.Is && !v.Valve.None { // else the valve stands open, or there is none
		opening := share.answer(s.say("short-valve"), share.Text(s.sys, v.Valve.Opening, unit.Usual), share.text, p.Opening.Low, p.Opening.High, v.Valve.Opening)
		opening.Scale = draw.NewScale(opening.Scale.Low, share.at(1), rangeTicks, share.text)
		r.Answers = append(r.Answers, opening)
	}
	for _, c := range p.Causes {
		if c.Wall >= leastCause {
			r.Causes = append(r.Causes, draw.Cause{Name: s.say("cause-" + c.ID), Share: c.Wall})
		}
	}
	return r
}

// rangeTicks is the most ticks on the scale of a range.
const rangeTicks = 5

// answer is a value with its range as the picture has it, on an axis with room beyond both
// ends; print is how its places are written.
func (a axis) answer(name, text string, print func(float64) string, low, high, value float64) draw.Answer {
	x := draw.Answer{Name: name, Text: text, Low: a.at(low), High: a.at(high), At: a.at(value)}
	x.LowText, x.HighText = print(x.Low), print(x.High)
	from, to := min(x.Low, x.At), max(x.High, x.At)
	room := (to - from) / 2
	x.Scale = draw.NewScale(max(from-room, 0), to+room, rangeTicks, print)
	return x
}
