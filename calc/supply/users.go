package supply

import "boothset/calc/unit"

// User is another gun or tool on the same receiver. The duty suits one that runs in short
// bursts, which the receiver evens out: one that runs for minutes on end has duty 1.
type User struct {
	Flow unit.Flow // while it runs
	Duty float64   // the share of the time it runs, 0..1
	Mask bool      // an air-fed mask: somebody breathes it
}

// Demand is what is drawn from the receiver.
type Demand struct {
	Mean unit.Flow // over minutes: what empties the receiver
	Peak unit.Flow // with all that ever runs running at once: what the main must pass
}

// Total is the demand of a gun that sprays without a pause and of the others beside it.
// Error where a flow is negative or above 2.1 m3/s, alone or in sum, or a duty outside 0..1.
func Total(gun unit.Flow, others []User) (Demand, error) {
	if err := checkFlow(FieldGunAir, gun); err != nil {
		return Demand{}, err
	}
	d := Demand{gun, gun}
	for _, u := range others {
		err := firstOf(
			checkFlow(FieldUserAir, u.Flow),
			within(FieldUserDuty, u.Duty*100, 0, 100, "%"),
		)
		if err != nil {
			return Demand{}, err
		}
		d.Mean += unit.Flow(float64(u.Flow) * u.Duty)
		if u.Duty > 0 {
			d.Peak += u.Flow
		}
	}
	if err := checkFlow(FieldAllAir, d.Peak); err != nil {
		return Demand{}, err
	}
	return d, nil
}
