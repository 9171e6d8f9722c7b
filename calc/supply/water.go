package supply

import (
	"boothset/calc/air"
	"boothset/calc/unit"
)

// Damp is what decides where the water in compressed air ends up.
type Damp struct {
	Inlet    Inlet   // the air swallowed; its ambient is that of every gauge
	Humidity float64 // of that air, 0..1 of saturation

	Receiver     unit.Gauge // in the receiver; cut-in leaves most water in the air
	ReceiverTemp unit.Temp  // of the air as it leaves the receiver, or its aftercooler
	Main         unit.Temp  // of the pipe where it is coldest
	Spraying     unit.Gauge // past the wall regulator
	Hose         unit.Temp
	Flow         unit.Flow // through the main and the hose: the gun's air
	Dryer        Dryer
}

// Dryer is a dryer past the main.
type Dryer struct {
	Is       bool
	DewPoint unit.Temp  // it dries to, at its own pressure
	At       unit.Gauge // its pressure
	PastHose bool       // it stands at the end of the hose, not before it
}

// Place is the last place where water turns liquid on its way to the gun.
type Place uint8

// The places, from the compressor on.
const (
	StaysVapour Place = iota
	AtReceiver        // drained there
	AtMain            // past the receiver: the trap at the wall must take it
	AtDryer           // it drains there, or stays in its desiccant
	AtHose            // past every trap: it is sprayed
)

// Water is where the water goes.
type Water struct {
	Compressed unit.Temp // pressure dew point after the compressor, before any has dropped out
	Leaving    unit.Temp // the same past the receiver: at most the receiver's temperature
	AtWall     unit.Temp // the same at the end of the main
	Sprayed    unit.Temp // dew point at the spraying pressure

	InReceiver, InMain, InDryer, InHose unit.MassFlow // turning liquid there, kg/s
	Last                                Place

	Class Class // of the air as it reaches the wall with nothing drained from the main, or past a dryer
}

// Follow takes the gun's air from the compressor's inlet to its hose and drops out the
// water it cannot hold at each place. With the same water in it, the vapour's pressure
// goes with the whole pressure, pw2 = pw1 p2/p1; where that is above saturation at the
// place's temperature, the difference of the humidity ratios turns liquid (ice, below
// 0 C). Air is taken to reach the temperature of receiver, pipe and hose, and the main at
// the receiver's pressure. Liquid is per dry air at the nominal density of ANR, within 2 %.
// Source: ASHRAE Handbook of Fundamentals, psychrometrics; see package air.
//
// A dryer brings the air to its pressure dew point, whatever comes to it.
//
// Error where a figure is out of range: the inlet as in FreeAir, humidity 1 to 100 %,
// receiver 0 to 500 psi and -40 to 100 C, main and hose -40 to 60 C, spraying 0 psi to the
// receiver's, flow 0 to 2.1 m3/s, a dryer 0 psi to the receiver's and -100 to 60 C.
func (d Damp) Follow() (Water, error) {
	err := firstOf(d.Inlet.check(FieldInlet),
		within(FieldHumidity, d.Humidity*100, 1, 100, "%"),
		within(FieldReceiverPressure, d.Receiver.PSI(), 0, HighestCut.PSI(), "psi"),
		within(FieldReceiverTemp, d.ReceiverTemp.C(), ColdestReceiver.C(), HottestReceiver.C(), "C"),
		within(FieldMainTemp, d.Main.C(), ColdestInlet.C(), HottestInlet.C(), "C"),
		within(FieldHoseTemp, d.Hose.C(), ColdestInlet.C(), HottestInlet.C(), "C"),
		within(FieldSprayingPressure, d.Spraying.PSI(), 0, d.Receiver.PSI(), "psi"),
		checkFlow(FieldGunAir, d.Flow),
	)
	if err != nil {
		return Water{}, err
	}
	if err := d.Dryer.check(d.Receiver); err != nil {
		return Water{}, err
	}
	line, spraying := d.Receiver.Abs(d.Inlet.Ambient), d.Spraying.Abs(d.Inlet.Ambient)
	var w Water

	damp := moist{air.VapourPressure(d.Inlet.Temp, d.Humidity), d.Inlet.Ambient}.at(line)
	w.Compressed = damp.dewPoint()
	damp, receiver := damp.cooled(d.ReceiverTemp)
	w.Leaving = damp.dewPoint()
	damp, main := damp.cooled(d.Main)
	w.AtWall = damp.dewPoint()
	const gPerKg = 1e3
	w.Class = ClassOf(w.AtWall, main*unit.ANRDensity*gPerKg)
	var dried, hose float64
	dry := func() {
		if d.Dryer.Is {
			damp, dried = damp.at(d.Dryer.At.Abs(d.Inlet.Ambient)).cooled(d.Dryer.DewPoint)
			w.Class = ClassOf(damp.dewPoint(), 0)
		}
	}
	if !d.Dryer.PastHose {
		dry()
	}
	damp = damp.at(spraying)
	w.Sprayed = damp.dewPoint()
	if _, hose = damp.cooled(d.Hose); d.Dryer.PastHose {
		dry()
		w.Sprayed = damp.at(spraying).dewPoint()
	}

	mass := float64(d.Flow.Mass())
	w.InReceiver, w.InMain = unit.MassFlow(receiver*mass), unit.MassFlow(main*mass)
	w.InDryer, w.InHose = unit.MassFlow(dried*mass), unit.MassFlow(hose*mass)
	switch {
	case hose > 0:
		w.Last = AtHose
	case dried > 0:
		w.Last = AtDryer
	case main > 0:
		w.Last = AtMain
	case receiver > 0:
		w.Last = AtReceiver
	}
	return w, nil
}

// check is what is wrong with a dryer past a receiver.
func (d *Dryer) check(receiver unit.Gauge) error {
	if !d.Is {
		return nil
	}
	return firstOf(
		within(FieldDryerPressure, d.At.PSI(), 0, receiver.PSI(), "psi"),
		within(FieldDryerDewPoint, d.DewPoint.C(), -100, HottestInlet.C(), "C"),
	)
}

// moist is air by the pressure of its vapour and the whole pressure.
type moist struct{ vapour, whole unit.Abs }

// at is the same air brought to another pressure.
func (m moist) at(p unit.Abs) moist { return moist{m.vapour * p / m.whole, p} }

func (m moist) dewPoint() unit.Temp { return air.VapourDewPoint(m.vapour) }

// cooled is the air once it is at t, and the liquid that leaves it, kg for each kg of dry air.
func (m moist) cooled(t unit.Temp) (moist, float64) {
	most := air.SaturationPressure(t)
	if m.vapour <= most {
		return m, 0
	}
	return moist{most, m.whole}, air.VapourRatio(m.vapour, m.whole) - air.VapourRatio(most, m.whole)
}
