package textfile

import "path/filepath"

// Own is the folder for a person's own files of a kind on a system: what a variable of the XDG
// rules names, else a folder below the home folder, on Windows %LocalAppData%. It is empty where
// none of them is known. Nothing is looked up on the disk.
func Own(goos string, getenv func(string) string, variable string, below ...string) string {
	if dir := getenv(variable); filepath.IsAbs(dir) { // unset, or relative, which the XDG rules say to ignore
		return dir
	}
	home := "HOME"
	if goos == "windows" {
		home, below = "LocalAppData", nil
	}
	dir := getenv(home)
	if !filepath.IsAbs(dir) {
		return ""
	}
	return filepath.Join(append([]string{dir}, below...)...)
}
