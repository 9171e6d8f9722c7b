package shop

import (
	"slices"
	"strings"
)

// mostID is the longest that an id may be.
const mostID = 40

// devices is what Windows takes for a device whatever stands behind the dot, of the names
// that an id could be.
var devices = []string{"con", "prn", "aux", "nul"}

// IsID reports whether a name may be that of a booth or a gun, and so of its file: a to z, 0
// to 9 and hyphens, beginning with a letter or digit, at most 40, none of the names that
// Windows keeps for devices.
func IsID(name string) bool {
	if name == "" || len(name) > mostID || name[0] == '-' {
		return false
	}
	for i := range len(name) {
		if c := name[i]; !('a' <= c && c <= 'z' || '0' <= c && c <= '9' || c == '-') {
			return false
		}
	}
	return !isDevice(name)
}

func isDevice(name string) bool {
	numbered := len(name) == 4 && (strings.HasPrefix(name, "com") || strings.HasPrefix(name, "lpt")) && '0' <= name[3] && name[3] <= '9'
	return numbered || slices.Contains(devices, name)
}
