//go:build race

package tui

import "testing"

// withoutRace passes a test by that only lays out more frames: the race detector makes it some ten times as
// long and finds nothing in it that the shorter ones do not run.
func withoutRace(t *testing.T) { t.Skip("laid out without the race detector alone") }
