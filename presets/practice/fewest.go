package practice

import (
	"math"
	"math/bits"
	"slices"
	"time"
)

// readings is some of a booth's readings, a bit each.
type readings uint64

// set is readings as a set.
func (f *Find) set(of []Reading) (set readings) {
	for _, r := range of {
		if i := slices.Index(f.Readings, r); i >= 0 {
			set |= 1 << i
		}
	}
	return set
}

// chosen is the readings of a set.
func (f *Find) chosen(set readings) (all []Reading) {
	for ; set != 0; set &= set - 1 {
		all = append(all, f.Readings[bits.TrailingZeros64(uint64(set))])
	}
	return all
}

// takes is how long a set takes.
func (f *Find) takes(set readings) (sum time.Duration) {
	for _, r := range f.chosen(set) {
		sum += f.Takes(r)
	}
	return sum
}

// fewest tries every choice of readings, the smallest first: those that tell what is there from
// every state of another cause, of as many those that take least time; nil where all of them
// do not.
func (f *Find) fewest() []Reading {
	var others []readings
	for i := range f.states {
		if s := &f.states[i]; s.Cause != f.Cause {
			others = append(others, f.toldBy(s))
		}
	}
	tells := func(set readings) bool {
		return !slices.ContainsFunc(others, func(by readings) bool { return by&set == 0 })
	}
	if !tells(f.set(f.Readings)) {
		return nil
	}
	for n := 1; n <= len(f.Readings); n++ {
		best, least := readings(0), time.Duration(0)
		for set := range choices(len(f.Readings), n) {
			if !tells(set) {
				continue
			}
			if takes := f.takes(set); best == 0 || takes < least {
				best, least = set, takes
			}
		}
		if best != 0 {
			return f.chosen(best)
		}
	}
	return nil
}

// choices is every set of n of so many readings.
func choices(of, n int) func(yield func(readings) bool) {
	return func(yield func(readings) bool) {
		last := readings(1)<<of - 1
		for set := readings(1)<<n - 1; set <= last; {
			if !yield(set) {
				return
			}
			// The next number with as many bits.
			low := set & -set
			high := set + low
			set = high | (set^high)/low>>2
		}
	}
}

// order is the readings that one takes who does not know the cause: each time the one that is
// expected to rule out most for its time, all causes being as likely beforehand, until one is
// left.
func (f *Find) order() (order []Reading) {
	left := f.states
	for len(causesOf(left)) > 1 {
		best, most := -1, 0.0
		for i, r := range f.Readings {
			if slices.Contains(order, r) {
				continue
			}
			if gain := f.gain(left, i) / f.Takes(r).Minutes(); gain > most {
				best, most = i, gain
			}
		}
		if best < 0 {
			break
		}
		order = append(order, f.Readings[best])
		left = slices.DeleteFunc(slices.Clone(left), func(s state) bool { return told(f.Readings[best], s.shows[best], f.shows[best]) })
	}
	return order
}

func causesOf(states []state) (all []Cause) {
	for i := range states {
		if !slices.Contains(all, states[i].Cause) {
			all = append(all, states[i].Cause)
		}
	}
	return all
}

// gain is what a reading is expected to tell: the logarithm of how many times fewer it leaves,
// over the states that are left, those of one cause weighing as much as those of another.
func (f *Find) gain(left []state, reading int) (gain float64) {
	weigh := map[Cause]float64{}
	for i := range left {
		weigh[left[i].Cause]++
	}
	weights := make([]float64, len(left))
	for i := range left {
		weights[i] = 1 / weigh[left[i].Cause] / float64(len(weigh))
	}
	r := f.Readings[reading]
	for i := range left {
		alike := 0.0
		for n := range left {
			if !told(r, left[i].shows[reading], left[n].shows[reading]) {
				alike += weights[n]
			}
		}
		gain -= weights[i] * math.Log(alike)
	}
	return gain
}
