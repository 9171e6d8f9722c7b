package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/cmd/boothset/command"

	"github.com/stretchr/testify/require"
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

// golden compares text with what a person has looked at. UPDATE_GOLDEN=1 writes it.
func golden(t *testing.T, name, text string) {
	t.Helper()
	file := filepath.Join("testdata", name+".txt")
	if os.Getenv("UPDATE_GOLDEN") != "" {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(file, []byte(text), 0o644))
	}
	want, err := os.ReadFile(file)
	require.NoError(t, err, "UPDATE_GOLDEN=1 writes it")
	require.Equal(t, string(want), text)
}
