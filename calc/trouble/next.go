package trouble

import (
	"math"
	"slices"
	"time"
)

// Next is the check to make next.
type Next struct {
	*Check
	// Moves is how much probability it is expected to move from cause to cause, 0 to 1.
	Moves float64
}

// leastMoves is the least that a check must be expected to move to be worth its time:
// judgement.
const leastMoves = 0.02

// next is the check that moves the most probability a minute, of those not made yet; nil where
// none moves enough. Heckerman, Breese and Rommelse 1995 (Decision-theoretic troubleshooting)
// look first where probability over cost is highest. A check here may tell several causes apart
// and may be wrong, so its probability is what its findings are expected to move: for one that
// shows a single cause p and is always right, 2p(1 - p), the same order for causes that are not
// known yet.
func (b *Book) next(k *Known, r *Ranking) (best *Next) {
	for i := range b.Checks {
		c := &b.Checks[i]
		if slices.ContainsFunc(k.Found, func(f Found) bool { return f.Check == c.ID }) {
			continue
		}
		moves := c.moves(r)
		if moves >= leastMoves && (best == nil || perMinute(moves, c.Takes) > perMinute(best.Moves, best.Takes)) {
			best = &Next{c, moves}
		}
	}
	return best
}

func perMinute(moves float64, takes time.Duration) float64 { return moves / takes.Minutes() }

// moves is the probability that the check is expected to move: over its findings, each as
// often as it is to be found, half of what the probabilities change by.
func (c *Check) moves(r *Ranking) (moved float64) {
	for _, f := range c.Findings {
		is := r.None * c.Finds(f.ID, "")
		for i := range r.Causes {
			is += r.Causes[i].P * c.Finds(f.ID, r.Causes[i].ID)
		}
		change := math.Abs(r.None*c.Finds(f.ID, "") - r.None*is)
		for i := range r.Causes {
			p := r.Causes[i].P
			change += math.Abs(p*c.Finds(f.ID, r.Causes[i].ID) - p*is)
		}
		moved += change / 2
	}
	return moved
}
