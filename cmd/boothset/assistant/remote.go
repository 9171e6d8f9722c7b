package assistant

import (
	"boothset/cmd/boothset/command"
	"boothset/tui"
)

// Far is a terminal on another machine.
type Far struct {
	tui.Remote
	Width func() int // its columns now
	Kept  string     // the file that its person's answers are kept in
}

// Remote opens the assistant on a terminal of another machine, which std is and getenv tells of,
// and gives the exit code. The answer that it is left from is printed there. Neither the shell nor
// the files of this machine are its person's.
func Remote(a *command.Assistant, std command.Stdio, getenv func(string) string, far Far) int {
	run, ok := optionsOf(a, std, getenv)
	if !ok {
		return a.NoLook(tui.EnvColours, tui.Looks())
	}
	run.Out, run.Kept, run.Off = std.Out, far.Kept, tui.Off{Pause: true, Files: true}
	left, err := tui.RunRemote(run, far.Remote)
	return leave(left, err, a, far.Width())
}
