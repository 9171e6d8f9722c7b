package shop

import (
	"bytes"
	"cmp"
	"errors"
	"io/fs"
	"os"
	"path"
	"slices"
	"strings"
	"syscall"
	"time"

	"boothset/calc/unit"
)

// mostLogs is how many files a machine may fill for a booth in a month: of 1 MB each.
const mostLogs = 1000

// mostLine is the longest that a record may be: far longer than any job's.
const mostLine = 64 << 10

// mostWrite is how much is gathered for one write, well below a file's size.
const mostWrite = 256 << 10

// Keep appends a record to the log of its booth, and gives it as it is kept: with an id of its
// own where it has none. It is one write, under the machine's lock, on a line of its own also
// where the last one is torn; once it returns without an error the record is on the disk. An
// error leaves the log as it was.
func (f *Folder) Keep(m *Machine, r Record, sys unit.System) (*Record, error) {
	kept, err := f.KeepAll(m, []Record{r}, sys)
	if err != nil {
		return nil, err
	}
	return &kept[0], nil
}

// KeepAll is Keep for many records: those that follow each other and belong in one file are one
// write. An error leaves in the log what was written before it.
func (f *Folder) KeepAll(m *Machine, records []Record, sys unit.System) ([]Record, error) {
	kept := slices.Clone(records)
	var lines []byte
	for i := range kept {
		r := &kept[i]
		line, err := f.prepare(r, sys)
		if err != nil {
			return nil, err
		}
		lines = append(lines, line...)
		if i+1 < len(kept) && kept[i+1].Booth == r.Booth && logName(kept[i+1].At.UTC(), m, 1) == logName(r.At, m, 1) && len(lines) < mostWrite {
			continue
		}
		if err := f.keepLines(m, path.Join(logDir, r.Booth), r.At, lines); err != nil {
			return nil, f.unwritten(path.Join(logDir, r.Booth), err)
		}
		lines = lines[:0]
	}
	return kept, nil
}

// prepare completes a record, and gives its line.
func (f *Folder) prepare(r *Record, sys unit.System) (line []byte, err error) {
	if !IsID(r.Booth) {
		return nil, &Error{r.Booth, "shop-id-kept", nil}
	}
	r.At = r.At.UTC().Truncate(time.Second)
	if r.ID == "" {
		r.ID, err = NewID()
	}
	line, errLine := r.line(sys)
	if len(line) > mostLine {
		errLine = syscall.EFBIG
	}
	if err = errors.Join(err, errLine); err != nil {
		return nil, f.unwritten(path.Join(logDir, r.Booth), err)
	}
	return line, nil
}

// keepLines appends lines to the first file of a month in a folder that has room for them.
func (f *Folder) keepLines(m *Machine, dir string, at time.Time, lines []byte) error {
	if err := f.make(dir); err != nil {
		return err
	}
	held, err := m.hold()
	if err != nil {
		return err
	}
	defer held.Close()
	for n := 1; n <= mostLogs; n++ {
		full, err := f.append(path.Join(dir, logName(at, m, n)), lines)
		if err != nil || !full {
			return err
		}
	}
	return syscall.EFBIG
}

