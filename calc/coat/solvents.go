package coat

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"boothset/calc/unit"
)

// Solvent is a liquid that leaves a coat by evaporating. Take one from FindSolvent or
// Solvents: the zero value is none.
type Solvent struct {
	ID string
	// a, b, c are of log10 p = a - b/(c + T) with T in C and p in pascals.
	a, b, c float64
	// Basis is where the vapour pressure comes from.
	Basis string
	// carbon, hydrogen, oxygen and rings make the molar mass and the diffusivity.
	carbon, hydrogen, oxygen, rings float64
	// Rate is the measured evaporation rate relative to n-butyl acetate, on the scale
	// of ASTM D3539; 0 where none was found. RateBasis is where it comes from.
	Rate      float64
	RateBasis string
}

// Where the data come from, as the ids of sentences.
const (
	antoineTables = "source-antoine-tables"
	antoineBook   = "source-antoine-book"
	fromMemory    = "source-memory"
	rateGuide     = "published: a solvent supplier's guide and a glossary of evaporation rates"
)

// Antoine constants are printed for bar or for mm of mercury; these bring the first
// of them to pascals.
const (
	fromBar  = 5                 // log10 of 1e5 Pa
	fromMMHg = 2.124903082005272 // log10 of 133.322387415 Pa
)

var butylAcetate = Solvent{ID: "butyl-acetate", a: 4.1564 + fromBar, b: 1371.13, c: 204.273, Basis: antoineTables,
	carbon: 6, hydrogen: 12, oxygen: 2, Rate: 1, RateBasis: "by definition of the scale"}

var water = Solvent{ID: "water", a: 8.07131 + fromMMHg, b: 1730.63, c: 233.426, Basis: fromMemory,
	hydrogen: 2, oxygen: 1, Rate: 0.3, RateBasis: rateGuide}

// solvents are in the order of their measured rates. The constants of n-butyl acetate
// were fitted from 53 C up and of n-butanol from 37 C up: below that they are
// extrapolated, for n-butanol to 6 % below a handbook's curve at 20 C.
var solvents = []Solvent{
	{ID: "acetone", a: 4.35647 + fromBar, b: 1277.03, c: 237.23, Basis: antoineTables,
		carbon: 3, hydrogen: 6, oxygen: 1, Rate: 5.6, RateBasis: rateGuide},
	{ID: "ethyl-acetate", a: 4.21248 + fromBar, b: 1238.15, c: 217.205, Basis: antoineTables,
		carbon: 4, hydrogen: 8, oxygen: 2, Rate: 4.1, RateBasis: fromMemory},
	{ID: "mek", a: 7.06356 + fromMMHg, b: 1261.34, c: 221.969, Basis: fromMemory,
		carbon: 4, hydrogen: 8, oxygen: 1, Rate: 3.8, RateBasis: rateGuide},
	{ID: "toluene", a: 6.95464 + fromMMHg, b: 1344.8, c: 219.482, Basis: fromMemory,
		carbon: 7, hydrogen: 8, rings: 1, Rate: 1.9, RateBasis: fromMemory},
	{ID: "isopropanol", a: 5.24268 + fromBar, b: 1580.92, c: 219.61, Basis: antoineTables,
		carbon: 3, hydrogen: 8, oxygen: 1, Rate: 1.7, RateBasis: rateGuide},
	{ID: "mibk", a: 8.8222, b: 1190.6904, c: 195.45, Basis: antoineBook,
		carbon: 6, hydrogen: 12, oxygen: 1, Rate: 1.6, RateBasis: rateGuide},
	butylAcetate,
	{ID: "ethylbenzene", a: 4.0928 + fromBar, b: 1431.71, c: 214.099, Basis: antoineTables,
		carbon: 8, hydrogen: 10, rings: 1},
	{ID: "xylene", a: 4.13785 + fromBar, b: 1465.39, c: 215.512, Basis: antoineTables,
		carbon: 8, hydrogen: 10, rings: 1, Rate: 0.7, RateBasis: rateGuide},
	{ID: "butanol", a: 9.6493, b: 1395.14, c: 182.739, Basis: antoineBook,
		carbon: 4, hydrogen: 10, oxygen: 1, Rate: 0.44, RateBasis: fromMemory},
	water,
}

// Solvents lists every solvent known here, fastest first.
func Solvents() []Solvent { return slices.Clone(solvents) }

// ReferenceSolvent is the id of the solvent that a coat is taken to dry like where
// nothing better is known, and that rates are relative to.
const ReferenceSolvent = "butyl-acetate"

// UnknownSolvent says that no solvent has the id given.
type UnknownSolvent struct{ Given string }

func (e *UnknownSolvent) Error() string {
	known := make([]string, len(solvents))
	for i, s := range solvents {
		known[i] = s.ID
	}
	return "solvent " + strconv.Quote(e.Given) + ": give one of " + strings.Join(known, ", ")
}

// FindSolvent is the solvent with the id given, else an *UnknownSolvent.
func FindSolvent(id string) (Solvent, error) {
	for _, s := range solvents {
		if s.ID == id {
			return s, nil
		}
	}
	return Solvent{}, &UnknownSolvent{id}
}

// Water is what leaves a waterborne coat.
func Water() Solvent { return water }

// The span of temperatures the vapour pressures are worked at. Outside it the
// temperature is taken as the nearer end.
const coldest, hottest = unit.Temp(-40 + unit.ZeroCelsius), unit.Temp(100 + unit.ZeroCelsius)

// Saturation is the vapour pressure over the pure liquid by Antoine's equation. From
// -40 to 100 C; outside, that of the nearer end.
func (s Solvent) Saturation(t unit.Temp) unit.Abs {
	c := min(max(t, coldest), hottest).C()
	return unit.Abs(math.Exp(math.Ln10 * (s.a - s.b/(s.c+c))))
}

// MolarMass is in kg/mol, from the atoms (IUPAC abridged atomic weights).
func (s Solvent) MolarMass() float64 {
	return (12.011*s.carbon + 1.008*s.hydrogen + 15.999*s.oxygen) * 1e-3
}

// Latent is the heat of vaporization, J/kg, that the slope of the vapour pressure
// implies (Clausius and Clapeyron, vapour as an ideal gas). Temperatures as Saturation.
func (s Solvent) Latent(t unit.Temp) float64 {
	t = min(max(t, coldest), hottest)
	d := s.c + t.C()
	return gasConstant * float64(t) * float64(t) * math.Ln10 * s.b / (d * d) / s.MolarMass()
}

// Diffusivity is that of the vapour in air, m2/s, at temperature t and pressure p, by
// the method of atomic diffusion volumes (Fuller, Schettler and Giddings), good to
// about 10 %. The temperature is bounded as for Saturation, the pressure to 0.1 bar
// and more.
func (s Solvent) Diffusivity(t unit.Temp, p unit.Abs) float64 {
	volume := 15.9*s.carbon + 2.31*s.hydrogen + 6.11*s.oxygen - 18.3*s.rings
	if s.carbon == 0 {
		volume = 13.1 // water has a value of its own
	}
	const airVolume, airMass = 19.7, 28.96
	mass := 2 / (1/(s.MolarMass()*1e3) + 1/airMass)
	size := math.Cbrt(volume) + math.Cbrt(airVolume)
	k := float64(min(max(t, coldest), hottest))
	return 1.43e-7 * k * math.Sqrt(k) * math.Sqrt(math.Sqrt(k)) / (max(p.Bar(), 0.1) * math.Sqrt(mass) * size * size)
}
