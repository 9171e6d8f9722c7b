package calc

import "boothset/calc/unit"

// Margins at which the answer speaks up.
const (
	tightPanelMargin = unit.TempDiff(5) // above LeastPanelMargin, worth watching
	capWatch         = 0.95             // share of the cap's limit from which it is near
	// coldBench is the air below which material is thick and slow to cure: paint makers
	// print that hardening can stop below 60 F (15.6 C). A little less, so that 60 F typed
	// is not below it.
	coldBench = unit.Temp((60-32)/1.8 + unit.ZeroCelsius - 1e-6)
)

// warn gathers the cautions: what stops the job first, then what to act on, then
// what always holds.
func (s *Setup) warn(r *Request) {
	all := new(cautions)
	m := s.Weather.PanelMargin
	if m < LeastPanelMargin {
		id := "panel-near-dew"
		if m <= 0 {
			id = "panel-wet"
		}
		all.add(Stop, id, degrees("margin", m), temp("panel", r.Day.Panel), temp("dew", s.Weather.DewPoint), degrees("least", LeastPanelMargin), degrees("warmer", LeastPanelMargin-m))
	}
	if s.Short.Is && r.Supply <= s.Working.Pressure {
		all.add(Stop, "supply-below-target", gauge("supply", r.Supply), gauge("working", s.Working.Pressure), gauge("best", s.Short.Best))
	} else if s.Short.Is {
		all.add(Stop, "supply-short", gauge("supply", r.Supply), gauge("best", s.Short.Best), gauge("working", s.Working.Pressure), TextFigure("part", s.Line[s.Bottleneck].Name))
	}
	s.warnSupply(r, all)
	watchPanel(m, all)
	if limit := r.Gun.CapLimit; limit > 0 && float64(s.Working.Cap) > capWatch*float64(limit) {
		all.add(Warn, "cap-near-limit", gauge("cap", s.Working.Cap), gauge("limit", limit))
	}
	if !s.Short.Is && r.RegulatorAt() == Nowhere {
		all.add(Warn, "no-regulator", gauge("supply", r.Supply), gauge("open", s.Wall.Open))
	}
	if s.Valve.Choked {
		all.add(Warn, "valve-choked", s.Valve.Knob("valve", s.Valve.Opening), share("opening", s.Valve.Opening))
	} else if !s.Short.Is && r.RegulatorAt() != Nowhere && s.Valve.Opening < s.Valve.Floor {
		_, least := s.Valve.Limit()
		all.add(Warn, "valve-low", RegulatorFigure(r.RegulatorAt()), s.Valve.Knob("valve", s.Valve.Opening), share("opening", s.Valve.Opening), least, share("floor", s.Valve.Floor))
	}
	if s.overStamp() {
		all.add(Stop, "gun-over-stamp", gauge("gun", s.Working.Pressure), gauge("highest", s.Working.Highest), gauge("supply", r.Supply))
	}
	if reserve := s.Reserve(); !s.Short.Is && !(s.Valve.None && !s.Foot.Is) && reserve < LeastReserve-1 {
		all.add(Warn, "little-reserve", drop("reserve", reserve), gauge("supply", r.Supply))
	}
	s.warnGauge(r, all)
	if r.HasNow && r.Now > r.Supply {
		all.add(Warn, "now-above-supply", RegulatorFigure(r.RegulatorAt()), gauge("wall", r.Now), gauge("supply", r.Supply))
	}
	if s.Now.Given && s.Now.GunIfOpen > s.Working.Highest {
		id := "now-over-stamp"
		if s.Valve.None {
			id = "now-over-stamp-no-valve"
		}
		all.add(Warn, id, RegulatorFigure(r.RegulatorAt()), gauge("wall", r.Now), gauge("gun", s.Now.GunIfOpen), gauge("highest", s.Working.Highest))
	}
	if r.Day.Air < coldBench {
		all.add(Warn, "cold", temp("air", r.Day.Air), temp("least", coldBench))
	}
	if r.Gun.CapLimit <= 0 {
		all.add(Note, "local-gun-rules", TextFigure("gun", r.Gun.Name))
	}
	r.Coat.Hardener.protectBooth(r.Coat.Name, len(r.Shop.System.Others) > 0, all)
	s.Cautions = all.list
}

// watchPanel warns of a panel that is not far above the dew point.
func watchPanel(m unit.TempDiff, to *cautions) {
	if m >= LeastPanelMargin && m < tightPanelMargin {
		to.add(Warn, "panel-tight", degrees("margin", m), degrees("least", LeastPanelMargin))
	}
}

// Stopped reports whether the job cannot be done as asked.
func (s *Setup) Stopped() bool { return stopped(s.Cautions) }
