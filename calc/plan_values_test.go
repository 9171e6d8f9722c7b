package calc

import (
	"encoding/csv"
	"errors"
	"os"
	"strconv"
	"testing"
	"time"

	"boothset/calc/gun"
	"boothset/calc/line"
	"boothset/calc/supply"
	"boothset/calc/unit"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func solved(t require.TestingT, r Request) *Setup {
	s, err := Solve(&r)
	require.NoError(t, err)
	return s
}

// worked is testdata/plan.csv: mildClear and highVolumeBase worked apart from the program,
// with scipy, by testdata/plan.py, to seven digits.
func worked(t require.TestingT) map[string]float64 {
	f, err := os.Open("testdata/plan.csv")
	require.NoError(t, err)
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, errors.Join(err, f.Close()))
	values := map[string]float64{}
	for _, row := range rows[1:] {
		values[row[0]], err = strconv.ParseFloat(row[1], 64)
		require.NoError(t, err)
	}
	return values
}

// sevenDigits is what the worked values are rounded to.
const sevenDigits = 1e-6

// The two restrictions of the stamp, ISO 6358's parts and the isothermal hose by root
// finders, slopes by central differences.
func TestMildClearAgainstScipy(t *testing.T) {
	values := worked(t)
	equal := func(name string, got float64) {
		t.Helper()
		require.Contains(t, values, name)
		assert.InEpsilon(t, values[name], got, sevenDigits, name)
	}
	about := func(name string, got, within float64) {
		t.Helper()
		require.Contains(t, values, name)
		assert.InEpsilon(t, values[name], got, within, name)
	}
	r := mildClear(t)
	r.HasNow, r.Now = true, unit.PSIG(70)
	s := solved(t, r)
	assert.InDelta(t, 26, s.Working.Pressure.PSI(), 1e-9)
	equal("flow", s.Working.Flow.SCFM())
	equal("cap", s.Working.Cap.PSI())
	equal("open", s.Wall.Open.PSI())
	equal("wall", s.Wall.Flowing.PSI())
	equal("static", r.Line[0].Regulator().Set(s.Wall.Flowing, s.Working.Flow).PSI())
	assert.InDelta(t, 31, s.Wall.Static.PSI(), 1e-9, "in whole marks of 1 psi")
	equal("reserve", s.Valve.Reserve.PSI())
	equal("limit", s.Wall.Limit.PSI())
	equal("wall-opening", s.Valve.Opening)
	equal("wall-mach", s.Valve.Mach)
	about("wall-eighth-turn", s.Valve.EighthTurn.PSI(), 1e-4)
	about("floor", s.Valve.Floor, 2e-3)
	equal("now-opening", s.Now.Opening)
	equal("now-mach", s.Now.Mach)
	equal("now-open", s.Now.GunIfOpen.PSI())
	about("now-eighth-turn", s.Now.EighthTurn.PSI(), 1e-4)
	about("wall-sag", s.Comparison.Right.Sag.PSI(), 1e-4)
	about("now-sag", s.Comparison.High.Sag.PSI(), 1e-4)

	r.Supply = unit.PSIG(28)
	short := solved(t, r)
	require.True(t, short.Short.Is)
	equal("short-best", short.Short.Best.PSI())
	equal("short-wall", short.Wall.Flowing.PSI())
	equal("short-needed", short.Short.Needed.PSI())
	assert.InDelta(t, 28, short.Wall.Static.PSI(), 1e-9, "with no air moving the whole supply")

	// Hotter air is lighter.
	r = mildClear(t)
	r.Coat.Working.Low = unit.PSIG(26) // whatever the weather would take off
	r.Day.Air = unit.Celsius(40)
	hot := solved(t, r)
	equal("hot-flow", hot.Working.Flow.SCFM())
	equal("hot-open", hot.Wall.Open.PSI())
}

