package edit_test

import (
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
)

// FuzzStepText moves anything at all that could stand in a field: nothing panics, and
// what moves is taken by the field unless another part of the text is wrong.
func FuzzStepText(f *testing.F) {
	r := questiontest.Open(f)
	rows := question.Plan.Fields
	for i := range rows {
		f.Add(i, read(r, wholeShop(), unit.US).Text(rows[i].Field), 3, 1, false)
	}
	for _, s := range []string{"25,3/8 + 6,1/4", ",", "+", " + ,", "7,5m,10mm", "é,1 + 2", "\xff", "1e9", "999999999,999999999", "5hp", "-0", "none", "0hp"} {
		for i := range rows {
			f.Add(i, s, 2, -10, true)
			f.Add(i, s, 0, 1, false)
		}
	}
	f.Add(10, "\xc3+0", 21, 1, true)
	f.Fuzz(func(t *testing.T, n int, text string, cursor, by int, metric bool) {
		field := rows[int(uint(n)%uint(len(rows)))].Field
		sys := unit.US
		if metric {
			sys = unit.Metric
		}
		a := read(r, wholeShop(), sys)
		got, moved := edit.StepText(r, a, field, text, cursor, max(min(by, 20), -20), sys)
		if !moved {
			if got != text {
				t.Fatalf("%q became %q", text, got)
			}
			return
		}
		before := r.Check(field, r.ReadText(field, text, sys), sys)
		if after := r.Check(field, r.ReadText(field, got, sys), sys); after != nil && (before == nil || field.Listed()) {
			t.Fatalf("%s %q became %q: %v", field.Name, text, got, after)
		}
	})
}

// FuzzSuggestions asks with anything at all in a field: what it gives can be walked over,
// and the questions that have the field take it where the values before it are good.
func FuzzSuggestions(f *testing.F) {
	fields := []*question.Field{question.Cup, question.SheetCup, question.Ratio, question.Tip, question.CupSize, question.Fan, question.Overlap, question.Area, question.Price, question.Started}
	for _, s := range []string{"", "4", "4 mm", "din", "zahn#2", "3:", "2", "2 d", "50", "1.3", "60", "$60/q", "60/L + 5", "hood +", "+", "930", "2:30pm", "12am", "\x00", "½", "00000000000000000000000000000001", "1e9"} {
		for i := range fields {
			f.Add(i, s, i%2 == 0)
		}
	}
	r := questiontest.Open(f)
	f.Fuzz(func(t *testing.T, n int, text string, metric bool) {
		field := fields[int(uint(n)%uint(len(fields)))]
		sys := unit.US
		if metric {
			sys = unit.Metric
		}
		walkable(t, r, field, text, sys)
		for _, i := range edit.Suggestions(r, field, text, sys) {
			for _, q := range pages {
				// A price may be any number; a litre's has a bound.
				if err := asked(r, q, field, i.ID, sys); err != nil && field != question.Price && !strings.Contains(text, "+") {
					t.Fatalf("%s %s %q: %v", q.Name, field.Name, i.ID, err)
				}
			}
		}
	})
}
