package calc

import (
	"time"

	"boothset/calc/line"
	"boothset/calc/unit"
)

// Setup is the answer to a Request.
type Setup struct {
	Judgement
	Working  Working
	Wall     WallSetting
	Foot     FootSetting // where a second regulator, nearer the gun, sets its pressure
	Distance Distance
	Flash    Between[time.Duration] // after each coat of the stage, today
	Recoat   Between[time.Duration] // at the latest, today, where the sheet says one
	PotLife  PotLife                // today, where one is known
	Valve    ValveMargin
	// Line is every part from the wall to the cap with the wall and the valve as
	// advised, or, where the supply is short, as far as the supply goes.
	Line []Step
	// Bottleneck indexes the part of Line that costs most between the set pressure
	// and the gun with the valve open; where the supply is short, the part that limits it.
	Bottleneck int
	Short      Shortfall
	Now        Now  // where the request has one
	First      Turn // to do before anything else, its ID empty where nothing is; of a job that is not stopped
	Weather    Weather
	Comparison Comparison
	Supplied   Supplied
	Fixes      []Fix // what would help most, the best first, at most BestFixes
	Reasons    []Reason
	Cautions   []Caution
}

// Working is the gun with the trigger pulled.
type Working struct {
	Pressure unit.Gauge // downstream of the inlet valve: the target
	Wanted   unit.Gauge // by coat and day: the same, but for a gun without an inlet valve
	Reads    unit.Gauge // what the gun's gauge shows: what the gun gets, or more where it sits before the valve; 0 without one
	// ReadsOpen is what it shows at the target with the valve wide open.
	ReadsOpen unit.Gauge
	Cap       unit.Gauge
	Flow      unit.Flow
	Highest   unit.Gauge // the most the gun may be run at, here
	JetMach   float64
}

// WallSetting is the pressure to set: at the regulator farthest upstream or, without one, the
// supply as it stands.
type WallSetting struct {
	Flowing unit.Gauge // with the trigger pulled
	Static  unit.Gauge // with no air moving, whole marks above Flowing as far as the supply allows
	Open    unit.Gauge // at which the open valve gives exactly the target
	Limit   unit.Gauge // flowing, at which the open valve gives the most the gun may be run at
	Reads   unit.Drop  // what its gauge reads too high, by the line's own readings: all the others are as it reads them
	Held    bool       // below the mark that leaves a reserve, so as not to pass Limit
}

// FootSetting is the pressure to set at a second regulator, nearer the gun.
type FootSetting struct {
	Is bool
	WallSetting
}

// Reserve is what the wall is set above what is asked of it there: the inlet valve holds it
// back, or a second regulator does.
func (s *Setup) Reserve() unit.Drop {
	if s.Foot.Is {
		return unit.Drop(s.Wall.Flowing - s.Wall.Open)
	}
	return s.Valve.Reserve
}

// Distance is how far the cap is held from the panel.
type Distance struct {
	Target, Low, High unit.Length
	Held              Held // whether the push of the air would put it farther in or out
}

// Held is at which end of its class's distances a gun is held.
type Held string

// The ends: at neither, at the nearest, at the farthest; or somewhere else.
const (
	NotHeld      Held = ""
	HeldNearest  Held = "nearest"
	HeldFarthest Held = "farthest"
	HeldBySheet  Held = "sheet" // at what the product's sheet says
)

// ValveMargin is how the inlet valve stands.
type ValveMargin struct {
	None     bool    // the gun has no inlet valve: it stands as one wide open
	Opening  float64 // 0 shut, 1 open
	Area     float64 // of the open valve's sonic conductance, the share at the opening
	Turns    float64 // of the knob, closed from wide open
	FromShut float64 // the same, opened from shut
	TurnsOf  float64 // from shut to wide open
	// CountsFromShut is whether the knob is counted from shut; else it is from wide open.
	CountsFromShut bool
	Reserve        unit.Drop // flowing less open: what the valve still holds back
	Floor          float64   // lowest sensible opening
	Choked         bool
	Mach           float64   // in the valve's throat
	EighthTurn     unit.Drop // what an eighth of a turn moves at the gun
}

