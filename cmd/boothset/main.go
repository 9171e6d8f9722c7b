// Boothset helps a vehicle-refinish painter set up the booth: the pressure at the
// wall, the distance of the gun and the opening of its inlet valve, with reasons.
// Without arguments it opens the assistant; "boothset plan" answers without a screen.
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], stdio{os.Stdin, os.Stdout, os.Stderr}, os.Getenv))
}
