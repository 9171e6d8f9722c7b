package command

import (
	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/catalogue"
	"boothset/presets/words"
)

// appendThin appends what is known of it into an open object.
func appendThin(j *jsonWriter, t *answer.Thin, sys unit.System, w *words.Words) {
	r, a := t.Request, t.Found
	s := &r.Sheet.Value
	j.object("input", func() {
		j.text("coat", r.CoatID)
		appendHardener(j, r.Hardener)
		appendReading(j, "reading", r.Reading)
		if r.HasSecond {
			appendReading(j, "second", r.Second)
		} else {
			j.null("second")
		}
		j.object("sheet", func() {
			j.text("cup", s.Cup.ID)
			j.number("low_s", s.Low)
			j.number("aim_s", s.Aim)
			j.number("high_s", s.High)
			j.temp("temp", s.At)
			j.ground(w, r.Sheet.Ground)
		})
		j.object("max_thinner", func() {
			j.number("share", r.MostThinner.Value)
			j.ground(w, r.MostThinner.Ground)
		})
		j.object("warm_limit", func() {
			j.temp("temp", r.Warmest.Value)
			j.ground(w, r.Warmest.Ground)
		})
		j.text("units", catalogue.SystemName(sys))
	})
	j.text("remedy", string(a.Remedy))
	j.text("text", t.Advice(w, sys))
	j.bool("about", a.About)
	j.object("viscosity", func() {
		j.number("mm2_s", a.Nu.Nu.MM2PerS())
		j.number("low_mm2_s", a.Nu.Low.MM2PerS())
		j.number("high_mm2_s", a.Nu.High.MM2PerS())
		j.bool("about", a.Nu.About)
	})
	j.object("corrected", func() {
		j.number("seconds", a.Corrected.Seconds)
		j.number("low_s", a.Corrected.Low)
		j.number("high_s", a.Corrected.High)
		j.number("change_per_c", float64(a.Slope.Typical))
		j.bool("fitted", a.Slope.Fitted)
	})
	j.object("wanted", func() {
		j.number("low_s", a.Wanted.Low.Seconds)
		j.number("aim_s", a.Wanted.Aim.Seconds)
		j.number("high_s", a.Wanted.High.Seconds)
	})
	appendCourse(j, &a.Course)
	if a.Instead.Add > 0 {
		j.object("instead", func() { appendCourse(j, &a.Instead) })
	} else {
		j.null("instead")
	}
	appendVOC(j, &r.VOC, a.VOC, w)
}

// appendCourse appends what is done to a mix, and what each step brings it to.
func appendCourse(j *jsonWriter, c *calc.Course) {
	j.temp("warm_to", c.To)
	appendRead(j, "warmed", c.Warmed)
	j.number("add", c.Add)
	appendRead(j, "reached", c.Reached)
}

func appendRead(j *jsonWriter, name string, x calc.Read) {
	j.object(name, func() {
		j.number("seconds", x.Seconds)
		j.number("mm2_s", x.Nu.MM2PerS())
	})
}

func appendReading(j *jsonWriter, name string, r calc.Reading) {
	j.object(name, func() {
		j.text("cup", r.Cup.ID)
		j.number("seconds", r.Seconds)
		j.temp("temp", r.At)
	})
}