// Step is a part of the line with the air at its ends.
type Step struct {
	Name    string
	Kind    line.Kind
	In, Out unit.Gauge
	Loss    unit.Drop
	Share   float64 // of what is lost from the supply to the gun; 0 of a regulator, whose fall is wanted
	Mach    float64
	// Bore is a hose's own, of anything else that of a good fitting which passes as much: a
	// regulator wide open, the inlet valve as it is set. Length is a hose's.
	Bore, Length unit.Length
}

// Shortfall is a supply that cannot do the job.
type Shortfall struct {
	Is   bool
	Best unit.Gauge // highest working pressure the supply can give
	// Needed is the supply at which the target would be met.
	Needed unit.Gauge
}

// Now is the wall as it stands.
type Now struct {
	Given      bool
	Wall       unit.Gauge
	GunIfOpen  unit.Gauge // what the gun gets with the inlet valve open
	Opening    float64    // at which the valve brings the gun to its target
	Area       float64    // of the open valve's sonic conductance, the share there
	Enough     bool       // false where even the open valve gives less than the target
	Choked     bool
	Mach       float64
	EighthTurn unit.Drop
}

// Weather is what the day does.
type Weather struct {
	Ambient     unit.Abs
	DewPoint    unit.Temp
	PanelMargin unit.TempDiff // panel less dew point
	Drying      float64       // relative to the reference day; above 1 dries faster
	InFlight    InFlight      // how dry the coat lands
	Correction  unit.Drop     // added to the coat's starting pressure, never above 0
	Held        bool          // the day asks for a lower pressure, and the coat or the gun allows none
}

// Level is how much a caution weighs.
type Level string

// A note is to know, a warning to act on, a stop ends the job as asked.
const (
	Note Level = "note"
	Warn Level = "warn"
	Stop Level = "stop"
)

// Reason is why a value is what it is.
type Reason struct {
	About string // "wall", "valve", "distance", "gun", "weather", "line", "setup"
	ID    string
	Figures
	Ground
}

// Caution is something to know before spraying.
type Caution struct {
	Level Level
	ID    string
	Figures
	// Safety: it protects people, on any day and with any setting, and says nothing of
	// whether the coat will do.
	Safety bool
	Ground // of what it says, where that has one
}

// Figures are the values that a sentence names, in SI, each with what it is.
type Figures []Figure

// Figure is one value of a sentence. Text is set for FigureText, FigureSentence, FigureGiven
// and FigurePath alone.
// Brief asks for three digits, to tell a value from the bound that it is past; WithoutUnit for
// them without their unit, which another figure of the sentence has.
type Figure struct {
	Name               string
	Kind               FigureKind
	Value              float64
	Text               string
	Brief, WithoutUnit bool
	// Past is a value of the same kind that a brief one is printed with enough digits to tell
	// apart from, nil where there is none.
	Past *float64
}

// FigureKind is how a figure's value is to be read and printed.
type FigureKind uint8

// The kinds of figure, with the SI unit of Value.
const (
	FigureText      FigureKind = iota
	FigureGauge                // Pa
	FigureDrop                 // Pa
	FigureDistance             // m, a hand's breadth: in or mm
	FigureRun                  // m, a room's length: ft or m
	FigureTemp                 // K
	FigureTempDiff             // K
	FigureFlow                 // m3/s ANR
	FigureShare                // 0..1, printed as percent
	FigureRatio                // a plain number
	FigureMinutes              // s
	FigureVolume               // m3
	FigureLitres               // L, of water, in either system
	FigureFilm                 // m, a film: mil or um
	FigureArea                 // m2
	FigureSpeed                // m/s, of the gun over the panel
	FigureFluid                // m3/s of coating, printed in mL/min
	FigureCount                // a whole number
	FigureMoney                // of any currency
	FigureDensity              // kg/m3
	FigureVOC                  // kg/m3
	FigureWeight               // kg
	FigureTimes                // a rough ratio, printed to two digits
	FigureClock                // s since midnight
	FigureCup                  // s in an efflux cup
	FigureViscosity            // m2/s
	FigureTip                  // m, of a fluid tip: mm all over the world
	FigureSentence             // the sentence whose id is Text
	FigureTurns                // of a knob, printed to the nearest eighth
	FigureClosed               // turns of a knob, closed from wide open
	FigureOpened               // turns of a knob, opened from shut
	FigureGiven                // Text as it was typed or stands in a file, cut where it is long
	FigurePath                 // Text is the name of a file with its folders
)
