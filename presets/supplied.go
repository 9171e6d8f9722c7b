package presets

import (
	"strings"
	"time"

	"boothset/calc/supply"
	"boothset/calc/unit"
)

// What a supply is taken to be where only its compressor was given.
const (
	// usualSpraying is how long a panel is sprayed without a pause, from memory, not
	// verified.
	usualSpraying = unit.Seconds(3 * unit.SecondPerMinute)
	// receiverAbove is how much warmer than the shop the air leaves the receiver, from
	// memory, not verified.
	receiverAbove = unit.TempDiff(10)
	// cutSpan is how far the compressor's switch lets the receiver fall, from memory,
	// not verified.
	cutSpan = unit.Gauge(30 * unit.PascalPerPSI)
)

// supply reads the air behind the regulator. Without a compressor nothing is checked.
func (v *resolver) supply(a *Answers) {
	l := &v.c.entries.Line
	s := &v.r.Shop
	compressor := a.Compressor.or(l.Compressor)
	if compressor == "" || compressor == None {
		return
	}
	s.Known = true
	sys := &s.System
	sys.Rated = v.compressor(compressor)
	if receiver := a.Receiver.or(l.Receiver); receiver == "" {
		v.fault(FieldReceiver, "", "needed-receiver")
	} else {
		sys.Receiver.Volume = read(v, FieldReceiver, receiver, "", unit.ParseVolume, v.sys.VolumeUnit())
	}
	sys.CutIn = max(v.r.Supply, supply.LowestCutIn)
	sys.CutOut = sys.CutIn + cutSpan
	if in := a.CutIn.or(l.CutIn); in != "" {
		sys.CutIn = read(v, FieldCutIn, in, "", unit.ParseGauge, v.sys.PressureUnit())
		sys.CutOut = sys.CutIn + cutSpan
	}
	if out := a.CutOut.or(l.CutOut); out != "" {
		sys.CutOut = read(v, FieldCutOut, out, "", unit.ParseGauge, v.sys.PressureUnit())
	}
	if main := a.Main.or(l.Main); main != "" && main != None {
		if length, bore, ok := v.lengthAndBore(main); ok {
			sys.Main = supply.Main{Length: length, Bore: bore}
		} else {
			v.fault(FieldMain, main, "want-main")
		}
	}
	others := a.Other
	if len(others) == 0 {
		others = typed(l.Other)
	}
	for _, o := range others {
		v.user(o)
	}
	spraying := usualSpraying
	if t := a.SprayTime.or(l.SprayTime); t != "" {
		spraying = read(v, FieldSprayTime, t, "", unit.ParseSeconds, unit.InMinutes)
	}
	s.Spraying = time.Duration(float64(min(spraying, unit.Seconds(supply.MaxSpan.Seconds()+1))) * float64(time.Second))
	s.ReceiverTemp = v.r.Day.Air + unit.Temp(receiverAbove)
	if t := a.ReceiverTemp.or(l.ReceiverTemp); t != "" {
		s.ReceiverTemp = read(v, FieldReceiverTemp, t, "", unit.ParseTemp, v.sys.TempUnit())
	}
	s.LineTemp = v.r.Day.Air
	if t := a.LineTemp.or(l.LineTemp); t != "" {
		s.LineTemp = read(v, FieldLineTemp, t, "", unit.ParseTemp, v.sys.TempUnit())
	}
}

// compressor reads free air, or the motor's power, of which the low end of the rule is
// taken.
func (v *resolver) compressor(given Typed) unit.Flow {
	q, err := unit.ParseFlow(string(given), v.sys.FlowUnit())
	if hp, ok := horsepower(given); ok {
		q, _, err = supply.FromPower(hp)
	}
	if err != nil {
		v.fault(FieldCompressor, given, "want-compressor")
		return 0
	}
	return q
}

// horsepower is the power of a motor; false where it is not power that was typed.
func horsepower(given Typed) (hp float64, ok bool) {
	power, ok := strings.CutSuffix(strings.ToLower(strings.TrimSpace(string(given))), "hp")
	if !ok {
		return 0, false
	}
	return number(power)
}

// user reads "10cfm" or "10cfm,50%": air, and the share of the time it is drawn.
func (v *resolver) user(given Typed) {
	flowText, dutyText, hasDuty := pieces(FieldOther, given)
	u := supply.User{Duty: 1}
	q, err := unit.ParseFlow(flowText, v.sys.FlowUnit())
	if err == nil && hasDuty {
		u.Duty, err = unit.ParsePercent(dutyText)
	}
	if err != nil || q < 0 || u.Duty < 0 || u.Duty > 1 {
		v.fault(FieldOther, given, "want-other")
		return
	}
	u.Flow = q
	v.r.Shop.System.Others = append(v.r.Shop.System.Others, u)
}

func typed(texts []string) []Typed {
	all := make([]Typed, len(texts))
	for i, t := range texts {
		all[i] = Typed(t)
	}
	return all
}
