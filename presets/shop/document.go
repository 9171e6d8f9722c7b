package shop

import (
	"errors"
	"maps"
	"slices"
	"strconv"
	"strings"
	"time"

	"boothset/calc"

	"github.com/pelletier/go-toml/v2"
)

// formatKey is the first key of each file: its kind and the version of that, such as
// "boothset.booth/1".
const formatKey = "format"

// The formats that are read.
const (
	boothFormat    = "boothset.booth/1"
	gunFormat      = "boothset.gun/1"
	settingFormat  = "boothset.setting/1"
	bandsFormat    = "boothset.bands/1"
	paintersFormat = "boothset.painters/1"
	recordFormat   = "boothset.record/1"
	readingFormat  = "boothset.reading/1"
)

// document is a TOML file of the folder as it is read key by key. What is wrong with it
// gathers in its faults.
type document struct {
	file   string
	data   []byte
	values map[string]any
	known  map[string]bool // the keys that were asked for
	faults []*Fault
}

// parse reads a TOML file of a format.
func parse(file string, data []byte, format string) *document {
	d := &document{file: file, data: data, known: map[string]bool{}}
	if n := mergeLine(data); n > 0 {
		d.refuse(faultOf(file, Broken, "shop-merge").at(n, 0))
		return d
	}
	var wrong *toml.DecodeError
	switch err := toml.Unmarshal(data, &d.values); {
	case errors.As(err, &wrong):
		row, column := wrong.Position()
		d.refuse(faultOf(file, Broken, "shop-broken", calc.TextFigure("why", shownName(strings.TrimPrefix(wrong.Error(), "toml: ")))).at(row, column))
	case err != nil:
		d.refuse(faultOf(file, Broken, "shop-broken", calc.TextFigure("why", shownName(err.Error()))))
	default:
		if f := formatFault(file, d.text(formatKey), format); f != nil {
			d.refuse(f.at(d.line(formatKey), 0))
		}
	}
	return d
}

// formatFault is what is wrong with the format that a file gives, nil where it is the one that
// is read.
func formatFault(file, given, format string) *Fault {
	figures := calc.Figures{calc.TextFigure("given", shownName(given)), calc.TextFigure("format", format)}
	kind, version, _ := strings.Cut(format, "/")
	ofKind, other, found := strings.Cut(given, "/")
	switch ours, _ := strconv.Atoi(version); {
	case given == format:
		return nil
	case given == "":
		return faultOf(file, Broken, "shop-no-format", figures...)
	case found && ofKind == kind:
		if n, err := strconv.Atoi(other); err == nil && n > ours {
			return faultOf(file, Broken, "shop-newer", figures...)
		}
	}
	return faultOf(file, Broken, "shop-other-format", figures...)
}

func (d *document) refuse(f *Fault) { d.faults = append(d.faults, f) }

// wrong adds a fault of a key.
func (d *document) wrong(key string, weight Weight, id string, f ...calc.Figure) {
	f = append(f, calc.TextFigure("key", shownName(key)))
	d.refuse(faultOf(d.file, weight, id, f...).at(d.line(key), 0))
}

// get is the value of a key, which is known from then on.
func (d *document) get(key string) (any, bool) {
	d.known[key] = true
	v, ok := d.values[key]
	return v, ok
}

func (d *document) takes(key, what string) {
	d.wrong(key, Broken, "file-key-takes", calc.SentenceFigure("what", what))
}

// text is the text of a key, empty where it has none.
func (d *document) text(key string) string {
	v, ok := d.get(key)
	s, isText := v.(string)
	if ok && !isText {
		d.takes(key, "takes-text")
	}
	return s
}

// texts is the texts of a key.
func (d *document) texts(key string) []string {
	v, ok := d.get(key)
	list, isList := v.([]any)
	if ok && !isList {
		d.takes(key, "takes-texts")
		return nil
	}
	all := make([]string, 0, len(list))
	for _, x := range list {
		s, isText := x.(string)
		if !isText {
			d.takes(key, "takes-texts")
			return nil
		}
		all = append(all, s)
	}
	return all
}

// flag is a key that holds true or false.
func (d *document) flag(key string) bool {
	v, ok := d.get(key)
	b, isBool := v.(bool)
	if ok && !isBool {
		d.takes(key, "takes-bool")
	}
	return b
}

// Date is a day of the calendar; the zero Date is none.
type Date struct{ time.Time }

// date is the day of a key, written without quotes.
func (d *document) date(key string) Date {
	v, ok := d.get(key)
	day, isDate := v.(toml.LocalDate)
	if ok && !isDate {
		d.takes(key, "takes-date")
	}
	if !isDate {
		return Date{}
	}
	return Date{day.AsTime(time.UTC)}
}

// Text is the day as files write it, empty for none.
func (d Date) Text() string {
	if d.IsZero() {
		return ""
	}
	return d.Format(time.DateOnly)
}

// strangers tells of the keys that nothing asked for. They stay in the file.
func (d *document) strangers() {
	for _, key := range slices.Sorted(maps.Keys(d.values)) {
		if !d.known[key] {
			d.wrong(key, Told, "shop-unknown-key")
		}
	}
}

// unquoted takes the quotes and blanks out of a line, so that a key is as it is read.
var unquoted = strings.NewReplacer(`"`, "", "'", "", " ", "", "\t", "")

// line is the line of a key, or of the table of its name, from 1; 0 where it is not found.
func (d *document) line(key string) int {
	n := 0
	for l := range strings.Lines(string(d.data)) {
		n++
		if !strings.Contains(l, key) {
			continue
		}
		name, _, given := strings.Cut(unquoted.Replace(l), "=")
		if given && (name == key || strings.HasPrefix(name, key+".")) || strings.HasPrefix(name, "["+key+"]") || strings.HasPrefix(name, "[["+key+"]]") {
			return n
		}
	}
	return 0
}
