// Boothset helps a vehicle-refinish painter set up the booth: the pressure at the
// wall, the distance of the gun and the opening of its inlet valve, with reasons.
// Without arguments it opens the assistant; "boothset plan" answers without a screen.
package main

import (
	"os"

	"boothset/cmd/boothset/assistant"
	"boothset/cmd/boothset/command"
)

func main() {
	os.Exit(run(os.Args[1:], command.Stdio{In: os.Stdin, Out: os.Stdout, Err: os.Stderr}, os.Getenv))
}

// run is the program: arguments in, exit code out.
func run(args []string, std command.Stdio, getenv func(string) string) int {
	return command.Run(&command.Program{
		Std: std, Getenv: getenv, Version: command.BuildVersion,
		Assistant: func(a *command.Assistant) int { return assistant.Open(a, std, getenv) },
		Serve:     serveBeside,
	}, args)
}
