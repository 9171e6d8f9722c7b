package main

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"boothset/cmd/boothset/command"

	"github.com/stretchr/testify/assert"
)

func TestVersion(t *testing.T) {
	for _, arg := range []string{"version", "-version", "--version"} {
		r := boothset("", arg)
		assert.Equal(t, command.ExitAnswered, r.code)
		assert.Regexp(t, `^boothset \S.*\n$`, r.out)
	}
	var errs bytes.Buffer
	code := run([]string{"version"}, command.Stdio{In: strings.NewReader(""), Out: closed{}, Err: &errs}, noEnv)
	assert.Equal(t, command.ExitFailed, code)
	assert.Contains(t, errs.String(), errClosed.Error())
}

// closed is an output that takes nothing.
type closed struct{}

var errClosed = errors.New("closed")

func (closed) Write([]byte) (int, error) { return 0, errClosed }
