// Boothset-serve gives the assistant to other terminals over SSH. It is "boothset serve", in a
// program of its own: what it links would make every start of the other one slower.
package main

import (
	"os"

	"boothset/cmd/boothset-serve/server"
	"boothset/cmd/boothset/command"
)

func main() {
	os.Exit(command.Run(&command.Program{
		Std:    command.Stdio{In: os.Stdin, Out: os.Stdout, Err: os.Stderr},
		Getenv: os.Getenv, Version: command.BuildVersion, Serve: server.Run,
	}, append([]string{command.Serving}, os.Args[1:]...)))
}
