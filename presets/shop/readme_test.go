package shop_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The booth that the README shows is one.
func TestTheReadmesBooth(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	require.NoError(t, err)
	_, rest, ok := strings.Cut(string(readme), "```toml\nformat = \"boothset.booth/1\"\n")
	require.True(t, ok)
	booth, _, ok := strings.Cut(rest, "```")
	require.True(t, ok)
	b, faults := shop.ReadBooth(questiontest.Open(t), "two", "booths/two.toml", []byte("format = \"boothset.booth/1\"\n"+booth))
	require.Empty(t, faults)
	assert.Equal(t, "Booth two", b.Name)
}
