package catalogue

import (
	"slices"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/presets/words"
)

// The tables inside a coat's entry, each with what it rests on.

// Film is the dry film that a coat wants over all coats.
type Film struct {
	ground
	Low     length `toml:"low"`
	Typical length `toml:"typical"`
	High    length `toml:"high"`
	Most    length `toml:"most"`
}

// Lay is how many coats of a film each are laid.
type Lay struct {
	ground
	CoatLow  length `toml:"coat-low"`
	CoatHigh length `toml:"coat-high"`
	Coats    int    `toml:"coats"`
}

// Fan is how wide the fan is at the panel.
type Fan struct {
	ground
	Usual length `toml:"usual"`
}

// Mix is what a ready mix of a coat is.
type Mix struct {
	ground
	Solids  percent `toml:"solids"`
	Ratio   string  `toml:"ratio"`
	Density density `toml:"density"` // of its first part; 0 where it is not known
}

// VOC is the volatile organic compounds of a ready mix of a coat.
type VOC struct {
	ground
	Ready voc `toml:"ready"`
}

// CupSeconds is what a ready mix of a coat is to read in a cup.
type CupSeconds struct {
	ground
	Cup         string      `toml:"cup"`
	Low         span        `toml:"low"`
	Aim         span        `toml:"aim"`
	High        span        `toml:"high"`
	Temperature temperature `toml:"temperature"`
}

// Thinner is the most thinner that a mix of a coat takes.
type Thinner struct {
	ground
	Most percent `toml:"most"`
}

func (e *CupSeconds) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	cup, err := coat.FindCup(e.Cup)
	if err != nil {
		return because("file-cup", err)
	}
	if !(e.Low.V <= e.Aim.V && e.Aim.V <= e.High.V) {
		return newSentence("file-cup-order")
	}
	for _, s := range []span{e.Low, e.High} {
		if _, err := cup.Viscosity(float64(s.V)); err != nil {
			return because("file-cup", err)
		}
	}
	if t := e.Temperature.V; !(t >= calc.ColdestAir && t <= calc.HottestAir) {
		return newSentence("file-cup-temperature", withoutUnit(calc.BriefFigure("least", calc.FigureTemp, calc.ColdestAir)), calc.BriefFigure("most", calc.FigureTemp, calc.HottestAir))
	}
	return e.ground.check(w)
}

// Sheet is the entry as a sheet's seconds.
func (e *CupSeconds) Sheet() calc.Stated[calc.SheetSeconds] {
	cup, _ := coat.FindCup(e.Cup) // check has found it
	return calc.Stated[calc.SheetSeconds]{
		Value:  calc.SheetSeconds{Cup: cup, Low: float64(e.Low.V), Aim: float64(e.Aim.V), High: float64(e.High.V), At: e.Temperature.V},
		Ground: e.Ground(),
	}
}

func (e *Thinner) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	if !(e.Most.V >= 0 && e.Most.V <= calc.MostThinner) {
		return newSentence("file-thinner", calc.BriefFigure("most", calc.FigureShare, calc.MostThinner))
	}
	return e.ground.check(w)
}

func (e *Film) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	const least, most = calc.ThinnestFilm, calc.ThickestFilm
	switch {
	case !rising(float64(least), float64(e.Low.V), float64(e.Typical.V), float64(e.High.V), float64(most)):
		return newSentence("file-film", withoutUnit(calc.BriefFigure("least", calc.FigureFilm, least)), calc.BriefFigure("most", calc.FigureFilm, most))
	case e.Most.V != 0 && !rising(float64(e.High.V), float64(e.Most.V), float64(most)):
		return newSentence("file-film-most")
	}
	return e.ground.check(w)
}

func (e *Lay) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	switch {
	case !rising(1e-9, float64(e.CoatLow.V), float64(e.CoatHigh.V), float64(calc.ThickestFilm)):
		return newSentence("file-lay")
	case e.Coats < 1 || e.Coats > calc.MostCoats:
		return newSentence("file-lay-coats", calc.CountFigure("most", calc.MostCoats))
	}
	return e.ground.check(w)
}

func (e *Mix) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	if !(e.Solids.V >= calc.LeastSolids && e.Solids.V <= calc.MostSolids) {
		return newSentence("file-mix-solids", withoutUnit(calc.BriefFigure("least", calc.FigureShare, calc.LeastSolids)), calc.BriefFigure("most", calc.FigureShare, calc.MostSolids))
	}
	if d := float64(e.Density.V); d != 0 && !calc.DensityBound.Holds(d) {
		return newSentence("file-mix-density", withoutUnit(calc.BriefFigure("least", calc.FigureDensity, calc.DensityBound.Low)), calc.BriefFigure("most", calc.FigureDensity, calc.DensityBound.High))
	}
	if e.Ratio != "" {
		if _, err := coat.ParseRatio(e.Ratio); err != nil {
			return newSentence("file-mix-ratio", calc.GivenFigure("ratio", e.Ratio))
		}
	}
	return e.ground.check(w)
}

func (e *VOC) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	if !calc.VOCBound.Holds(float64(e.Ready.V)) {
		return newSentence("file-voc", calc.BriefFigure("most", calc.FigureVOC, calc.VOCBound.High))
	}
	return e.ground.check(w)
}

// rising reports whether values are in order; equal ones are.
func rising(values ...float64) bool { return slices.IsSorted(values) }
