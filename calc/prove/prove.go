package prove

import (
	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/unit"
)

// Seen is what was seen at the gun; what was passed by is zero.
type Seen struct {
	// First and FirstWall are what the gun's gauge and the wall's showed as the trigger was
	// pulled, of a reading with the inlet valve wide open that was taken ten seconds later, and
	// Supply what the gauge before the wall's regulator showed then.
	First, FirstWall, Supply unit.Gauge
	// Felt is where a hand moving in first met the firm push of the air alone.
	Felt unit.Length
	// Pattern is what a short pull left on paper, and Flood one that was held until it ran: the id
	// of a sign, or Even.
	Pattern, Flood string
	// Film is the coat's film, with the comb's reading of the first pass where there is one; nil
	// where it is not known.
	Film *calc.FilmRequest
}

// Even is a pattern that has nothing wrong with it.
const Even = "even"

// Signs are what is wrong with the patterns, each once.
func (s *Seen) Signs() (all []string) {
	for _, id := range []string{s.Pattern, s.Flood} {
		if id != "" && id != Even && (len(all) == 0 || all[0] != id) {
			all = append(all, id)
		}
	}
	return all
}

// Judged is what was seen beside what was expected; nil of what was passed by.
type Judged struct {
	Fall *Fall
	Push *Push
	Film *Film
}

// Judge judges what was seen with a plan, by what its readings say; taken are those that were
// taken with it, the others were taken before.
func Judge(plan *calc.Request, found *learn.Answer, taken []learn.Taken, s *Seen) (j Judged) {
	if held := lastHeld(taken); held != nil && s.First > 0 {
		j.Fall = fall(found.Since, found.After, held, s)
	}
	if s.Felt > 0 {
		push := PushOf(plan, found)
		push.Felt, push.Hold = s.Felt, plan.DistanceFelt(s.Felt)
		j.Push = &push
	}
	if s.Film != nil {
		j.Film = film(plan, s.Film)
	}
	return j
}
