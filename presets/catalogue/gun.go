package catalogue

import (
	"cmp"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/words"
)

// Gun is a gun, or the gun that stands for its class.
type Gun struct {
	origin
	Class    string     `toml:"class"`
	Inlet    pressure   `toml:"inlet"`
	Flow     flow       `toml:"flow"`
	Cap      pressure   `toml:"cap"`
	CapLimit pressure   `toml:"cap-limit"`
	Nearest  length     `toml:"nearest"`
	Farthest length     `toml:"farthest"`
	NoValve  bool       `toml:"no-valve"`
	Valve    valveEntry `toml:"valve"`
	Felt     *Felt      `toml:"felt"`
	Landing  *Transfer  `toml:"transfer"`
	Hand     *Hand      `toml:"hand"`
	Cup      *GunCup    `toml:"cup"`
	Pot      *GunPot    `toml:"pot"`
	like     *Gun       // the one that stands for its class
	made     gun.Gun    // once the catalogue is open
}

// ClassOf is the class of the gun, its own id where it stands for one.
func (e *Gun) ClassOf(id string) string { return cmp.Or(e.Class, id) }

// Gun is the gun that the entry describes.
func (e *Gun) Gun() gun.Gun { return e.made }

// build makes the gun that the entry describes.
func (e *Gun) build() (err error) {
	v := e.Valve.Valve()
	v.None = e.NoValve
	if e.made, err = gun.New(gun.Stamp{Inlet: e.Inlet.V, Flow: e.Flow.V, Cap: e.Cap.V}, e.CapLimit.V, v); err == nil && e.Felt != nil {
		e.Felt.push = e.made.FeltAt(e.Felt.Distance.V, e.Felt.Pressure.V)
	}
	return err
}

// FeltOf is where the push of the gun's class is met: a gun of the class has its own jet
// measured against the same push.
func (e *Gun) FeltOf() *Felt { return e.like.Felt }

// Transfer is what the gun, or else its class, transfers; false where neither says.
func (e *Gun) Transfer() (*Transfer, bool) {
	for _, from := range []*Gun{e, e.like} {
		if from != nil && from.Landing != nil {
			return from.Landing, true
		}
	}
	return nil, false
}

// CupOf is the gun's cup, or else its class's; false where neither says, or the gun is fed
// from a pot.
func (e *Gun) CupOf() (*GunCup, bool) {
	if e.Pot != nil {
		return nil, false
	}
	for _, from := range []*Gun{e, e.like} {
		if from != nil && from.Cup != nil {
			return from.Cup, true
		}
	}
	return nil, false
}

type valveEntry struct {
	Conductance float64 `toml:"conductance"`
	Ratio       float64 `toml:"ratio"`
	Shape       float64 `toml:"shape"`
	Turns       float64 `toml:"turns"`
	CountsFrom  string  `toml:"counts-from"`
}

// Valve is the valve that the entry describes.
func (v *valveEntry) Valve() gun.Valve {
	return gun.Valve{
		Full:  line.Restriction{C: unit.DM3PerSBar(v.Conductance), B: v.Ratio},
		Shape: gun.Shape(v.Shape),
		Turns: v.Turns, FromShut: v.CountsFrom == fromShut,
	}
}

// What the turns of a valve's knob are counted from; from wide open where it is not said.
const (
	fromOpen = "open"
	fromShut = "shut"
)

// Bounds of a valve's shape: beyond them nearly all of its turns do nothing.
const leastShape, mostShape = 0.1, 10.0

// Felt is where a hand moving in first meets the firm push of a class's air, at a working
// pressure of the gun that stands for the class.
type Felt struct {
	ground
	Distance length   `toml:"distance"`
	Pressure pressure `toml:"pressure"`
	push     gun.Felt // once the catalogue is open
}

// Push is where the push is met and the jet's thrust there.
func (e *Felt) Push() gun.Felt { return e.push }

// Transfer is what a class of gun transfers, held so.
type Transfer struct {
	ground
	Part     percent  `toml:"part"`
	Pressure pressure `toml:"pressure"`
	Distance length   `toml:"distance"`
	Choked   percent  `toml:"choked"`
}

// Hand is how fast a class of gun is usually moved along the panel.
type Hand struct {
	ground
	Speed speed `toml:"speed"`
}

// HandOf is that of the gun, or else of its class; false where neither says.
func (e *Gun) HandOf() (*Hand, bool) {
	for _, from := range []*Gun{e, e.like} {
		if from != nil && from.Hand != nil {
			return from.Hand, true
		}
	}
	return nil, false
}

func (e *Hand) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	if b := calc.GunSpeedBound; !b.Holds(float64(e.Speed.V)) {
		return newSentence("file-hand", withoutUnit(calc.BriefFigure("low", calc.FigureSpeed, b.Low)), calc.BriefFigure("high", calc.FigureSpeed, b.High))
	}
	return e.ground.check(w)
}

