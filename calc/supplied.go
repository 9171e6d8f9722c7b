package calc

import (
	"errors"
	"math"
	"time"

	"boothset/calc/line"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

// Shop is the air upstream of the regulator: compressor, receiver, main and who else draws
// on it. System's inlets and ambient are filled in from the day.
type Shop struct {
	Known        bool // false: the supply is not checked
	System       supply.System
	Spraying     time.Duration // without a pause, the panel's time
	Panels       int           // sprayed one after another, 1 to supply.MostPanels
	Pause        time.Duration // between two of them
	Power        float64       // hp, where the compressor was given by its motor; 0 where not
	ReceiverTemp unit.Temp     // of the air as it leaves the receiver
	LineTemp     unit.Temp     // of the main where it is coldest
}

// Supplied is whether the shop's air holds the wall for the panel, and its water.
type Supplied struct {
	Checked bool
	Needed  unit.Gauge // at the regulator's inlet, for the wall as set
	Verdict supply.Verdict
	Series  supply.Series // of the panels
	Water   supply.Water
}

// checkSupply follows the air from the compressor to the wall.
func (s *Setup) checkSupply(r *Request, j *job) error {
	if !r.Shop.Known || s.Short.Is {
		return nil
	}
	p, _ := line.Upstream(r.Line[:j.wall+1], j.flow, j.atWall.set, j.air)
	needed := p.Gauge(j.air.Ambient)
	sys := r.Shop.System
	sys.Inlet = supply.Inlet{Ambient: j.air.Ambient, Temp: r.Day.Air}
	sys.Receiver.Temp = r.Shop.ReceiverTemp
	v, err := supply.Check(sys, j.flow, needed, r.Shop.Spraying)
	if err != nil {
		return problemOf(err)
	}
	series, err := supply.InSeries(sys, j.flow, needed, r.Shop.Spraying, r.Shop.Pause, r.Shop.Panels)
	if err != nil {
		return problemOf(err)
	}
	water, err := supply.Damp{
		Inlet: sys.Inlet, Humidity: r.Day.Humidity,
		Receiver: sys.CutIn, ReceiverTemp: r.Shop.ReceiverTemp, Main: r.Shop.LineTemp,
		Spraying: min(j.atWall.set.Gauge(j.air.Ambient), sys.CutIn), Hose: j.air.Temp, Flow: j.flow,
		Dryer: j.dryer(sys.CutIn),
	}.Follow()
	if err != nil {
		return problemOf(err)
	}
	s.Supplied = Supplied{Checked: true, Needed: needed, Verdict: v, Series: series, Water: water}
	return nil
}

// dryer is the driest of the line's dryers: before the wall's regulator at the pressure of
// the receiver at cut-in, else at the wall's.
func (j *job) dryer(cutIn unit.Gauge) (d supply.Dryer) {
	hoses := 0
	for i := range j.r.Line {
		p := &j.r.Line[i]
		if p.Kind == line.HoseKind {
			hoses++
		}
		if p.Kind != line.DryerKind || d.Is && p.DewPoint >= d.DewPoint {
			continue
		}
		d = supply.Dryer{Is: true, DewPoint: p.DewPoint, At: cutIn, PastHose: hoses > 0}
		if i > j.wall {
			d.At = min(j.atWall.set.Gauge(j.air.Ambient), cutIn)
		}
	}
	return d
}

// problemOf names the answer that a fault of the supply lies in.
func problemOf(err error) error {
	var in *supply.InputError
	if !errors.As(err, &in) {
		return err
	}
	field, ok := map[string]string{
		supply.FieldReceiver: "receiver", supply.FieldReceiverTemp: "receiver-temp", supply.FieldReceiverPressure: "cut-in",
		supply.FieldCutIn: "cut-in", supply.FieldCutOut: "cut-out", supply.FieldMainLength: "main", supply.FieldMainBore: "main", supply.FieldMainTemp: "line-temp",
		supply.FieldFreeAir: "compressor", supply.FieldUserAir: "other", supply.FieldUserDuty: "other", supply.FieldAllAir: "other",
		supply.FieldSprayingTime: "spray-time", supply.FieldPause: "pause", supply.FieldPanels: "panels", supply.FieldHoseTemp: "hose-temp",
	}[in.Field]
	if !ok {
		field = "supply"
	}
	return problemAt(field, err)
}

// explainSupply gives the verdict on the shop's air.
func (s *Setup) explainSupply(r *Request, why *reasons) {
	c := &s.Supplied
	if !c.Checked && r.Shop.Known {
		why.add("supply", "supply-short-first", lineGround)
		return
	}
	if !c.Checked {
		why.add("supply", "supply-unchecked", Ground{Basis: CommonPractice}, gauge("supply", r.Supply))
		return
	}
	v := &c.Verdict
	ground := Ground{Basis: Computed, Source: "source-receiver"}
	f := Figures{
		gauge("needed", c.Needed), flow("gun", s.Working.Flow), flow("demand", v.Demand.Mean), flow("delivered", v.Delivered),
		minutes("spraying", r.Shop.Spraying), minutes("hold", v.Hold.Time), minutes("full", v.FromFull.Time),
		gauge("lowest", v.Lowest), gauge("start", v.Start), drop("main", v.MainDrop),
		flow("margin", unit.Flow(math.Abs(float64(v.Margin)))), flow("enoughDelivered", v.EnoughDelivered), volume("enoughReceiver", v.EnoughReceiver),
	}
	why.add("supply", supplyID(v), ground, f...)
	if n := &c.Series; v.OK && r.Shop.Panels > 1 && n.Fall > 0 {
		id := "supply-series-falls"
		if n.Recovers {
			id = "supply-series-recovers"
		}
		why.add("supply", id, ground, drop("fall", n.Fall), drop("regained", max(0, n.Regained)), minutes("pause", r.Shop.Pause), CountFigure("panels", r.Shop.Panels), CountFigure("held", n.Held))
	}
	if hp := r.Shop.Power; hp > 0 {
		low, high, _ := supply.FromPower(hp) // it was read by it
		rule := Ground{Basis: Published, Source: "source-motor"}
		if hp < supply.SmallMotor {
			rule = Ground{Basis: Estimate, Source: "source-small-motor"}
		}
		why.add("supply", "supply-motor", rule, brief(ratio("power", hp)), brief(flow("low", low)), brief(flow("high", high)))
	}
	w := &c.Water
	water := Figures{
		temp("dew", w.AtWall), temp("sprayed", w.Sprayed), TextFigure("class", w.Class.String()),
		litres("receiver", w.InReceiver.LitresAnHour()), litres("main", w.InMain.LitresAnHour()), litres("dryer", w.InDryer.LitresAnHour()), litres("hose", w.InHose.LitresAnHour()),
	}
	id := [...]string{supply.StaysVapour: "water-none", supply.AtReceiver: "water-receiver", supply.AtMain: "water-main", supply.AtDryer: "water-dryer", supply.AtHose: "water-hose"}[w.Last]
	why.add("supply", id, Ground{Basis: Computed, Source: "source-water"}, water...)
}

// supplyID is the sentence for a verdict.
func supplyID(v *supply.Verdict) string {
	switch {
	case v.OK && v.KeepsUp:
		return "supply-keeps-up"
	case v.OK:
		return "supply-holds"
	}
	switch v.Limit {
	case supply.SwitchLimit:
		return "supply-switch"
	case supply.MainLimit:
		return "supply-main"
	case supply.ReceiverLimit:
		return "supply-receiver"
	}
	return "supply-compressor"
}

// warnSupply speaks up where water goes to the gun.
func (s *Setup) warnSupply(to *cautions) {
	c := &s.Supplied
	if c.Checked && c.Water.Last == supply.AtHose {
		to.add(Warn, "water-in-hose", litres("hose", c.Water.InHose.LitresAnHour()), temp("dew", c.Water.AtWall))
	}
}
