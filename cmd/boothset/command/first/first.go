// Package first answers a sub-command before the program's main begins. An answer on the
// command line needs nothing of the terminal library, whose package inits are a third of
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
		os.Exit(command.Run(args, command.Stdio{In: os.Stdin, Out: os.Stdout, Err: os.Stderr}, os.Getenv))
	}
}
