// Package coat works out what happens to the coating itself: how thick it is and
// how warming and thinning change that, how fast it dries on the way to the panel
// and on it, what film a pass leaves, and how much of it a job needs.
//
// Everything is a plain computation on quantities in SI. Physical constants of cups
// and solvents are data of this package; what a product's sheet says (solids, film,
// ratios, pot life) comes from the caller. For example, 18 s in the 4 mm cup of
// DIN 53211:
//
//	cup, err := coat.FindCup("din4")
//	v, err := cup.Viscosity(18) // about 57 mm2/s, marked About: the cup starts at 25 s
//
// A figure that cannot be used comes back as an error that names it, with what was
// given and what would do. Finite input never gives NaN or an infinity.
package coat
