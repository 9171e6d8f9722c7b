package gun

// Fault is what is wrong with a gun: the sentence that says so, and what it speaks of.
type Fault struct {
	ID    string
	Stamp Stamp
	Ratio float64 // the valve's critical ratio
}

func (e *Fault) Error() string { return "gun: " + e.ID }
