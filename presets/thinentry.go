package presets

import (
	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// secondsEntry is what a ready mix of a coat is to read in a cup.
type secondsEntry struct {
	ground
	Cup         string      `toml:"cup"`
	Low         span        `toml:"low"`
	Aim         span        `toml:"aim"`
	High        span        `toml:"high"`
	Temperature temperature `toml:"temperature"`
}

// thinnerEntry is the most thinner that a mix of a coat takes.
type thinnerEntry struct {
	ground
	Most percent `toml:"most"`
}

type span struct{ v unit.Seconds }

func (s *span) UnmarshalText(b []byte) error { return placed(b, s.read(string(b))) }

func (t *span) read(s string) (err error) {
	t.v, err = unit.ParseSeconds(s, 0)
	return err
}

type temperature struct{ v unit.Temp }

func (t *temperature) UnmarshalText(b []byte) error { return placed(b, t.read(string(b))) }

func (t *temperature) read(s string) (err error) {
	t.v, err = unit.ParseTemp(s, 0)
	return err
}

func (e *secondsEntry) check(w *words.Words) *said {
	if e == nil {
		return nil
	}
	cup, err := coat.FindCup(e.Cup)
	if err != nil {
		return because("file-cup", err)
	}
	if !(e.Low.v <= e.Aim.v && e.Aim.v <= e.High.v) {
		return sentence("file-cup-order")
	}
	for _, s := range []span{e.Low, e.High} {
		if _, err := cup.Viscosity(float64(s.v)); err != nil {
			return because("file-cup", err)
		}
	}
	if t := e.Temperature.v; !(t >= calc.ColdestAir && t <= calc.HottestAir) {
		return sentence("file-cup-temperature", bare(figure("least", calc.FigureTemp, calc.ColdestAir)), figure("most", calc.FigureTemp, calc.HottestAir))
	}
	return e.ground.check(w)
}

// sheet is the entry as a sheet's seconds.
func (e *secondsEntry) sheet() calc.Stated[calc.SheetSeconds] {
	cup, _ := coat.FindCup(e.Cup) // check has found it
	return calc.Stated[calc.SheetSeconds]{
		Value:  calc.SheetSeconds{Cup: cup, Low: float64(e.Low.v), Aim: float64(e.Aim.v), High: float64(e.High.v), At: e.Temperature.v},
		Ground: e.standing(),
	}
}

func (e *thinnerEntry) check(w *words.Words) *said {
	if e == nil {
		return nil
	}
	if !(e.Most.v >= 0 && e.Most.v <= calc.MostThinner) {
		return sentence("file-thinner", figure("most", calc.FigureShare, calc.MostThinner))
	}
	return e.ground.check(w)
}
