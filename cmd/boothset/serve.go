package main

import (
	"os"
	"path/filepath"
	"runtime"

	"boothset/calc"
	"boothset/cmd/boothset/command"
	"boothset/presets/textfile"
)

// serverName is the program that serves.
const serverName = "boothset-serve"

// serveBeside lets the program that serves take this one's place. It lies beside this one, and is
// another since what it links would make every start of this one slower.
func serveBeside(s *command.Serve) int {
	own, err := os.Executable()
	if err == nil {
		own, err = filepath.EvalSymlinks(own)
	}
	file := filepath.Join(filepath.Dir(own), serverName)
	if runtime.GOOS == "windows" {
		file += ".exe"
	}
	if err == nil {
		var code int
		if code, err = become(file, s.Args()); err == nil {
			return code
		}
	}
	if textfile.Absent(err) {
		return s.Refuse("serve-missing", calc.PathFigure("file", file))
	}
	return s.Refuse("serve-unstarted", calc.PathFigure("file", file), calc.GivenFigure("error", err.Error()))
}
