// Package tui is the assistant: it asks for a coat, a gun, the day and the air line one
// question at a time and shows what to set, why, how sure that is, and where the pressure
// goes. From there the coat's own questions open, each on a page of its own.
//
//	result, err := tui.Run(tui.Options{Reader: reader, Words: reader.Words(), System: reader.System(), In: os.Stdin, Out: os.Stdout, Getenv: os.Getenv})
//
// A root model routes keys to the page a person is on. Pages are plain structs behind
// one small interface; the questions are made from the table of fields. Nothing here
// computes physics: answers are resolved and solved once a key, and what comes back is shown
// by its rows and figures.
package tui
