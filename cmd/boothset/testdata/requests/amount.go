package main

import "strings"

// amount is what is drawn for a field: a sensible value in any of its units, or a text as
// it stands; the texts at its bounds, and those beyond them, which are refused.
type amount struct {
	units     []*scale
	bare      [2]*scale // of a number without a unit, US and metric
	low, high float64   // in the quantity's first unit
	suffixes  []string
	parted    bool // a comma would part it from another value
	texts     []string
	edges     []string
	beyond    []string
}

// amountOf is the amount of a command's field; fields of the same name are alike but for
// those that a command has of its own.
func amountOf(command, name string) (*amount, bool) {
	if a, ok := amounts[command+" "+name]; ok {
		return a, true
	}
	a, ok := amounts[name]
	return a, ok
}

// draw is a text for a field.
func (m *maker) draw(name string) string {
	a, ok := amountOf(m.command, name)
	if !ok {
		panic("no amount for " + name)
	}
	switch {
	case m.edgy && len(a.edges) > 0 && m.chance(atBound):
		return pick(m, a.edges...)
	case len(a.units) == 0 || len(a.texts) > 0 && m.chance(0.2):
		return pick(m, a.texts...)
	}
	return m.spell(a, a.low+(a.high-a.low)*m.Float64())
}

// write is a value of a field as somebody types it.
func (m *maker) write(name string, value float64) string {
	a, _ := amountOf(m.command, name)
	return m.spell(a, value)
}

var (
	pressures   = []*scale{psi, psi, bar, kpa, mpa}
	temps       = []*scale{fahrenheit, celsius}
	longs       = []*scale{foot, metre}
	near        = []*scale{inch, mm, cm}
	films       = []*scale{mil, micron}
	airs        = []*scale{cfm, lpm, lps, m3pm, m3ph}
	shares      = []*scale{percent}
	cupVolumes  = []*scale{ml, ml, ounce, litre, quart}
	tanks       = []*scale{gallon, litre}
	times       = []*scale{second, minute, hour}
	barePSI     = [2]*scale{psi, bar}
	bareTemp    = [2]*scale{fahrenheit, celsius}
	bareLong    = [2]*scale{foot, metre}
	bareNear    = [2]*scale{inch, mm}
	bareFilm    = [2]*scale{mil, micron}
	bareAir     = [2]*scale{cfm, lpm}
	bareShare   = [2]*scale{percent, percent}
	bareCup     = [2]*scale{ounce, ml}
	bareSeconds = [2]*scale{second, second}
	cold        = []string{"-10C", "60C", "14F", "140F", "-10 °C"} // the bounds of temperatures
	beyondCold  = []string{"-10.5C", "61C", "13F", "141F", "-274C"}
)

