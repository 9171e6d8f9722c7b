// Man writes the man pages of boothset into a folder, one a command, in a language:
//
//	go run ./cmd/man bin/man en
package main

import (
	"fmt"
	"io"
	"os"
	"time"

	"boothset/cmd/boothset/command"

	"github.com/spf13/cobra/doc"
)

func main() {
	if len(os.Args) != 3 {
		fmt.Fprintln(os.Stderr, "man", "FOLDER", "LANGUAGE")
		os.Exit(2)
	}
	if err := write(os.Args[1], os.Args[2]); err != nil {
		fmt.Fprintln(os.Stderr, "man:", err)
		os.Exit(1)
	}
}

// write makes the pages of a language in a folder, the same ones each time.
func write(folder, lang string) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	env := map[string]string{"LANG": lang}
	p := &command.Program{Std: command.Stdio{Out: io.Discard, Err: io.Discard}, Getenv: func(name string) string { return env[name] }}
	root, err := p.Documented()
	if err != nil {
		return err
	}
	// A fixed day: the pages change with the program alone.
	day := time.Date(2026, time.November, 29, 0, 0, 0, 0, time.UTC)
	return doc.GenManTree(root, &doc.GenManHeader{Section: "1", Date: &day, Source: "boothset"}, folder)
}
