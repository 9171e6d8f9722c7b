package question

import (
	"time"

	"boothset/calc"
	"boothset/calc/supply"
	"boothset/calc/unit"
)

// The air upstream of the regulator. Without a compressor it is not checked, and the rest
// does not count.
var (
	Compressor = &Field{
		Name: "compressor", Read: motor, Of: [2]*unit.Quantity{unit.AirFlow}, Options: []string{None}, Want: "want-compressor",
		Bounds:  [2]*calc.Bound{&freeAirBound},
		Default: ShopOrOut, Part: PartSupply, Begin: [2]string{"10 cfm", "300 L/min"},
	}
	Receiver = &Field{
		Name: "receiver", Read: amount, Of: [2]*unit.Quantity{unit.Tank}, Bounds: [2]*calc.Bound{&receiverBound},
		Missing: "needed-receiver", Default: ShopOrAsk, Part: PartSupply, Begin: [2]string{"60 gal", "200 L"},
	}
	CutIn = &Field{
		Name: "cut-in", Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&cutBound}, Default: ShopOrOut, Part: PartSupply,
		Counts: func(q *calc.Request) float64 { return float64(q.Shop.System.CutIn) },
	}
	CutOut = &Field{
		Name: "cut-out", Read: amount, Of: [2]*unit.Quantity{unit.Pressure}, Bounds: [2]*calc.Bound{&cutBound}, Default: ShopOrOut, Part: PartSupply,
		Counts: func(q *calc.Request) float64 { return float64(q.Shop.System.CutOut) },
	}
	Main = &Field{
		Name: "main", Read: pair, Of: [2]*unit.Quantity{unit.Run, unit.Bore}, Bounds: [2]*calc.Bound{&mainBound, &mainBoreBound},
		Options: []string{None}, Want: "want-main",
		Default: ShopOrOut, Part: PartSupply, Begin: [2]string{"50 ft, 3/4 in", "15 m, 20 mm"},
	}
	Other = &Field{
		Name: "other", Read: user, Of: [2]*unit.Quantity{unit.AirFlow, unit.Share}, SecondLeftOut: true, SecondWord: "mask", Repeats: true, Want: "want-other",
		Bounds:  [2]*calc.Bound{&freeAirBound, &dutyBound},
		Default: ShopOrOut, Part: PartSupply, Step: [2][2]float64{{}, {10, 10}}, Begin: [2]string{"5 cfm, 50%", "150 L/min, 50%"},
	}
	SprayTime = &Field{
		Name: "spray-time", Read: amount, Of: [2]*unit.Quantity{unit.Minutes}, Bounds: [2]*calc.Bound{&sprayBound}, Default: ShopOrOut, Part: PartSupply,
		Counts: func(q *calc.Request) float64 { return q.Shop.Spraying.Seconds() },
	}
	Pause = &Field{
		Name: "pause", Read: amount, Of: [2]*unit.Quantity{unit.Minutes}, Bounds: [2]*calc.Bound{&sprayBound}, Default: Fixed, Part: PartSupply,
		Counts: func(q *calc.Request) float64 { return q.Shop.Pause.Seconds() },
	}
	ReceiverTemp = &Field{
		Name: "receiver-temp", Read: amount, Of: [2]*unit.Quantity{unit.Temperature}, Bounds: [2]*calc.Bound{&receiverHeat}, Default: ShopOrOut, Part: PartSupply,
		Counts: func(q *calc.Request) float64 { return float64(q.Shop.ReceiverTemp) },
	}
	LineTemp = &Field{
		Name: "line-temp", Read: amount, Of: [2]*unit.Quantity{unit.Temperature}, Bounds: [2]*calc.Bound{&lineHeat}, Default: ShopOrOut, Part: PartSupply,
		Counts: func(q *calc.Request) float64 { return float64(q.Shop.LineTemp) },
	}
)

// supplyRows is what a plan asks of the supply.
var supplyRows = []Row{
	{Field: Compressor}, {Field: Receiver}, {Field: CutIn}, {Field: CutOut}, {Field: Main}, {Field: Other},
	{Field: SprayTime}, {Panels, "usage-plan-panels"}, {Field: Pause}, {Field: ReceiverTemp}, {Field: LineTemp},
}

