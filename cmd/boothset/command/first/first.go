// Package first answers a sub-command before the program's main begins. An answer on the
// command line needs nothing of the terminal library, whose package inits would be a sixth of
// the time that such an answer takes.
//
// Go initializes packages in the order of their import paths as soon as what they import
// is ready. This one imports nothing that draws, and its path sorts before github.com/. It
// must import nothing either whose own turn comes late, such as path/filepath or
// runtime/debug: what waits for less goes before it.
package first

import (
	"os"
	"slices"

	"boothset/cmd/boothset/command"
)

// A batch waits for main: next to its length, the inits are nothing.
func init() {
	if args := os.Args[1:]; command.Answers(args) && !slices.ContainsFunc(args, command.IsBatch) {
		os.Exit(answer(args))
	}
}

// room is more stack than an answer takes.
const room = 16 << 10

// answer runs a sub-command. Its frame has room that is never used, so that the stack grows
// once, here, with next to nothing on it to move, and not twice more on the way down: 15
// pages of memory fewer.
//
//go:noinline
func answer(args []string) int {
	if len(args) > room { // more than any system takes
		var unused [room]byte
		return int(unused[len(args)%room])
	}
	return command.Run(args, command.Stdio{In: os.Stdin, Out: os.Stdout, Err: os.Stderr}, os.Getenv)
}
