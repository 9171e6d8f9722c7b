// Package spread is how sure a setup is: the request is worked again and again with
// everything off within its tolerance, and the bounds are read off the order of what
// comes out.
//
//	s := spread.Of(request, setup)
//	fmt.Println(s.Wall.Low.PSI(), s.Wall.High.PSI(), s.Causes[0].ID)
//
// The bounds are those between which 80 % lie: JCGM 101:2008 (the Monte Carlo supplement
// to the guide to the expression of uncertainty in measurement, GUM), clause 7. Each
// tolerance is two standard deviations of a normal distribution. The draws are a lattice
// instead of random ones: see lattice.
//
// A cause's share is what the first two Hermite polynomials in its deviation explain of
// the variance: the index of first order by a polynomial chaos expansion (Sudret, Global
// sensitivity analysis using polynomial chaos expansions, Reliability Engineering & System
// Safety 93, 2008). What would be left were it known follows by the law of propagation of
// uncertainty: variances are added, GUM (JCGM 100:2008) 5.1.2.
package spread
