//go:build race

package calctest

const raced = true
