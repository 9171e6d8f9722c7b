package supply

import "boothset/calc/unit"

// Inlet is the air a compressor swallows.
type Inlet struct {
	Ambient unit.Abs
	Temp    unit.Temp
}

// ISOInlet is the inlet of a stamp in litres a minute, and SCFMInlet that of a stamp in
// scfm. The first is the standard inlet of ISO 1217 (1 bar, 20 C; from memory, not
// verified), the second 14.696 psia and 68 F.
var (
	ISOInlet  = Inlet{unit.ANRPressure, unit.ANRTemperature}
	SCFMInlet = Inlet{unit.SCFMPressure, unit.ANRTemperature}
)

// Bounds of the air outside: about 5700 m up to below the sea, frost to a hot shed.
var (
	lowestAmbient, highestAmbient = unit.Abs(50e3), unit.Abs(115e3)
	ColdestInlet, HottestInlet    = unit.Celsius(-40), unit.Celsius(60)
)

func (in Inlet) check(field string) error {
	return firstOf(
		within(field, float64(in.Ambient)/1e3, float64(lowestAmbient)/1e3, float64(highestAmbient)/1e3, "kPa ambient"),
		within(field, in.Temp.C(), ColdestInlet.C(), HottestInlet.C(), "C"),
	)
}

// HighestFlow is above any compressor or user of a body shop, m3/s (4440 scfm).
const HighestFlow = unit.Flow(2.123)

func checkFlow(field string, q unit.Flow) error {
	return within(field, q.SCFM(), 0, HighestFlow.SCFM(), "scfm")
}

// FreeAir is what a displacement compressor delivers with the inlet now, given what it
// delivers with the inlet rated. The machine swallows the same volume each turn, so its
// air goes as the density at the inlet:
//
//	q = q_rated (p/p_rated) (T_rated/T)
//
// It is an upper bound at altitude: a piston's dead space takes a little more as the
// pressure ratio rises. The trade's rule is 4 % less for each 1000 ft (common practice;
// the density alone is 3.6 % over the first). A flow above 2.1 m3/s, an ambient outside
// 50 to 115 kPa or an inlet outside -40 to 60 C is an error.
func FreeAir(q unit.Flow, rated, now Inlet) (unit.Flow, error) {
	err := firstOf(checkFlow(FieldFreeAir, q), rated.check(FieldRatedInlet), now.check(FieldInlet))
	if err != nil {
		return 0, err
	}
	return unit.Flow(float64(q) * float64(now.Ambient/rated.Ambient) * float64(rated.Temp/now.Temp)), nil
}

// SmallMotor is the power, hp, under which a compressor is a small one.
const SmallMotor = 5.0

// FromPower is what a motor of so many horsepower is likely to deliver at 100 psig and
// sea level: from 5 hp on 4 to 5 scfm a horsepower (a rule of thumb that compressor guides
// publish; an ideal two-stage machine would make 6.5), under that 3 to 3.5 (an estimate:
// small machines have one stage and more dead space). A plate's horsepower is often more than
// the motor can give for long; a pump-up test is surer. Error outside 0.1 to 500 hp.
func FromPower(horsepower float64) (low, high unit.Flow, err error) {
	if err := within(FieldPower, horsepower, 0.1, 500, "hp"); err != nil {
		return 0, 0, err
	}
	if horsepower < SmallMotor {
		return unit.SCFM(3 * horsepower), unit.SCFM(3.5 * horsepower), nil
	}
	return unit.SCFM(4 * horsepower), unit.SCFM(5 * horsepower), nil
}
