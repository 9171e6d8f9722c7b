// Package golden holds what tests show against what a person has looked at. Only tests use
// it.
package golden

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// Equal compares text with a file in the testdata of the package under test. With
// UPDATE_GOLDEN=1 it writes the file, which a person then looks at.
func Equal(t *testing.T, file, text string) {
	t.Helper()
	file = filepath.Join("testdata", file)
	if os.Getenv("UPDATE_GOLDEN") != "" {
		require.NoError(t, os.MkdirAll(filepath.Dir(file), 0o755))
		require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Equal(t, string(want), text)
}
