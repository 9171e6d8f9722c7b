package main

// The entries of the catalogue as it stood before the change; what is not there may be none.
var (
	coats      = []string{"epoxy-primer", "surfacer", "sealer", "solvent-base", "metallic-base", "waterborne-base", "single-stage", "clear"}
	guns       = []string{"high-volume-low-pressure", "reduced-pressure", "high-pressure"}
	couplings  = []string{"large-bore", "ordinary", "slim", "none"}
	filters    = []string{"point-of-use", "clogged", "none"}
	regulators = []string{"1/4in", "3/8in", "1/2in", "none"}
	places     = []string{"wall", "gun"}
	gauges     = []string{"handle", "foot", "none"}
)

// plan makes a request for a plan: what a shop leaves out is its usual line.
func (m *maker) plan() {
	m.give("coat", pick(m, coats...))
	m.give("gun", pick(m, guns...))
	m.weather()
	m.give("supply", m.draw("supply"))
	m.maybe(0.25, "altitude")
	m.airLine()
	m.maybe(0.3, "wall")
	m.maybe(0.15, "mark")
	if m.chance(0.35) {
		m.shop()
	}
}

// weather gives the air and the panel. Some panels are near its dew point, told by the
// rule that the dew point falls a degree for each five percent of humidity.
func (m *maker) weather() {
	air, damp := 5+33*m.Float64(), 15+75*m.Float64()
	if m.edgy {
		m.give("temp", m.draw("temp"))
		m.give("humidity", m.draw("humidity"))
		m.maybe(0.5, "panel")
		return
	}
	m.give("temp", m.write("temp", air))
	m.give("humidity", m.write("humidity", damp))
	switch {
	case m.chance(0.15):
		m.give("panel", m.write("panel", max(air-(100-damp)/5-2+9*m.Float64(), -9)))
	case m.chance(0.3):
		m.give("panel", m.write("panel", air-3+7*m.Float64()))
	}
}

// airLine gives what lies between wall and gun, as much of it as is not the usual.
func (m *maker) airLine() {
	if m.chance(0.6) {
		hoses := []string{m.pair("hose")}
		for len(hoses) < 3 && m.chance(0.35) {
			hoses = append(hoses, m.pair("hose"))
		}
		m.give("hose", hoses...)
	} else if m.chance(0.02) {
		m.fields = append(m.fields, field{name: "hose", json: "[]"})
	}
	for _, f := range []struct {
		name string
		of   []string
	}{{"coupling", couplings}, {"filter", filters}, {"regulator", regulators}, {"regulator-at", places}, {"gauge", gauges}} {
		if m.chance(0.5) {
			m.give(f.name, pick(m, f.of...))
		}
	}
}

// pair is a value of two quantities: length and bore.
func (m *maker) pair(name string) string {
	return m.draw(name+" length") + pick(m, ",", ",", ", ") + m.draw(name+" bore")
}

// shop gives the air behind the regulator.
func (m *maker) shop() {
	m.give("compressor", m.draw("compressor"))
	m.give("receiver", m.draw("receiver"))
	m.maybe(0.4, "cut-in")
	m.maybe(0.4, "cut-out")
	if m.chance(0.5) {
		m.give("main", m.pair("main"))
	} else if m.chance(0.05) {
		m.give("main", "none")
	}
	if m.chance(0.4) {
		others := []string{m.other()}
		if m.chance(0.3) {
			others = append(others, m.other())
		}
		m.give("other", others...)
	}
	m.maybe(0.5, "spray-time")
	m.maybe(0.3, "receiver-temp")
	m.maybe(0.3, "line-temp")
}

// other is the air of another user, with its share of the time or without.
func (m *maker) other() string {
	air := m.draw("other air")
	if m.chance(0.4) {
		return air
	}
	return air + pick(m, ",", ", ") + m.draw("other share")
}
