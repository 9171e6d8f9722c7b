package tui

import (
	"boothset/calc"
	"boothset/calc/unit"
)

// The figures that the screen's own sentences name.

func whole(name string, n int) calc.Figure {
	return calc.FigureOf(name, calc.FigureCount, n)
}

func named(name, text string) calc.Figure { return calc.Figure{Name: name, Text: text} }

func gaugeFigure(name string, p unit.Gauge) calc.Figure {
	return calc.FigureOf(name, calc.FigureGauge, p)
}

func dropFigure(name string, d unit.Drop) calc.Figure {
	return calc.FigureOf(name, calc.FigureDrop, d)
}

func nearFigure(name string, l unit.Length) calc.Figure {
	return calc.FigureOf(name, calc.FigureDistance, l)
}

func shareFigure(name string, v float64) calc.Figure {
	return calc.FigureOf(name, calc.FigureShare, v)
}

func ratioFigure(name string, v float64) calc.Figure {
	return calc.FigureOf(name, calc.FigureRatio, v)
}

func tempFigure(name string, t unit.Temp) calc.Figure {
	return calc.FigureOf(name, calc.FigureTemp, t)
}

func flowFigure(name string, q unit.Flow) calc.Figure { return calc.FigureOf(name, calc.FigureFlow, q) }
