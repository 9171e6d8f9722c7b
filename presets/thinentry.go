package presets

import (
	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
)

// secondsEntry is what a ready mix of a coat is to read in a cup.
type secondsEntry struct {
	ground
	Cup         string      `toml:"cup"`
	Low         span        `toml:"low"`
	Aim         span        `toml:"aim"`
	High        span        `toml:"high"`
	Temperature temperature `toml:"temperature"`
	cup         coat.Cup    // that Cup names
}

// thinnerEntry is the most thinner that a mix of a coat takes.
type thinnerEntry struct {
	ground
	Most percent `toml:"most"`
}

type span struct{ v unit.Seconds }

func (s *span) UnmarshalText(b []byte) (err error) {
	s.v, err = unit.ParseSeconds(string(b), 0)
	return placed(b, err)
}

type temperature struct{ v unit.Temp }

func (t *temperature) UnmarshalText(b []byte) (err error) {
	t.v, err = unit.ParseTemp(string(b), 0)
	return placed(b, err)
}

func (e *secondsEntry) check() (why string) {
	if e == nil {
		return ""
	}
	var err error
	if e.cup, err = coat.FindCup(e.Cup); err != nil {
		return "cup: " + err.Error()
	}
	if !(e.Low.v <= e.Aim.v && e.Aim.v <= e.High.v) {
		return `cup: give low, aim and high, in that order, such as low = "16s", aim = "17s", high = "18s"`
	}
	for _, s := range []span{e.Low, e.High} {
		if _, err := e.cup.Viscosity(float64(s.v)); err != nil {
			return "cup: " + err.Error()
		}
	}
	if t := e.Temperature.v; !(t >= calc.ColdestAir && t <= calc.HottestAir) {
		return `cup: give temperature, -10 to 60 C, such as temperature = "20C"`
	}
	return e.ground.check()
}

// sheet is the entry as a sheet's seconds.
func (e *secondsEntry) sheet() calc.Stated[calc.SheetSeconds] {
	return calc.Stated[calc.SheetSeconds]{
		Value:    calc.SheetSeconds{Cup: e.cup, Low: float64(e.Low.v), Aim: float64(e.Aim.v), High: float64(e.High.v), At: e.Temperature.v},
		Standing: e.standing(),
	}
}

func (e *thinnerEntry) check() string {
	if e == nil {
		return ""
	}
	if !(e.Most.v >= 0 && e.Most.v <= 1) {
		return `thinner: give most, 0 to 100%, such as most = "10%"`
	}
	return e.ground.check()
}
