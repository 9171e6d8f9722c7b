package supply_test

import (
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"boothset/calc/supply"
	"boothset/calc/unit"
)

// bound is the range of one figure as the doc comment of what takes it names it, in the
// unit that the error gives.
type bound struct {
	field, unit string
	low, high   float64
	try         func(float64) error
}

// check takes a figure at either end and refuses it a millionth of the range beyond, with
// the bounds in the error.
func (b bound) check(t *testing.T) {
	t.Helper()
	span := b.high - b.low
	var in *supply.InputError
	for _, v := range []float64{b.low + 1e-9*span, b.high - 1e-9*span} {
		assert.False(t, errors.As(b.try(v), &in) && in.Field == b.field, "%s %v", b.field, v)
	}
	for _, v := range []float64{b.low - 1e-6*span, b.high + 1e-6*span} {
		if assert.ErrorAs(t, b.try(v), &in, "%s %v", b.field, v) {
			assert.Equal(t, b.field, in.Field)
			assert.Equal(t, "outside-unit", in.ID)
			assert.Equal(t, b.unit, in.Unit)
			assert.InDelta(t, v, in.Given, 1e-9*span, b.field)
			assert.InDelta(t, b.low, in.Low, 1e-9*span, b.field)
			assert.InDelta(t, b.high, in.High, 1e-9*span, b.field)
		}
	}
}

func TestRangesOfWater(t *testing.T) {
	follow := func(change func(*supply.Damp, float64)) func(float64) error {
		return func(v float64) error {
			d := damp(20, 50, 7, 25)
			change(&d, v)
			w, err := d.Follow()
			if err != nil {
				assert.Zero(t, w)
			}
			return err
		}
	}
	highest := unit.Flow(2.123).SCFM()
	seven := unit.BarG(7).PSI()
	for _, b := range []bound{
		{supply.FieldInlet, "kPa ambient", 50, 115, follow(func(d *supply.Damp, v float64) { d.Inlet.Ambient = unit.Abs(v * 1e3) })},
		{supply.FieldInlet, "C", -40, 60, follow(func(d *supply.Damp, v float64) { d.Inlet.Temp = unit.Celsius(v) })},
		{supply.FieldHumidity, "%", 1, 100, follow(func(d *supply.Damp, v float64) { d.Humidity = v / 100 })},
		{supply.FieldReceiverPressure, "psi", 0, 500, follow(func(d *supply.Damp, v float64) { d.Receiver, d.Spraying = unit.PSIG(v), 0 })},
		{supply.FieldReceiverTemp, "C", -40, 100, follow(func(d *supply.Damp, v float64) { d.ReceiverTemp = unit.Celsius(v) })},
		{supply.FieldMainTemp, "C", -40, 60, follow(func(d *supply.Damp, v float64) { d.Main = unit.Celsius(v) })},
		{supply.FieldHoseTemp, "C", -40, 60, follow(func(d *supply.Damp, v float64) { d.Hose = unit.Celsius(v) })},
		{supply.FieldSprayingPressure, "psi", 0, seven, follow(func(d *supply.Damp, v float64) { d.Spraying = unit.PSIG(v) })},
		{supply.FieldGunAir, "scfm", 0, highest, follow(func(d *supply.Damp, v float64) { d.Flow = unit.SCFM(v) })},
	} {
		b.check(t)
	}
	assert.InEpsilon(t, 4440, unit.Flow(2.123).SCFM(), 1e-3, "as its comment says")
}

func TestRangesOfCompressorAndUsers(t *testing.T) {
	highest := unit.Flow(2.123).SCFM()
	free := func(q unit.Flow, rated, now supply.Inlet) error {
		got, err := supply.FreeAir(q, rated, now)
		if err != nil {
			assert.Zero(t, got)
		}
		return err
	}
	good := supply.SCFMInlet
	total := func(gun unit.Flow, others ...supply.User) error {
		d, err := supply.Total(gun, others)
		if err != nil {
			assert.Zero(t, d)
		}
		return err
	}
	for _, b := range []bound{
		{supply.FieldFreeAir, "scfm", 0, highest, func(v float64) error { return free(unit.SCFM(v), good, good) }},
		{supply.FieldRatedInlet, "kPa ambient", 50, 115, func(v float64) error { return free(1e-3, supply.Inlet{Ambient: unit.Abs(v * 1e3), Temp: 293}, good) }},
		{supply.FieldInlet, "kPa ambient", 50, 115, func(v float64) error { return free(1e-3, good, supply.Inlet{Ambient: unit.Abs(v * 1e3), Temp: 293}) }},
		{supply.FieldRatedInlet, "C", -40, 60, func(v float64) error { return free(1e-3, supply.Inlet{Ambient: 1e5, Temp: unit.Celsius(v)}, good) }},
		{supply.FieldInlet, "C", -40, 60, func(v float64) error { return free(1e-3, good, supply.Inlet{Ambient: 1e5, Temp: unit.Celsius(v)}) }},
		{supply.FieldPower, "hp", 0.1, 500, func(v float64) error {
			low, high, err := supply.FromPower(v)
			if err != nil {
				assert.Zero(t, low+high)
			}
			return err
		}},
		{supply.FieldGunAir, "scfm", 0, highest, func(v float64) error { return total(unit.SCFM(v)) }},
		{supply.FieldUserAir, "scfm", 0, highest, func(v float64) error { return total(0, supply.User{Flow: unit.SCFM(v), Duty: 1}) }},
		{supply.FieldUserDuty, "%", 0, 100, func(v float64) error { return total(0, supply.User{Flow: unit.SCFM(1), Duty: v / 100}) }},
	} {
		b.check(t)
	}
	err := total(1.1, supply.User{Flow: 1.1, Duty: 0.1})
	assert.ErrorContains(t, err, supply.FieldAllAir)
}

