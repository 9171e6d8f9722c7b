// Hello is the least that a program does: what "boothset plan" is measured against.
package main

import "os"

func main() {
	os.Stdout.WriteString("hello, world\n") //nolint:errcheck // nothing to be done about it
}
