package learn

import (
	"errors"
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/air"
	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/unit"
)

// What cannot be learnt of.
var (
	// ErrNoRegulator: nothing sets the pressure of the line.
	ErrNoRegulator = errors.New("no-regulator")
	// ErrTooManyPieces: there are more than MostPieces, more than MostGuns, or more than MostLines.
	ErrTooManyPieces = errors.New("too-many-pieces")
)

// Line is what is to be learnt of.
type Line struct {
	Request *calc.Request // as it is described
	Setup   *calc.Setup   // the request's; of one without it no option can be foreseen, nor settings worked
	// Others are other guns that the line was read with, Gone parts that it was read with and
	// that were replaced, and Spare parts at hand that can take the place of others: they are
	// pieces too, after the line's own.
	Others      []OtherGun
	Gone, Spare []line.Part
	// Elsewhere are other lines that the request's gun was read on: their parts are pieces too, before
	// Gone.
	Elsewhere []OtherLine
}

// OtherLine is another line that the gun was read on: its parts downstream of its wall's regulator,
// what its wall's gauge may be off by, and what was read there.
type OtherLine struct {
	Parts     []line.Part
	WallGauge calc.Tolerance
	Readings  []Reading // by the numbers of Parts; none by its wall's gauge before the trigger was pulled
}

// MostLines is how many other lines there may be.
const MostLines = 2

// OtherGun is a gun with where its gauge sits.
type OtherGun struct {
	Gun   calc.Gun
	Gauge calc.GaugePlace
}

// MostGuns is how many guns one line may be read with.
const MostGuns = 4

// model is what all draws have in common.
type model struct {
	Line
	// air is that of the place at 20 C: the days that readings were taken on are not known, and
	// what a line loses hardly moves with them.
	air    line.Air
	wall   int // the place of the wall's regulator in the request's line
	guns   []OtherGun
	pieces []Piece
	stands []int // the pieces of the line as it stands
	away   []int // the first piece of each other line
	// passesBy and endBy are the standard deviations of each piece's passes and end.
	passesBy, endBy [MostPieces]float64
	sigma           [shared]float64 // of the tolerances that all pieces share
	unread          []int           // where those stand that no reading tells of, among the deviations of package calc
	instruments     []Instrument    // by gauge
	noise           [mostGauges]float64
}

// The tolerances that all pieces share and that readings tell of.
const (
	friction = iota
	criticalRatio
	droop
	shared = iota
)

// sharedIDs are their ids, in that order; ownIDs are those that each piece has by itself, or
// each gauge.
var (
	sharedIDs = [shared]string{"friction", "critical-ratio", "droop"}
	ownIDs    = []string{"coupling", "filter", "hose-bore", "hose-end", "valve", "valve-shape", "stamp-flow", "stamp-cap", "wall-gauge", "gun-gauge"}
)

// place is where a tolerance stands among the deviations of package calc.
func place(id string) int {
	ids := calc.ToleranceIDs()
	return slices.Index(ids[:], id)
}

var (
	sharedPlaces = [shared]int{place(sharedIDs[friction]), place(sharedIDs[criticalRatio]), place(sharedIDs[droop])}
	shapePlace   = place("valve-shape")
	capPlace     = place("stamp-cap")
)

// newModel is the model of a line.
func newModel(of Line) (*model, error) {
	r := of.Request
	m := &model{Line: of, air: line.NewAir(air.AtAltitude(r.Day.Altitude), unit.ANRTemperature)}
	if m.wall, _ = r.Regulators(); m.wall < 0 {
		return nil, ErrNoRegulator
	}
	m.guns = append([]OtherGun{{r.Gun, r.Gauge}}, of.Others...)
	m.listPieces()
	if len(m.pieces) > MostPieces || len(m.guns) > MostGuns || len(of.Elsewhere) > MostLines {
		return nil, ErrTooManyPieces
	}
	t := &r.Tolerances
	for i := range m.pieces {
		m.passesBy[i], m.endBy[i] = m.pieces[i].sigmas(t)
	}
	for k, id := range sharedIDs {
		tolerance, _ := t.Of(id)
		m.sigma[k] = tolerance.Within / 2
	}
	for k, id := range calc.ToleranceIDs() {
		if !slices.Contains(sharedIDs[:], id) && !slices.Contains(ownIDs, id) {
			m.unread = append(m.unread, k)
		}
	}
	m.instruments = instruments(t, len(m.guns), of.Elsewhere)
	for g, i := range m.instruments {
		m.noise[g] = float64(i.Noise) * float64(i.Noise)
	}
	return m, nil
}

