package command

import (
	"boothset/calc"
	"boothset/calc/supply"
)

// appendSupply appends the verdict on the shop's air, null where it was not checked.
func appendSupply(j *jsonWriter, r *calc.Request, s *calc.Setup) {
	c := &s.Supplied
	if !c.Checked {
		j.null("supply")
		return
	}
	v, w := &c.Verdict, &c.Water
	j.object("supply", func() {
		j.gauge("needed", c.Needed)
		j.bool("lasts", v.OK)
		j.number("spray_s", r.Shop.Spraying.Seconds())
		appendSpan(j, "hold_s", v.Hold)
		appendSpan(j, "hold_from_full_s", v.FromFull)
		j.gauge("lowest", v.Lowest)
		j.drop("main_drop", v.MainDrop)
		j.flow("demand", v.Demand.Mean)
		j.flow("delivered", v.Delivered)
		j.bool("compressor_keeps_up", v.KeepsUp)
		j.text("limit", [...]string{"none", "compressor", "receiver", "main", "switch"}[v.Limit])
		n := &c.Series
		j.object("series", func() {
			j.count("panels", r.Shop.Panels)
			j.number("pause_s", r.Shop.Pause.Seconds())
			j.drop("fall", n.Fall)
			j.drop("regained", n.Regained)
			j.bool("recovers", n.Recovers)
			j.count("held", n.Held)
			appendSpan(j, "enough_pause_s", n.Enough)
		})
		j.object("water", func() {
			j.temp("dew_point_at_wall", w.AtWall)
			j.temp("dew_point_sprayed", w.Sprayed)
			j.text("class", w.Class.String())
			j.number("receiver_l_h", w.InReceiver.LitresAnHour())
			j.number("main_l_h", w.InMain.LitresAnHour())
			j.number("dryer_l_h", w.InDryer.LitresAnHour())
			j.number("hose_l_h", w.InHose.LitresAnHour())
			j.text("last_in", [...]string{"nowhere", "receiver", "main", "dryer", "hose"}[w.Last])
		})
	})
}

// appendSpan appends a span in seconds, null where it never ends.
func appendSpan(j *jsonWriter, name string, s supply.Span) {
	if s.Endless {
		j.null(name)
		return
	}
	j.number(name, s.Time.Seconds())
}
