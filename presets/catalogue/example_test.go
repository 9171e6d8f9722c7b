package catalogue_test

import (
	"fmt"

	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/words"
)

// What a coat starts from on a class of gun, and what that rests on.
func Example() {
	nowhere := func(string) string { return "" } // os.Getenv, where there is a shop's file
	w := words.English()
	c, err := catalogue.Open(nowhere, w)
	if err != nil {
		fmt.Println(err)
		return
	}
	clear, _ := c.Coats.Get("clear")
	band, _ := clear.On("high-volume-low-pressure")
	fmt.Println(clear.Called(), "starts at", unit.US.Gauge(band.Start, unit.Usual))
	fmt.Println(w.Ground(band.Ground))
	for _, gun := range c.Choices(catalogue.KindGun) {
		fmt.Println(gun.ID, gun.Aliases)
	}
	// Output:
	// clearcoat starts at 27 psi
	// common practice, no published source
	// high-volume-low-pressure [hvlp]
	// reduced-pressure []
	// high-pressure [conventional]
	// touch-up [mini spot]
	// pressure-feed []
}

// A shop's own file lies over what ships, key by key; what is wrong in it has its place.
func ExampleLoad() {
	c, _ := catalogue.Load([]byte("[coat.clear.film]\ntypical = \"2.4mil\"\n"), "shop.toml")
	clear, _ := c.Coats.Get("clear")
	fmt.Println(unit.US.Film(clear.Film.Typical.V, unit.Usual), "between", unit.US.Film(clear.Film.Low.V, unit.Usual), "and", unit.US.Film(clear.Film.High.V, unit.Usual))
	_, err := catalogue.Load([]byte("[gun.reduced-pressure]\n  inlet = 29\n"), "shop.toml")
	fmt.Println(err)
	// Output:
	// 2.4 mil between 2.0 mil and 2.5 mil
	// shop.toml:2:11: pressure "29": type a number with psi, bar or kPa, such as 90psi
}
