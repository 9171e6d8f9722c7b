// Package learn is what readings say of a line: how far its gauges, its parts and its gun are
// off, which part is not what it is taken for, and how sure the settings are since.
//
//	l, err := learn.New(request, setup, learn.Draws, 1)
//	l.Add(learn.Reading{Still: true, Shows: []learn.Shown{{Gauge: learn.WallGauge, Pressure: wall}, {Gauge: learn.GunGauge, Pressure: gun}}})
//	fmt.Println(l.Settings().Wall, l.Nothing())
//
// Lines are drawn from what is known beforehand: each value within its tolerance, and each
// part now and then odd: clogged, undersized or not what it is called. Each draw is worked
// exactly, and weighs as much as it makes the readings likely (importance sampling: Robert and
// Casella, Monte Carlo Statistical Methods, 2004, chapter 3). What the gauges are off by is
// not drawn: given a draw it is normal, and its share is worked in closed form (Rao and
// Blackwell; a Kalman filter whose state stays the same: Särkkä, Bayesian Filtering and
// Smoothing, 2013, chapter 3). Where few draws are left that count, they are drawn again among
// themselves and moved (resample-move: Gilks and Berzuini, Journal of the Royal Statistical
// Society B 63, 2001), in steps where a reading leaves too few of them (tempering: Del Moral,
// Doucet and Jasra, the same 68, 2006).
//
// The same readings come to the same answer to the last bit, whatever the machine.
package learn
