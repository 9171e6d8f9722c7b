package main

import "io/fs"

// module is a folder without what is no part of the module: what git keeps and what was built.
type module struct{ fs.FS }

// ReadDir leaves those out.
func (m module) ReadDir(name string) ([]fs.DirEntry, error) {
	all, err := fs.ReadDir(m.FS, name)
	var kept []fs.DirEntry
	for _, e := range all {
		if name == "." && (e.Name() == ".git" || e.Name() == "bin") {
			continue
		}
		kept = append(kept, e)
	}
	return kept, err
}
