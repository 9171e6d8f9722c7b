package presets_test

import (
	"errors"
	"os"
	"reflect"
	"testing"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets"
)

// FuzzShop reads anything at all as a shop's file: it is refused as a fault of that
// file, with a line of it or none, or it gives a catalogue with which any of its coats
// and guns can be answered, in finite numbers, or is refused as an answer.
func FuzzShop(f *testing.F) {
	for _, name := range []string{"coats.toml", "guns.toml", "line.toml"} {
		data, err := os.ReadFile(name)
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
		"[gun.reduced-pressure.valve]\nshape = [[0, 0], [0.99999, 0.00001], [1, 1]]\nturns = 0.001\n",
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		c, err := presets.Load(data, "shop.toml")
		if err != nil {
			var fault *presets.FileError
			if !errors.As(err, &fault) || c != nil || fault.File != "shop.toml" || fault.Why == "" || fault.Line < 0 {
				t.Fatalf("%v, %+v", c, err)
			}
			return
		}
		for _, coat := range c.Choices(presets.FieldCoat) {
			for _, gun := range c.Choices(presets.FieldGun) {
				a := mildDay(coat.ID, gun.ID)
				a.Wall = "70psi"
				r, err := c.Request(a, unit.US)
				if err != nil {
					var fault *presets.FieldError
					if !errors.As(err, &fault) || fault.Field == "" || fault.Want == "" {
						t.Fatalf("%s on %s: %v", coat.ID, gun.ID, err)
					}
					continue
				}
				s, err := calc.Solve(r)
				if err != nil {
					t.Fatalf("%s on %s: %v", coat.ID, gun.ID, err)
				}
				if bad := unsound(reflect.ValueOf(s), "setup"); bad != "" {
					t.Fatalf("%s on %s: %s", coat.ID, gun.ID, bad)
				}
			}
		}
	})
}
