package shop

import (
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
)

// Counted is how much of a folder was read.
type Counted struct{ Booths, Guns, Settings, Records int }

// Check reads everything in the folder and names what will not do: files that cannot be read,
// revisions that are void or twins, torn lines of the log, copies that synchronising left, dates
// of the future. Nothing is changed. now is the time, and the job's weather nothing: a setting
// is held to the line and the gun alone.
func (f *Folder) Check(r *question.Reader, now time.Time) (n Counted, faults []*Fault) {
	c := &checker{f: f, r: r, now: now}
	c.tell(f.strays()...)
	guns, wrong := f.Guns(r)
	c.tell(wrong...)
	booths, wrong := f.Booths(r)
	c.tell(wrong...)
	_, wrong = f.Bands()
	c.tell(wrong...)
	_, wrong = f.Painters()
	c.tell(wrong...)
	n.Booths, n.Guns = len(booths), len(guns)
	for _, g := range guns {
		c.future(fileOf(gunsDir, g.ID), keyServiced, g.Serviced.Time)
	}
	with, err := WithGuns(r, guns...)
	if err != nil {
		with = r // each was tried by itself: two that do not go together
	}
	c.r = with
	byID := map[string]*Booth{}
	for _, b := range booths {
		byID[b.ID] = b
		c.future(fileOf(boothsDir, b.ID), keyFilterChanged, b.FilterChanged.Time)
		c.future(fileOf(boothsDir, b.ID), keyGaugeChecked, b.GaugeChecked.Time)
	}
	for _, id := range f.AgreedBooths() {
		n.Settings += c.settings(id, byID[id])
	}
	for _, id := range f.LoggedBooths() {
		log, wrong := f.Log(id)
		c.tell(wrong...)
		n.Records += len(log)
		c.futureRecords(path.Join(logDir, id), log)
	}
	for _, id := range f.folders(readingsDir) {
		read, wrong := f.Readings(id)
		c.tell(wrong...)
		n.Records += len(read)
	}
	return n, c.faults
}

type checker struct {
	f      *Folder
	r      *question.Reader
	now    time.Time
	faults []*Fault
}

func (c *checker) tell(faults ...*Fault) { c.faults = append(c.faults, faults...) }

// ahead is how far the clocks of two machines may be apart.
const ahead = 24 * time.Hour

// future tells of a date of the future.
func (c *checker) future(file, key string, at time.Time) {
	if at.After(c.now.Add(ahead)) {
		c.tell(faultOf(file, Mend, "shop-future", calc.TextFigure("key", key), calc.TextFigure("given", at.Format(time.DateOnly))))
	}
}

// futureRecords tells of the records of a log that are of the future, once.
func (c *checker) futureRecords(dir string, log []*Record) {
	first := slices.IndexFunc(log, func(r *Record) bool { return r.At.After(c.now.Add(ahead)) })
	if first >= 0 {
		c.tell(faultOf(dir, Mend, "shop-future-records", calc.CountFigure("records", len(log)-first), calc.TextFigure("given", log[first].At.Format(time.DateOnly))))
	}
}

// settings checks the settings of a booth, which is nil where it has none that will do, and
// counts their revisions.
func (c *checker) settings(id string, b *Booth) int {
	all, wrong := c.f.Settings(id)
	c.tell(wrong...)
	if b == nil && len(all) > 0 {
		c.tell(faultOf(path.Join(settingsDir, id), Mend, "shop-settings-alone", calc.TextFigure("given", id)))
	}
	known := map[string]bool{}
	for _, s := range all {
		known[s.ID] = true
		c.future(s.file(), "agreed", s.Agreed)
	}
	for _, s := range all {
		for _, of := range s.Replaces {
			if !known[of] {
				c.tell(faultOf(s.file(), Told, "shop-replaces-none", calc.TextFigure("given", shownName(of))))
			}
		}
	}
	standing := Standing(all)
	twins := Twins(standing)
	for _, of := range slices.SortedFunc(maps.Keys(twins), Subject.compare) {
		var files []string
		for _, s := range twins[of] {
			files = append(files, path.Base(s.file()))
		}
		c.tell(faultOf(path.Join(settingsDir, id), Mend, "shop-twins", append(of.figures(), calc.TextFigure("names", strings.Join(files, ", ")))...))
	}
	if b != nil {
		for _, s := range standing {
			c.void(b, s)
		}
	}
	return len(all)
}

// compare orders subjects.
func (s Subject) compare(other Subject) int {
	return slices.Compare([]string{s.Coat, s.Stage, s.Gun, s.Band}, []string{other.Coat, other.Stage, other.Gun, other.Band})
}

func (s Subject) figures() calc.Figures {
	return calc.Figures{calc.TextFigure("coat", s.Coat), calc.TextFigure("stage", s.Stage), calc.TextFigure("gun", s.Gun), calc.TextFigure("band", s.Band)}
}

