package tui

import (
	"strings"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/practice"
	"boothset/tui/draw"
)

// judgedPage is a guess beside the answer.
func (d *drill) judgedPage(j *practice.Job, of *practice.Judged) *toldPage {
	v := &judgedView{d.s, j, of}
	return &toldPage{d: d, title: "judged-title", what: practiseJob, plan: j.Plan, rows: v.rows, lines: v.lines}
}

// judgedView is a guess beside the answer, in rows.
type judgedView struct {
	s  *session
	j  *practice.Job
	of *practice.Judged
}

// rows is what a guess came to, with the three pictures on one scale where there is room, in one
// column where they have no room beside each other.
func (v *judgedView) rows(room size) (rows []string) {
	rows = append(v.head(room.w), "")
	pictures := v.pictures(room)
	rows = append(rows, v.marks(room.w)...)
	if len(pictures) > 0 && len(rows)+len(pictures)+len(v.after(room.w)) <= room.h {
		rows = append(append(rows, ""), pictures...)
		return append(rows, v.after(room.w)...)
	}
	rows = append(rows, v.after(room.w)...)
	if len(pictures) > 0 {
		rows = append(append(rows, ""), pictures...)
	}
	return rows
}

// lines is the same in lines of text.
func (v *judgedView) lines(w int) []string {
	return append(append(v.head(w), v.marks(w)...), v.after(w)...)
}

// head is whether all was right, and the verdicts.
func (v *judgedView) head(w int) (rows []string) {
	s, th := v.s, &v.s.theme
	if v.of.Right() {
		rows = append(rows, th.Go.Render(s.say("judged-right")))
	} else {
		rows = append(rows, th.level[calc.Warn].Render(s.say("judged-missed")))
	}
	text := s.text("judged-verdict", calc.SentenceFigure("guess", "verdict-"+v.of.Guess.Verdict.String()), calc.SentenceFigure("answer", "verdict-"+v.j.Setup.Verdict.String()))
	style := th.Title
	if !v.of.Verdict {
		style = th.level[calc.Warn]
	}
	rows = append(rows, each(wrap(text, w), style.Render)...)
	if len(v.of.Against) > 0 { // told on the panel
		return rows
	}
	for _, r := range answer.AgainstRows(s.words, s.sys, &v.j.Setup.Judgement) {
		rows = append(rows, hang("- ", r.Text, w)...)
	}
	return rows
}

// marks is each setting beside the answer's, or what the answer sets where none was guessed.
func (v *judgedView) marks(w int) (rows []string) {
	s := v.s
	for i := range v.of.Marks {
		m := &v.of.Marks[i]
		mark, style := "judged-in", s.theme.Title
		if !m.Right() {
			mark, style = "judged-out", s.theme.level[calc.Warn]
		}
		low, high := m.Low, m.High
		if m.Of == practice.Opening && !v.j.Setup.Valve.CountsFromShut { // it is counted the other way
			low, high = high, low
		}
		text := s.text("judged-sure", v.figure(m.Of, "guess", m.Guessed), v.figure(m.Of, "answer", m.Advised), v.figure(m.Of, "low", low), v.figure(m.Of, "high", high), calc.SentenceFigure("mark", mark))
		rows = append(rows, hang(style.Render(v.label(m.Of))+" ", text, w)...)
	}
	switch {
	case v.j.Setup.Stopped():
		rows = append(rows, wrap(s.text("judged-nothing", calc.TextFigure("turn", answer.TurnText(s.words, s.sys, v.j.Setup.Turn()))), w)...)
	case len(v.of.Marks) == 0:
		rows = append(rows, wrap(s.text("judged-unset", calc.TextFigure("settings", s.advised(v.j))), w)...)
	}
	return rows
}

// label is what a setting is called.
func (v *judgedView) label(of practice.Setting) string {
	switch of {
	case practice.Opening:
		return v.s.say("number-valve")
	case practice.Distance:
		return v.s.say("number-distance")
	}
	if v.j.Request.RegulatorAt() == calc.Foot {
		return v.s.say("number-foot")
	}
	return v.s.say("number-wall")
}

// figure is a value of a setting.
func (v *judgedView) figure(of practice.Setting, name string, value float64) calc.Figure {
	switch of {
	case practice.Opening:
		return v.j.Setup.Valve.Knob(name, min(value, 1))
	case practice.Distance:
		return calc.FigureOf(name, calc.FigureDistance, value)
	}
	return calc.BriefFigure(name, calc.FigureGauge, value)
}

// advised is what a job's answer sets, in a row.
func (s *session) advised(j *practice.Job) string {
	v := &judgedView{s: s, j: j}
	set := j.Setup.Set()
	var texts []string
	for _, of := range j.Asks() {
		value := map[practice.Setting]float64{practice.Wall: float64(set.Wall), practice.Opening: set.Opening, practice.Distance: float64(set.Distance)}[of]
		texts = append(texts, v.label(of)+" "+s.words.FigureText(s.sys, v.figure(of, "", value)))
	}
	if foot := &j.Setup.Foot; foot.Is {
		texts = append(texts, s.text("number-second-set", calc.BriefFigure("foot", calc.FigureGauge, foot.Flowing)))
	}
	return strings.Join(texts, ", ")
}

