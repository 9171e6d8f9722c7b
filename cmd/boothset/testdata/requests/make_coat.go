package main

import (
	"math"
	"strings"
)

// cup is an efflux cup: how people name it, and the seconds that coatings take in it.
type cup struct {
	names     []string
	low, high float64
}

var cups = []cup{
	{[]string{"din4", "DIN 53211", "DIN 4", "din 53211 4 mm"}, 13, 60},
	{[]string{"ford4", "Ford no. 4", "Ford 4", "ASTM Ford #4"}, 12, 60},
	{[]string{"iso4", "ISO 2431 4 mm", "iso-4"}, 20, 100},
	{[]string{"zahn2", "zahn #2", "Zahn cup 2"}, 18, 60},
	{[]string{"ford3", "FORD NO 3"}, 15, 90},
	{[]string{"iso3", "iso 3 mm"}, 30, 100},
	{[]string{"iso5"}, 20, 90},
	{[]string{"iso6", "ISO nr. 6"}, 15, 80},
	{[]string{"ford1", "D1200 1"}, 55, 100},
	{[]string{"ford2"}, 35, 100},
	{[]string{"ford5"}, 10, 40},
	{[]string{"zahn1", "D4212 no 1"}, 35, 80},
	{[]string{"zahn3"}, 12, 60},
	{[]string{"zahn4"}, 10, 50},
	{[]string{"zahn5"}, 10, 40},
}

// cup is a cup that is common more often than not, and the seconds of a reading in it.
func (m *maker) cup() (name string, seconds float64) {
	c := pick(m, cups...)
	if m.chance(0.8) {
		c = pick(m, cups[:5]...)
	}
	seconds = c.low + (c.high-c.low)*math.Pow(m.Float64(), 2)
	if m.edgy && m.chance(atBound) {
		seconds = pick(m, c.low, c.high, c.low, c.high, 20, 25, 30, 1, 1000)
	}
	name = c.names[0]
	if m.chance(0.4) {
		name = pick(m, c.names...)
	}
	return name, seconds
}

// day makes a request for the day.
func (m *maker) day() {
	m.give("coat", pick(m, coats...))
	m.weather()
	m.maybe(0.4, "paint")
	m.maybe(0.3, "altitude")
	m.maybe(0.4, "panels")
	if m.chance(0.5) {
		m.give("pot-life", m.draw("pot-life"))
		m.maybe(0.6, "started")
	}
}

// thin makes a request for the thinning of a mix timed in a cup.
func (m *maker) thin() {
	m.give("coat", pick(m, coats...))
	name, seconds := m.cup()
	m.give("cup", name)
	m.give("seconds", m.write("seconds", seconds))
	at := 10 + 22*m.Float64()
	switch {
	case m.edgy && m.chance(0.5):
		m.give("paint", m.draw("paint"))
	case m.chance(0.8):
		m.give("paint", m.write("paint", at))
		m.maybe(0.2, "temp")
	default:
		m.give("temp", m.write("temp", at))
	}
	if m.chance(0.25) { // warmer and thinner, by 2 to 6 % a kelvin, or the other way
		apart := pick(m, -1.0, 1.0) * (4 + 9*m.Float64())
		m.give("second-temp", m.write("second-temp", at+apart))
		m.give("second-seconds", m.write("second-seconds", seconds*math.Exp(-apart*(0.02+0.04*m.Float64()))))
	}
	if m.chance(0.6) {
		m.sheet(seconds)
	}
	m.maybe(0.4, "max-thinner")
	m.maybe(0.3, "warm-limit")
}

// sheet gives what a product's sheet asks for: near what was timed, in that cup or another.
func (m *maker) sheet(seconds float64) {
	low := math.Max(2, seconds*(0.7+0.4*m.Float64()))
	if m.chance(0.2) {
		name, in := m.cup()
		m.give("sheet-cup", name)
		low = in
	}
	text := m.write("seconds", low)
	if m.chance(0.7) {
		high := math.Ceil(low) + 1 + math.Floor(4*m.Float64())
		text = m.number(math.Floor(low), 0, false) + pick(m, "-", "-", " - ", " to ", " a ", "\u2013") + m.write("seconds", high)
	}
	m.give("sheet-seconds", text)
	m.maybe(0.3, "sheet-temp")
}

