package tui

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// Colours is a look: what the screen's roles are told apart by.
type Colours string

// The looks.
const (
	Dark     Colours = "dark"     // colours for a dark ground
	Light    Colours = "light"    // colours for a light one
	Contrast Colours = "contrast" // bold and reversed text alone
	None     Colours = "none"     // no attributes at all
)

// Looks is every look, by its name.
func Looks() []string { return []string{string(Dark), string(Light), string(Contrast), string(None)} }

// EnvColours is the variable that asks for a look, by its name.
const EnvColours = "BOOTHSET_COLOURS"

// ColoursOf is the look that a name asks for, where one is given, else what the environment
// wants: the one that its own variable names; none where NO_COLOR is set to anything, or the
// terminal is dumb; else by the ground that the terminal says it has, and dark where it says
// nothing. ok is false where no look has the name that was asked for.
func ColoursOf(asked string, getenv func(string) string) (look Colours, ok bool) {
	if asked = cmp.Or(asked, getenv(EnvColours)); asked != "" {
		return Colours(asked), slices.Contains(Looks(), asked)
	}
	switch {
	case getenv("NO_COLOR") != "", getenv("TERM") == "dumb":
		return None, true
	case lightGround(getenv("COLORFGBG")):
		return Light, true
	}
	return Dark, true
}

// lightGround reads what some terminals set COLORFGBG to: the numbers of their ink and of their
// ground among the sixteen colours, the ground last, as "15;0" or "0;default;15". Light are 7
// and from 9 on, the rest and what is no such number is not (common practice, no published
// source).
func lightGround(colours string) bool {
	ground, err := strconv.Atoi(colours[strings.LastIndex(colours, ";")+1:])
	return err == nil && (ground == 7 || ground >= 9 && ground <= 15)
}
