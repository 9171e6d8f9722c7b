package calc

import (
	"time"

	"boothset/calc/coat"
	"boothset/calc/unit"
)

// FigureOf is a figure of a kind, its value in the kind's unit.
func FigureOf[V ~float64 | ~int](name string, kind FigureKind, value V) Figure {
	return Figure{Name: name, Kind: kind, Value: float64(value)}
}

// TextFigure is a figure that is in words already.
func TextFigure(name, v string) Figure { return Figure{Name: name, Text: v} }

// GivenFigure is a figure that was typed, or stands in a file: it may be anything.
func GivenFigure(name, v string) Figure { return Figure{Name: name, Kind: FigureGiven, Text: v} }

// PathFigure is a figure that is the name of a file with its folders.
func PathFigure(name, v string) Figure { return Figure{Name: name, Kind: FigurePath, Text: v} }

// SentenceFigure is a figure that is another sentence, by its id.
func SentenceFigure(name, id string) Figure {
	return Figure{Name: name, Kind: FigureSentence, Text: id}
}

// CountFigure is a figure that is a number of things.
func CountFigure(name string, n int) Figure { return FigureOf(name, FigureCount, n) }

// BriefFigure is FigureOf told to three digits.
func BriefFigure[V ~float64 | ~int](name string, kind FigureKind, v V) Figure {
	return brief(FigureOf(name, kind, v))
}

// Makers of figures, one a kind.

// brief is a figure printed to three digits.
func brief(f Figure) Figure {
	f.Brief = true
	return f
}

func times(name string, v float64) Figure { return FigureOf(name, FigureTimes, v) }

func gauge(name string, p unit.Gauge) Figure { return FigureOf(name, FigureGauge, p) }

func drop(name string, d unit.Drop) Figure { return FigureOf(name, FigureDrop, d) }

func near(name string, l unit.Length) Figure { return FigureOf(name, FigureDistance, l) }

func share(name string, v float64) Figure { return FigureOf(name, FigureShare, v) }

func ratio(name string, v float64) Figure { return FigureOf(name, FigureRatio, v) }

func flow(name string, q unit.Flow) Figure { return FigureOf(name, FigureFlow, q) }

func temp(name string, t unit.Temp) Figure { return FigureOf(name, FigureTemp, t) }

func minutes(name string, d time.Duration) Figure { return FigureOf(name, FigureMinutes, d.Seconds()) }

func volume(name string, v unit.Volume) Figure { return FigureOf(name, FigureVolume, v) }

func litres(name string, v float64) Figure { return FigureOf(name, FigureLitres, v) }

func clock(name string, c Clock) Figure {
	return FigureOf(name, FigureClock, time.Duration(c).Seconds())
}

func cupSeconds(name string, s float64) Figure { return FigureOf(name, FigureCup, s) }

func viscous(name string, nu unit.Kinematic) Figure { return FigureOf(name, FigureViscosity, nu) }

func degrees(name string, d unit.TempDiff) Figure { return FigureOf(name, FigureTempDiff, d) }

func filmFigure(name string, l unit.Length) Figure { return FigureOf(name, FigureFilm, l) }

func areaFigure(name string, a unit.Area) Figure { return FigureOf(name, FigureArea, a) }

func speedFigure(name string, v unit.Speed) Figure { return FigureOf(name, FigureSpeed, v) }

func fluidFigure(name string, q coat.FluidRate) Figure { return FigureOf(name, FigureFluid, q) }

func money(name string, v float64) Figure { return FigureOf(name, FigureMoney, v) }
