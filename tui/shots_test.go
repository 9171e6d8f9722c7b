package tui

import (
	"path/filepath"
	"slices"
	"time"

	"boothset/presets/catalogue"
	"boothset/presets/last"
	"boothset/presets/question"
)

// shot is a place that is looked at: the keys to it from the start.
type shot struct {
	name  string
	keys  []string
	whole bool // it may go on behind what shows, which is looked at too
	kept  *last.Draft
	desk  bool // with the shop's folder
	// practice is the seed of a practice that it is in; 0 of the usual assistant.
	practice uint64
	// proves: what readings say is worked out before the next key.
	proves bool
	// spanish: it stands for its kind of page in another language and other units too;
	// extremes: in the smallest window and in a large one.
	spanish, extremes bool
}

// half and whole are what a last run may have left: on its way to the answer, and there.
func halfRun() *last.Draft {
	return &last.Draft{
		Saved: testDay.Add(-3 * time.Hour), At: question.Humidity.Name, Typed: "4", Units: catalogue.UnitsUS, Check: checkSkip,
		Answers: last.Texts{"coat": {"clear"}, "gun": {"reduced-pressure"}, "temp": {"75F"}},
	}
}

func wholeRun() *last.Draft {
	d := halfRun()
	d.Saved, d.Finished, d.At, d.Typed = testDay.Add(-26*time.Hour), true, atBench, ""
	d.Answers["humidity"], d.Answers["supply"] = []string{"45%"}, []string{"90psi"}
	return d
}

// leftRun is one that was left at its answer in a booth, with nobody having said how it came out.
func leftRun() *last.Draft {
	d := wholeRun()
	d.Shop, d.Booth = inventedShop, "two"
	d.Jobs = []last.Job{{
		Shop: inventedShop, ID: "01960000-0000-7000-8000-000000000001", At: d.Saved, Booth: "two", Coat: "clear", Stage: "full", Gun: "clear-1", Band: "mild",
		Answered: last.Texts{"wall": {"49.0 psi"}},
	}}
	return d
}

// tried is keys that try ten steps of an input, so many behind the wall.
func tried(keys []string, behind int) []string {
	all := then(keys)
	for range behind {
		all = append(all, "up")
	}
	return then(all, "shift+right")
}

// How far the inputs lie behind the wall in toAnswer.
const (
	hoseBehind = 4
	airBehind  = 12
)

// alike is the states in which a view shows what it shows in others.
var alike = map[string][]string{
	"look": {"-supply", "-starved"}, "line": {"-tried-air", "-supply"}, "day": {"-tried-hose", "-supply", "-starved"}, "sure": {"-supply", "-starved"},
	"why": {"-tried-air", "-starved"},
}

// toLine is the keys to the question of a part of the line, those before it taken as the
// shop has them.
func toLine(part *question.Field) []string {
	keys := then(atLine, "2")
	for _, row := range question.Plan.Fields {
		if row.Field == part {
			break
		}
		if row.Part == question.PartLine {
			keys = append(keys, "enter")
		}
	}
	return keys
}

// missedJob is the keys to a job of practice whose wall, valve and distance are missed.
var missedJob = []string{"enter", "enter", "down", "26psi", "down", "0", "down", "7in", "enter"}

