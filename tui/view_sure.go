package tui

import (
	"boothset/calc/unit"
	"boothset/tui/draw"
)

// sureView is how far each number may be off, what causes it, and what to measure.
func (b *bench) sureView(room size) [][]string {
	told := b.sureTold(room.w)
	if b.tried.spread == nil {
		return leaves([][]string{told}, room)
	}
	ranges := b.ranges()
	if rows := ranges.Rows(room.w, room.h-len(told)-1, b.s.glyphs, b.s.ink); rows != nil {
		return [][]string{append(append(rows, ""), told...)}
	}
	if rows := ranges.Rows(room.w, room.h-1, b.s.glyphs, b.s.ink); rows != nil {
		return leaves([][]string{rows, told}, room)
	}
	return leaves([][]string{told}, room)
}

func (b *bench) sureTold(w int) (rows []string) {
	if b.tried.spread == nil {
		return wrap(b.s.say("sure-short"), w)
	}
	for _, text := range b.s.words.Spread(b.s.sys, b.tried.spread) {
		rows = append(rows, hang("- ", text, w)...)
	}
	return rows
}

// leastCause is the share of the wall's spread from which a cause is told by itself.
const leastCause = 0.005

// causesInWords is each cause with its share.
func (b *bench) causesInWords(w int) (rows []string) {
	if b.tried.spread == nil {
		return nil
	}
	rows = append(rows, b.s.say("sure-causes")+":")
	for _, c := range b.ranges().Causes {
		rows = append(rows, hang("- ", c.Name+" "+unit.PercentText(c.Share, 0), w)...)
	}
	return rows
}

func (b *bench) ranges() draw.Ranges {
	s, sys, p, v := b.s, b.s.sys, b.tried.spread, b.tried.setup
	three := b.three(&b.tried)
	// scale is an axis with room beyond both ends.
	scale := func(low, high float64, text func(float64) string) draw.Scale {
		room := (high - low) / 2
		return draw.NewScale(max(low-room, 0), high+room, 5, text)
	}
	bareText := func(text func(float64) string) func(float64) string {
		return func(v float64) string { return bare(text(v)) }
	}
	percent := func(v float64) string { return unit.PercentText(v/100, 0) }
	share := func(v float64) string { return unit.PercentText(v, 0) }
	wall, distance, opening := p.Wall, p.Distance, p.Opening
	r := draw.Ranges{Title: s.say("sure-causes"), Others: s.say("fall-others"), Text: share}
	r.Answers = []draw.Answer{
		{Name: s.say("short-set"), Low: s.pressure(wall.Low), High: s.pressure(wall.High), At: s.pressure(v.Wall.Flowing),
			LowText: bare(sys.Gauge(wall.Low, unit.Usual)), HighText: bare(sys.Gauge(wall.High, unit.Usual)), Text: three[0].printed()},
		{Name: s.say("short-distance"), Low: s.distance(distance.Low), High: s.distance(distance.High), At: s.distance(v.Distance.Target),
			LowText: bare(sys.Small(distance.Low, unit.Usual)), HighText: bare(sys.Small(distance.High, unit.Usual)), Text: three[1].printed()},
		{Name: s.say("short-valve"), Low: 100 * opening.Low, High: 100 * opening.High, At: 100 * v.Valve.Opening,
			LowText: percent(100 * opening.Low), HighText: percent(100 * opening.High), Text: percent(100 * v.Valve.Opening)},
	}
	for i, text := range []func(float64) string{bareText(s.pressureText), bareText(s.distanceText), percent} {
		a := &r.Answers[i]
		a.Scale = scale(min(a.Low, a.At), max(a.High, a.At), text)
	}
	r.Answers[2].Scale = draw.NewScale(r.Answers[2].Scale.Low, 100, 5, percent)
	for _, c := range p.Causes {
		if c.Wall >= leastCause {
			r.Causes = append(r.Causes, draw.Cause{Name: s.say("cause-" + c.ID), Share: c.Wall})
		}
	}
	return r
}
