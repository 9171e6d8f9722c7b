package shop

import (
	"bytes"
	"reflect"
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"

	"github.com/pelletier/go-toml/v2"
)

// Key is a key of a booth's or a gun's file with what it is to hold: text, texts, true or
// false, a Date; nil takes it out.
type Key struct {
	Name  string
	Value any
}

// KeysOf is the keys that say answers to the fields a booth may answer, with their units named,
// in the order of the job: what saves the line of a job as a booth.
func KeysOf(r *question.Reader, a question.Answers, sys unit.System) (keys []Key) {
	for _, f := range question.ShopFields() {
		var texts []string
		for _, v := range r.Completed(f, a.Get(f), sys) {
			texts = append(texts, v.Text)
		}
		switch {
		case len(texts) == 0:
		case f.Repeats:
			keys = append(keys, Key{f.Name, texts})
		default:
			keys = append(keys, Key{f.Name, texts[0]})
		}
	}
	return keys
}

// SaveBooth gives keys of a booth's file their values, and makes the file where there is none.
// All else in it stays as a person wrote it: other keys, their order, comments. What the file
// would then not do for is a Fault, and nothing is written.
func (f *Folder) SaveBooth(r *question.Reader, id string, keys ...Key) error {
	return f.save(boothsDir, id, boothFormat, keys, func(file string, data []byte) []*Fault {
		_, faults := ReadBooth(r, id, file, data)
		return faults
	})
}

// SaveGun is SaveBooth of a gun.
func (f *Folder) SaveGun(r *question.Reader, id string, keys ...Key) error {
	return f.save(gunsDir, id, gunFormat, keys, func(file string, data []byte) []*Fault {
		_, faults := ReadGun(r, id, file, data)
		return faults
	})
}

func (f *Folder) save(dir, id, format string, keys []Key, wrong func(file string, data []byte) []*Fault) error {
	if !IsID(id) {
		return faultOf(dir, Broken, "shop-id", calc.TextFigure("given", shownName(id)), calc.CountFigure("most", mostID))
	}
	file := fileOf(dir, id)
	data, found, fault := f.read(file)
	if fault != nil {
		return fault
	}
	if !found {
		keys = append([]Key{{formatKey, format}}, keys...)
	} else if d := parse(file, data, format); costs(d.faults) {
		return d.faults[0]
	} else if len(data) > mostEdited {
		return faultOf(file, Broken, "shop-too-long", calc.TextFigure("most", "64 kB"))
	}
	for _, k := range keys {
		var err error
		if data, err = edited(data, k); err != nil {
			return f.unwritten(file, err)
		}
	}
	for _, x := range wrong(file, data) {
		if x.Weight == Broken {
			return x
		}
	}
	return f.put(file, data)
}

// mostEdited is the largest file that is edited, and mostLines the longest value, so that what
// anybody may put into the folder takes no time to speak of.
const mostEdited, mostLines = 64 << 10, 500

// edited is a file with a key's value put in the place of the one it had, else behind the last
// key that is in no table.
func edited(data []byte, k Key) ([]byte, error) {
	var entry []byte
	if k.Value != nil {
		v := k.Value
		if day, ok := v.(Date); ok {
			v = toml.LocalDate{Year: day.Year(), Month: int(day.Month()), Day: day.Day()}
		}
		var err error
		if entry, err = toml.Marshal(map[string]any{k.Name: v}); err != nil {
			return nil, err
		}
	}
	ending := "\n"
	if bytes.Contains(data, []byte("\r\n")) {
		ending = "\r\n"
		entry = bytes.ReplaceAll(entry, []byte("\n"), []byte(ending))
	}
	lines := slices.Collect(strings.Lines(string(data)))
	if n := len(lines); n > 0 && !strings.HasSuffix(lines[n-1], "\n") {
		lines[n-1] += ending
	}
	last := 0 // behind the last key
	for i := 0; i < len(lines) && !strings.HasPrefix(strings.TrimSpace(lines[i]), "["); {
		n, holds := statement(lines[i:], k.Name)
		if holds {
			if comment := commentOf(lines[i:i+n], k.Name); comment != "" && len(entry) > 0 {
				entry = append(bytes.TrimRight(entry, "\r\n"), " "+comment+ending...)
			}
			return []byte(strings.Join(lines[:i], "") + string(entry) + strings.Join(lines[i+n:], "")), nil
		}
		if i += n; strings.Contains(lines[i-1], "=") || n > 1 {
			last = i
		}
	}
	return []byte(strings.Join(lines[:last], "") + string(entry) + strings.Join(lines[last:], "")), nil
}

// statement is how many of the lines are the first key with its value, or the one comment or
// blank, and whether it is the key of a name.
func statement(lines []string, name string) (n int, holds bool) {
	for n = 1; n < min(len(lines), mostLines); n++ {
		if toml.Unmarshal([]byte(strings.Join(lines[:n], "")), &map[string]any{}) == nil {
			break
		}
	}
	var v map[string]any
	if toml.Unmarshal([]byte(strings.Join(lines[:n], "")), &v) != nil {
		return len(lines), false // longer than any value: what is new stands behind it
	}
	_, holds = v[name]
	return n, holds
}

// commentOf is the comment behind the value of a key, empty where there is none.
func commentOf(lines []string, name string) string {
	all := strings.TrimRight(strings.Join(lines, ""), "\r\n")
	value := func(text string) any {
		var v map[string]any
		if toml.Unmarshal([]byte(text), &v) != nil {
			return nil
		}
		return v[name]
	}
	whole := value(all)
	for i := strings.LastIndexByte(all, '\n') + 1; i < len(all); i++ {
		if all[i] == '#' && reflect.DeepEqual(value(all[:i]), whole) {
			return all[i:]
		}
	}
	return ""
}