// after is what would have happened on the panel, and the idea behind a miss.
func (v *judgedView) after(w int) (rows []string) {
	s, of := v.s, v.of
	title := func(id string) { rows = append(rows, "", s.theme.Title.Render(s.ruled(s.say(id), w))) }
	if len(of.Marks) > 0 || len(of.Against) > 0 {
		title("judged-panel")
		rows = append(rows, v.panel(w)...)
	}
	if of.Idea != "" {
		title("judged-idea")
		rows = append(rows, each(wrap(s.say(ideaSentence(of.Idea)), w), s.theme.Question.Render)...)
		rows = append(rows, wrap(s.text("why-idea-"+string(of.Idea), of.Figures...), w)...)
	}
	return rows
}

// panel is what would have happened: on a day that waits or stops its own sentences first.
func (v *judgedView) panel(w int) (rows []string) {
	s, of := v.s, v.of
	for _, c := range of.Against {
		rows = append(rows, each(hang("! ", s.text(c.ID, c.Figures...), w), s.theme.level[calc.Warn].Render)...)
	}
	rows = append(rows, s.signRows(of.Signs, w)...)
	if len(rows) == 0 {
		rows = wrap(s.text("judged-good", calc.BriefFigure("gets", calc.FigureGauge, of.As.Gun)), w)
	}
	return rows
}

// signRows is what shows on a panel, each sign in its own sentence.
func (s *session) signRows(signs []calc.Sign, w int) (rows []string) {
	for _, sign := range signs {
		rows = append(rows, hang("- ", s.text("sprayed-"+sign.ID, sign.Figures...), w)...)
	}
	return rows
}

// pictures is the gauge, the knob and the hand as they were guessed, with the answer's on the same
// scale; none where nothing was set.
func (v *judgedView) pictures(room size) []string {
	if len(v.of.Marks) == 0 {
		return nil
	}
	if room.w < wideColumns {
		var rows []string
		for _, p := range v.drawn(room.w, leastPicture) {
			rows = append(rows, p...)
		}
		return rows
	}
	cols := thirds(room.w)
	high := min(max(room.h-len(v.head(room.w))-len(v.marks(room.w))-len(v.after(room.w))-2, leastPicture), mostPicture)
	var cells [3][]string
	for i, p := range v.drawn(cols[0]-2, high) {
		cells[i] = p
	}
	return across(cells, cols)
}

// drawn is a picture of each of the settings that were guessed.
func (v *judgedView) drawn(w, high int) (all [][]string) {
	s := v.s
	for i := range v.of.Marks {
		m := &v.of.Marks[i]
		var rows []string
		switch m.Of {
		case practice.Wall:
			rows = v.gauge(m).Rows(w, high, s.glyphs, s.ink)
		case practice.Opening:
			rows = v.knob(m).Rows(w, high, s.glyphs, s.ink)
		case practice.Distance:
			rows = v.reach(m).Rows(w, min(high, reachHigh), s.glyphs, s.ink)
		}
		all = append(all, rows)
	}
	return all
}

// marked is a value that was guessed, or the answer's, as a mark of a picture.
func (v *judgedView) marked(id string, m *practice.Mark, at, value float64) draw.Mark {
	return draw.Mark{At: at, Text: v.s.say(id) + " " + v.s.words.FigureText(v.s.sys, v.figure(m.Of, "", value))}
}

// gauge is the face of the booth's own gauge.
func (v *judgedView) gauge(m *practice.Mark) draw.Gauge {
	s, pressure := v.s, v.s.axis(unit.Pressure)
	whole := pressure
	whole.decimals = 0
	span := max(float64(v.j.GaugeSpan()), m.Guessed, m.Advised)
	return draw.Gauge{
		Scale: draw.NewScale(0, whole.at(span), gaugeTicks, whole.number), Minor: gaugeMinor,
		Set:    v.marked("judged-yours", m, pressure.at(m.Guessed), m.Guessed),
		Ghost:  v.marked("judged-answer", m, pressure.at(m.Advised), m.Advised),
		Likely: draw.Span{Low: pressure.at(m.Low), High: pressure.at(m.High), Text: s.text("number-likely", calc.TextFigure("low", unit.Pressure.Number(s.sys, m.Low, unit.Usual)), calc.TextFigure("high", unit.Pressure.Number(s.sys, m.High, unit.Usual)))},
		Name:   v.label(m.Of),
	}
}

// knob is that of the inlet valve.
func (v *judgedView) knob(m *practice.Mark) draw.Knob {
	of := v.j.Setup.Valve.TurnsOf
	return draw.Knob{
		Shut: of, Open: v.s.say("bore-open"), Closed: v.s.say("bore-closed"),
		Set:   v.marked("judged-yours", m, (1-m.Guessed)*of, m.Guessed),
		Ghost: v.marked("judged-answer", m, (1-m.Advised)*of, m.Advised),
	}
}

// reach is the hand before the panel.
func (v *judgedView) reach(m *practice.Mark) draw.Reach {
	s, distance := v.s, v.s.axis(unit.Distance)
	whole := distance
	whole.decimals = 0
	low, high := unit.Distance.Number(s.sys, m.Low, unit.Usual), unit.Distance.Text(s.sys, m.High, unit.Usual)
	return draw.Reach{
		Scale: draw.NewScale(0, whole.at(max(float64(bandDistance), m.Guessed, m.Advised)), 13, whole.number), Unit: unit.Distance.Unit(s.sys),
		Set:   v.marked("judged-yours", m, distance.at(m.Guessed), m.Guessed),
		Ghost: v.marked("judged-answer", m, distance.at(m.Advised), m.Advised),
		Keep:  draw.Span{Low: distance.at(m.Low), High: distance.at(m.High), Text: s.text("number-keep", calc.TextFigure("low", low), calc.TextFigure("high", high))},
		Gun:   s.say("ruler-cap"), Panel: s.say("ruler-panel"),
	}
}
