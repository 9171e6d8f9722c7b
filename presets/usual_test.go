package presets_test

import (
	"testing"

	"boothset/presets"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A bare number in the shop's line would mean one thing to a reader of psi and another
// to one of bar: each is refused by name, at the line's header.
func TestUsualLineNeedsUnits(t *testing.T) {
	const compressor = "compressor = \"20cfm\"\nreceiver = \"60gal\"\n"
	for field, line := range map[string]string{
		"supply": `supply = "90"`, "altitude": `altitude = "500"`, "mark": `mark = "2"`, "hose": `hose = ["25,3/8in"]`,
		"compressor": "compressor = \"20\"\nreceiver = \"60gal\"", "receiver": "compressor = \"20cfm\"\nreceiver = \"60\"",
		"cut-in": compressor + `cut-in = "90"`, "cut-out": compressor + "cut-in = \"6bar\"\ncut-out = \"120\"",
		"main": compressor + `main = "100,3/4in"`, "other": compressor + `other = ["10"]`,
		"receiver-temp": compressor + `receiver-temp = "30"`, "line-temp": compressor + `line-temp = "15"`,
	} {
		_, err := presets.Load([]byte("\n[line]\n"+line+"\n"), "shop.toml")
		var f *presets.FileError
		if assert.ErrorAs(t, err, &f, field) {
			assert.Equal(t, 2, f.Line, field)
			assert.Contains(t, f.Error(), field, field)
		}
	}
	_, err := presets.Load([]byte("[line]\nsupply = \"90psi\"\naltitude = \"500m\"\nmark = \"2psi\"\n"+compressor+"main = \"100ft,3/4in\"\nother = [\"10cfm,50%\"]\n"), "shop.toml")
	require.NoError(t, err)
}
