package words_test

import (
	"go/ast"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// foreign is the starts of texts of Go's own packages, which are looked for to say them in
// a language.
var foreign = []string{"flag provided but not defined: ", "flag needs an argument: ", "bad flag syntax: ", "invalid boolean value ", ": parse error", "json: unknown field "}

// What people read is in the files of sentences: no text written in the program's source
// has two words running, but for commands as they are typed and the above.
func TestTheProgramHoldsNoSentence(t *testing.T) {
	sentence := regexp.MustCompile(`\pL{2,} \pL{2,}`)
	require.True(t, sentence.MatchString("trigger pulled"))
	seen := 0
	for _, f := range sources(t, "cmd") {
		ast.Inspect(f, func(n ast.Node) bool {
			s, ok := literal(n)
			if !ok {
				return true
			}
			seen++
			typed := strings.HasPrefix(strings.TrimSpace(s), "boothset")
			assert.False(t, sentence.MatchString(s) && !typed && !slices.Contains(foreign, s), s)
			return true
		})
	}
	require.Greater(t, seen, 300)
}
