// Boothset helps a vehicle-refinish painter set up the booth: the pressure at the
// wall, the distance of the gun and the opening of its inlet valve, with reasons.
// Without arguments it opens the assistant; "boothset plan" answers without a screen.
package main

import (
	"os"
	"runtime/debug"

	"boothset/cmd/boothset/command"
	_ "boothset/cmd/boothset/command/first" // answers a sub-command before main begins
	"boothset/presets/words"
)

func main() {
	os.Exit(run(os.Args[1:], command.Stdio{In: os.Stdin, Out: os.Stdout, Err: os.Stderr}, os.Getenv))
}

// run is the program: arguments in, exit code out.
func run(args []string, std command.Stdio, getenv func(string) string) int {
	switch {
	case command.Answers(args):
		// What comes here is a batch, of which next to nothing lives on from line to line:
		// collecting garbage every few megabytes would be a tenth of the time.
		defer debug.SetGCPercent(debug.SetGCPercent(1000))
		return command.Run(args, std, getenv)
	case command.AsksVersion(args):
		local, _ := words.For(words.LocaleOf(getenv).Lang)
		return command.Say(std, local, "boothset "+version(local)+"\n")
	}
	return runAssistant(args, std, getenv)
}

// version is what the build was made from.
func version(w *words.Words) string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" {
		return "(" + w.Say("no-version") + ")"
	}
	return info.Main.Version
}
