package question_test

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// around is answers that will do around any one field of a question. atHigh: the field
// stands at its upper end.
func around(q *question.Question, field string, atHigh bool) question.Texts {
	pick := func(low, high string) string {
		if atHigh {
			return high
		}
		return low
	}
	switch q {
	case question.Plan:
		texts := questiontest.MildDay("clear", "reduced-pressure")
		texts["compressor"], texts["receiver"] = []string{"18cfm"}, []string{"60gal"}
		switch field {
		case "cut-in":
			texts["cut-out"] = []string{pick("90psi", "500psi")}
		case "cut-out":
			texts["cut-in"] = []string{pick("5psi", "95psi")}
		}
		return texts
	case question.Day:
		return questiontest.Texts("coat", "clear", "temp", "70F", "humidity", "45", "pot-life", "4h")
	case question.Thin:
		texts := questiontest.Texts("coat", "clear", "cup", "iso4", "seconds", "60", "paint", "20C", "sheet-seconds", "50", "second-seconds", "50", "second-temp", "25C")
		if field == "temp" {
			delete(texts, "paint")
		}
		return texts
	case question.Film:
		texts := questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "fluid-rate", "180", "solids", "45")
		switch field {
		case "cup-volume", "cup-time":
			delete(texts, "fluid-rate")
			texts["cup-volume"], texts["cup-time"] = []string{pick("3mL", "1L")}, []string{pick("5s", "3000s")}
		case "tip", "viscosity", "cup", "seconds":
			delete(texts, "fluid-rate")
			texts["tip"], texts["cup"], texts["seconds"] = []string{"1.3mm"}, []string{"iso4"}, []string{"60"}
		case "ratio":
			texts["solids"] = []string{"50 + 40"}
		}
		return texts
	}
	texts := questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "area", "2m2", "solids", "45", "pot-life", "2h")
	if field == "ratio" {
		texts["solids"] = []string{"50 + 40"}
	}
	return texts
}

// resolveFaults is what will not do of a question's answers, before anything is solved.
func resolveFaults(r *question.Reader, q *question.Question, a question.Answers, sys unit.System) (faults []*question.Fault) {
	switch q {
	case question.Plan:
		_, faults = r.Plan(a, sys)
	case question.Day:
		_, faults = r.Day(a, sys)
	case question.Thin:
		_, faults = r.Thin(a, sys)
	case question.Film:
		_, faults = r.Film(a, sys)
	case question.Mix:
		_, faults = r.Mix(a, sys)
	}
	return faults
}

// typed is the text of a field of which one quantity is a value; of a pair the other one is
// 10 ft, 10 cfm, 10% or the bore of 3/8 in.
func typed(row question.Row, piece int, si float64, sys unit.System) string {
	of := row.Of[piece]
	switch {
	case row.Field == question.Price:
		return fmt.Sprintf("%.9f/L", si)
	case of == nil:
		return fmt.Sprintf("%.0f", si)
	case !row.Pair():
		return of.CountText(sys, of.Count(sys, si), 9)
	case row.Field == question.Wet && piece == 0:
		return of.CountText(sys, of.Count(sys, si), 9)
	}
	other := map[*unit.Quantity]string{unit.Run: "10ft", unit.Bore: "3/8in", unit.AirFlow: "10cfm", unit.Share: "10%", unit.Film: "1um", unit.Hours: "2h", unit.Temperature: "20C"}[row.Of[1-piece]]
	apart := cmp.Or(row.Apart, ",")
	if piece == 0 {
		return of.CountText(sys, of.Count(sys, si), 9) + apart + other
	}
	// A bore is written as a fraction of an inch, or with few decimals: as a length it has all.
	if of == unit.Bore {
		of = unit.Distance
	}
	return other + apart + of.CountText(sys, of.Count(sys, si), 9)
}

// Just inside a row's bounds nothing is wrong with it. Just outside its question says what
// the row does, in the very sentence; of the rows whose bounds only hold steps it is solving
// that says it.
func TestBoundsAreThoseOfTheRequests(t *testing.T) {
	r := questiontest.Open(t)
	seen := 0
	eachRow(func(q *question.Question, row question.Row) {
		for piece, b := range row.Bounds {
			if b == nil {
				continue
			}
			seen++
			little := 1e-6 * math.Max(math.Abs(b.Low), math.Abs(b.High))
			if row.Of[piece] == nil && row.Field != question.Price {
				little = 1 // a count of things
			}
			inside := [2]float64{b.Low + little, b.High - little}
			outside := [2]float64{b.Low - little, b.High + little}
			switch {
			case little == 1:
				inside = [2]float64{b.Low, b.High}
			case row.Field == question.Other && piece == 0:
				inside[1] -= float64(unit.SCFM(20)) // the gun draws beside it
			}
			for _, sys := range []unit.System{unit.US, unit.Metric} {
				for end := range 2 {
					texts := around(q, row.Name, end == 1)
					check := func(si float64) (alone, asked *question.Fault) {
						text := typed(row, piece, si, sys)
						texts[row.Name] = []string{text}
						values := r.ReadText(row.Field, text, sys)
						require.Len(t, values, 1)
						if values[0].Fault == nil && row.Of[piece] != nil {
							require.InDelta(t, si, values[0].SI[piece], little/10, "%s of %s: %s", row.Name, q.Name, text)
						}
						_, err := ask(r, q, texts, sys)
						errors.As(err, &asked)
						if b.ID != "" {
							asked = nil
							if faults := resolveFaults(r, q, r.ReadAll(q, texts, sys), sys); len(faults) > 0 {
								asked = faults[0]
							}
						}
						return r.Check(row.Field, values, sys), asked
					}
					alone, asked := check(inside[end])
					assert.Nil(t, alone, "%s of %s", row.Name, q.Name)
					if b.ID != "" {
						assert.Nil(t, asked, "%s of %s", row.Name, q.Name)
					} else if asked != nil {
						assert.NotContains(t, []string{"outside-unit", "outside"}, asked.ID, "%s of %s at %v: %v", row.Name, q.Name, inside[end], asked)
					}
					alone, asked = check(outside[end])
					if !assert.NotNil(t, asked, "%s of %s at %v", row.Name, q.Name, outside[end]) {
						continue
					}
					refused := r.ReadText(row.Field, texts[row.Name][0], sys)[0].Fault
					switch {
					case q == question.Thin && row.Field == question.Temp:
						assert.Equal(t, alone.Want(), asked.Want(), "the booth's is taken for the paint's, and told as that")
					case b.ID != "" || refused != nil:
						assert.Equal(t, alone, asked, "%s of %s", row.Name, q.Name)
					default:
						assert.Nil(t, alone)
						assert.Equal(t, row.Name, asked.Field)
						assert.Contains(t, []string{"outside-unit", "want-pot-life", "outside", "above-cut-out"}, asked.ID) // the least cut-out is below any supply
					}
				}
			}
		}
	})
	assert.Greater(t, seen, 60)
}
