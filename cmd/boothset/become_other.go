//go:build !unix

package main

import (
	"errors"
	"os"
	"os/exec"
)

// become runs another program in this one's place and gives its exit code.
func become(file string, args []string) (code int, err error) {
	c := exec.Command(file, args...)
	c.Stdin, c.Stdout, c.Stderr = os.Stdin, os.Stdout, os.Stderr
	err = c.Run()
	var left *exec.ExitError
	if errors.As(err, &left) {
		return left.ExitCode(), nil
	}
	return 0, err
}