// The air in the hose has the shop's temperature; the panel's does not matter to it.
func TestAColdPanelCoolsNoHose(t *testing.T) {
	r := mildClear(t)
	warm := solved(t, r)
	r.Day.Panel = unit.Celsius(40)
	hot := solved(t, r)
	assert.Equal(t, warm.Wall, hot.Wall)
	assert.Equal(t, warm.Working, hot.Working)

	// By psychrolib 1.1.1, air saturated at 38 C and 90 psi, let down to 31, has a dew point of
	// 23.49 C: a hose of 25 C stays dry, one of the panel's 18 C would not. (The main is as
	// warm as the receiver, so nothing drops out before.)
	r = mildClear(t)
	r.Day = Day{Air: unit.Celsius(25), Humidity: 0.6, Panel: unit.Celsius(18)}
	r.Shop = Shop{
		Known: true, Spraying: time.Minute, Panels: 1, ReceiverTemp: unit.Celsius(38), LineTemp: unit.Celsius(38),
		System: supply.System{
			Rated: unit.SCFM(30), RatedInlet: supply.SCFMInlet, CutIn: unit.PSIG(90), CutOut: unit.PSIG(120),
			Receiver: supply.Receiver{Volume: unit.USGallons(60)},
		},
	}
	s := solved(t, r)
	require.True(t, s.Supplied.Checked)
	assert.InDelta(t, 23.48717, s.Supplied.Water.Sprayed.C(), 1e-3)
	assert.Equal(t, supply.AtReceiver, s.Supplied.Water.Last)
	r.Day.Air = unit.Celsius(23.4)
	assert.Equal(t, supply.AtHose, solved(t, r).Supplied.Water.Last)
}

// With no air moving the gauge is set higher by what the regulator falls, in whole marks, but
// never above the supply: 5 psi at 10 scfm are 4.341 at 8.682, so 35 psi; with 1.5 psi more
// at the first flow 5.841, 37 psi; from a supply of 33 psi it shows 33.
func TestStaticIsHeldToTheSupply(t *testing.T) {
	r := mildClear(t)
	r.Line[0].Droop = line.DroopOf(unit.PSIDrop(5), unit.SCFM(10))
	assert.InEpsilon(t, 31+0.5*worked(t)["flow"], r.Line[0].Regulator().Set(unit.PSIG(31), solved(t, r).Working.Flow).PSI(), sevenDigits)
	assert.InDelta(t, 35, solved(t, r).Wall.Static.PSI(), 1e-9)
	r.Line[0].LockUp = unit.PSIDrop(1.5)
	assert.InDelta(t, 37, solved(t, r).Wall.Static.PSI(), 1e-9)
	r.Supply = unit.PSIG(33)
	s := solved(t, r)
	require.False(t, s.Short.Is)
	assert.InEpsilon(t, 33, s.Wall.Static.PSI(), 1e-12)
}

// A seat wide open lets a sag of the supply through. By ISO 6358 (plan.csv): C = 2.6
// dm3/(s bar) at 36 psi holds 32.049 psi of mildClear's flow, and 30.084 when the supply is
// 5 % down. The reserve is those 1.965 psi, so the wall goes to 32, where one psi would have
// made it 31; at 38 psi and more the seat closes on the sag and 31 does.
func TestReserveOfASeatAtItsLimit(t *testing.T) {
	r := mildClear(t)
	r.Line[0].Restriction = line.Restriction{C: unit.DM3PerSBar(2.6), B: 0.3}
	for supplied, wall := range map[float64]float64{36: 32, 38: 31} {
		r.Supply = unit.PSIG(supplied)
		s := solved(t, r)
		assert.InDelta(t, wall, s.Wall.Flowing.PSI(), 1e-9, "%v psi", supplied)
	}
	// At 35 psi the seat holds 30.959 at most: as much of the reserve as there is.
	r.Supply = unit.PSIG(35)
	assert.InEpsilon(t, worked(t)["seat-of-2.6-at-35"], solved(t, r).Wall.Flowing.PSI(), sevenDigits)
}

