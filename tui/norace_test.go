//go:build !race

package tui

import "testing"

// withoutRace runs a test on: it is passed by under the race detector.
func withoutRace(*testing.T) {}
