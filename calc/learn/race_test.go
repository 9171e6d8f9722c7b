//go:build race

package learn

import "testing"

// withoutRace passes a test by that only draws more: the race detector makes it some ten times as
// long and finds nothing in it that the shorter ones do not run.
func withoutRace(t *testing.T) { t.Skip("drawn without the race detector alone") }
