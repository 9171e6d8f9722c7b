package supply

import "boothset/calc/unit"

// Class is a class of water in compressed air after ISO 8573-1:2010: 1 is the driest.
// Classes 1 to 6 go by the pressure dew point, 7 to 9 and X by liquid water.
type Class uint8

// ClassX is air with more liquid water in it than class 9 allows.
const ClassX Class = 10

// String is the class as the standard writes it.
func (c Class) String() string {
	const digits = "0123456789"
	if c >= ClassX {
		return "X"
	}
	return digits[c : c+1]
}

// dewPointClasses are the highest pressure dew points of classes 1 to 6, C.
var dewPointClasses = [...]float64{-70, -40, -20, 3, 7, 10}

// liquidClasses are the most liquid water of classes 7 to 9, g/m3 at the standard's
// reference atmosphere (20 C, 1 bar), which is ANR.
var liquidClasses = [...]float64{0.5, 5, 10}

// ClassOf is the class of air with the dew point pdp at its own pressure and so much
// liquid water, g/m3 ANR. Air without liquid that is damper than class 6 is class 7.
// Source: the tables of ISO 8573-1:2010 as reprinted by suppliers of filters.
func ClassOf(pdp unit.Temp, liquid float64) Class {
	if !(liquid > 0) {
		for i, most := range dewPointClasses {
			if pdp <= unit.Celsius(most) {
				return Class(1 + i)
			}
		}
	}
	for i, most := range liquidClasses {
		if !(liquid > most) {
			return Class(1 + len(dewPointClasses) + i)
		}
	}
	return ClassX
}
