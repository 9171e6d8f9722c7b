package command

import (
	"time"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/catalogue"
)

// appendDay appends what is known of it into an open object.
func appendDay(j *jsonWriter, d *answer.Day, sys unit.System) {
	r, a := d.Request, d.Found
	j.object("input", func() {
		j.text("coat", r.Coat.ID)
		appendHardener(j, r.Coat.Hardener)
		j.text("gun", r.Gun.ID)
		j.temp("temp", r.Air)
		j.number("humidity", r.Humidity)
		j.temp("panel", r.Panel)
		j.temp("paint", r.Paint)
		j.run("altitude", r.Altitude)
		j.count("panels", r.Panels)
		j.text("units", catalogue.SystemName(sys))
	})
	appendRemedy(j, &a.Remedy)
	j.temp("dew_point", a.DewPoint)
	j.temp("wet_bulb", a.WetBulb)
	j.degrees("panel_margin", a.PanelMargin)
	j.number("drying", a.Drying)
	if a.InFlight.Known {
		j.number("landing", a.InFlight.Drier)
	} else {
		j.null("landing")
	}
	j.object("flash_off", func() {
		j.number("factor", a.Flash)
		j.bool("or_more", a.Flash >= coat.LongestFlash)
	})
	j.text("grade", string(a.Grade))
	appendPotLife(j, d)
}

// appendRemedy appends the figures of what turns the day, null on a day that goes.
func appendRemedy(j *jsonWriter, t *calc.DayRemedy) {
	if t.ID == "" {
		j.null("remedy")
		return
	}
	j.object("remedy", func() {
		j.text("id", t.ID)
		j.temp("to", t.To)
		j.degrees("by", t.By)
		if t.Least > 0 {
			j.temp("least", t.Least)
		}
		j.number("humidity", t.Humidity)
		j.number("drying", t.Drying)
		if t.Lift > 0 {
			j.number("lift", t.Lift)
		}
	})
}

// appendPotLife appends the pot life, null where none was given or can be told.
func appendPotLife(j *jsonWriter, d *answer.Day) {
	p := &d.Found.PotLife
	if !p.Known {
		j.null("pot_life")
		return
	}
	j.object("pot_life", func() {
		j.number("sheet_s", d.Request.PotLife.Seconds())
		j.temp("at", p.At)
		j.number("life_s", p.Life.Seconds())
		j.number("safe_s", p.Safe.Seconds())
		j.number("last_fill_s", p.LastFill.Seconds())
		if d.Request.HasStarted {
			appendClock(j, "started", d.Request.Started)
			appendClock(j, "fill_by", p.FillBy)
			appendClock(j, "ends", p.Ends)
		}
	})
}

// appendClock appends a time of day, with how many days on it is.
func appendClock(j *jsonWriter, name string, c calc.Clock) {
	const day = 24 * time.Hour
	at := time.Duration(c).Round(time.Minute)
	j.object(name, func() {
		j.text("clock", time.Time{}.Add(at).Format("15:04"))
		j.count("days_on", int(at/day))
	})
}
