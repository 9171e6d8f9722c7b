//go:build unix

package shop_test

import (
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// fifo makes a pipe with a name.
func fifo(t *testing.T, name string) { require.NoError(t, syscall.Mkfifo(name, 0o600)) }
