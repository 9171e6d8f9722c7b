//go:build unix

package main

import (
	"os"
	"syscall"
)

// become makes this process that of another program. It returns where that fails alone.
func become(file string, args []string) (code int, err error) {
	return 0, syscall.Exec(file, append([]string{file}, args...), os.Environ())
}
