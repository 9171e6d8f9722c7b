package words_test

import (
	"os"
	"testing"

	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// BenchmarkRead is what a run pays for its language.
func BenchmarkRead(b *testing.B) {
	data, err := os.ReadFile("es.toml")
	require.NoError(b, err)
	text := string(data)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := words.Read("es", text); err != nil {
			b.Fatal(err)
		}
	}
}
