package shop

import (
	"errors"
	"fmt"
	"path"
	"slices"
	"strings"
	"syscall"
	"time"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"

	"github.com/google/uuid"
	"github.com/pelletier/go-toml/v2"
)

// Any is the stage, gun or band of a setting that holds for each.
const Any = "any"

// Setting is a setting that was agreed on for a booth: one revision of it, which is never
// changed. What it is for, its coat, stage, gun and weather band, is its subject.
type Setting struct {
	ID     string // no two machines give the same
	Number int    // in its file's name, for people: nothing goes by it
	Booth  string
	Subject
	Replaces []string // the ids of the revisions that it stands in place of
	Agreed   time.Time
	By       string // a painter's id, see Painters
	Why      string
	Values   Values
	Knobs    string // of the gun, as one would say them
	Worked   Worked
}

// Subject is what a setting is for. Stage, gun and band may be Any.
type Subject struct{ Coat, Stage, Gun, Band string }

// Called is what a subject's coat, stage, gun and band are called, as figures.
func (s Subject) Called(r *question.Reader, bands []Band) calc.Figures {
	called := func(f *question.Field, id string) calc.Figure {
		if id == Any {
			return calc.SentenceFigure(f.Name, "any-"+f.Name)
		}
		return calc.TextFigure(f.Name, r.Called(f, question.Value{ID: id, Text: id}))
	}
	band := BandNamed(bands, s.Band)
	return calc.Figures{called(question.Coat, s.Coat), called(question.Stage, s.Stage), called(question.Gun, s.Gun), calc.TextFigure("band", band.Called(r.Words()))}
}

// settingFile is a setting as its file holds it.
type settingFile struct {
	Format   string      `toml:"format"`
	Coat     string      `toml:"coat"`
	Stage    string      `toml:"stage"`
	Gun      string      `toml:"gun"`
	Band     string      `toml:"band"`
	Replaces []string    `toml:"replaces"`
	Agreed   time.Time   `toml:"agreed"`
	By       string      `toml:"by,omitempty"`
	Why      string      `toml:"why,omitempty"`
	Knobs    string      `toml:"knobs,omitempty"`
	Set      wireValues  `toml:"set"`
	Worked   *workedFile `toml:"worked,omitempty"`
}

func (s *Setting) file() string {
	return path.Join(settingsDir, s.Booth, fmt.Sprintf("%04d-%s.toml", s.Number, s.ID))
}

// Settings reads every revision of a booth's settings, in the order of their ids. One that
// will not do is left out, with its faults among the others'.
func (f *Folder) Settings(booth string) (all []*Setting, faults []*Fault) {
	if !IsID(booth) {
		return nil, nil
	}
	names, fault := f.names(path.Join(settingsDir, booth))
	if fault != nil {
		faults = append(faults, fault)
	}
	for _, e := range names {
		if !isSettingName(e.Name()) {
			continue
		}
		file := path.Join(settingsDir, booth, e.Name())
		data, _, fault := f.read(file)
		if fault != nil {
			faults = append(faults, fault)
			continue
		}
		s, wrong := ReadSetting(booth, file, data)
		faults = append(faults, wrong...)
		if s != nil {
			all = append(all, s)
		}
	}
	slices.SortFunc(all, func(a, b *Setting) int { return strings.Compare(a.ID, b.ID) })
	return all, faults
}

// ReadSetting reads a setting from its file's contents; its id is in the file's name.
func ReadSetting(booth, file string, data []byte) (*Setting, []*Fault) {
	d := parse(file, data, settingFormat)
	if costs(d.faults) {
		return nil, d.faults
	}
	var w settingFile
	var wrong *toml.DecodeError
	switch err := toml.Unmarshal(data, &w); {
	case errors.As(err, &wrong):
		row, column := wrong.Position()
		d.refuse(faultOf(file, Broken, "shop-broken", calc.TextFigure("why", shownName(strings.TrimPrefix(wrong.Error(), "toml: ")))).at(row, column))
		return nil, d.faults
	case err != nil:
		d.refuse(faultOf(file, Broken, "shop-broken", calc.TextFigure("why", shownName(err.Error()))))
		return nil, d.faults
	}
	number, id, ok := settingName(path.Base(file))
	if !ok {
		d.refuse(faultOf(file, Broken, "shop-setting-name"))
		return nil, d.faults
	}
	s := &Setting{ID: id, Number: number, Booth: booth, Subject: Subject{w.Coat, w.Stage, w.Gun, w.Band}, Replaces: w.Replaces, Agreed: w.Agreed, By: shownName(w.By)}
	s.Why, s.Knobs = shownNote(w.Why), shownNote(w.Knobs)
	for key, v := range map[string]string{"coat": w.Coat, "stage": w.Stage, keyGun: w.Gun, "band": w.Band} {
		if v == "" || v != shownName(v) {
			d.wrong(key, Broken, "shop-setting-subject")
		}
	}
	var key, given string
	if s.Values, key, given = valuesOf(&w.Set); key != "" {
		d.wrong(key, Broken, "shop-value", calc.TextFigure("given", shownName(given)))
	}
	if w.Worked == nil {
		w.Worked = &workedFile{}
	}
	if s.Worked, key, given = w.Worked.read(); key != "" {
		d.wrong(key, Broken, "shop-value", calc.TextFigure("given", shownName(given)))
	}
	for _, key := range []string{"coat", "stage", keyGun, "band", "replaces", "agreed", "by", "why", "knobs", "set", "worked"} {
		d.known[key] = true
	}
	d.strangers()
	if costs(d.faults) {
		return nil, d.faults
	}
	return s, d.faults
}

