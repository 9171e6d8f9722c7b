package calc

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// sentenceOf is the sentence that a figure of a name is.
func sentenceOf(f Figures, name string) string {
	for _, x := range f {
		if x.Name == name {
			return x.Text
		}
	}
	return ""
}

func valueOf(f Figures, name string) float64 {
	for _, x := range f {
		if x.Name == name {
			return x.Value
		}
	}
	return -1
}

// How a coat dries is told as a share up to twice as fast or as long, as a count of times from
// there on, and as no change where the share would print as 0 %.
func TestPace(t *testing.T) {
	for _, x := range []struct {
		drying       float64
		pace, beside string
		figure       string
		value        float64
	}{
		{1, "pace-same", "as-day", "drying", 1},
		{1.004, "pace-same", "as-day", "drying", 1.004},
		{1.2, "pace-faster", "than-day", "faster", 0.2},
		{1.99, "pace-faster", "than-day", "faster", 0.99},
		{2, "pace-times", "as-day", "drying", 2},
		{3.1, "pace-times", "as-day", "drying", 3.1},
		{0.8, "pace-longer", "than-day", "slower", 0.25},
		{0.5, "pace-times-longer", "as-day", "longer", 2},
		{0.1, "pace-times-longer", "as-day", "longer", 10},
		{0.05, "pace-hardly", "as-day", "longer", 20},
		{0, "pace-hardly", "as-day", "longer", 20},
	} {
		f := pace(x.drying)
		assert.Equal(t, x.pace, sentenceOf(f, "pace"), x.drying)
		assert.Equal(t, x.beside, sentenceOf(f, "beside"), x.drying)
		assert.InDelta(t, x.value, valueOf(f, x.figure), 1e-9, x.drying)
		assert.InDelta(t, 0.5, valueOf(f, "mildHumidity"), 1e-9)
	}
}

func TestFlashOffBesideTheReferenceDay(t *testing.T) {
	for _, x := range []struct {
		flash          float64
		length, beside string
		figure         string
		value          float64
	}{
		{1, "flash-same", "as-day", "flash", 1},
		{0.84, "flash-shorter", "than-day", "less", 0.16},
		{0.1, "flash-shorter", "than-day", "less", 0.9},
		{1.52, "flash-longer", "than-day", "more", 0.52},
		{2, "flash-times", "as-day", "flash", 2},
		{20, "flash-times", "as-day", "flash", 20},
	} {
		length, beside, f := FlashOff(x.flash)
		assert.Equal(t, x.length, length, x.flash)
		assert.Equal(t, x.beside, beside, x.flash)
		assert.InDelta(t, x.value, valueOf(f, x.figure), 1e-9, x.flash)
	}
}
