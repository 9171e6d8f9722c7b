package coat

import (
	"math"
	"time"

	"boothset/calc/unit"
)

// PotLife is how long a mixed coat can be used. Life is the rule's; Safe is the
// shortest that published figures of real products give.
type PotLife struct{ Life, Safe time.Duration }

// The factors a pot life changes by over 10 C. The rule of thumb halves it (a US
// federal guide specification and two makers' pages). Products scatter: an epoxy
// primer's 48, 24 and 8 h at 7, 20 and 30 C are a factor of 3 going up and of
// 2^(1/1.3) going down, which bound the safe life.
const (
	ruleFactor = 2.0
	hotFactor  = 3.0
	coldFactor = 1.7
)

// PotLifeAt is the pot life at temperature t of a mix whose sheet gives life at
// temperature at (mostly 20 C): life 2^((at - t)/10 C). Both temperatures from 5 to
// 40 C, life from a minute to a week; else an error. Humidity and a large batch shorten
// it further, and some mixes do not thicken when it ends: time it.
func PotLifeAt(life time.Duration, at, t unit.Temp) (PotLife, error) {
	if err := first(
		within("pot-life", life.Minutes(), 1, 7*24*60, "min"),
		within("sheet-temperature", at.C(), 5, 40, "C"),
		within("mix-temperature", t.C(), 5, 40, "C"),
	); err != nil {
		return PotLife{}, err
	}
	steps := float64(at-t) / 10
	safe := hotFactor
	if steps > 0 {
		safe = coldFactor
	}
	scaled := func(factor float64) time.Duration {
		return time.Duration(float64(life) * math.Pow(factor, steps)).Round(time.Second)
	}
	return PotLife{scaled(ruleFactor), scaled(safe)}, nil
}
