package main

import (
	"bytes"
	"strings"

	"boothset/cmd/boothset/command"
)

// noEnv is an environment with nothing in it, so that no shop's file is found.
func noEnv(string) string { return "" }

// ran is what a run left.
type ran struct {
	out, err string
	code     int
}

// boothset runs the program on an input, without a shop's file.
func boothset(input string, args ...string) ran {
	var out, err bytes.Buffer
	code := run(args, command.Stdio{In: strings.NewReader(input), Out: &out, Err: &err}, noEnv)
	return ran{out.String(), err.String(), code}
}
