package calc

import (
	"time"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// Makers of figures, one a kind.

func text(name, v string) Figure { return Figure{Name: name, Text: v} }

func named(name, id string) Figure { return Figure{Name: name, Kind: FigureNamed, Text: id} }

// brief is a figure told to three digits.
func brief(f Figure) Figure {
	f.Brief = true
	return f
}

func times(name string, v float64) Figure { return Figure{Name: name, Kind: FigureTimes, Value: v} }

func gauge(name string, p unit.Gauge) Figure {
	return Figure{Name: name, Kind: FigureGauge, Value: float64(p)}
}

func drop(name string, d unit.Drop) Figure {
	return Figure{Name: name, Kind: FigureDrop, Value: float64(d)}
}

func near(name string, l unit.Length) Figure {
	return Figure{Name: name, Kind: FigureDistance, Value: float64(l)}
}

func share(name string, v float64) Figure { return Figure{Name: name, Kind: FigureShare, Value: v} }

func ratio(name string, v float64) Figure { return Figure{Name: name, Kind: FigureRatio, Value: v} }

func flow(name string, q unit.Flow) Figure {
	return Figure{Name: name, Kind: FigureFlow, Value: float64(q)}
}

func temp(name string, t unit.Temp) Figure {
	return Figure{Name: name, Kind: FigureTemp, Value: float64(t)}
}

func minutes(name string, d time.Duration) Figure {
	return Figure{Name: name, Kind: FigureMinutes, Value: d.Seconds()}
}

func volume(name string, v unit.Volume) Figure {
	return Figure{Name: name, Kind: FigureVolume, Value: float64(v)}
}

func litres(name string, v float64) Figure { return Figure{Name: name, Kind: FigureLitres, Value: v} }

func clock(name string, c Clock) Figure {
	return Figure{Name: name, Kind: FigureClock, Value: time.Duration(c).Seconds()}
}

func cupSeconds(name string, s float64) Figure {
	return Figure{Name: name, Kind: FigureCup, Value: s}
}

func viscous(name string, nu unit.Kinematic) Figure {
	return Figure{Name: name, Kind: FigureViscosity, Value: float64(nu)}
}

func degrees(name string, d unit.TempDiff) Figure {
	return Figure{Name: name, Kind: FigureTempDiff, Value: float64(d)}
}

func filmFigure(name string, l unit.Length) Figure {
	return Figure{Name: name, Kind: FigureFilm, Value: float64(l)}
}

func areaFigure(name string, a unit.Area) Figure {
	return Figure{Name: name, Kind: FigureArea, Value: float64(a)}
}

func speedFigure(name string, v unit.Speed) Figure {
	return Figure{Name: name, Kind: FigureSpeed, Value: float64(v)}
}

func fluidFigure(name string, q coat.FluidRate) Figure {
	return Figure{Name: name, Kind: FigureFluid, Value: float64(q)}
}

func count(name string, n int) Figure {
	return Figure{Name: name, Kind: FigureCount, Value: float64(n)}
}

func money(name string, v float64) Figure {
	return Figure{Name: name, Kind: FigureMoney, Value: v}
}
