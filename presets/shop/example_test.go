package shop_test

import (
	"fmt"
	"os"
	"path/filepath"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"
)

// A booth of the folder answers for its line; a file that will not do costs itself.
func Example() {
	dir, _ := os.MkdirTemp("", "shop")
	defer os.RemoveAll(dir)
	os.Mkdir(filepath.Join(dir, "booths"), 0o700)
	os.WriteFile(filepath.Join(dir, "booths", "two.toml"), []byte("format = \"boothset.booth/1\"\nsupply = \"95psi\"\n"), 0o600)
	os.WriteFile(filepath.Join(dir, "booths", "three.toml"), []byte("format = \"boothset.booth/1\"\nsupply = \"95\"\n"), 0o600)

	r, _ := question.Open(func(string) string { return "" }, words.English())
	f, err := shop.At(shop.Where(os.Getenv, dir))
	if err != nil {
		fmt.Println(err)
		return
	}
	defer f.Close()
	booths, faults := f.Booths(r)
	for _, b := range booths {
		fmt.Println(b.ID, b.Answers.Text(question.Supply))
	}
	for _, fault := range faults {
		fmt.Println(fault.In(words.English()))
	}
	day := question.Texts{"coat": {"clear"}, "gun": {"HVLP"}, "temp": {"24C"}, "humidity": {"45"}}
	over := r.Over(booths[0].Answers)
	request, _ := over.Plan(over.ReadAll(question.Plan, day, unit.US), unit.US)
	fmt.Println(unit.US.Gauge(request.Supply, unit.Usual))
	// Output:
	// two 95psi
	// booths/three.toml:2: will not do: supply "95": give its unit: whoever reads the file may think in psi or in bar
	// 95 psi
}
