package calc

import "boothset/calc/unit"

// quantities is what the value of a figure is, by its kind; none for text and plain numbers.
var quantities = [...]*unit.Quantity{
	FigureGauge: unit.Pressure, FigureDrop: unit.Pressure, FigureDistance: unit.Distance, FigureRun: unit.Run,
	FigureTemp: unit.Temperature, FigureTempDiff: unit.TemperatureDifference, FigureFlow: unit.AirFlow, FigureShare: unit.Share,
	FigureVolume: unit.Tank, FigureFilm: unit.Film, FigureArea: unit.Surface, FigureSpeed: unit.Velocity,
	FigureDensity: unit.PaintDensity, FigureVOC: unit.VOC, FigureWeight: unit.Weight,
	FigureFluid: unit.FluidFlow, FigureViscosity: unit.Viscosity, FigurePath: nil, FigureTip: unit.Tip,
}

// Quantity is what the value of a figure of the kind is, nil for text and plain numbers.
func (k FigureKind) Quantity() *unit.Quantity { return quantities[k] }
