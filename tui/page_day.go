package tui

import (
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/tui/draw"
)

// The clock of a job.
const (
	clockMarks = 7
	// clockTimes is how many times the waits between its coats it shows at most: a pot life
	// of a day would leave nothing of them to see.
	clockTimes = 8
)

// dayPicture is the day among all days, and under it the times of the coat, if they have room.
func (s *session) dayPicture(d *answer.Day, room size) []string {
	clock := s.dayClock(d)
	weather := s.climate(d.Request)
	high := 3 * (len(clock.Lanes) + 1) // a lane and its text, the axis and its numbers
	if rows := weather.Rows(room.w, room.h-high-1, s.glyphs, s.ink); rows != nil {
		if times := clock.Rows(room.w, high, s.glyphs, s.ink); times != nil {
			return append(append(rows, ""), times...)
		}
	}
	return weather.Rows(room.w, room.h, s.glyphs, s.ink)
}

// dayTimes is what is known of how long the coat takes, zero where it is not: the flash-off
// after each coat with how many there are between the coats, when it is recoated at the
// latest, how long the mix lasts and when the last cup is filled.
type dayTimes struct {
	flash, recoat, life, fill time.Duration
	flashes                   int
}

// dayTimes are none of a day that stops the job.
func (s *session) dayTimes(d *answer.Day) (t dayTimes) {
	if d.Stopped() {
		return t
	}
	flash, recoat := d.Found.Waits(d.Request)
	t.flash, t.recoat = flash.Usual, recoat.Usual
	t.flashes = max(d.Request.Coats-1, 1)
	if pot := &d.Found.PotLife; pot.Known {
		t.life, t.fill = pot.Life, pot.LastFill
	}
	return t
}

// dayClock is the coat's times on one axis of minutes, without lanes where none is known.
func (s *session) dayClock(d *answer.Day) (c draw.Clock) {
	t := s.dayTimes(d)
	text := func(id string, of time.Duration) string {
		return s.text(id, calc.FigureOf("time", calc.FigureMinutes, of.Seconds()))
	}
	if t.flash > 0 {
		lane := draw.Lane{Name: s.say("clock-coats")}
		for i := range t.flashes {
			stage := draw.Stage{From: (time.Duration(i) * t.flash).Minutes(), To: (time.Duration(i+1) * t.flash).Minutes(), Look: draw.Thin, Role: draw.RoleWait}
			if i == 0 {
				stage.Text = text("clock-flash", t.flash)
			}
			lane.Stages = append(lane.Stages, stage)
		}
		c.Lanes = append(c.Lanes, lane)
	}
	if t.recoat > 0 {
		stage := draw.Stage{From: min(t.flash, t.recoat).Minutes(), To: t.recoat.Minutes(), Text: text("clock-recoat", t.recoat), Look: draw.Open, Role: draw.RoleKeep}
		c.Lanes = append(c.Lanes, draw.Lane{Name: s.say("clock-window"), Stages: []draw.Stage{stage}})
	}
	if t.life > 0 {
		c.Lanes = append(c.Lanes, draw.Lane{Name: s.say("clock-pot"), Stages: []draw.Stage{
			{To: t.fill.Minutes(), Text: text("clock-fill", t.fill), Look: draw.Solid, Role: draw.RoleKept},
			{From: t.fill.Minutes(), To: t.life.Minutes(), Text: text("clock-life", t.life), Look: draw.Open, Role: draw.RoleLimit},
		}})
	}
	coats := time.Duration(t.flashes) * t.flash
	last := max(coats, t.recoat, t.life)
	if coats > 0 {
		last = min(last, clockTimes*coats)
	}
	count := s.axis(unit.Minutes)
	c.Scale = draw.NewScale(0, last.Minutes(), clockMarks, count.number)
	c.Unit = unit.Minutes.Unit(s.sys)
	return c
}

// dayWords is the chart and the clock in sentences.
func (s *session) dayWords(d *answer.Day) []string {
	all := []string{s.dayLimits(d.Request)}
	t := s.dayTimes(d)
	minutes := func(name string, of time.Duration) calc.Figure {
		return calc.FigureOf(name, calc.FigureMinutes, of.Seconds())
	}
	if t.flash > 0 {
		all = append(all, s.text("clock-says-flash", minutes("flash", t.flash), calc.CountFigure("flashes", t.flashes)))
	}
	if t.recoat > 0 {
		all = append(all, s.text("clock-says-recoat", minutes("recoat", t.recoat)))
	}
	if t.life > 0 {
		all = append(all, s.text("clock-says-pot", minutes("life", t.life), minutes("fill", t.fill)))
	}
	return all
}
