package words

import "strings"

// Spelling is something that people type in words, mostly beside a number. An entry of each
// language's file holds the ways to spell it, parted by "|", in lower case.
type Spelling string

// What people type in words; the last one in the name of a gun.
const (
	RangeTo   Spelling = "spelled-range-to"  // between two numbers: 16 to 18
	Morning   Spelling = "spelled-morning"   // behind a time from midnight to noon: 2:30 am
	Afternoon Spelling = "spelled-afternoon" // behind one from noon to midnight: 2:30 pm
	Gun       Spelling = "spelled-gun"       // before or behind its name: touch-up gun
)

// Spellings is the ways to spell it in every language: what was typed while one language
// was shown is still read while another one is, just as units are.
func Spellings(s Spelling) (all []string) {
	for _, l := range languages() {
		all = append(all, strings.Split(l.words().Say(string(s)), alternative)...)
	}
	return all
}
