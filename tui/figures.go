package tui

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// The figures that the screen's own sentences name.

func whole(name string, n int) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureCount, Value: float64(n)}
}

func named(name, text string) calc.Figure { return calc.Figure{Name: name, Text: text} }

func gaugeFigure(name string, p unit.Gauge) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureGauge, Value: float64(p)}
}

func dropFigure(name string, d unit.Drop) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureDrop, Value: float64(d)}
}

func nearFigure(name string, l unit.Length) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureDistance, Value: float64(l)}
}

func shareFigure(name string, v float64) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureShare, Value: v}
}

func ratioFigure(name string, v float64) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureRatio, Value: v}
}

func tempFigure(name string, t unit.Temp) calc.Figure {
	return calc.Figure{Name: name, Kind: calc.FigureTemp, Value: float64(t)}
}
