package server

import "time"

// The limits of what others can take of this machine.
const (
	// mostWaiting is how many connections may be open that have not logged in, mostOfOne how
	// many of these from one address other than this machine's own.
	mostWaiting = 20
	mostOfOne   = 5
	// loginTime is how long one may take to log in, and then to open its session.
	loginTime = 10 * time.Second
	// mostSessions is how many may be open at a time.
	mostSessions = 64
	// mostTyped is how much may be typed in a session, in bytes: hours of a key that is held down.
	mostTyped = 1 << 20
	// longestValue is the longest that a client may say of itself, in bytes.
	longestValue = 64
)

// How long things may take in stopping: a session to leave its terminal clean, its client to shut
// the connection after it, all of them to leave, and what they keep to be written.
const (
	leaveTime  = 3 * time.Second
	lingerTime = time.Second
	stopTime   = 5 * time.Second
	keepTime   = 2 * time.Second
)

// tellEvery is how often it is said how many connections were turned away.
const tellEvery = time.Minute