// laying gives what film and mix both take.
func (m *maker) laying(withGun bool) {
	m.give("coat", pick(m, coats...))
	if withGun {
		m.give("gun", pick(m, guns...))
		m.maybe(0.2, "transfer")
		m.maybe(0.3, "pressure")
		m.maybe(0.3, "distance")
	}
	m.maybe(0.3, "film")
	m.maybe(0.3, "coats")
	m.maybe(0.15, "film-limit")
	m.maybe(0.2, "before")
	switch {
	case m.chance(0.15): // of each part of the ratio
		m.give("ratio", pick(m, "4:1:1", "4 1 1", "2:1:0,5", "3/1/1", "4:1+10%", "8 : 4 : 1"))
		parts := []string{m.draw("solids"), m.draw("solids")}
		if m.chance(0.3) {
			parts = append(parts, "0")
		}
		m.give("solids", parts...)
		m.maybe(0.3, "thinner")
	case m.chance(0.4):
		m.give("solids", m.draw("solids"))
		m.maybe(0.4, "thinner")
		m.maybe(0.3, "ratio")
	default:
		m.maybe(0.4, "ratio")
	}
}

// film makes a request for the film; what moves the gun is given beside a fluid rate.
func (m *maker) film() {
	withGun := m.chance(0.8)
	m.laying(withGun)
	if withGun && m.chance(0.85) {
		m.fluid()
		m.maybe(0.25, "fan")
		m.maybe(0.25, "overlap")
		m.maybe(0.4, "gun-speed")
		m.maybe(0.4, "height")
	}
	if m.chance(0.35) {
		combs := []string{m.comb()}
		for len(combs) < 4 && m.chance(0.5) {
			combs = append(combs, m.comb())
		}
		m.give("wet", combs...)
	}
}

// fluid gives the fluid rate: as it is, timed, or by tip and viscosity.
func (m *maker) fluid() {
	switch how := m.Float64(); {
	case how < 0.35:
		m.give("fluid-rate", m.draw("fluid-rate"))
	case how < 0.7:
		m.give("cup-volume", m.draw("cup-volume"))
		m.give("cup-time", m.draw("cup-time"))
	case how < 0.85:
		m.give("tip", m.draw("tip"))
		m.give("viscosity", m.draw("viscosity"))
	default:
		m.give("tip", m.draw("tip"))
		name, seconds := m.cup()
		m.give("cup", name)
		m.give("seconds", m.write("seconds", seconds))
	}
}

// comb is a wet comb's reading, by the wetted tooth or by it and the next.
func (m *maker) comb() string {
	if m.edgy && m.chance(atBound) {
		return m.draw("wet")
	}
	wetted := 20 + 100*m.Float64()
	text := m.write("wet", wetted)
	if m.chance(0.5) {
		text += pick(m, ",", ", ") + m.write("wet", wetted+10+20*m.Float64())
	}
	return text
}

// mix makes a request for the mix.
func (m *maker) mix() {
	m.laying(true)
	areas := []string{m.draw("area")}
	for !m.edgy && len(areas) < 4 && m.chance(0.4) {
		areas = append(areas, m.draw("area"))
	}
	m.give("area", areas...)
	if m.chance(0.35) {
		prices := []string{m.draw("price")}
		if i := m.find("ratio"); i >= 0 && len(m.fields[i].values) > 0 && m.chance(0.6) {
			for range parts(m.fields[i].values[0]) - 1 {
				prices = append(prices, m.draw("price"))
			}
		}
		m.give("price", prices...)
	}
	m.maybe(0.3, "cup-size")
	m.maybe(0.3, "loss")
	if m.chance(0.35) {
		m.give("pot-life", m.draw("pot-life"))
		m.maybe(0.5, "temp")
	}
	m.maybe(0.35, "fluid-rate")
}

// parts is how many parts a mixing ratio has: those written and one for a percent.
func parts(ratio string) int {
	apart := func(r rune) bool { return strings.ContainsRune(":/ ", r) }
	if strings.Count(ratio, ".") > 1 {
		apart = func(r rune) bool { return r == '.' }
	}
	return len(strings.FieldsFunc(ratio, apart)) + strings.Count(ratio, "%")
}