// append appends lines to a file; full is whether that would have no room for it.
func (f *Folder) append(name string, line []byte) (full bool, err error) {
	info, err := f.root.Stat(name)
	isNew := errors.Is(err, fs.ErrNotExist)
	switch {
	case err == nil && !info.Mode().IsRegular():
		return false, fs.ErrInvalid // a pipe would be waited for
	case err == nil && info.Size()+int64(len(line)) >= mostBytes:
		return true, nil
	}
	file, err := f.root.OpenFile(name, os.O_RDWR|os.O_APPEND|os.O_CREATE, f.fileMode())
	if err != nil {
		return false, err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	if info, err = file.Stat(); err != nil {
		return false, err
	}
	size := info.Size()
	var end [1]byte
	if size > 0 {
		if _, err := file.ReadAt(end[:], size-1); err != nil {
			return false, err
		}
		if end[0] != '\n' {
			line = append([]byte("\n"), line...)
		}
	}
	if _, err = file.Write(line); err == nil {
		err = file.Sync()
	}
	if err != nil {
		return false, errors.Join(err, file.Truncate(size))
	}
	if !isNew {
		return false, nil
	}
	f.permit(file)
	return false, f.syncFolder(path.Dir(name))
}

// Log reads the log of a booth, in the order of the records' times, of the same by their ids; a
// record that stands in several files counts once. Lines that will not do are passed over, each
// with its fault.
func (f *Folder) Log(booth string) (all []*Record, faults []*Fault) {
	if !IsID(booth) {
		return nil, nil
	}
	seen := map[string]bool{}
	faults = f.eachLog(path.Join(logDir, booth), func(file string, data []byte) []*Fault {
		records, wrong := ReadLog(booth, file, data)
		for _, r := range records {
			if !seen[r.ID] {
				seen[r.ID] = true
				all = append(all, r)
			}
		}
		return wrong
	})
	slices.SortStableFunc(all, func(a, b *Record) int { return cmp.Or(a.At.Compare(b.At), strings.Compare(a.ID, b.ID)) })
	return all, faults
}

// eachLog reads the files of a folder that are called as logs are.
func (f *Folder) eachLog(dir string, read func(file string, data []byte) []*Fault) (faults []*Fault) {
	names, fault := f.names(dir)
	if fault != nil {
		faults = append(faults, fault)
	}
	for _, e := range names {
		if !isLogName(e.Name()) {
			continue
		}
		file := path.Join(dir, e.Name())
		data, _, fault := f.read(file)
		if fault != nil {
			faults = append(faults, fault)
			continue
		}
		faults = append(faults, read(file, data)...)
	}
	return faults
}

// eachLine reads the lines of a log's contents, each but those that are empty or only part the
// two sides of a merge; what is wrong with one is told with its place.
func eachLine(data []byte, read func(line []byte) *Fault) (faults []*Fault) {
	n := 0
	for line := range bytes.Lines(data) {
		n++
		line = bytes.TrimSpace(line)
		if len(line) == 0 || bytes.Equal(line, []byte("=======")) {
			continue
		}
		if fault := read(line); fault != nil {
			faults = append(faults, fault.at(n, 0))
		}
	}
	return faults
}

// ReadLog reads the records of a file's contents; file is its name for faults.
func ReadLog(booth, file string, data []byte) (all []*Record, faults []*Fault) {
	faults = eachLine(data, func(line []byte) *Fault {
		r, fault := readRecord(booth, file, line)
		if r != nil {
			all = append(all, r)
		}
		return fault
	})
	return all, faults
}

// LoggedBooths is the ids of the booths that have a log, sorted.
func (f *Folder) LoggedBooths() []string { return f.folders(logDir) }

// AgreedBooths is the ids of the booths that something was agreed on for, sorted.
func (f *Folder) AgreedBooths() []string { return f.folders(settingsDir) }

// folders is the folders of a folder whose name is an id.
func (f *Folder) folders(dir string) (ids []string) {
	names, _ := f.names(dir)
	for _, e := range names {
		if e.IsDir() && IsID(e.Name()) {
			ids = append(ids, e.Name())
		}
	}
	return ids
}

// Jobs is the jobs of a log, each with what was said of it later laid over it: the last of what
// was said of outcome and note counts.
func Jobs(log []*Record) (jobs []*Record) {
	of := map[string]*Record{}
	for _, r := range log {
		if r.Of == "" {
			job := *r
			of[r.ID] = &job
			jobs = append(jobs, &job)
		}
	}
	for _, r := range log {
		job := of[r.Of]
		if r.Of == "" || job == nil {
			continue
		}
		if len(r.Outcome) > 0 {
			job.Outcome, job.Then = r.Outcome, r.Then
		}
		job.Note = cmp.Or(r.Note, job.Note)
		job.Painter = cmp.Or(r.Painter, job.Painter)
		if r.Read != (Values{}) {
			job.Read = r.Read
		}
		if r.Set != (Values{}) {
			job.Set = r.Set
		}
	}
	return jobs
}
