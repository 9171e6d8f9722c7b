package calc

import (
	"math"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Bound is what a value of a request may be, in SI, and the sentence that says so. Bounds
// are wider than any booth or job; they keep the sums sane.
type Bound struct {
	ID        string
	Low, High float64
	Kind      FigureKind
}

// The bounds of the values of all requests.
var (
	AirTempBound  = Bound{"outside", float64(ColdestAir), float64(HottestAir), FigureTemp} // and what stands in it
	HumidityBound = Bound{"outside", 0.01, 1, FigureShare}
	AltitudeBound = Bound{"outside", float64(LowestSite), float64(HighestSite), FigureRun}
	PanelsBound   = Bound{"outside", 1, MostPanels, FigureCount}
	PotLifeBound  = Bound{"outside", ShortestPotLife.Seconds(), LongestPotLife.Seconds(), FigureMinutes}

	PotLifeAtBound = Bound{"outside", unit.ZeroCelsius + 5, unit.ZeroCelsius + 40, FigureTemp} // what its rule reaches

	SupplyBound     = Bound{"outside", float64(LowestSupply), float64(TopSupply), FigureGauge} // and the wall
	MarkBound       = Bound{"outside-mark", float64(FinestMark), float64(CoarsestMark), FigureDrop}
	GaugeSpanBound  = Bound{"outside", 10 * unit.PascalPerPSI, 1000 * unit.PascalPerPSI, FigureGauge}
	GaugeClassBound = Bound{"outside", 0.0005, 0.1, FigureShare}
	HoseLengthBound = Bound{"outside-hose-length", float64(ShortestHose), float64(LongestHose), FigureRun}
	HoseBoreBound   = Bound{"outside-hose-bore", float64(NarrowestHose), float64(WidestHose), FigureDistance}

	SolidsBound   = Bound{"outside", LeastSolids, MostSolids, FigureShare}
	FilmBound     = Bound{"outside", float64(ThinnestFilm), float64(ThickestFilm), FigureFilm}
	CoatsBound    = Bound{"outside", 1, MostCoats, FigureCount}
	BeforeBound   = Bound{"outside", 0, float64(10000 * coat.Micrometre), FigureFilm} // the film that was there
	TransferBound = Bound{"outside", 0.1, 0.9, FigureShare}
	InletBound    = Bound{"outside", 1 * unit.PascalPerPSI, 150 * unit.PascalPerPSI, FigureGauge} // of a gun
	CapBound      = Bound{"outside", 0.5 * unit.PascalPerPSI, 100 * unit.PascalPerPSI, FigureGauge}
	WaitBound     = Bound{"outside", 10, 7 * 24 * 3600, FigureMinutes} // for a coat to dry
	DistanceBound = Bound{"outside", 2 * unit.MetrePerInch, float64(farthestHold), FigureDistance}
	FluidBound    = Bound{"outside", float64(coat.MLPerMin(5)), float64(coat.MLPerMin(1500)), FigureFluid} // of any gun

	CupVolumeBound = Bound{"outside", 1e-6, 5e-3, FigureVolume}
	CupTimeBound   = Bound{"outside", 1, 3600, FigureMinutes}
	TipBound       = Bound{"outside", 0.5e-3, 3e-3, FigureDistance}
	ViscosityBound = Bound{"outside", 5e-6, 500e-6, FigureViscosity}
	FanBound       = Bound{"outside", float64(NarrowestFan), float64(WidestFan), FigureDistance}
	OverlapBound   = Bound{"outside", 0, MostOverlap, FigureShare}
	GunSpeedBound  = Bound{"outside", float64(slowestHand), float64(fastestHand), FigureSpeed}
	HeightBound    = Bound{"outside", 0.01, 10, FigureRun}
	CombBound      = Bound{"outside", 1e-6, float64(ThickestFilm), FigureFilm}

	AreaBound        = Bound{"outside", 0.001, 1000, FigureArea}
	CupSizeBound     = Bound{"outside", float64(SmallestCup), float64(LargestCup), FigureVolume}
	LeadBound        = Bound{"outside", 0, 0.3, FigureDistance}
	DensityBound     = Bound{"outside", 500, 5000, FigureDensity}
	VOCBound         = Bound{"outside", 0, 1500, FigureVOC}
	LossBound        = Bound{"outside", 0, 5e-3, FigureVolume}
	PriceBound       = Bound{"outside-price", 0, 1e5, FigureMoney}
	MixTempBound     = Bound{"outside", unit.ZeroCelsius + 5, unit.ZeroCelsius + 40, FigureTemp}
	MostThinnerBound = Bound{"outside", 0, MostThinner, FigureShare}
)

// Holds reports whether v lies within the bound. What is at an edge but for the rounding
// of its unit is inside; what is no number is not.
func (b *Bound) Holds(v float64) bool {
	const rounding = 1e-12
	return v >= b.Low-rounding*math.Abs(b.Low) && v <= b.High+rounding*math.Abs(b.High)
}

// Figures are what the sentence of a value outside the bound names: it and both ends. It and
// the end that it is past do not print alike.
func (b *Bound) Figures(v float64) Figures {
	f := Figures{
		{Name: "given", Kind: b.Kind, Value: v, Brief: true},
		{Name: "low", Kind: b.Kind, Value: b.Low, Brief: true, WithoutUnit: true},
		{Name: "high", Kind: b.Kind, Value: b.High, Brief: true},
	}
	past := 1
	if v > b.High {
		past = 2
	}
	f[0].Past, f[past].Past = &f[past].Value, &f[0].Value
	return f
}

// within adds a problem where v does not lie within a bound.
func (p *problems) within(field string, v float64, b *Bound) {
	if !b.Holds(v) {
		p.add(field, b.ID, b.Figures(v)...)
	}
}