// GunCup is a gun's cup.
type GunCup struct {
	ground
	Size volume `toml:"size"`
	Loss volume `toml:"loss"`
}

// GunPot is the pressure pot that feeds a gun that has no cup.
type GunPot struct {
	ground
	Loss volume `toml:"loss"` // left in pot, hose and gun
}

// What is left of a transfer with the inlet valve choked: judgement bounds it so.
const leastChoked, mostChoked = 0.3, 1.0

func (e *Transfer) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	g := coat.GunTransfer{Transfer: e.Part.V, Pressure: e.Pressure.V, Distance: e.Distance.V}
	if _, err := g.At(g.Pressure, g.Distance); err != nil {
		return because("file-transfer", err)
	}
	if !(e.Choked.V >= leastChoked && e.Choked.V <= mostChoked) {
		return newSentence("file-transfer-choked", withoutUnit(calc.BriefFigure("least", calc.FigureShare, leastChoked)), calc.BriefFigure("most", calc.FigureShare, mostChoked))
	}
	return e.ground.check(w)
}

// feltFault says what is wrong with where the push is met: in the class's own distances,
// at a pressure that the gun may be run at.
func (e *Gun) feltFault(w *words.Words) *sentence {
	f := e.Felt
	if f == nil {
		return nil
	}
	if !(f.Distance.V >= e.Nearest.V && f.Distance.V <= e.Farthest.V && f.Pressure.V >= leastStep && f.Pressure.V <= e.Inlet.V) {
		return newSentence("file-felt")
	}
	return f.ground.check(w)
}

func (e *GunCup) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	if !(e.Size.V >= calc.SmallestCup && e.Size.V <= calc.LargestCup && e.Loss.V >= 0 && e.Loss.V <= e.Size.V) {
		return newSentence("file-gun-cup", withoutUnit(calc.BriefFigure("least", calc.FigureVolume, calc.SmallestCup)), calc.BriefFigure("most", calc.FigureVolume, calc.LargestCup))
	}
	return e.ground.check(w)
}

func (e *GunPot) check(w *words.Words) *sentence {
	if e == nil {
		return nil
	}
	if !(e.Loss.V >= 0 && e.Loss.V <= calc.LargestCup) {
		return newSentence("file-gun-pot", calc.BriefFigure("most", calc.FigureVolume, calc.LargestCup))
	}
	return e.ground.check(w)
}

func (v *valveEntry) check(w *words.Words) *sentence {
	switch {
	case restrictionFault(v.Conductance, v.Ratio) != nil:
		return under("file-valve", restrictionFault(v.Conductance, v.Ratio))
	case !(v.Turns > 0 && v.Turns <= mostTurns):
		return newSentence("file-valve-turns")
	case !(v.Shape >= leastShape && v.Shape <= mostShape):
		return newSentence("file-valve-shape", calc.BriefFigure("least", calc.FigureRatio, leastShape), calc.BriefFigure("most", calc.FigureRatio, mostShape))
	case v.CountsFrom != "" && v.CountsFrom != fromOpen && v.CountsFrom != fromShut:
		return newSentence("file-valve-counts", calc.GivenFigure("given", v.CountsFrom), calc.TextFigure("names", w.Listed([]string{fromOpen, fromShut})))
	}
	return nil
}

func (e *Gun) check(w *words.Words) *sentence {
	if why := e.Valve.check(w); why != nil && !e.NoValve {
		return why
	}
	switch {
	case !(e.Cap.V >= leastStep && e.Inlet.V >= e.Cap.V+leastStep && e.Inlet.V <= calc.TopSupply):
		return newSentence("file-stamp", calc.BriefFigure("most", calc.FigureGauge, calc.TopSupply), calc.BriefFigure("least", calc.FigureGauge, leastStep))
	case !(e.Flow.V >= leastFlow && e.Flow.V <= mostFlow):
		return newSentence("file-flow", withoutUnit(calc.BriefFigure("low", calc.FigureFlow, leastFlow)), calc.BriefFigure("high", calc.FigureFlow, mostFlow))
	case e.CapLimit.V < 0:
		return newSentence("file-cap-limit")
	case !(e.Nearest.V > 0 && e.Farthest.V > e.Nearest.V):
		return newSentence("file-nearest")
	}
	if e.like.Felt == nil {
		return newSentence("file-felt-missing")
	}
	if why := cmp.Or(e.feltFault(w), e.Landing.check(w), e.Hand.check(w), e.Cup.check(w), e.Pot.check(w)); why != nil {
		return why
	}
	if err := e.build(); err != nil {
		return sentenceOf(err)
	}
	return nil
}