// A regulator of the same seat that droops less wins what it droops less: from 5 psi at 10
// scfm to 1 psi, 0.4 psi a scfm, 3.473 psi at 8.682 scfm.
func TestALesserDroopIsWon(t *testing.T) {
	r := mildClear(t)
	r.Line[0].Droop = line.DroopOf(unit.PSIDrop(5), unit.SCFM(10))
	stiff := r.Line[0].Regulator()
	stiff.Droop = line.DroopOf(unit.PSIDrop(1), unit.SCFM(10))
	r.Swaps = []Swap{{ID: "stiff", Kind: SwapRegulator, Regulator: stiff}}
	s := solved(t, r)
	require.Len(t, s.Fixes, 1)
	assert.Equal(t, "stiff", s.Fixes[0].Swap.ID)
	assert.InEpsilon(t, 0.4*worked(t)["flow"], s.Fixes[0].Won.PSI(), sevenDigits)
	assert.False(t, s.Fixes[0].OfSupply)
}

// The lowest sensible opening of a valve that turns finely is where it chokes: with u = q/C =
// 64.12 kPa wide open and the gun's 280.59 kPa it is u b/p = 0.3 x 0.22851 = 0.06855 of a
// linear valve.
func TestFloorOfAFineValveIsWhereItChokes(t *testing.T) {
	r := mildClear(t)
	v := r.Gun.Valve
	v.Shape, v.Turns = gun.Linear, 1000
	g, err := gun.New(r.Gun.Stamp, 0, v)
	require.NoError(t, err)
	r.Gun.Gun = g
	s := solved(t, r)
	assert.InEpsilon(t, worked(t)["floor-choked"], s.Valve.Floor, sevenDigits)
}

// The highest and lowest place: 5000 m, and -430 m at the shore of the lowest lake on land.
func TestPlacesOnLand(t *testing.T) {
	r := mildClear(t)
	for metres, ok := range map[unit.Length]bool{-430: true, -431: false, 5000: true, 5001: false} {
		r.Day.Altitude = metres
		assert.Equal(t, ok, len(r.Problems()) == 0, "%v m", metres)
	}
}

// A panel 3 C above the dew point is the least (ISO 8502-4). 20 C and 50 % have a dew point
// of 9.2724 C by psychrolib 1.1.1.
func TestPanelMarginsAtTheirLimits(t *testing.T) {
	r := mildClear(t)
	r.Day.Air, r.Day.Humidity = unit.Celsius(20), 0.5
	for panel, want := range map[float64]string{
		12.27: "dew-near", 12.28: "cold-panel", 9.27: "dew-on-panel", 9.35: "dew-near",
	} {
		r.Day.Panel = unit.Celsius(panel)
		s := solved(t, r)
		require.NotEmpty(t, s.Against)
		assert.Equal(t, want, s.Against[0].ID, "%v C", panel)
		assert.InDelta(t, panel-9.272392, s.Weather.PanelMargin.C(), 1e-5)
	}
}

// The gun wanders half an inch either way of the distance (common practice speaks of 5 to 6
// in), inside its class's band.
func TestHalfAnInchEitherWay(t *testing.T) {
	r := mildClear(t)
	d := solved(t, r).Distance
	assert.InDelta(t, 0.5, (d.High - d.Target).Inches(), 1e-9)
	assert.InDelta(t, 5, d.Low.Inches(), 1e-9, "the class's nearest is closer than half an inch")
	r.Gun.Nearest, r.Gun.Farthest = unit.Inches(4), unit.Inches(5.7)
	d = solved(t, r).Distance
	assert.InDelta(t, 0.5, (d.Target - d.Low).Inches(), 1e-9)
	assert.InDelta(t, 5.7, d.High.Inches(), 1e-9)
}

// A line has room for twelve parts and no more.
func TestALineOfThirteenPartsIsRefused(t *testing.T) {
	r := mildClear(t)
	for len(r.Line) < MostParts {
		r.Line = append(r.Line, r.Line[1])
	}
	assert.Empty(t, r.Problems())
	r.Line = append(r.Line, r.Line[1])
	require.Len(t, r.Problems(), 1)
	assert.Equal(t, "too-many-parts", r.Problems()[0].ID)
}
