package coat

import (
	"boothset/calc/air"
	"boothset/calc/unit"
)

// WaterDrive is how fast a waterborne coat dries in air of temperature t (-10 to 60 C),
// relative humidity rh (0 to 1) and pressure p (0.5 to 1.2 bar), relative to the
// reference day. A wet film that is given its heat by the air sits at the wet bulb, so
// the drive is what the vapour there exceeds the air's own by, and thinner air takes it the
// more readily. It is 0 in saturated
// air. In air so cold and dry that the bulb freezes it is that of ice, 5 % lower.
// An error outside those ranges.
func WaterDrive(t unit.Temp, rh float64, p unit.Abs) (float64, error) {
	if err := first(within("air-temperature", t.C(), -10, 60, "C"), share("humidity", rh, 0, 1), within("air-pressure", p.Bar(), 0.5, 1.2, "bar")); err != nil {
		return 0, err
	}
	return waterExcess(t, rh, p) / waterExcess(ReferenceTemp, ReferenceHumidity, ReferencePressure) * thinAir(p), nil
}

func waterExcess(t unit.Temp, rh float64, p unit.Abs) float64 {
	bulb := air.WetBulb(t, rh, p)
	return max(0, float64(air.SaturationPressure(bulb))-float64(air.VapourPressure(t, rh)))
}
