package questiontest_test

import (
	"math"
	"testing"

	"boothset/calc"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/require"
)

func TestUnsoundFindsWhatIsNotFinite(t *testing.T) {
	s := &calc.Setup{Line: make([]calc.Step, 2)}
	require.Empty(t, questiontest.Unsound(s, "setup"))
	s.Line[1].Mach = math.NaN()
	require.Equal(t, "setup.Line[1].Mach is NaN", questiontest.Unsound(s, "setup"))
	s.Line[1].Mach = math.Inf(1)
	require.Equal(t, "setup.Line[1].Mach is +Inf", questiontest.Unsound(s, "setup"))
}