// void tells what of a booth has changed since a setting was agreed, and what of it is not
// known here.
func (c *checker) void(b *Booth, s *Setting) {
	changes, err := s.SinceIn(c.r, b)
	if err != nil {
		c.tell(faultOf(s.file(), Mend, "shop-setting-unknown", calc.TextFigure("why", shownNote(err.Error()))))
		return
	}
	id := "shop-void"
	if !Void(changes) {
		id = "shop-older-values"
	}
	for _, change := range changes {
		if change.Values && id == "shop-void" {
			continue
		}
		weight := Mend
		if change.Values {
			weight = Told
		}
		c.tell(faultOf(s.file(), weight, id, append(s.figures(), calc.TextFigure("was", change.Was.Text()), calc.TextFigure("is", change.Is.Text()))...))
	}
}

// Text is the part as a line's list has it; a dash for none.
func (p WorkedPart) Text() string {
	if p.Kind == "" {
		return "-"
	}
	return p.Kind + "=" + p.Entry
}

// SinceIn is Since for the booth as it is; an error says what of the setting is not known.
func (s *Setting) SinceIn(r *question.Reader, b *Booth) ([]Change, error) {
	q, err := Request(r, b, s.Subject)
	if err != nil {
		return nil, err
	}
	return s.Since(q), nil
}

// Request is the job of a setting's subject on a booth's line, on a mild day where its band
// does not matter; a stage or gun that may be any is the first there is.
func Request(r *question.Reader, b *Booth, of Subject) (*calc.Request, error) {
	over := r.Over(b.Answers)
	a := over.AnyJob()
	for f, id := range map[*question.Field]string{question.Coat: of.Coat, question.Stage: of.Stage, question.Gun: of.Gun} {
		if id == Any {
			continue
		}
		a = a.With(f, r.Read(f, id, unit.US))
	}
	if of.Gun == Any {
		for _, g := range r.Guns.IDs() {
			if r.GoTogether(of.Coat, g) {
				a = a.With(question.Gun, r.Read(question.Gun, g, unit.US))
				break
			}
		}
	}
	q, faults := over.Plan(a, unit.US)
	if len(faults) > 0 {
		return nil, faults[0]
	}
	return q, nil
}

// strays is what lies in the folder and is none of its files: copies that synchronising left,
// what a killed program left on its way, names that are no ids. What begins with a dot is
// somebody else's.
func (f *Folder) strays() (faults []*Fault) {
	isID := func(name string) bool {
		id, ok := strings.CutSuffix(name, ".toml")
		return ok && IsID(id)
	}
	faults = append(faults, f.straysIn(boothsDir, isID, "shop-stray-id")...)
	faults = append(faults, f.straysIn(gunsDir, isID, "shop-stray-id")...)
	for _, id := range f.AgreedBooths() {
		faults = append(faults, f.straysIn(path.Join(settingsDir, id), isSettingName, "shop-stray")...)
	}
	for _, id := range f.LoggedBooths() {
		faults = append(faults, f.straysIn(path.Join(logDir, id), isLogName, "shop-stray")...)
	}
	for _, dir := range []string{settingsDir, logDir, readingsDir} {
		names, _ := f.names(dir)
		for _, e := range names {
			if !e.IsDir() || !IsID(e.Name()) {
				faults = append(faults, f.stray(dir, e, "shop-stray"))
			}
		}
	}
	names, _ := f.names(".")
	ours := []string{boothsDir, gunsDir, settingsDir, logDir, readingsDir, bandsFile, paintersFile}
	for _, e := range names {
		if looksCopied(e.Name()) && !slices.Contains(ours, e.Name()) {
			faults = append(faults, f.stray("", e, "shop-stray"))
		}
	}
	return slices.DeleteFunc(faults, func(f *Fault) bool { return f == nil })
}

func (f *Folder) straysIn(dir string, belongs func(name string) bool, id string) (faults []*Fault) {
	names, fault := f.names(dir)
	if fault != nil {
		return []*Fault{fault}
	}
	for _, e := range names {
		if !belongs(e.Name()) {
			faults = append(faults, f.stray(dir, e, id))
		}
	}
	return faults
}

// stray is what a name is that does not belong, nil for what is somebody else's.
func (f *Folder) stray(dir string, e fs.DirEntry, id string) *Fault {
	name := e.Name()
	switch file := path.Join(dir, name); {
	case isAside(name):
		return faultOf(file, Told, "shop-cut-off")
	case looksCopied(name):
		return faultOf(file, Mend, "shop-copy")
	case strings.HasPrefix(name, "."):
		return nil
	default:
		return faultOf(file, Mend, id, calc.CountFigure("most", mostID))
	}
}

// looksCopied reports whether a name is like those that synchronising gives the copies of a
// file that was changed on two machines: "two (1).toml", "two-conflict.toml", "two~".
func looksCopied(name string) bool {
	lower := strings.ToLower(name)
	return strings.Contains(lower, "conflict") || strings.Contains(lower, "(") && strings.Contains(lower, ")") || strings.HasSuffix(lower, "~") ||
		strings.HasSuffix(lower, ".orig") || strings.HasSuffix(lower, ".bak")
}
