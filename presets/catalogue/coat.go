package catalogue

import (
	"cmp"
	"slices"

	"boothset/calc"
	"boothset/calc/coat"
	"boothset/presets/words"
)

// Coat is a family of coats.
type Coat struct {
	origin
	Like       string          `toml:"like"` // the coat that it has from what the entry leaves out
	Waterborne bool            `toml:"waterborne"`
	DriesLike  string          `toml:"dries-like"`
	Hardener   calc.Hardener   `toml:"hardener"` // empty where it may or may not have one
	Farther    length          `toml:"farther"`
	Working    map[string]Band `toml:"working"` // by gun class
	Cup        *CupSeconds     `toml:"cup"`
	Thinner    *Thinner        `toml:"thinner"`
	Film       *Film           `toml:"film"`
	Lay        *Lay            `toml:"lay"`
	Mix        *Mix            `toml:"mix"`
	VOC        *VOC            `toml:"voc"`

	// Of its first stage, and of the others where they leave it out.
	First   string            `toml:"first"`
	Tip     *Between[length]  `toml:"tip"`
	Overlap *Between[percent] `toml:"overlap"`
	Flash   *Between[minutes] `toml:"flash"`
	Held    *Between[length]  `toml:"held"`
	Fan     *Fan              `toml:"fan"`
	Then    map[string]*Stage `toml:"then"`
}

// Band is where a coat starts on a class of gun, and how far it may be moved.
type Band struct {
	Start pressure `toml:"start"`
	Low   pressure `toml:"low"`
	High  pressure `toml:"high"`
}

// Solvent is what the coat dries like, none for a waterborne one or one that a lamp cures.
func (e *Coat) Solvent() (coat.Solvent, error) {
	if e.Waterborne || e.DriesLike == None {
		return coat.Solvent{}, nil
	}
	return coat.FindSolvent(cmp.Or(e.DriesLike, coat.ReferenceSolvent))
}

// On is the coat's working pressure on a class of gun; false where it has none.
func (e *Coat) On(class string) (calc.Band, bool) {
	b, ok := e.Working[class]
	return b.band(e.Ground()), ok
}

func (b Band) band(of calc.Ground) calc.Band {
	return calc.Band{Start: b.Start.V, Low: b.Low.V, High: b.High.V, Ground: of}
}

// Classes is the gun classes that the coat has a working pressure for.
func (e *Coat) Classes() []string { return sortedKeys(e.Working) }

func (e *Coat) check(classes map[string]bool, w *words.Words) *sentence {
	if _, err := e.Solvent(); err != nil {
		return because("file-dries-like", err)
	}
	if e.Hardener != calc.UnknownHardener && !slices.Contains(calc.Hardeners(), e.Hardener) {
		return newSentence("file-hardener", calc.GivenFigure("given", string(e.Hardener)), calc.TextFigure("names", w.Listed(HardenerNames())))
	}
	if e.Farther.V < 0 {
		return newSentence("file-farther")
	}
	if len(e.Working) == 0 {
		return newSentence("file-working", calc.TextFigure("given", `{ start = "26psi", low = "23psi", high = "30psi" }`))
	}
	for _, class := range e.Classes() {
		if why := e.Working[class].check(class, classes, w); why != nil {
			return why
		}
	}
	return cmp.Or(e.checkStages(classes, w), e.Cup.check(w), e.Thinner.check(w), e.Film.check(w), e.Lay.check(w), e.Mix.check(w), e.VOC.check(w))
}

func (b Band) check(class string, classes map[string]bool, w *words.Words) *sentence {
	if !classes[class] {
		return newSentence("file-working-class", calc.GivenFigure("class", class), calc.TextFigure("names", w.Listed(sortedKeys(classes))))
	}
	if !(b.Low.V >= calc.LowestSupply && b.Low.V <= b.Start.V && b.Start.V <= b.High.V && b.High.V <= calc.TopSupply) {
		return newSentence("file-working-order", calc.GivenFigure("class", class), withoutUnit(calc.BriefFigure("low", calc.FigureGauge, calc.LowestSupply)), calc.BriefFigure("high", calc.FigureGauge, calc.TopSupply))
	}
	return nil
}

// HardenerNames is the hardeners by the names that files and answers give them.
func HardenerNames() (names []string) {
	for _, h := range calc.Hardeners() {
		names = append(names, string(h))
	}
	return names
}
