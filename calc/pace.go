package calc

import (
	"math"

	"boothset/calc/coat"
)

// twice is from how many times as fast or as long on a share more says less than a count of
// times: "3 times as fast", not "200 % faster".
const twice = 2

// mildDay is the figures of the day that others are told beside, coat's reference day.
func mildDay() Figures {
	return Figures{temp("mild", coat.ReferenceTemp), share("mildHumidity", coat.ReferenceHumidity)}
}

// pace is how a coat dries beside the reference day, by how many times as fast it does: the
// figures "pace" ("dries 20 % faster") and "beside" ("than on a 70 F, 50 % day").
func pace(drying float64) Figures {
	id, beside := "pace-faster", "than-day"
	longer := coat.FlashFactor(drying)
	switch {
	case longer >= coat.LongestFlash:
		id, beside = "pace-hardly", "as-day"
	case math.Round(100*drying) == 100:
		id, beside = "pace-same", "as-day"
	case drying >= twice:
		id, beside = "pace-times", "as-day"
	case longer >= twice:
		id, beside = "pace-times-longer", "as-day"
	case drying < 1:
		id = "pace-longer"
	}
	return append(mildDay(), SentenceFigure("pace", id), SentenceFigure("beside", beside), times("drying", drying), times("longer", longer),
		share("faster", drying-1), share("slower", longer-1))
}

// FlashOff is how long flash-off takes beside the reference day, by how many times as long: the
// sentences of its length ("16 % shorter") and of what that is beside ("than on a 70 F, 50 % day"),
// with the figures of both.
func FlashOff(flash float64) (length, beside string, f Figures) {
	length, beside = "flash-longer", "than-day"
	switch {
	case math.Round(100*flash) == 100:
		length, beside = "flash-same", "as-day"
	case flash >= twice:
		length, beside = "flash-times", "as-day"
	case flash < 1:
		length = "flash-shorter"
	}
	return length, beside, append(mildDay(), times("flash", flash), share("more", flash-1), share("less", 1-flash))
}
