package supply

import (
	"math"
	"time"

	"boothset/calc/unit"
)

// Bounds of a receiver, from a hand-carried bottle to a plant's. The methods take a
// value outside them as the nearest bound; Check refuses it.
const (
	SmallestReceiver = unit.Volume(1e-3) // 1 L
	LargestReceiver  = unit.Volume(1000) // m3
	highestPressure  = unit.Gauge(1e8)   // no gauge here reads above it
)

var ColdestReceiver, HottestReceiver = unit.Celsius(-40), unit.Celsius(100)

// MaxSpan is the longest time this package tells apart: a supply that lasts a day lasts.
const MaxSpan = 24 * time.Hour

// Span is how long something takes or holds, 0 to MaxSpan. Endless means that it never
// comes to an end as things stand; Time is then MaxSpan, so that spans compare by Time.
type Span struct {
	Time    time.Duration
	Endless bool
}

var endless = Span{MaxSpan, true}

// spanOf is how long a volume of free air lasts at a net flow.
func spanOf(air unit.Volume, net unit.Flow) Span {
	switch s := float64(air) / float64(net); {
	case air <= 0:
		return Span{}
	case net <= 0:
		return endless
	case s >= MaxSpan.Seconds():
		return Span{Time: MaxSpan}
	default:
		return Span{Time: time.Duration(s * float64(time.Second))}
	}
}

// Receiver is the vessel after the compressor, with any pipe as wide as it counted in.
//
// Its air is taken as ideal and at the temperature of the wall all along:
//
//	dp/dt = (q_comp - q_use) (p0/V) (T/T0)
//
// with flows as volumes at ANR (p0 = 100 kPa, T0 = 20 C). A pull of a few seconds is
// nearer to adiabatic and starts to fall up to 1.4 times as fast (the ratio of specific
// heats, the ideal gas's own bound); the air warms back from the wall as the minutes go.
// Source: the receiver sizing of the DOE/ORNL AMO tools, V = t q pa/(p1 - p2).
type Receiver struct {
	Volume unit.Volume
	Temp   unit.Temp // of the air in it; 0 is taken as 20 C
}

// capacity is the free air that a change of 1 Pa takes, m3 ANR.
func (r Receiver) capacity() float64 {
	v := clamp(float64(r.Volume), float64(SmallestReceiver), float64(LargestReceiver))
	return v / unit.ANRPressure / warmth(r.Temp)
}

// warmth is T/T0.
func warmth(t unit.Temp) float64 {
	if t == 0 {
		return 1
	}
	return clamp(float64(t), float64(ColdestReceiver), float64(HottestReceiver)) / unit.ANRTemperature
}

// FreeAir is the air, as volume at ANR, that leaves as the pressure falls by fall:
// V fall/p0 (T0/T). 0 where fall is not above 0; falls count up to 1e8 Pa.
func (r Receiver) FreeAir(fall unit.Drop) unit.Volume {
	return unit.Volume(r.capacity() * clamp(float64(fall), 0, float64(highestPressure)))
}

// DrawDown is how long the pressure takes to fall by fall while use flows out and comp
// flows in. Endless where comp keeps up; 0 where fall is not above 0.
func (r Receiver) DrawDown(fall unit.Drop, use, comp unit.Flow) Span {
	return spanOf(r.FreeAir(fall), use-comp)
}

// PumpUp is how long the compressor takes to raise the pressure by rise with use drawn
// meanwhile. Endless where it never gets there; 0 where rise is not above 0.
func (r Receiver) PumpUp(rise unit.Drop, comp, use unit.Flow) Span {
	return spanOf(r.FreeAir(rise), comp-use)
}

// After is the pressure a time t later, from start, with comp flowing in and use out. It
// stays within ambient and 1e8 Pa, and does not stop at a pressure switch.
func (r Receiver) After(start unit.Gauge, use, comp unit.Flow, t time.Duration) unit.Gauge {
	moved := 0.0
	if t > 0 {
		moved = float64(comp-use) * t.Seconds() / r.capacity()
	}
	return unit.Gauge(clamp(float64(start)+moved, 0, float64(highestPressure)))
}

// Delivered is the flow a compressor proves in a pump-up test: outlets shut, the
// pressure rising by rise in the time t: q = V rise/(p0 t) (T0/T). It is what the machine
// delivers there and then, at that altitude. Give the temperature of the receiver's air:
// each 3 C it is warmer than given is a reading 1 % high. Error where rise is not in 1 psi
// to 500 psi, or t not in a second to a day.
func (r Receiver) Delivered(rise unit.Drop, t time.Duration) (unit.Flow, error) {
	err := firstOf(
		within(FieldRise, rise.PSI(), 1, 500, "psi"),
		within(FieldPumpUp, t.Seconds(), 1, MaxSpan.Seconds(), "s"),
	)
	if err != nil {
		return 0, err
	}
	return unit.Flow(float64(r.FreeAir(rise)) / t.Seconds()), nil
}

// ReceiverFor is the volume that carries use for a time t with comp flowing in, while
// the pressure falls by fall, at receiver temperature temp: V = t (use - comp) p0/fall (T/T0).
// The smallest receiver where the compressor keeps up. Error where fall is not above 0, or
// where no receiver up to the largest would do.
func ReceiverFor(use, comp unit.Flow, t time.Duration, fall unit.Drop, temp unit.Temp) (unit.Volume, error) {
	if !(fall > 0) {
		return 0, &InputError{FieldFall, "nothing-to-give", fall.PSI(), 0, 0, "psi"}
	}
	v := float64(use-comp) * max(t.Seconds(), 0) * unit.ANRPressure / float64(fall) * warmth(temp)
	if v > float64(LargestReceiver) || math.IsNaN(v) {
		return 0, &InputError{FieldReceiver, "no-such-receiver", v, 0, float64(LargestReceiver), "m3"}
	}
	return unit.Volume(max(v, float64(SmallestReceiver))), nil
}