func TestRangesOfReceiverAndMain(t *testing.T) {
	r := receiver(60)
	delivered := func(psi, seconds float64) error {
		q, err := r.Delivered(unit.PSIDrop(psi), time.Duration(seconds*float64(time.Second)))
		if err != nil {
			assert.Zero(t, q)
		}
		return err
	}
	drop := func(m supply.Main, q unit.Flow, inlet unit.Abs) error {
		d, err := m.Drop(q, inlet)
		if err != nil {
			assert.Zero(t, d)
		}
		return err
	}
	short := supply.Main{Length: 10, Bore: 0.02}
	for _, b := range []bound{
		{supply.FieldRise, "psi", 1, 500, func(v float64) error { return delivered(v, 60) }},
		{supply.FieldPumpUp, "s", 1, 24 * 3600, func(v float64) error { return delivered(17, v) }},
		{supply.FieldMainBore, "mm", 5, 200, func(v float64) error { return drop(supply.Main{Length: 0.01, Bore: unit.MM(v)}, 1e-3, 8e5) }},
		{supply.FieldMainFlow, "scfm", 0, unit.Flow(2.123).SCFM(), func(v float64) error { return drop(supply.Main{Length: 1, Bore: 0.2}, unit.SCFM(v), 8e5) }},
		{supply.FieldMainInlet, "bar absolute", 0.5, 1000, func(v float64) error { return drop(short, 1e-4, unit.Abs(v*1e5)) }},
	} {
		b.check(t)
	}
	assert.NoError(t, drop(supply.Main{Length: 2000, Bore: 0.1}, 1e-3, 8e5))
	assert.ErrorContains(t, drop(supply.Main{Length: 2000.1, Bore: 0.1}, 1e-3, 8e5), supply.FieldMainLength)
	assert.ErrorContains(t, drop(supply.Main{Length: -0.1, Bore: 0.1}, 1e-3, 8e5), supply.FieldMainLength)

	for fall, id := range map[float64]string{0: "nothing-to-give", -1: "nothing-to-give", 1e-9: "no-such-receiver"} {
		v, err := supply.ReceiverFor(unit.SCFM(20), unit.SCFM(5), time.Minute, unit.PSIDrop(fall), 0)
		var in *supply.InputError
		require.ErrorAs(t, err, &in)
		assert.Equal(t, id, in.ID)
		assert.Zero(t, v)
		assert.Zero(t, in.Low)
	}
	// 1000 m3 is the largest there is: 1 m3/s ANR for 1000 s at a fall of 1 bar.
	v, err := supply.ReceiverFor(1, 0, 1000*time.Second, unit.Drop(1e5), 0)
	require.NoError(t, err)
	assert.InEpsilon(t, 1000, float64(v), 1e-12)
	_, err = supply.ReceiverFor(1, 0, 1001*time.Second, unit.Drop(1e5), 0)
	assert.ErrorContains(t, err, "no-such-receiver")
	// And a litre the smallest.
	v, err = supply.ReceiverFor(1e-6, 0, time.Second, unit.Drop(1e5), 0)
	require.NoError(t, err)
	assert.InEpsilon(t, 1e-3, float64(v), 1e-12)
}

func TestRangesOfASystem(t *testing.T) {
	of := func(change func(*supply.System, float64)) func(float64) error {
		return func(v float64) error {
			s := shop()
			s.Main = supply.Main{}
			change(&s, v)
			got, err := supply.Check(s, unit.SCFM(5), unit.PSIG(20), time.Minute)
			if err != nil {
				assert.Zero(t, got)
			}
			return err
		}
	}
	ask := func(psi, minutes float64) error {
		_, err := supply.Check(shop(), unit.SCFM(5), unit.PSIG(psi), time.Duration(minutes*float64(time.Minute)))
		return err
	}
	for _, b := range []bound{
		{supply.FieldReceiver, "L", 1, 1e6, of(func(s *supply.System, v float64) { s.Receiver.Volume = unit.Litres(v) })},
		{supply.FieldReceiverTemp, "C", -40, 100, of(func(s *supply.System, v float64) { s.Receiver.Temp = unit.Celsius(v) })},
		{supply.FieldCutIn, "psi", 5, 500, of(func(s *supply.System, v float64) { s.CutIn, s.CutOut = unit.PSIG(v), max(unit.PSIG(v), unit.PSIG(499)) })},
		{supply.FieldCutOut, "psi", 90, 500, of(func(s *supply.System, v float64) { s.CutOut = unit.PSIG(v) })},
		{supply.FieldRatedInlet, "C", -40, 60, of(func(s *supply.System, v float64) { s.RatedInlet.Temp = unit.Celsius(v) })},
		{supply.FieldInlet, "C", -40, 60, of(func(s *supply.System, v float64) { s.Inlet.Temp = unit.Celsius(v) })},
		{supply.FieldNeeded, "psi", 0, 500, func(v float64) error { return ask(v, 1) }},
		{supply.FieldSprayingTime, "min", 0, 24 * 60, func(v float64) error { return ask(20, v) }},
	} {
		b.check(t)
	}
}
