package shop_test

import "testing"

// fifo makes nothing: Windows has no pipes in folders.
func fifo(*testing.T, string) {}
