// Package supply is the air before the wall regulator: compressor, receiver, other
// users and the main. It answers whether the supply holds what the wall needs for as
// long as a panel takes, and where the water in the compressed air drops out.
//
//	verdict, err := supply.Check(system, gunFlow, needed, 4*time.Minute)
//
// The receiver is isothermal and the flows are steady. Where a function takes no
// error it clamps, and says to what; given finite input nothing here returns NaN or
// an infinity.
package supply
