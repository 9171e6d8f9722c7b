package question_test

import (
	"errors"
	"os"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"
)

// FuzzShop reads anything at all as a shop's file: it is refused as a fault of that
// file, with a line of it or none, or it gives a catalogue with which any of its coats
// and guns can be answered, in finite numbers, or is refused as an answer.
func FuzzShop(f *testing.F) {
	for _, name := range []string{"coats.toml", "guns.toml", "line.toml"} {
		data, err := os.ReadFile("../catalogue/" + name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	for _, s := range []string{
		"", "\ufeff", "[line]\nhose = []\ncoupling = \"none\"\n", "[coat.clear]\nworking = {}\n",
		"[gun.reduced-pressure]\ncap = \"31.9psi\"\nflow = \"1000cfm\"\n", "[coupling.slim]\nbore = \"0.3mm\"\n",
		"[regulator.\"1/2in\"]\ndroop = \"1000000psi\"\nrated-flow = \"0.1cfm\"\n",
		"[hose.\"3/8in\"]\nend = \"0.001mm\"\n", "[line]\nunits = \"metric\"\nhose = [\"7,5m,10\"]\n",
		"[gun.reduced-pressure.valve]\nshape = 9.9\nturns = 0.001\n",
		"[gun.reduced-pressure]\naliases = [\"HVLP\"]\n", "line = { hose = [\"25ft,3/8\"], gauge = \"foot\" }\n",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var r *question.Reader
		c, err := catalogue.Load(data, "shop.toml")
		if err == nil {
			r, err = question.New(c)
		}
		if err != nil {
			var fault *catalogue.FileError
			if !errors.As(err, &fault) || r != nil || fault.File != "shop.toml" || fault.Why == "" || fault.Line < 0 || (fault.Line > 0) != (fault.Column > 0) {
				t.Fatalf("%v, %+v", c, err)
			}
			return
		}
		for _, coat := range r.Choices(question.Coat) {
			for _, gun := range r.Choices(question.Gun) {
				a, err := ask(r, question.Plan, questiontest.With(questiontest.MildDay(coat.ID, gun.ID), "wall", "70psi"), unit.US)
				if err != nil {
					if bad := unnamed(err); bad != "" {
						t.Fatalf("%s on %s: %s", coat.ID, gun.ID, bad)
					}
					continue
				}
				if bad := questiontest.Unsound(a.(*calc.Setup), "setup"); bad != "" {
					t.Fatalf("%s on %s: %s", coat.ID, gun.ID, bad)
				}
			}
		}
	})
}

// unnamed is what an error is that does not say which field will not do, and what would.
func unnamed(err error) string {
	var fault *question.Fault
	if !errors.As(err, &fault) || fault.Field == "" || fault.Want() == "" {
		return err.Error()
	}
	return ""
}

// fuzzField types anything at all into one field of a question that is answered otherwise:
// it is refused by name, or answered in finite figures.
func fuzzField(f *testing.F, q *question.Question, base func(field string) question.Texts, seeds ...string) {
	for _, s := range append(seeds, "", "1e9", "-1", "nan", "999999999", "\x00", "½", "clear") {
		for i := range q.Fields {
			f.Add(i, s, i%2 == 0)
		}
	}
	r := questiontest.Open(f)
	f.Fuzz(func(t *testing.T, n int, text string, metric bool) {
		field := q.Fields[(n%len(q.Fields)+len(q.Fields))%len(q.Fields)].Name
		sys := unit.US
		if metric {
			sys = unit.Metric
		}
		texts := questiontest.With(base(field), field, "")
		texts[field] = []string{text}
		a, err := ask(r, q, texts, sys)
		if err != nil {
			if bad := unnamed(err); bad != "" {
				t.Fatalf("%s %q: %s", field, text, bad)
			}
		} else if bad := questiontest.Unsound(a, q.Name); bad != "" {
			t.Fatalf("%s %q: %s", field, text, bad)
		}
	})
}

func FuzzDay(f *testing.F) {
	fuzzField(f, question.Day, func(string) question.Texts {
		return questiontest.Texts("coat", "clear", "temp", "70F", "humidity", "45", "pot-life", "4h", "started", "14:30")
	}, "75", "24C", "100", "0,5", "14:30", "12am", "255:00", ":", "4h", "168h", "100%", "1430", "14.3", "14.30", "230p.m.")
}

func FuzzThin(f *testing.F) {
	fuzzField(f, question.Thin, func(string) question.Texts {
		return questiontest.Texts("coat", "clear", "cup", "din4", "seconds", "20", "paint", "62F", "sheet-seconds", "16-18", "second-seconds", "17", "second-temp", "75F")
	}, "18", "18s", "4mm", "din4", "iso 4", "16-18", "17", "0", "10%", "0,5", "70F", "24C", "waterborne-base")
}

// laid is answers to film and mix, with what the field gives way to left out.
func laid(field string) question.Texts {
	texts := questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "area", "2m2", "solids", "45", "ratio", "4:1", "fluid-rate", "180", "pot-life", "2h")
	switch field {
	case "cup-volume", "cup-time":
		delete(texts, "fluid-rate")
		texts["cup-volume"], texts["cup-time"] = []string{"100mL"}, []string{"30s"}
	case "tip", "viscosity", "cup", "seconds":
		delete(texts, "fluid-rate")
		texts["tip"], texts["cup"], texts["seconds"] = []string{"1.3"}, []string{"din4"}, []string{"20"}
	}
	return texts
}

func FuzzFilm(f *testing.F) {
	fuzzField(f, question.Film, laid, "2.2mil", "3/8", "4:1:1", "2:1+10%", "4mil,5mil", "1.2ft/s", "18", "12,5", "+", "4 1 1", "4/1/1", "4.1.1", "1 1/2", "2 1+10%")
}

func FuzzMix(f *testing.F) {
	fuzzField(f, question.Mix, laid, "2.2mil", "2 door", "4:1:1", "2:1+10%", "60/L", "$", "+", "18", "12,5", "4.1.1", "2 x door", "60/qt")
}

func FuzzPlan(f *testing.F) {
	fuzzField(f, question.Plan, func(string) question.Texts {
		texts := questiontest.MildDay("clear", "reduced-pressure")
		texts["compressor"], texts["receiver"], texts["wall"] = []string{"18cfm"}, []string{"60gal"}, []string{"33psi"}
		return texts
	}, "72F", "45", "90psi", "25ft,3/8in", "25,3/8 + 6,1/4", "7,5m,10mm", "10cfm,50%", "5hp", "none", "HVLP", "hvlpp", "100,3/4", "1,500", "+", " + ,")
}