// Agree keeps a setting as a new revision, in place of those of its subject that stand, and
// gives it as it is kept. Whoever agrees at the same time elsewhere makes a twin of it, which
// Standing shows.
func (f *Folder) Agree(s Setting, sys unit.System) (*Setting, error) {
	if !IsID(s.Booth) {
		return nil, &Error{s.Booth, "shop-id-kept", nil}
	}
	if slices.Contains([]string{s.Coat, s.Stage, s.Gun, s.Band}, "") {
		return nil, &Error{s.Booth, "shop-subject-lacks", nil}
	}
	before, _ := f.Settings(s.Booth)
	s.Number = 1
	for _, b := range before {
		s.Number = max(s.Number, b.Number+1)
	}
	s.Replaces = nil
	for _, b := range Replaced(before, s.Subject) {
		s.Replaces = append(s.Replaces, b.ID)
	}
	id, err := uuid.NewV7()
	if err != nil {
		return nil, f.unwritten(settingsDir, err)
	}
	s.ID = id.String()
	w := settingFile{
		Format: settingFormat, Coat: s.Coat, Stage: s.Stage, Gun: s.Gun, Band: s.Band, Replaces: s.Replaces, Agreed: s.Agreed.UTC().Truncate(time.Second),
		By: s.By, Why: s.Why, Knobs: s.Knobs, Set: s.Values.wire(sys), Worked: s.Worked.wire(sys),
	}
	data, err := toml.Marshal(w)
	if len(data) > mostBytes {
		return nil, f.unwritten(s.file(), syscall.EFBIG)
	}
	if err == nil {
		err = f.put(s.file(), data)
	}
	if err != nil {
		return nil, err
	}
	return &s, nil
}

// Replaced is the settings that one of a subject would be agreed on in place of, from all that
// were agreed on: several are twins.
func Replaced(all []*Setting, of Subject) []*Setting {
	return slices.DeleteFunc(Standing(all), func(s *Setting) bool { return s.Subject != of })
}

// Standing is the settings that none of the others replaces. Two of one subject are twins:
// agreed apart, and to be agreed on anew.
func Standing(all []*Setting) (standing []*Setting) {
	replaced := map[string]bool{}
	for _, s := range all {
		for _, id := range s.Replaces {
			if id != s.ID {
				replaced[id] = true
			}
		}
	}
	for _, s := range all {
		if !replaced[s.ID] {
			standing = append(standing, s)
		}
	}
	return standing
}

// Twins is the settings that stand with the same subject as another, by subject.
func Twins(standing []*Setting) map[Subject][]*Setting {
	twins := map[Subject][]*Setting{}
	for _, s := range standing {
		twins[s.Subject] = append(twins[s.Subject], s)
	}
	for of, all := range twins {
		if len(all) < 2 {
			delete(twins, of)
		}
	}
	return twins
}

// For is the settings that stand for a job: of those whose subject holds it the most specific
// one, several where that has twins, none where none holds. One that names more wins; of as
// many, the one that names the gun, then the stage.
func For(standing []*Setting, job Subject) (best []*Setting) {
	most := -1
	for _, s := range standing {
		names := s.specific(job)
		switch {
		case names > most:
			best, most = []*Setting{s}, names
		case names == most && names >= 0:
			best = append(best, s)
		}
	}
	return best
}

// specific is how much of a job the subject names; -1 where it does not hold the job.
func (s Subject) specific(job Subject) int {
	if s.Coat != job.Coat {
		return -1
	}
	names := 0
	for i, of := range [][2]string{{s.Band, job.Band}, {s.Stage, job.Stage}, {s.Gun, job.Gun}} {
		switch of[0] {
		case Any:
		case of[1]:
			const each = 8 // above what tells those of as many apart
			names += each + 1<<i
		default:
			return -1
		}
	}
	return names
}
