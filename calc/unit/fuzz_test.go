package unit_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"boothset/calc/unit"
)

// fuzzRead feeds anything at all to a quantity: it gives a finite value, or a
// *ParseError and zero; it never panics. What it accepts is at most 32
// characters of ASCII, degree signs and the accents of Spanish names, once folded.
func fuzzRead(f *testing.F, of *unit.Quantity) {
	for _, s := range []string{
		"nan", "inf", "-Inf", "0x10p0", "1_000", "1e5", "1,5", "1,500", "--5", "5-", "½", "٣", "-0", "1/0", "",
		"90psi", "6 bar", "24°C", "75 deg f", "3/8\"", "1-1/2 in", "25'", "10 cfm", "300 L/min", "45%",
		"32 fl. oz.", "20 sq ft", "18.5 s", "60mm2/s", "3/8 pulg", "25 pies", "1 galón", "2 litros", "24 grados C", "24 centígrados", "10 milímetros", "2 milésimas", "45 por ciento", "3 minutos", "24ºC", "⅜in", "１½″", "−5℃", strings.Repeat("9", 33), strings.Repeat("1/", 5000), "\xff\xfe",
	} {
		for _, sys := range []uint8{0, 1, 2} {
			f.Add(s, sys)
		}
	}
	f.Fuzz(func(t *testing.T, s string, sys uint8) {
		v, err := unit.Parse[float64](of, s, unit.System(sys%3)-1)
		if math.IsNaN(v) || math.IsInf(v, 0) {
			t.Fatalf("%q gave %v", s, v)
		}
		if err == nil {
			typed := strings.Trim(strings.NewReplacer("°", "o", "é", "e", "í", "i", "ó", "o").Replace(unit.Fold(s)), " \t\r\n")
			for i := range len(typed) {
				if typed[i] >= 0x80 || typed[i] < ' ' && typed[i] != '\t' {
					t.Fatalf("%q was accepted as %v", s, v)
				}
			}
			if len(typed) > 32 || !strings.ContainsAny(typed, "0123456789") {
				t.Fatalf("%q was accepted as %v", s, v)
			}
			return
		}
		var pe *unit.ParseError
		if !errors.As(err, &pe) || v != 0 || pe.Quantity == "" || pe.ID == "" {
			t.Fatalf("%q gave %v, %v", s, v, err)
		}
	})
}

func FuzzReadPressure(f *testing.F)              { fuzzRead(f, unit.Pressure) }
func FuzzReadTemperature(f *testing.F)           { fuzzRead(f, unit.Temperature) }
func FuzzReadTemperatureDifference(f *testing.F) { fuzzRead(f, unit.TemperatureDifference) }
func FuzzReadDistance(f *testing.F)              { fuzzRead(f, unit.Distance) }
func FuzzReadAirFlow(f *testing.F)               { fuzzRead(f, unit.AirFlow) }
func FuzzReadTank(f *testing.F)                  { fuzzRead(f, unit.Tank) }
func FuzzReadSurface(f *testing.F)               { fuzzRead(f, unit.Surface) }
func FuzzReadCupTime(f *testing.F)               { fuzzRead(f, unit.CupTime) }
func FuzzReadShare(f *testing.F)                 { fuzzRead(f, unit.Share) }
func FuzzReadViscosity(f *testing.F)             { fuzzRead(f, unit.Viscosity) }
func FuzzReadFluidFlow(f *testing.F)             { fuzzRead(f, unit.FluidFlow) }
func FuzzReadVelocity(f *testing.F)              { fuzzRead(f, unit.Velocity) }
