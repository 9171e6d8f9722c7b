package calc

import "boothset/calc/unit"

// reads is what the gun's gauge shows with so much behind the inlet valve and before it; 0
// where there is none.
func (r *Request) reads(working, into unit.Gauge) unit.Gauge {
	switch r.Gauge {
	case InHandle:
		return working + r.GunReads()
	case AtFoot:
		return into + r.GunReads()
	}
	return 0
}

// WithoutGauge is how a gun that has no gauge is set all the same: the id of its sentence,
// and the pressure to set, trigger pulled, at which its open valve gives it the target.
func (s *Setup) WithoutGauge(r *Request) (id string, open Figure) {
	open = gauge("open", s.Wall.Open)
	switch {
	case s.Valve.None:
		return "without-gauge-no-valve", open
	case s.Short.Is || s.Foot.Is:
		return "without-gauge-open", open
	case r.RegulatorAt() == Nowhere:
		return "without-gauge-turns", open
	}
	return "without-gauge", open
}

// OverStamp is whether a gauge before the inlet valve shows more than is stamped for the
// gun's inlet.
func (s *Setup) OverStamp(r *Request) bool {
	return r.Gauge == AtFoot && !s.Valve.None && s.Working.Reads > r.Gun.Stamp.Inlet
}

// explainGauge says what the gun's gauge has to say of the valve, or what does without one.
func (s *Setup) explainGauge(r *Request, why *reasons) {
	switch {
	case r.Gauge == AtFoot && !s.Valve.None:
		why.add("valve", "gauge-foot", Ground{Basis: Computed}, gauge("reads", s.Working.Reads), gauge("working", s.gets()))
	case r.Gauge == NoGauge:
		way, open := s.WithoutGauge(r)
		why.add("valve", "gauge-none", Ground{Basis: CommonPractice}, SentenceFigure("way", way), open, near("target", s.Distance.Target))
	}
}

// gets is what the gun gets: its target, or as much of it as a short supply gives.
func (s *Setup) gets() unit.Gauge {
	if s.Short.Is {
		return s.Short.Best
	}
	return s.Working.Pressure
}

// warnGauge speaks of a gauge before the inlet valve that shows more than the gun is stamped
// for. The gun is past its stamp only where its valve, opened, would put it there.
func (s *Setup) warnGauge(r *Request, to *cautions) {
	if !s.OverStamp(r) {
		return
	}
	level, id := Note, "gauge-over-inlet"
	if !s.Foot.Is && s.Wall.Flowing > s.Wall.Limit {
		level, id = Warn, "gauge-over-stamp"
	}
	to.add(level, id, gauge("reads", s.Working.Reads), gauge("stamp", r.Gun.Stamp.Inlet), gauge("working", s.gets()))
}
