package calc

// capWatch is the share of the cap's limit from which the cap is near it.
const capWatch = 0.95

// warn gathers the cautions: what to act on, then what always holds.
func (s *Setup) warn(r *Request) {
	all := new(cautions)
	for _, a := range r.Assumed {
		all.add(Warn, "assumed", SentenceFigure("what", a.Name), TextFigure("value", a.Value), SentenceFigure("measure", a.Measure))
	}
	s.warnSupply(all)
	if !s.Stopped() {
		s.warnSettings(r, all)
	}
	if r.Gun.CapLimit <= 0 {
		all.add(Note, "local-gun-rules", TextFigure("gun", r.Gun.Name))
	}
	r.Coat.Hardener.protectBooth(r.Coat.Name, len(r.Shop.System.Others) > 0, all)
	s.Cautions = all.list
}

// warnSettings speaks up where what is to be set is near a limit.
func (s *Setup) warnSettings(r *Request, to *cautions) {
	if limit := r.Gun.CapLimit; limit > 0 && float64(s.Working.Cap) > capWatch*float64(limit) {
		to.add(Warn, "cap-near-limit", gauge("cap", s.Working.Cap), gauge("limit", limit))
	}
	if s.Valve.Choked {
		to.add(Warn, "valve-choked", s.Valve.Knob("valve", s.Valve.Opening), share("opening", s.Valve.Opening))
	} else if !s.Short.Is && r.RegulatorAt() != Nowhere && s.Valve.Opening < s.Valve.Floor {
		_, least := s.Valve.Limit()
		to.add(Warn, "valve-low", RegulatorFigure(r.RegulatorAt()), s.Valve.Knob("valve", s.Valve.Opening), share("opening", s.Valve.Opening), least, share("floor", s.Valve.Floor))
	}
	if reserve := s.Reserve(); !s.Short.Is && !s.Wall.Held && !(s.Valve.None && !s.Foot.Is) && reserve < LeastReserve-1 {
		to.add(Warn, "little-reserve", drop("reserve", reserve), gauge("supply", r.Supply))
	}
	if !s.Short.Is && !s.Foot.Is && r.RegulatorAt() != Nowhere && s.Wall.Flowing > s.Wall.Limit+1 {
		to.add(Warn, "wall-over-stamp", gauge("flowing", s.Wall.Flowing), gauge("limit", s.Wall.Limit), gauge("highest", s.Working.Highest))
	}
	s.warnGauge(r, to)
	if r.HasNow && r.Now > r.Supply {
		to.add(Warn, "now-above-supply", RegulatorFigure(r.RegulatorAt()), gauge("wall", r.Now), gauge("supply", r.Supply))
	}
	if s.Now.Given && s.Now.GunIfOpen > s.Working.Highest {
		id := "now-over-stamp"
		if s.Valve.None {
			id = "now-over-stamp-no-valve"
		}
		to.add(Warn, id, RegulatorFigure(r.RegulatorAt()), gauge("wall", r.Now), gauge("gun", s.Now.GunIfOpen), gauge("highest", s.Working.Highest))
	}
}