// The bounds that the supply's values are held to by steps; calc/supply says what is wrong
// outside them, in its own sentences.
var (
	freeAirBound  = calc.Bound{Low: 0, High: float64(supply.HighestFlow)}
	receiverBound = calc.Bound{Low: float64(supply.SmallestReceiver), High: float64(supply.LargestReceiver)}
	cutBound      = calc.Bound{Low: float64(supply.LowestCutIn), High: float64(supply.HighestCut)}
	mainBound     = calc.Bound{Low: 0, High: float64(supply.LongestMain)}
	mainBoreBound = calc.Bound{Low: float64(supply.NarrowestMain), High: float64(supply.WidestMain)}
	dutyBound     = calc.Bound{Low: 0, High: 1}
	sprayBound    = calc.Bound{Low: 0, High: supply.MaxSpan.Seconds()}
	receiverHeat  = calc.Bound{Low: float64(supply.ColdestReceiver), High: float64(supply.HottestReceiver)}
	lineHeat      = calc.Bound{Low: float64(supply.ColdestInlet), High: float64(supply.HottestInlet)}
)

// What a supply is taken to be where only its compressor was given.
const (
	// usualSpraying is how long a panel is sprayed without a pause, from memory, not
	// verified.
	usualSpraying = unit.Seconds(3 * unit.SecondPerMinute)
	// usualPause is how long nothing is sprayed between two panels: judgement.
	usualPause = unit.Seconds(5 * unit.SecondPerMinute)
	// receiverAbove is how much warmer than the shop the air leaves the receiver, from
	// memory, not verified.
	receiverAbove = unit.TempDiff(10)
	// cutSpan is how far the compressor's switch lets the receiver fall, from memory,
	// not verified.
	cutSpan = unit.Gauge(30 * unit.PascalPerPSI)
)

// supply resolves the air upstream of the regulator.
func (v *resolver) supply(r *calc.Request) {
	if !Supplied(v.a) {
		return
	}
	s := &r.Shop
	s.Known = true
	sys := &s.System
	sys.RatedInlet = v.ratedInlet()
	sys.Rated = si[unit.Flow](v, Compressor)
	x, _ := v.a.One(Compressor)
	if hp, err := unit.Power.Read(x.Text, unit.Named); err == nil {
		s.Power = hp.SI
	}
	sys.Receiver.Volume = si[unit.Volume](v, Receiver)
	atSupply := max(r.Supply, supply.LowestCutIn)
	sys.CutOut = or(v, CutOut, max(or(v, CutIn, atSupply)+cutSpan, r.Supply))
	sys.CutIn = or(v, CutIn, min(atSupply, sys.CutOut))
	if v.has(Main) && v.a.ID(Main) != None {
		if m, ok := v.value(Main); ok {
			sys.Main = supply.Main{Length: unit.Length(m.SI[0]), Bore: unit.Length(m.SI[1])}
		}
	}
	for _, o := range v.a.Get(Other) {
		if o.Fault != nil {
			v.faults = append(v.faults, o.Fault)
			continue
		}
		sys.Others = append(sys.Others, supply.User{Flow: unit.Flow(o.SI[0]), Duty: o.SI[1], Mask: o.Word})
	}
	span := func(f *Field, usual unit.Seconds) time.Duration {
		t := min(or(v, f, usual), unit.Seconds(supply.MaxSpan.Seconds()+1))
		return time.Duration(float64(t) * float64(time.Second))
	}
	s.Spraying, s.Pause = span(SprayTime, usualSpraying), span(Pause, usualPause)
	s.Panels = 1
	if v.has(Panels) {
		s.Panels = int(si[float64](v, Panels))
	}
	s.ReceiverTemp = or(v, ReceiverTemp, r.Day.Air+unit.Temp(receiverAbove))
	s.LineTemp = or(v, LineTemp, r.Day.Air)
}

// ratedInlet is the inlet that the compressor's figure is meant for, by the unit it was typed
// in: one in litres or cubic metres is stamped by ISO 1217, one in cubic feet, and a motor's
// rule, by 14.696 psia.
func (v *resolver) ratedInlet() supply.Inlet {
	x, _ := v.a.One(Compressor)
	if r, err := unit.AirFlow.Read(x.Text, v.sys); err == nil && r.Size != unit.ANRPerSCFM {
		return supply.ISOInlet
	}
	return supply.SCFMInlet
}

// Supplied reports whether the air upstream of the regulator is checked.
func Supplied(a Answers) bool {
	return a.Has(Compressor) && a.ID(Compressor) != None
}
