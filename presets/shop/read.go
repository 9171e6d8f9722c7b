package shop

import (
	"bytes"
	"errors"
	"io/fs"
	"path"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/presets/textfile"
)

// mostBytes is the largest file that is read.
const mostBytes = textfile.Most

// read is what a file holds; found is false where there is none. Only a plain file is read, no
// larger than mostBytes, and no link that leads out of the folder is followed.
func (f *Folder) read(name string) (data []byte, found bool, fault *Fault) {
	if f.root == nil {
		return nil, false, nil
	}
	data, err := textfile.ReadIn(f.root, name, mostBytes)
	if err == nil {
		return bytes.TrimPrefix(data, []byte("\ufeff")), true, nil
	}
	if link, gone := f.root.Lstat(name); gone != nil && errors.Is(err, fs.ErrNotExist) {
		return nil, false, nil
	} else if gone == nil && link.Mode()&fs.ModeSymlink != 0 && errors.As(err, new(*fs.PathError)) {
		return nil, true, faultOf(name, Broken, "shop-link")
	}
	return nil, true, unread(name, err)
}

// unread is the fault of a file that textfile did not read.
func unread(name string, err error) *Fault {
	f := faultOf(name, Broken, "file-unreadable", calc.TextFigure("most", textfile.Size(mostBytes)))
	var unfit *textfile.Error
	if errors.As(err, &unfit) {
		f.Figures = append(f.Figures, unfit.Why()...)
	}
	return f
}

// names is the names in a folder of the folder, sorted; none where there is no such folder.
func (f *Folder) names(dir string) ([]fs.DirEntry, *Fault) {
	if f.root == nil {
		return nil, nil
	}
	d, err := f.root.Open(dir)
	if err != nil {
		if link, gone := f.root.Lstat(dir); gone == nil && link.Mode()&fs.ModeSymlink != 0 {
			return nil, faultOf(dir, Broken, "shop-link")
		} else if gone != nil {
			return nil, nil
		}
		return nil, faultOf(dir, Broken, "shop-unreadable-file", calc.TextFigure("why", textfile.Cause(err).Error()))
	}
	defer d.Close()
	all, err := d.ReadDir(-1)
	if err != nil {
		return nil, faultOf(dir, Broken, "shop-unreadable-file", calc.TextFigure("why", textfile.Cause(err).Error()))
	}
	slices.SortFunc(all, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return all, nil
}

// ids is the ids that the TOML files of a folder are called by, sorted. Other names are not
// read: Check tells of them.
func (f *Folder) ids(dir string) (ids []string, fault *Fault) {
	all, fault := f.names(dir)
	for _, e := range all {
		if id, ok := strings.CutSuffix(e.Name(), ".toml"); ok && IsID(id) {
			ids = append(ids, id)
		}
	}
	return ids, fault
}

// fileOf is the file of an id.
func fileOf(dir, id string) string { return path.Join(dir, id+".toml") }

// mergeMarks is what git begins a line with where both sides changed it.
var mergeMarks = []string{"<<<<<<< ", ">>>>>>> "}

// mergeLine is the first line, from 1, that a merge has left with both versions; 0 where none.
func mergeLine(data []byte) int {
	n := 0
	for l := range bytes.Lines(data) {
		n++
		if isMergeMark(l) {
			return n
		}
	}
	return 0
}

func isMergeMark(line []byte) bool {
	return slices.ContainsFunc(mergeMarks, func(m string) bool { return bytes.HasPrefix(line, []byte(m)) })
}
