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
	ranges := b.bands()
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
	for _, c := range b.bands().Shares {
		rows = append(rows, hang("- ", c.Name+" "+unit.PercentText(c.Share, 0), w)...)
	}
	return rows
}

func (b *bench) bands() draw.Bands {
	s, p, v := b.s, b.tried.Spread, b.tried.Setup
	r := draw.Bands{
		Title: s.say("sure-causes"), Others: s.say("fall-others"),
		Figure: func(v float64) string { return unit.PercentText(v, 0) },
	}
	settings := b.settings(&b.tried)
	pressure, distance, share := s.axis(unit.Pressure), s.axis(unit.Distance), s.axis(unit.Share)
	if wall, ok := b.tried.LikelyWall(); ok {
		r.Bands = append(r.Bands, pressure.band(s.say("short-set"), settings[atWall].text, float64(wall.Low), float64(wall.High), float64(v.Wall.Flowing)))
	}
	if !v.Foot.Is && !v.Valve.None { // else the valve stands open, or there is none
		opening := share.band(s.say("short-valve"), share.Text(s.sys, v.Valve.Opening, unit.Usual), p.Opening.Low, p.Opening.High, v.Valve.Opening)
		opening.Scale = draw.NewScale(opening.Scale.Low, share.at(1), rangeTicks, share.number)
		r.Bands = append(r.Bands, opening)
	}
	if settings[atDistance].likely != "" {
		near := b.tried.LikelyDistance()
		r.Bands = append(r.Bands, distance.band(s.say("short-distance"), settings[atDistance].text, float64(near.Low), float64(near.High), float64(v.Distance.Target)))
	}
	for _, c := range p.Causes {
		if c.Wall >= leastCause {
			r.Shares = append(r.Shares, draw.Share{Name: s.say("cause-" + c.ID), Share: c.Wall})
		}
	}
	return r
}

// rangeTicks is the most ticks on the scale of a range.
const rangeTicks = 5

// band is a value with its range as the picture has it, on a scale with room beyond both ends.
func (a axis) band(name, text string, low, high, value float64) draw.Band {
	x := draw.Band{Name: name, Text: text, Low: a.at(low), High: a.at(high), At: a.at(value)}
	x.LowText, x.HighText = a.number(x.Low), a.number(x.High)
	from, to := min(x.Low, x.At), max(x.High, x.At)
	room := (to - from) / 2
	x.Scale = draw.NewScale(max(from-room, 0), to+room, rangeTicks, a.number)
	return x
}
