package trouble

// Move is the kind of thing that mends a cause. Those on air, day, thinning and film are worked
// out again for the job; the others are only said.
type Move string

// The moves.
const (
	MoveSaid     Move = "said"
	MoveLower    Move = "lower"    // the pressure
	MoveRaise    Move = "raise"    // the pressure
	MoveOpen     Move = "open"     // the inlet valve, and the wall as planned
	MoveLine     Move = "line"     // the part of the line that wins most
	MoveSupply   Move = "supply"   // what makes the supply last
	MoveDistance Move = "distance" // as planned
	MoveDay      Move = "day"      // panel, paint or air brought to where the day goes
	MoveGrade    Move = "grade"    // the thinner that the day wants
	MoveThin     Move = "thin"     // the mix brought to its sheet's viscosity
	MoveFilm     Move = "film"     // the coats still to come
)
