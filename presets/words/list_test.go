package words_test

import (
	"testing"

	"boothset/presets/words"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAListIsSaidInItsLanguage(t *testing.T) {
	spanish, ok := words.For("es")
	require.True(t, ok)
	english := words.English()
	for _, c := range []struct {
		w    *words.Words
		of   []string
		want string
	}{
		{english, []string{"a"}, "choose a"},
		{english, []string{"a", "b"}, "choose a or b"},
		{english, []string{"a", "b", "c"}, "choose a, b or c"},
		{spanish, []string{"a", "b", "c"}, "elija a, b o c"},
	} {
		assert.Equal(t, c.want, c.w.Choose(c.of))
	}
}
