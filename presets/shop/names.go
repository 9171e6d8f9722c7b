package shop

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// How the files are called that the program names itself: a setting's by its number and its id,
// "0003-….toml"; a log's by its month and the machine that writes it, "2031-03-….jsonl", with a
// number behind where the month has more than one.

// lettersOfUUID is how long an id is as text.
const lettersOfUUID = 36

// isUUID reports whether a text is an id that was drawn, as the program writes it.
func isUUID(s string) bool {
	if len(s) != lettersOfUUID {
		return false
	}
	for i := range len(s) {
		switch c := s[i]; i {
		case 8, 13, 18, 23:
			if c != '-' {
				return false
			}
		default:
			if !('0' <= c && c <= '9' || 'a' <= c && c <= 'f') {
				return false
			}
		}
	}
	return true
}

// whole is a number of so many digits or more.
func whole(s string, digits int) (int, bool) {
	n, err := strconv.ParseUint(s, 10, 31)
	return int(n), err == nil && len(s) >= digits
}

// settingName is the number and the id in the name of a setting's file.
func settingName(name string) (number int, id string, ok bool) {
	name, isTOML := strings.CutSuffix(name, ".toml")
	digits, id, _ := strings.Cut(name, "-")
	number, isNumber := whole(digits, 4)
	return number, id, isTOML && isNumber && isUUID(id)
}

func isSettingName(name string) bool {
	_, _, ok := settingName(name)
	return ok
}

// logName is the name of the n-th file that a machine writes for a month.
func logName(at time.Time, m *Machine, n int) string {
	name := at.Format("2006-01-") + m.ID
	if n > 1 {
		name += fmt.Sprintf("-%d", n)
	}
	return name + logEnd
}

const logEnd = ".jsonl"

func isLogName(name string) bool {
	const month = len("2006-01-")
	name, isLog := strings.CutSuffix(name, logEnd)
	if !isLog || len(name) < month+lettersOfUUID {
		return false
	}
	_, err := time.Parse("2006-01-", name[:month])
	rest := name[month+lettersOfUUID:]
	number, behind := strings.CutPrefix(rest, "-")
	_, isNumber := whole(number, 1)
	return err == nil && isUUID(name[month:][:lettersOfUUID]) && (rest == "" || behind && isNumber)
}