// listPieces lists what may be odd: the line's own parts, those of each gun, and spare ones.
func (m *model) listPieces() {
	for i, id := range PieceIDs(m.Request) {
		m.stands = append(m.stands, i)
		m.pieces = append(m.pieces, Piece{ID: id, Part: m.Request.Line[m.wall+1+i]})
	}
	for g := range m.guns {
		if !m.guns[g].Gun.Valve.None {
			m.pieces = append(m.pieces, Piece{ID: "inlet-valve", Role: InletValve, Gun: g})
		}
		m.pieces = append(m.pieces, Piece{ID: "gun", Role: GunItself, Gun: g})
	}
	for _, other := range m.Elsewhere {
		m.away = append(m.away, len(m.pieces))
		for _, p := range other.Parts {
			m.pieces = append(m.pieces, Piece{ID: "elsewhere-" + p.Kind.String(), Part: p})
		}
	}
	for _, p := range m.Gone {
		m.pieces = append(m.pieces, Piece{ID: "replaced-" + p.Kind.String(), Part: p})
	}
	for _, p := range m.Spare {
		m.pieces = append(m.pieces, Piece{ID: "spare-" + p.Kind.String(), Part: p})
	}
}

// factor is what one of the shared tolerances comes to in a draw.
func (m *model) factor(d *draw, of int) float64 { return math.Exp(m.sigma[of] * d.shared[of]) }

// passes is what a piece passes in a draw, as a factor: of a gun, its stamp's flow.
func (m *model) passes(d *draw, i int) float64 {
	own := &d.own[i]
	off := m.passesBy[i] * own.passes
	if own.odd {
		off += oddness(own.by)
	}
	return math.Exp(off)
}

// end is what a hose's end fittings pass besides in a draw, an inlet valve's shape and a gun's
// stamped cap pressure, as a factor.
func (m *model) end(d *draw, i int) float64 { return math.Exp(m.endBy[i] * d.own[i].end) }

// put makes the solver's pieces those of a draw.
func (s *solver) put(d *draw) {
	m := s.m
	s.draw, s.held = d, -1
	s.ratio = m.factor(d, criticalRatio)
	rub := unit.Length(m.factor(d, friction))
	for i := range m.pieces {
		if m.pieces[i].Role != InLine {
			continue
		}
		s.pieces[i] = m.pieces[i].Part
		part := &s.pieces[i]
		calc.PartOff{Passes: m.passes(d, i), End: m.end(d, i)}.Apply(part)
		part.Hose.Length *= rub
		part.Restriction.ScaleRatio(s.ratio)
		part.Hose.End.ScaleRatio(s.ratio)
	}
	s.wall = m.Request.Line[m.wall].Regulator()
	f := m.factor(d, droop)
	s.wall.Droop *= f
	s.wall.LockUp *= unit.Drop(f)
}

// hold takes a gun of the draw to hand.
func (s *solver) hold(g int) {
	if s.held == g {
		return
	}
	m := s.m
	s.held, s.gun = g, m.guns[g].Gun.Gun
	stamp := s.gun.Stamp
	for i := range m.pieces {
		p := &m.pieces[i]
		if p.Role == InLine || p.Gun != g {
			continue
		}
		passes, end := m.passes(s.draw, i), m.end(s.draw, i)
		if p.Role == InletValve {
			s.gun.Valve.Full.C *= unit.Conductance(passes)
			s.gun.Valve.Shape *= gun.Shape(end)
			continue
		}
		stamp.Flow *= unit.Flow(passes)
		stamp.Cap = min(stamp.Cap*unit.Gauge(end), calc.MostCapShare*stamp.Inlet)
	}
	s.gun.Valve.Full.ScaleRatio(s.ratio)
	s.gun.Calibrate(stamp)
}
