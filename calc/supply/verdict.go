package supply

import (
	"time"

	"boothset/calc/unit"
)

// System is a shop's air from the compressor's inlet to the wall regulator's.
type System struct {
	Rated      unit.Flow // what the compressor delivers with its inlet as RatedInlet
	RatedInlet Inlet     // ISOInlet, SCFMInlet, or Inlet itself where it was measured here
	Inlet      Inlet     // the air it swallows today; its ambient is that of every gauge
	CutIn      unit.Gauge
	CutOut     unit.Gauge
	Receiver   Receiver
	Main       Main
	Others     []User // guns and tools at the same time
}

// Limit is the part of the supply that gives out first.
type Limit uint8

// The limits. SwitchLimit is a cut-in below what the wall needs: nothing but the
// pressure switch, or a machine for more pressure, mends that.
const (
	NoLimit Limit = iota
	CompressorLimit
	ReceiverLimit
	MainLimit
	SwitchLimit
)

// Verdict is whether a supply holds while a panel is sprayed.
//
// The start is the worst there is: the receiver has just fallen to cut-in, the compressor
// starts with the gun, and everything that shares the main runs at once.
type Verdict struct {
	OK bool // the regulator's inlet stays at or above what was needed, to the end

	Hold     Span // how long it does, from cut-in
	FromFull Span // the same, where the painter waits until the compressor has stopped

	Start    unit.Gauge // at the regulator's inlet as the trigger is pulled
	MainDrop unit.Drop  // what the main costs then
	// Lowest is the lowest there while spraying; where the compressor is short, at the
	// end. Below the pressure needed it reads low: a starved gun draws less.
	Lowest unit.Gauge

	Demand    Demand
	Delivered unit.Flow // by the compressor, here and today
	Margin    unit.Flow // delivered less mean demand; negative where it is short
	KeepsUp   bool      // the compressor alone carries the mean demand

	Limit Limit
	// EnoughDelivered and EnoughReceiver are what would each do in place of what there
	// is, the rest unchanged. Only where Limit is CompressorLimit or ReceiverLimit;
	// EnoughReceiver is then 0 where no receiver would.
	EnoughDelivered unit.Flow
	EnoughReceiver  unit.Volume
}

// LowestCutIn is the lowest pressure a compressor's switch is taken to start it at.
const LowestCutIn = unit.Gauge(5 * unit.PascalPerPSI)

// HighestCut bounds the pressures in a shop.
const HighestCut = unit.Gauge(500 * unit.PascalPerPSI)

func (s *System) check() error {
	if err := firstOf(
		s.RatedInlet.check(FieldRatedInlet), s.Inlet.check(FieldInlet), s.Main.check(),
		within(FieldReceiver, s.Receiver.Volume.Litres(), SmallestReceiver.Litres(), LargestReceiver.Litres(), "L"),
		within(FieldCutIn, s.CutIn.PSI(), LowestCutIn.PSI(), HighestCut.PSI(), "psi"),
		within(FieldCutOut, s.CutOut.PSI(), s.CutIn.PSI(), HighestCut.PSI(), "psi"),
	); err != nil || s.Receiver.Temp == 0 {
		return err
	}
	return within(FieldReceiverTemp, s.Receiver.Temp.C(), ColdestReceiver.C(), HottestReceiver.C(), "C")
}

// Check works out whether sys keeps the regulator's inlet at needed while a gun that
// draws gun sprays for the time spray without a pause. needed is the supply pressure the
// wall's setting asks for: what is set, with the regulator's own loss on top.
//
// The compressor starts at CutIn and stops at CutOut. Where it keeps up, the pressure
// swings between the two and CutIn is the lowest. Where it does not, it runs on and the
// receiver makes up the difference: see Receiver. Errors name the part of sys, or the
// question, that is out of range.
func Check(sys System, gun unit.Flow, needed unit.Gauge, spray time.Duration) (Verdict, error) {
	demand, errDemand := Total(gun, sys.Others)
	if err := firstOf(sys.check(), errDemand,
		within(FieldNeeded, needed.PSI(), 0, HighestCut.PSI(), "psi"),
		within(FieldSprayingTime, spray.Minutes(), 0, MaxSpan.Minutes(), "min"),
	); err != nil {
		return Verdict{}, err
	}
	delivered, err := FreeAir(sys.Rated, sys.RatedInlet, sys.Inlet)
	if err != nil {
		return Verdict{}, err
	}
	ambient := sys.Inlet.Ambient
	cutIn := sys.CutIn.Abs(ambient)
	floor := sys.Main.inletFor(demand.Peak, needed.Abs(ambient)).Gauge(ambient)
	v := Verdict{
		Demand:    demand,
		Delivered: delivered,
		Margin:    delivered - demand.Mean,
		KeepsUp:   delivered >= demand.Mean,
		Start:     sys.Main.outlet(demand.Peak, cutIn, ambient).Gauge(ambient),
	}
	v.MainDrop = unit.Drop(sys.CutIn - v.Start)
	v.Hold = sys.hold(v, floor)
	v.FromFull = sys.holdFromFull(v, floor)
	v.OK = sys.CutIn >= floor && v.Hold.Time >= spray
	v.Lowest = v.Start
	if !v.KeepsUp {
		end := sys.Receiver.After(sys.CutIn, demand.Mean, delivered, spray)
		v.Lowest = sys.Main.outlet(demand.Peak, end.Abs(ambient), ambient).Gauge(ambient)
	}
	if !v.OK {
		sys.limit(&v, floor, needed, spray)
	}
	return v, nil
}

// hold is how long the receiver stays at or above floor from cut-in, the compressor running.
func (s *System) hold(v Verdict, floor unit.Gauge) Span {
	switch {
	case s.CutIn < floor:
		return Span{}
	case v.KeepsUp:
		return endless
	default:
		return s.Receiver.DrawDown(unit.Drop(s.CutIn-floor), v.Demand.Mean, v.Delivered)
	}
}

// holdFromFull is the same from cut-out: the compressor stands until cut-in is reached.
func (s *System) holdFromFull(v Verdict, floor unit.Gauge) Span {
	still := s.Receiver.DrawDown(unit.Drop(s.CutOut-max(s.CutIn, floor)), v.Demand.Mean, 0)
	if s.CutIn < floor || still.Endless {
		return still
	}
	running := s.hold(v, floor)
	running.Time = min(running.Time+still.Time, MaxSpan)
	return running
}

// limit names what gives out first in a supply that does not hold. Where compressor and
// receiver together fall short it is the one that needs the smaller enlargement.
func (s *System) limit(v *Verdict, floor, needed unit.Gauge, spray time.Duration) {
	switch {
	case s.CutIn < needed:
		v.Limit = SwitchLimit
		return
	case s.CutIn < floor, s.hold(*v, needed).Time >= spray:
		v.Limit = MainLimit
		return
	}
	fall := unit.Drop(s.CutIn - floor)
	given := float64(s.Receiver.FreeAir(fall)) / spray.Seconds()
	v.EnoughDelivered = v.Demand.Mean - unit.Flow(given)
	v.Limit = CompressorLimit
	receiver, err := ReceiverFor(v.Demand.Mean, v.Delivered, spray, fall, s.Receiver.Temp)
	if err != nil {
		return // the compressor is then the only way
	}
	v.EnoughReceiver = receiver
	// receiver/V < enough/delivered, without dividing by a compressor that gives nothing
	if float64(receiver)*float64(v.Delivered) < float64(v.EnoughDelivered)*float64(s.Receiver.Volume) {
		v.Limit = ReceiverLimit
	}
}
