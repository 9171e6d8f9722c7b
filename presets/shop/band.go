package shop

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/words"
)

// Band is a band of weather that a setting is agreed for.
type Band struct {
	ID   string
	Name string // of a shop's own; empty where a sentence names it
	// Temp and Humidity are the band's limits, the low one in it, the high one not.
	Temp     [2]unit.Temp
	Humidity [2]float64
	// Air and Damp are the temperature and the humidity of the day that a sheet is worked for.
	Air   unit.Temp
	Damp  float64
	Basis calc.Basis
}

//go:embed bands.toml
var shippedBands []byte

// shippedBandsOnce is the bands that ship, read when they are first asked for.
var shippedBandsOnce = sync.OnceValue(func() []Band {
	bands, _ := ReadBands(bandsFile, shippedBands) // tests hold it to have no fault
	for i := range bands {
		bands[i].Basis = calc.CommonPractice
	}
	return bands
})

// ShippedBands is the weather bands that ship.
func ShippedBands() []Band { return shippedBandsOnce() }

// Bands is the weather bands of the shop: its own where it has a file of them, else those that
// ship.
func (f *Folder) Bands() ([]Band, []*Fault) {
	data, found, fault := f.read(bandsFile)
	switch {
	case fault != nil:
		return shippedBandsOnce(), []*Fault{fault}
	case !found:
		return shippedBandsOnce(), nil
	}
	bands, faults := ReadBands(bandsFile, data)
	if costs(faults) {
		return shippedBandsOnce(), faults
	}
	return bands, faults
}

// BandOf is the first band that holds a day; false where none does.
func BandOf(bands []Band, air unit.Temp, humidity float64) (Band, bool) {
	for _, b := range bands {
		if b.Holds(air, humidity) {
			return b, true
		}
	}
	return Band{}, false
}

// Day is the band's own day as answers to a plan's questions.
func (b *Band) Day() (a question.Answers) {
	text := func(q *unit.Quantity, si float64) question.Value {
		return question.Value{SI: [2]float64{si}, Text: q.Text(unit.Metric, si, unit.Usual)}
	}
	return a.With(question.Temp, text(unit.Temperature, float64(b.Air))).With(question.Humidity, text(unit.Share, b.Damp))
}

// BandNamed is the band of an id, which may be Any, or one that there is no more.
func BandNamed(bands []Band, id string) Band {
	if n := slices.IndexFunc(bands, func(b Band) bool { return b.ID == id }); n >= 0 {
		return bands[n]
	}
	return Band{ID: id}
}

// Holds reports whether a day is of the band.
func (b *Band) Holds(air unit.Temp, humidity float64) bool {
	return air >= b.Temp[0] && air < b.Temp[1] && humidity >= b.Humidity[0] && (humidity < b.Humidity[1] || b.Humidity[1] == 1)
}

// Called is what the band is called in a language.
func (b *Band) Called(w *words.Words) string {
	if b.Name != "" {
		return b.Name
	}
	return sayOr(w, "band-", b.ID)
}

// ReadBands reads a shop's own weather bands from its file's contents.
func ReadBands(file string, data []byte) (bands []Band, faults []*Fault) {
	d := parse(file, data, bandsFormat)
	if costs(d.faults) {
		return nil, d.faults
	}
	tables, ok := d.get("band")
	list, isList := tables.([]any)
	if !ok || !isList {
		d.takes("band", "takes-table")
	}
	for _, x := range list {
		b, key := readBand(x)
		switch {
		case key != "":
			d.wrong(key, Broken, "shop-band", calc.TextFigure("band", shownName(b.ID)))
		case slices.ContainsFunc(bands, func(other Band) bool { return other.ID == b.ID }):
			d.wrong("band", Broken, "shop-band-twice", calc.TextFigure("band", shownName(b.ID)))
		default:
			bands = append(bands, b)
		}
	}
	d.strangers()
	if costs(d.faults) {
		return nil, d.faults
	}
	return bands, d.faults
}

// readBand reads a table; key is the one that will not do, empty where all do.
func readBand(x any) (b Band, key string) {
	table, _ := x.(map[string]any)
	b.ID, _ = table["id"].(string)
	name, _ := table[keyName].(string)
	b.Name = strings.TrimSpace(shownName(name))
	if !IsID(b.ID) || b.ID == Any {
		return b, "id"
	}
	air, ok := limits(table["temp"], unit.Temperature, float64(calc.ColdestAir), float64(calc.HottestAir))
	b.Temp = [2]unit.Temp{unit.Temp(air[0]), unit.Temp(air[1])}
	if !ok {
		return b, "temp"
	}
	if b.Humidity, ok = limits(table["humidity"], unit.Share, 0, 1); !ok {
		return b, "humidity"
	}
	day, _ := table["day"].([]any)
	if len(day) != 2 {
		return b, "day"
	}
	t, err := read(day[0], unit.Temperature)
	h, errDamp := read(day[1], unit.Share)
	if b.Air, b.Damp = unit.Temp(t), h; err != nil || errDamp != nil || !b.Holds(b.Air, b.Damp) {
		return b, "day"
	}
	return b, ""
}

// limits reads two quantities in order; what is left out is low and high.
func limits(v any, q *unit.Quantity, low, high float64) ([2]float64, bool) {
	at := [2]float64{low, high}
	if v == nil {
		return at, true
	}
	list, _ := v.([]any)
	if len(list) != 2 {
		return at, false
	}
	for i, x := range list {
		si, err := read(x, q)
		if err != nil || si < low || si > high {
			return at, false
		}
		at[i] = si
	}
	return at, at[0] < at[1]
}

// read is a quantity of a file, which names its unit; a percentage needs no sign.
func read(v any, q *unit.Quantity) (float64, error) {
	given, _ := v.(string)
	if q == unit.Share {
		return unit.Parse[float64](q, given, unit.Metric)
	}
	return unit.Parse[float64](q, given, unit.Named)
}
