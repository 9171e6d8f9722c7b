package card

import (
	"slices"
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/shop"
	"boothset/presets/words"
)

// Agreed is what was agreed on for a job; none where Settings is empty.
type Agreed struct {
	Settings []*shop.Setting // several where it was agreed twice apart
	Void     bool            // the line or the gun has changed since
	Band     shop.Band       // that the day is in, without an id where it is in none
	By       string          // initials, empty where they are not known
}

// AgreedFor looks up what stands for a plan in a booth, on the band of its day.
func AgreedFor(f *shop.Folder, booth string, p *answer.Plan) (Agreed, []*shop.Fault) {
	bands, faults := f.Bands()
	settings, more := f.Settings(booth)
	faults = append(faults, more...)
	var painters shop.Painters
	if slices.ContainsFunc(settings, func(s *shop.Setting) bool { return s.By != "" }) {
		painters, more = f.Painters()
		faults = append(faults, more...)
	}
	return AgreedIn(bands, settings, painters, p), faults
}

// AgreedIn is AgreedFor of what was read before: the bands, all that was agreed on in the booth,
// and the painters.
func AgreedIn(bands []shop.Band, settings []*shop.Setting, painters shop.Painters, p *answer.Plan) (a Agreed) {
	q := p.Request
	a.Band, _ = shop.BandOf(bands, q.Day.Air, q.Day.Humidity)
	a.Settings = shop.For(shop.Standing(settings), shop.SubjectOf(q, bands))
	for _, s := range a.Settings {
		a.Void = a.Void || shop.Void(s.Since(q))
	}
	if len(a.Settings) == 1 {
		a.By = painters[a.Settings[0].By]
	}
	return a
}

// rows is what was agreed with who did it and when, each value beside the day's own; stands is
// whether it is what to set. One that is void, or was agreed twice, gives no value: it is to be
// agreed on anew.
func (a *Agreed) rows(w *words.Words, sys unit.System, p *answer.Plan) (rows []answer.Row, stands bool) {
	if len(a.Settings) == 0 {
		return nil, false
	}
	say := func(id string, f ...calc.Figure) string { return w.Text(sys, id, f) }
	s := a.Settings[0]
	when := say("card-agreed-on", calc.TextFigure("date", s.Agreed.Local().Format("2006-01-02")))
	if a.By != "" {
		when = say("card-agreed-by", calc.TextFigure("date", s.Agreed.Local().Format("2006-01-02")), calc.TextFigure("who", a.By))
	}
	title := answer.Row{Role: answer.Title, ID: "card-agreed", Text: when}
	switch {
	case len(a.Settings) > 1:
		title.Text = say("card-twins")
		return []answer.Row{title}, false
	case a.Void:
		title.Text += " " + say("card-void")
		return []answer.Row{title}, false
	case s.Band == shop.Any:
		title.Text += " " + say("card-agreed-any")
	default:
		title.Text += " " + say("card-agreed-band", calc.TextFigure("band", a.Band.Called(w)))
	}
	values, over := SettingRows(w, sys, p, s)
	id := "card-agreed-set"
	if over {
		id = "card-agreed-over"
	}
	title.Text += " " + say(id)
	return append([]answer.Row{title}, values...), !over
}

// SettingRows is the values of a setting, each beside the day's own answer, and what today's
// line and gun make of its wall pressure: over is that this gives the gun more than it may have.
func SettingRows(w *words.Words, sys unit.System, p *answer.Plan, s *shop.Setting) (rows []answer.Row, over bool) {
	today, over := atWall(w, sys, p.Request, s.Values.Wall)
	role := answer.Setting
	if over {
		role = answer.Value
	}
	add := func(about, label, text, today string) {
		r := answer.Row{Role: role, About: about, Name: w.Say(label), Text: text}
		if today != "" {
			r.More = w.Text(sys, "card-agreed-today", calc.Figures{calc.TextFigure("value", today)})
		}
		rows = append(rows, r)
	}
	v, now := &s.Values, shop.Answered(p.Request, p.Setup)
	turned := func(opening float64) string { return w.FigureText(sys, p.Setup.Valve.Knob("valve", opening)) }
	if v.Wall > 0 {
		add(answer.AboutWall, "label-wall", sys.Gauge(v.Wall, unit.Usual), sys.Gauge(now.Wall, unit.Usual))
	}
	if v.Distance > 0 {
		add(answer.AboutDistance, "label-distance", sys.Small(v.Distance, unit.Usual), sys.Small(now.Distance, unit.Usual))
	}
	if v.Opening > 0 && !p.Setup.Valve.None {
		add(answer.AboutValve, "label-valve", turned(v.Opening), turned(now.Opening))
	}
	if v.Gun > 0 && now.Gun > 0 {
		fine := unit.Pressure.Fine(sys)
		add(answer.AboutGauge, "label-gauge", sys.Gauge(v.Gun, fine), sys.Gauge(now.Gun, fine))
	}
	role = answer.Value
	if v.Tip > 0 {
		add("tip", "label-tip", w.FigureText(sys, calc.FigureOf("", calc.FigureTip, v.Tip)), "")
	}
	if s.Knobs != "" {
		add("setup", "label-knobs", s.Knobs, "")
	}
	if s.Why != "" {
		add("why", "label-because", s.Why, "")
	}
	return append(rows, today...), over
}

// atWall is what today's line and gun make of a wall pressure that was agreed on: cautions
// first, as where it gives the gun more than it may have: then over is set. None where none was
// agreed on.
func atWall(w *words.Words, sys unit.System, of *calc.Request, wall unit.Gauge) (rows []answer.Row, over bool) {
	if wall == 0 {
		return nil, false
	}
	q := *of
	q.Now, q.HasNow = wall, true
	s, err := calc.Solve(&q)
	if err != nil { // a pressure beyond what a request may hold: that is told of the file
		return nil, false
	}
	now := func(r answer.Row) bool { return strings.HasPrefix(r.ID, "now-") }
	for _, r := range answer.CautionRows(w, sys, s.Cautions) {
		if now(r) {
			rows, over = append(rows, r), true
		}
	}
	for _, r := range answer.ReasonRows(w, sys, s.Reasons) {
		if now(r) {
			rows = append(rows, answer.Row{Role: answer.Remark, About: r.About, ID: r.ID, Text: r.Text})
		}
	}
	return rows, over
}
