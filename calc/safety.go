package calc

// Hardener is what a coat is hardened with. The zero value is one that is not known.
type Hardener string

// The hardeners. A coat cured by ultraviolet has none of its own: its acrylates cure under a
// lamp.
const (
	UnknownHardener Hardener = ""
	Isocyanate      Hardener = "isocyanate"
	Amine           Hardener = "amine"
	Acrylate        Hardener = "acrylate"
	OnePart         Hardener = "none"
)

// Hardeners is those that can be named.
func Hardeners() []Hardener { return []Hardener{Isocyanate, Amine, Acrylate, OnePart} }

// What published rules say of a booth and of what is breathed in it.
const (
	// Spray booths clear of mist in so many minutes after the last pass, the quickest and the
	// slowest of them (UK Health and Safety Executive).
	clearsFirst, clearsLast = 1, 5
	// mostMonoxide is the carbon monoxide, in ppm, that Grade D breathing air may have
	// (29 CFR 1910.134(i)).
	mostMonoxide = 10
)

// protect adds what protects from the hardener; one that is not known counts as isocyanate.
func (h Hardener) protect(coat string, to *cautions) {
	id, ok := map[Hardener]string{Isocyanate: "isocyanate", Amine: "amine", Acrylate: "acrylate", OnePart: ""}[h]
	if !ok {
		id = "isocyanate-unknown"
	}
	if id != "" {
		to.safety(Warn, id, Ground{}, TextFigure("coat", coat))
	}
}

// protectSpraying adds what protects whoever sprays the coat.
func (h Hardener) protectSpraying(coat string, to *cautions) {
	h.protect(coat, to)
	to.safety(Note, "booth-clear", Ground{Basis: Published, Source: "source-booth-clear"}, CountFigure("least", clearsFirst), CountFigure("most", clearsLast))
}

// protectBooth adds what the booth's air owes to whoever sprays the coat; others reports
// whether something besides the gun draws on the shop's air, as a mask may.
func (h Hardener) protectBooth(coat string, others bool, to *cautions) {
	h.protectSpraying(coat, to)
	if h != OnePart || others {
		to.safety(Note, "breathing-air", Ground{Basis: Published, Source: "source-breathing-air"}, CountFigure("most", mostMonoxide))
	}
	to.safety(Note, "booth-air", Ground{Basis: Published, Source: "source-booth-air"})
}

// protectHandling adds what protects whoever mixes the coat and cleans the gun.
func (h Hardener) protectHandling(coat string, to *cautions) {
	h.protect(coat, to)
	to.safety(Note, "skin", Ground{})
}
