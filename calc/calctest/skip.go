package calctest

import "testing"

// WithoutRace passes a test by under the race detector, which makes it some ten times as long: one
// that only draws or lays out more, and runs nothing that shorter ones do not run.
func WithoutRace(t *testing.T) {
	t.Helper()
	if raced {
		t.Skip("raced")
	}
}
