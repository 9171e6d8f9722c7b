package catalogue

import (
	"cmp"
	"math"
	"slices"
	"time"

	"boothset/calc"
	"boothset/calc/gun"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Stage is what comes after the first stage of a coat. What it leaves out is as in the first.
type Stage struct {
	ground          // of its coats, their film and its working pressures
	Rank     int    `toml:"rank"`
	Coats    int    `toml:"coats"`
	CoatLow  length `toml:"coat-low"`
	CoatHigh length `toml:"coat-high"`
	// Working is by gun class. A class that is not there is run so that its cap has the same
	// share of what it has in the first stage as a high-volume gun's: see On.
	Working map[string]Band `toml:"working"`
	Times   float64         `toml:"times"`

	Cap     *Between[pressure] `toml:"cap"`
	Tip     *Between[length]   `toml:"tip"`
	Overlap *Between[percent]  `toml:"overlap"`
	Flash   *Between[minutes]  `toml:"flash"`
	Held    *Between[length]   `toml:"held"`
}

// Between is a value with how far it may be moved.
type Between[T any] struct {
	ground
	Low   T `toml:"low"`
	Usual T `toml:"usual"`
	High  T `toml:"high"`
}

// between is a table as the values it stands for, without a basis where there is none.
func between[T, V any](b *Between[T], value func(T) V) (of calc.Between[V]) {
	if b == nil {
		return of
	}
	return calc.Between[V]{Low: value(b.Low), Usual: value(b.Usual), High: value(b.High), Ground: b.Ground()}
}

func lengthOf(l length) unit.Length { return l.V }

func percentOf(p percent) float64 { return p.V }

func minutesOf(m minutes) time.Duration { return time.Duration(float64(m.V) * float64(time.Second)) }

// stagesInOrder is the ids of what comes after the first stage.
func (e *Coat) stagesInOrder() []string {
	ids := sortedKeys(e.Then)
	slices.SortStableFunc(ids, func(a, b string) int { return cmp.Compare(e.Then[a].Rank, e.Then[b].Rank) })
	return ids
}

// StageIDs is the ids of the coat's stages, the first one's first.
func (e *Coat) StageIDs() []string {
	return append([]string{cmp.Or(e.First, usualFirst)}, e.stagesInOrder()...)
}

// stagesOf is the stages of all coats, each once, in the order of the coats and their own.
func stagesOf(coats Table[*Coat], w *words.Words) Table[*origin] {
	all := map[string]*origin{}
	for _, k := range coats {
		for _, id := range k.Of.StageIDs() {
			if all[id] == nil {
				all[id] = &origin{Rank: len(all)}
			}
		}
	}
	return tableOf(KindStage, all, w)
}

// usualFirst is what the first stage of a coat is called that does not say.
const usualFirst = "coats"

// Stage is a stage of the coat by its place in StageIDs, and its working pressure on a gun
// of a class; false where it has none.
func (e *Coat) Stage(n int, class string, c *Catalogue) (s calc.Stage, working calc.Band, ok bool) {
	id := e.StageIDs()[n]
	first, ok := e.On(class)
	if !ok {
		return s, working, false
	}
	s = calc.Stage{
		ID: id, Tip: between(e.Tip, lengthOf), Overlap: between(e.Overlap, percentOf),
		Flash: between(e.Flash, minutesOf), Held: between(e.Held, lengthOf),
	}
	if l := e.Lay; l != nil {
		s.Coats = calc.Stated[int]{Value: l.Coats, Ground: l.Ground()}
		s.Film = calc.Between[unit.Length]{Low: l.CoatLow.V, High: l.CoatHigh.V, Ground: l.Ground()}
	}
	if n == 0 {
		return s, first, true
	}
	then := e.Then[id]
	s.Coats = calc.Stated[int]{Value: then.Coats, Ground: then.Ground()}
	s.Film = calc.Between[unit.Length]{Low: then.CoatLow.V, High: then.CoatHigh.V, Ground: then.Ground()}
	s.Times = then.Times
	over(&s.Tip, between(then.Tip, lengthOf))
	over(&s.Overlap, between(then.Overlap, percentOf))
	over(&s.Flash, between(then.Flash, minutesOf))
	over(&s.Held, between(then.Held, lengthOf))
	return s, then.on(e, class, first, c), true
}

// over puts a value in the place of another where it is known.
func over[T any](v *calc.Between[T], own calc.Between[T]) {
	if own.Known() {
		*v = own
	}
}

// on is the stage's working pressure on a class of gun, where the first stage's is first.
func (s *Stage) on(e *Coat, class string, first calc.Band, c *Catalogue) calc.Band {
	if b, ok := s.Working[class]; ok {
		return b.band(s.Ground())
	}
	g, ok := c.Guns.Get(class)
	if !ok {
		return first
	}
	if s.Cap != nil && g.CapLimit.V > 0 {
		return s.capBand(&g.made).of(s.Cap.Ground())
	}
	model, modelFirst, ok := s.model(e, c)
	if !ok {
		return first // it is as the first in this
	}
	// The share of its first stage's cap pressure that the high-volume gun has.
	of := model.made
	share := func(p unit.Gauge) float64 { return float64(atSea(&of, p) / atSea(&of, modelFirst.Start)) }
	on := s.on(e, highVolume, modelFirst, c)
	own := func(p unit.Gauge) unit.Gauge {
		return halfPSI(g.made.AtCap(unit.Gauge(share(p))*atSea(&g.made, first.Start), gun.StampAir))
	}
	return calc.Band{Start: own(on.Start), Low: own(on.Low), High: own(on.High), Ground: calc.Ground{Basis: calc.Estimate, Source: "source-cap-share"}}
}

// highVolume is the class whose cap pressures are printed.
const highVolume = "high-volume-low-pressure"

// model is the high-volume gun and the coat's first stage on it, where this stage has a
// pressure of its own there.
func (s *Stage) model(e *Coat, c *Catalogue) (g *Gun, first calc.Band, ok bool) {
	if _, own := s.Working[highVolume]; !own && s.Cap == nil {
		return nil, first, false
	}
	g, okGun := c.Guns.Get(highVolume)
	first, ok = e.On(highVolume)
	return g, first, ok && okGun
}

type capBand struct{ low, usual, high unit.Gauge }

// capBand is the stage's pressures at the cap as working pressures of a gun.
func (s *Stage) capBand(g *gun.Gun) capBand {
	at := func(p pressure) unit.Gauge { return halfPSI(g.AtCap(p.V, gun.StampAir)) }
	return capBand{at(s.Cap.Low), at(s.Cap.Usual), at(s.Cap.High)}
}

func (b capBand) of(g calc.Ground) calc.Band {
	return calc.Band{Start: b.usual, Low: b.low, High: b.high, Ground: g}
}

// atSea is the pressure at a gun's cap at sea level.
func atSea(g *gun.Gun, working unit.Gauge) unit.Gauge {
	_, cap := g.Air(working.Abs(gun.StampAir.Ambient), gun.StampAir)
	return cap.Gauge(gun.StampAir.Ambient)
}

// halfPSI rounds a pressure that was worked from another to half a psi.
func halfPSI(p unit.Gauge) unit.Gauge {
	const step = 0.5 * unit.PascalPerPSI
	return unit.Gauge(math.Round(float64(p)/step) * step)
}

func (e *Coat) checkStages(classes map[string]bool, w *words.Words) *sentence {
	if why := cmp.Or(checkBetween("tip", e.Tip, lengthOf, w), checkBetween("overlap", e.Overlap, percentOf, w),
		checkBetween("flash", e.Flash, minutesOf, w), checkBetween("held", e.Held, lengthOf, w)); why != nil {
		return why
	}
	if o := e.Overlap; o != nil && !(o.High.V <= calc.MostOverlap) {
		return newSentence("file-overlap", calc.BriefFigure("most", calc.FigureShare, calc.MostOverlap))
	}
	if f := e.Fan; f != nil && !rising(float64(calc.NarrowestFan), float64(f.Usual.V), float64(calc.WidestFan)) {
		return newSentence("file-fan", withoutUnit(calc.BriefFigure("least", calc.FigureDistance, calc.NarrowestFan)), calc.BriefFigure("most", calc.FigureDistance, calc.WidestFan))
	}
	for _, id := range e.stagesInOrder() {
		if why := e.Then[id].check(id, classes, w); why != nil {
			return why
		}
	}
	return nil
}

// How many times the usual distance a stage may be held at: judgement.
const leastTimes, mostTimes = 0.5, 3.0

func (s *Stage) check(id string, classes map[string]bool, w *words.Words) *sentence {
	name := calc.GivenFigure("stage", id)
	switch {
	case !(s.Coats >= 1 && s.Coats <= calc.MostCoats) || !rising(1e-9, float64(s.CoatLow.V), float64(s.CoatHigh.V), float64(calc.ThickestFilm)):
		return newSentence("file-stage", name)
	case s.Times != 0 && !(s.Times >= leastTimes && s.Times <= mostTimes):
		return newSentence("file-stage-times", name, calc.BriefFigure("least", calc.FigureRatio, leastTimes), calc.BriefFigure("most", calc.FigureRatio, mostTimes))
	}
	for _, class := range sortedKeys(s.Working) {
		b := s.Working[class]
		if why := b.check(class, classes, w); why != nil {
			return why
		}
	}
	return cmp.Or(checkBetween("cap", s.Cap, func(p pressure) unit.Gauge { return p.V }, w), checkBetween("tip", s.Tip, lengthOf, w), checkBetween("overlap", s.Overlap, percentOf, w),
		checkBetween("flash", s.Flash, minutesOf, w), checkBetween("held", s.Held, lengthOf, w), s.ground.check(w))
}

// checkBetween says what is wrong with a table of low, usual and high.
func checkBetween[T any, V ~float64 | ~int64](key string, b *Between[T], value func(T) V, w *words.Words) *sentence {
	if b == nil {
		return nil
	}
	if !rising(0, float64(value(b.Low)), float64(value(b.Usual)), float64(value(b.High))) || value(b.Usual) == 0 {
		return newSentence("file-between", calc.TextFigure("key", key))
	}
	return b.ground.check(w)
}