// amounts is the fields that hold a quantity or a text of their own, with what bounds the
// commands put to them.
var amounts = map[string]*amount{
	"temp":     {units: temps, bare: bareTemp, low: 5, high: 38, edges: cold, beyond: beyondCold},
	"panel":    {units: temps, bare: bareTemp, low: 8, high: 40, edges: cold, beyond: beyondCold},
	"paint":    {units: temps, bare: bareTemp, low: 8, high: 35, edges: cold, beyond: beyondCold},
	"mix temp": {units: temps, bare: bareTemp, low: 8, high: 38, edges: []string{"5C", "40C", "41F", "104F"}},
	"humidity": {units: shares, bare: bareShare, low: 15, high: 90, edges: []string{"1", "100", "1%", "100%"}, beyond: []string{"0", "0.9%", "101", "100.5%", "-5"}},
	"altitude": {units: longs, bare: bareLong, low: 0, high: 3.5e6, edges: []string{"-430m", "5000m", "16404ft", "-1410ft", "0m"}, beyond: []string{"-431m", "5001m", "16405ft", "-1411ft"}},

	"supply":      {units: pressures, bare: barePSI, low: 60, high: 150, edges: []string{"1psi", "300psi", "0.07bar", "20.68bar"}, beyond: []string{"0.9psi", "301psi", "20.7bar", "0", "-5psi"}},
	"wall":        {units: pressures, bare: barePSI, low: 20, high: 110, edges: []string{"1psi", "300psi", "0.07bar", "20.68bar"}, beyond: []string{"0.9psi", "301psi", "20.7bar", "0", "-5psi"}},
	"mark":        {units: []*scale{psi, psi, kpa}, bare: barePSI, low: 0.6, high: 5, texts: []string{"2psi", "0,1bar", "0.2 bar", "5psi"}, edges: []string{"0.01psi", "20psi"}, beyond: []string{"0.005psi", "21psi", "0", "2bar"}},
	"hose length": {units: longs, bare: bareLong, low: 2e3, high: 25e3, parted: true, texts: []string{"25'", "35 feet", "50ft", "7,5 m", "12,5m"}, edges: []string{"0.5ft", "500ft", "152.4m"}},
	"hose bore":   {units: near, bare: bareNear, low: 6, high: 13, parted: true, texts: []string{"1/4in", "5/16in", `3/8"`, "3/8", "1/2 in", " 3/8 pulg", "5/16"}, edges: []string{"3mm", "40mm"}},
	"hose":        {beyond: []string{"0.4ft,3/8in", "501ft,3/8in", "153m,10mm", "25ft,2.9mm", "25ft,41mm", "8m,1.6in", "25ft", "25ft 3/8in", "25ft,", "wide,3/8in"}},

	"compressor":    {units: append(airs, hp, hp, hp), bare: bareAir, low: 250, high: 1500, texts: []string{"5hp", "7.5 HP", "3hp", "18cfm"}, edges: []string{"0.1hp", "500hp", "4400cfm"}, beyond: []string{"0.05hp", "501hp", "5000cfm", "-1cfm", "5kW"}},
	"receiver":      {units: tanks, bare: [2]*scale{gallon, litre}, low: 24e3, high: 500e3, edges: []string{"1L", "1000000L"}, beyond: []string{"0.5L", "1000001L", "0gal"}},
	"cut-in":        {units: pressures, bare: barePSI, low: 70, high: 130, edges: []string{"5psi", "470psi"}, beyond: []string{"4psi", "501psi"}},
	"cut-out":       {units: pressures, bare: barePSI, low: 135, high: 190, edges: []string{"500psi"}, beyond: []string{"501psi", "1psi"}},
	"main length":   {units: longs, bare: bareLong, low: 5e3, high: 100e3, parted: true, edges: []string{"2000m", "0.5m"}},
	"main bore":     {units: near, bare: bareNear, low: 14, high: 50, parted: true, texts: []string{"1/2in", `3/4"`, "1in", "1-1/4in", "1 1/2 in", "3/4", "20mm"}, edges: []string{"5mm", "200mm"}},
	"main":          {beyond: []string{"2001m,20mm", "30m,4mm", "30m,201mm", "30m", "30m;20mm"}},
	"other air":     {units: airs, bare: bareAir, low: 50, high: 600, parted: true, edges: []string{"0cfm"}},
	"other share":   {units: shares, bare: bareShare, low: 5, high: 95, parted: true, edges: []string{"0%", "100%"}},
	"other":         {beyond: []string{"10cfm,101%", "-1cfm", "10cfm,-1%", "10,50,5cfm", "4500cfm"}},
	"spray-time":    {units: times, bare: [2]*scale{minute, minute}, low: 45, high: 700, edges: []string{"24h", "1440min", "1s"}, beyond: []string{"25h", "1441min", "-1min"}},
	"receiver-temp": {units: temps, bare: bareTemp, low: 12, high: 60, edges: []string{"-40C", "100C", "-40F"}, beyond: []string{"-41C", "101C"}},
	"line-temp":     {units: temps, bare: bareTemp, low: 2, high: 40, edges: []string{"-40C", "60C", "140F"}, beyond: []string{"-41C", "61C"}},

	"panels":   {texts: strings.Fields("1 2 3 4 6 8 12 5.0"), edges: []string{"1", "100"}, beyond: []string{"0", "101", "1.5", "-1", "two"}},
	"pot-life": {units: []*scale{minute, hour, hour}, bare: [2]*scale{hour, hour}, low: 1800, high: 12 * 3600, edges: []string{"1min", "168h", "60s"}, beyond: []string{"0h", "169h", "30s"}},
	"started": {texts: []string{"14:30", "1430", "14.30", "2:30pm", "2 pm", "2:30 p.m.", "9,15", "930", "7:05 AM", "11a.m."},
		edges: []string{"0:00", "23:59", "12am", "12pm", "12:59 PM"}, beyond: []string{"24:00", "25:00", "14:60", "13pm", "noon", "7", "0pm"}},

	"seconds":        {units: []*scale{second}, bare: bareSeconds, beyond: []string{"0.5s", "1001s", "-20s", "2s"}},
	"second-seconds": {units: []*scale{second}, bare: bareSeconds, beyond: []string{"0.5s", "1001s", "1s"}},
	"sheet-seconds":  {beyond: []string{"18-16", "0", "16-", "-16", "16 until 18", "16-17-18"}},
	"sheet-temp":     {units: temps, bare: bareTemp, low: 18, high: 26, texts: []string{"20C", "68F", "23C", "77F"}, edges: cold, beyond: beyondCold},
	"second-temp":    {units: temps, bare: bareTemp, low: 8, high: 35, edges: cold, beyond: beyondCold},
	"max-thinner":    {units: shares, bare: bareShare, low: 1, high: 30, edges: []string{"0", "100", "0%"}, beyond: []string{"101", "-1", "100.5%"}},
	"warm-limit":     {units: temps, bare: bareTemp, low: 18, high: 38, edges: cold, beyond: beyondCold},

	"film":       {units: films, bare: bareFilm, low: 12, high: 150, edges: []string{"2um", "2000um"}, beyond: []string{"1um", "2001um", "-2mil"}},
	"coats":      {texts: strings.Fields("1 2 3 4 5 2.0"), edges: []string{"1", "20"}, beyond: []string{"0", "21", "2.5", "three"}},
	"solids":     {units: shares, bare: bareShare, low: 8, high: 75, parted: true, edges: []string{"1", "100%"}, beyond: []string{"0", "101", "0.5"}},
	"ratio":      {texts: strings.Fields("4:1:1 4:1 2:1 3:1:0.5 100:50:30 2:1+10% 4:1+5% 10% 25% 2,5:1 4/1/1 4.1.1 1:1:1 8:4:1"), edges: []string{"10000:1", "1:0", "2:1+200%", "0.001:1", "1:1:1:1:1:1"}, beyond: []string{"4.1", "0:1", "1:2:3:4:5:6:7", "2:1+201%", "4;1", "10001:1"}},
	"thinner":    {units: shares, bare: bareShare, low: 1, high: 40, edges: []string{"0", "200"}, beyond: []string{"201", "-1"}},
	"film-limit": {units: films, bare: bareFilm, low: 40, high: 200, edges: []string{"2um", "2000um"}, beyond: []string{"1um", "2001um", "0um"}},
	"before":     {units: films, bare: bareFilm, low: 0, high: 300, edges: []string{"0um", "10000um"}, beyond: []string{"10001um", "-1um"}},
	"transfer":   {units: shares, bare: bareShare, low: 30, high: 75, edges: []string{"10", "90%"}, beyond: []string{"9", "91"}},
	"pressure":   {units: pressures, bare: barePSI, low: 15, high: 55, edges: []string{"1psi", "150psi"}, beyond: []string{"0.5psi", "151psi", "-1bar"}},
	"distance":   {units: near, bare: bareNear, low: 120, high: 280, texts: []string{"5-1/2in", "6 1/2 in", `7 1/4"`, "8-1/2 pulg"}, edges: []string{"2in", "30in"}, beyond: []string{"1.9in", "31in"}},
	"fluid-rate": {units: []*scale{ml, ml, ounce}, bare: [2]*scale{ml, ml}, low: 80, high: 400, suffixes: []string{"/min", "/min", " per min", " a minute", " por minuto", " por min", ""}, edges: []string{"5mL/min", "1500mL/min"}, beyond: []string{"4mL/min", "1501mL/min", "0mL/min", "180mL/s"}},
	"cup-volume": {units: []*scale{ml, ounce}, bare: bareCup, low: 60, high: 300, beyond: []string{"0.5mL", "5001mL"}},
	"cup-time":   {units: []*scale{second, second, minute}, bare: bareSeconds, low: 20, high: 75, beyond: []string{"0.5s", "3601s", "3000s"}},
	"tip":        {units: []*scale{mm}, bare: [2]*scale{mm, mm}, low: 1, high: 2.2, texts: []string{"1.3mm", "1,4 mm", "0.055in"}, edges: []string{"0.5mm", "3mm"}, beyond: []string{"0.4mm", "3.1mm", "1.3in"}},
	"viscosity":  {units: []*scale{cst}, bare: [2]*scale{cst, cst}, low: 15, high: 150, edges: []string{"5", "500cSt"}, beyond: []string{"4", "501"}},
	"fan":        {units: near, bare: bareNear, low: 120, high: 350, texts: []string{"10in", "9-1/2in"}, edges: []string{"10mm", "600mm"}, beyond: []string{"9mm", "601mm", "0mm"}},
	"overlap":    {units: shares, bare: bareShare, low: 25, high: 75, edges: []string{"0", "90%"}, beyond: []string{"91", "-1"}},
	"gun-speed":  {units: []*scale{foot, metre, inch, cm}, bare: bareLong, low: 200, high: 900, suffixes: []string{"/s", "/s", "/sec", "/seg", " per second", " a second", " por segundo", ""}, edges: []string{"0.05m/s", "3m/s"}, beyond: []string{"0.04m/s", "3.1m/s", "0m/s", "1.2ft/min"}},
	"height":     {units: []*scale{foot, metre, cm}, bare: bareLong, low: 300, high: 2000, edges: []string{"1cm", "10m"}, beyond: []string{"0.5cm", "11m", "0m"}},
	"wet":        {units: films, bare: bareFilm, low: 20, high: 150, parted: true, edges: []string{"1um", "2000um"}, beyond: []string{"0um", "2001um", "5mil,4mil", "100um-120um", "tooth 4"}},

	"area": {units: []*scale{foot2, metre2}, bare: [2]*scale{foot2, metre2}, low: 0.4, high: 9,
		texts:  []string{"hood", "2 door", "door", "3 x fender", "whole", "2 bumpers", "Roof", "1 hood", "2doors"},
		edges:  []string{"0.001m2", "1000m2", "50 door"},
		beyond: []string{"0m2", "1001m2", "-1m2", "0.0001m2", "0 door", "51 door", "sunroof"}},
	"price": {texts: []string{"60/L", "200/gal", "$200/gal", "€45,50/L", "12/qt", "5/fl oz", "45.5/litro", " £30/l", "0.02/mL"}, edges: []string{"0/L", "100000/L"},
		beyond: []string{"60", "-1/L", "100001/L", "60/m", "much/L", "60/2L"}},
	"cup-size": {units: cupVolumes, bare: bareCup, low: 150, high: 1000, edges: []string{"60mL", "5L"}, beyond: []string{"50mL", "5.1L"}},
	"loss":     {units: []*scale{ml, ml, ounce}, bare: bareCup, low: 20, high: 150, edges: []string{"0mL", "5L"}, beyond: []string{"5.1L", "-1mL"}},
}