func shots() []shot {
	all := []shot{
		{name: "desk-booth", keys: []string{"enter"}, desk: true, spanish: true, extremes: true},
		{name: "desk-booth-two", keys: []string{"enter", "down"}, desk: true},
		{name: "desk-gun", keys: []string{"enter", "2"}, desk: true, spanish: true},
		{name: "desk-gun-marked", keys: []string{"enter", "2", "down"}, desk: true},
		{name: "desk-day", keys: then(deskAnswer[:4]), desk: true},
		{name: "desk-air", keys: then(deskAnswer[:9]), desk: true},
		{name: "desk-bench", keys: deskAnswer, desk: true, whole: true, spanish: true},
		{name: "desk-agree", keys: then(deskAnswer, "a"), desk: true, spanish: true, extremes: true},
		{name: "desk-agree-why", keys: then(deskAnswer, "a", "down", "down", "down", "lays"), desk: true},
		{name: "desk-agree-keys", keys: then(deskAnswer, "a", "f1"), desk: true, whole: true, spanish: true},
		{name: "desk-manage", keys: []string{"enter", "m"}, desk: true, spanish: true},
		{name: "desk-manage-one", keys: []string{"enter", "m", "3"}, desk: true},
		{name: "desk-entry-booth", keys: []string{"enter", "m", "3", "1"}, desk: true, spanish: true, extremes: true},
		{name: "desk-entry-gun", keys: []string{"enter", "m", "6", "1", "down"}, desk: true, spanish: true},
		{name: "desk-save", keys: then(deskAnswer, "b"), desk: true, spanish: true},
		{name: "desk-save-first", keys: then(toAnswer, "b", "Bay 4")},
		{name: "desk-outcome", keys: then(deskAnswer, "d"), desk: true, spanish: true, extremes: true},
		{name: "desk-outcome-then", keys: then(deskAnswer, "d", "2"), desk: true, spanish: true},
		{name: "desk-outcome-left", keys: []string{"enter"}, desk: true, kept: leftRun(), spanish: true},
		{name: "prove-gauges", keys: then(toAnswer, "p"), proves: true, spanish: true, extremes: true},
		{name: "prove-read", keys: then(toAnswer, "p", "35psi", "enter", "33.5psi", "enter", "pgdown"), proves: true, whole: true, spanish: true},
		{name: "prove-seen", keys: then(toAnswer, "p", "enter", "enter", "30psi", "enter", "26psi", "enter", "30psi", "enter", "enter", "enter", "enter", "enter", "7in", "enter"), proves: true, whole: true, spanish: true, extremes: true},
		{name: "prove-pattern", keys: then(toAnswer, "p", "enter", "enter", "enter", "enter", "enter", "enter", "enter", "enter", "right", "right"), proves: true, spanish: true},
		{name: "prove-apart", keys: then(toAnswer, "p", "31psi", "enter", "12psi", "enter"), proves: true},
		{name: "trouble-signs", keys: then(toAnswer, "t"), spanish: true, extremes: true},
		{name: "trouble-search", keys: then(toAnswer, "t", "r", "u", "n")},
		{name: "trouble-none", keys: then(toAnswer, "t", "z", "z")},
		{name: "trouble-check", keys: then(toAnswer, "t", "p", "e", "e", "l", "enter"), whole: true, spanish: true, extremes: true},
		{name: "trouble-told", keys: then(toAnswer, "t", "p", "e", "e", "l", "enter", "3", "3"), whole: true, spanish: true},
		{name: "trouble-further", keys: then(toAnswer, "t", "p", "e", "e", "l", "enter", "2", "enter")},
		{name: "trouble-keys", keys: then(toAnswer, "t", "p", "e", "e", "l", "enter", "f1"), whole: true},
		{name: "practice", keys: []string{"enter"}, practice: 7, spanish: true},
		{name: "practice-job", keys: []string{"enter", "enter"}, practice: 7, spanish: true, extremes: true},
		{name: "practice-job-bad", keys: []string{"enter", "enter", "down", "26 lux", "enter"}, practice: 7},
		{name: "practice-missed", keys: missedJob, practice: 7, whole: true, spanish: true, extremes: true},
		{name: "practice-stop", keys: []string{"enter", "enter", "right", "right", "right", "enter"}, practice: 7, whole: true},
		{name: "practice-find", keys: []string{"enter", "2"}, practice: 7, spanish: true, extremes: true},
		{name: "practice-read", keys: []string{"enter", "2", "2", "2", "1"}, practice: 7},
		{name: "practice-name", keys: []string{"enter", "2", "2", "2", "w"}, practice: 7, spanish: true},
		{name: "practice-named", keys: []string{"enter", "2", "2", "2", "w", "2"}, practice: 7, whole: true, spanish: true, extremes: true},
		{name: "practice-due", keys: []string{"enter", "2", "2", "2", "w", "2", "esc"}, practice: 7},
		{name: "practice-keys", keys: then(missedJob, "f1"), practice: 7, whole: true},
		{name: "safety", whole: true, spanish: true},
		{name: "resume-half", kept: halfRun(), keys: []string{"enter"}},
		{name: "resume-done", kept: wholeRun(), keys: []string{"enter"}, spanish: true},
		{name: "coat", keys: atCoat, spanish: true},
		{name: "coat-entered", kept: wholeRun(), keys: []string{"enter", "3"}},
		{name: "coat-end", keys: then(atCoat, "down", "down", "down", "down", "down", "down", "down", "down", "down", "down")},
		{name: "gun", keys: atGun},
		{name: "temp", keys: atTemp},
		{name: "temp-typed", keys: toAnswer[:4]},
		{name: "temp-entered", kept: wholeRun(), keys: []string{"enter", "3", "enter", "enter"}},
		{name: "temp-bad", keys: then(atTemp, "75 bar", "enter"), spanish: true},
		{name: "temp-outside", keys: then(atTemp, "300F", "enter")},
		{name: "temp-unsure", keys: then(atTemp, "f2"), spanish: true},
		{name: "humidity", keys: atHumidity},
		{name: "humidity-bad", keys: then(atHumidity, "450", "enter")},
		{name: "panel", keys: atPanel},
		{name: "altitude", keys: atAltitude},
		{name: "supply", keys: atSupply},
		{name: "supply-bad", keys: then(atSupply, "1,500", "enter")},
		{name: "line", keys: atLine, spanish: true},
		{name: "parts", keys: then(atLine, "3"), spanish: true},
		{name: "parts-many", keys: then(atLine, "3", "down", "right", "1", "3", "2", "1", "1", "down", "down", "4", "down", "right"), whole: true},
		{name: "parts-kinds", keys: then(atLine, "3", "1")},
		{name: "line-of-parts", keys: then(atLine, "3", "down", "right", "enter", "esc")},
		{name: "regulator", keys: toLine(question.Regulator)},
		{name: "regulator-at", keys: toLine(question.RegulatorAt)},
		{name: "filter", keys: toLine(question.Filter)},
		{name: "hose", keys: toLine(question.Hose), spanish: true},
		{name: "hose-bad", keys: then(toLine(question.Hose), "25ft", "enter")},
		{name: "coupling", keys: toLine(question.Coupling)},
		{name: "gauge", keys: toLine(question.Gauge)},
		{name: "wall", keys: atWallNow},
		{name: "check", keys: atCheck},
		{name: "check-again", keys: then(toSupply[:29], "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc", "esc"), spanish: true},
		{name: "compressor", keys: toSupply[:13]},
		{name: "receiver", keys: toSupply[:15]},
		{name: "cut-in", keys: toSupply[:17]},
		{name: "cut-out", keys: toSupply[:18]},
		{name: "main", keys: toSupply[:19]},
		{name: "main-bad", keys: then(toSupply[:19], "100ft", "enter")},
		{name: "other", keys: toSupply[:21]},
		{name: "spray-time", keys: toSupply[:23]},
		{name: "panels", keys: toSupply[:24]},
		{name: "receiver-temp", keys: toSupply[:26]},
		{name: "line-temp", keys: toSupply[:27]},
		{name: "sheet", keys: toSupply[:28], spanish: true},
		{name: "sheet-bad", keys: then(toSupply[:28], "25", "enter", "9psi", "enter")},
		{name: "page-day", keys: toDay, whole: true},
		{name: "page-day-dew", keys: then(toDew, pageKey(question.Day)), whole: true, spanish: true},
		{name: "page-coat", keys: then(toThin, "up", "up", "left")},
		{name: "page-thin", keys: toThin, spanish: true},
		{name: "page-thin-typed", keys: then(toThin, "up", "din4", "enter")},
		{name: "page-thin-answer", keys: then(toThin, "up", "din4", "enter", "22", "enter", "pgdown"), whole: true},
		{name: "page-film", keys: then(toAnswer, pageKey(question.Film)), whole: true},
		{name: "page-mix", keys: toMix},
		{name: "page-mix-bad", keys: then(toMix, "two", "enter")},
		{name: "page-mix-answer", keys: then(toMix, "hood", "enter", "pgdown"), whole: true, spanish: true},
		{name: "keys-safety", keys: []string{"?"}, whole: true},
		{name: "keys-list", keys: then(atGun, "?"), whole: true},
		{name: "keys-typed", keys: then(toAnswer[:4], "f1"), whole: true},
		{name: "keys-bench", keys: then(toAnswer, "?"), whole: true, spanish: true},
		{name: "keys-tried", keys: then(toAnswer, "right", "?"), whole: true},
		{name: "keys-page", keys: then(toThin, "f1"), whole: true},
		{name: "finish", keys: then(toAnswer, viewKeys()[len(views)-1], "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "pgdown", "enter"), spanish: true},
		{name: "finish-early", keys: then(atCoat, "esc")},
	}
	for n, v := range views {
		for _, state := range []struct {
			name string
			keys []string
		}{
			{"", toAnswer},
			{"-tried-hose", tried(toAnswer, hoseBehind)},
			{"-tried-air", tried(toAnswer, airBehind)},
			{"-dew", toDew},
			{"-short", toShort},
			{"-starved", toStarved},
			{"-wall", toRead},
			{"-supply", toSupply},
		} {
			if slices.Contains(alike[v.id], state.name) {
				continue
			}
			keys := then(state.keys, viewKeys()[n])
			if n == 0 { // it shows already, and would turn
				keys = state.keys
			}
			// The reasons are many pages, and many of them the same in all states.
			whole := v.id != "why" || slices.Contains([]string{"", "-dew", "-supply"}, state.name)
			plain := state.name == ""
			all = append(all, shot{name: "bench-" + v.id + state.name, keys: keys, whole: whole, spanish: plain, extremes: plain && n == 0})
		}
	}
	return all
}

// inventedShop is the folder of a shop that is invented. Nothing is written in it.
var inventedShop = filepath.Join("testdata", "shop")

func (f *shot) folder() string {
	if f.desk {
		return inventedShop
	}
	return ""
}

// at is a shot as a look has it.
func (f *shot) at(t test, l look) *root {
	t.Helper()
	r := start(t, look{lang: l.lang, metric: l.metric, colour: l.colour, ascii: l.ascii, folder: f.folder()})
	if f.kept != nil {
		r.s.recall([]last.Draft{*f.kept})
		r.resume.run = r.s.read(*f.kept)
	}
	if f.practice != 0 {
		practising(t, r, f.practice)
	}
	r.s.atOnce = f.proves
	press(r, f.keys...)
	if l.size != (size{}) {
		r.Update(resize(l.size))
	}
	return r
}

// each gives each screenful of a shot to see, with its number from 1, and leaves it at the
// first.
func (f *shot) each(r *root, see func(n int, frame string)) {
	frame := r.View()
	see(1, frame)
	for n := 2; f.whole; n++ {
		press(r, "pgdown")
		next := r.View()
		if next == frame {
			if where(r) == "bench" {
				openView(r, r.bench.view)
			}
			press(r, "home")
			return
		}
		frame = next
		see(n, frame)
	}
}
