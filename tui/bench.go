package tui

import (
	"math"
	"slices"

	"boothset/calc"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/edit"
	"boothset/presets/question"

	tea "github.com/charmbracelet/bubbletea"
)

// bench is where the answer stands: what to set, seen in one of several views, and every
// input of it to be moved. What is moved shows at once and is kept only when the painter
// says so.
type bench struct {
	s         *session
	kept      job // as set
	tried     job // as it shows
	err       error
	views     []view
	view      int // of views, that shows
	screenful int // of the view
	input     int // that is moved
	moves     []inputStep
	marked    note   // what another mark of the wall's gauge did
	notice    string // what was last told of the card
	forms     []*form
	deskPages []destination // the pages of the booth's own
	manage    destination   // the page that changes booths and guns
	prove     *provePage
	trouble   *troublePage
	agreed    agreedToday
	cache     []viewCache // of each view
	response  response
	// headlineCut: the verdict over the views is cut off.
	headlineCut bool
	// gaugePinned: what the gun's gauge shows stands under the verdict.
	gaugePinned bool
	// notesPinned is how many notes stand under the digits.
	notesPinned int
}

// note says what another mark did to answers: it shows while these are what is tried, until
// the mark is again what it was.
type note struct {
	text string
	of   question.Answers
	was  unit.Drop // the mark
}

// inputStep is a step that an input was moved by, and the answers before it.
type inputStep struct {
	in     edit.Input
	by     int
	before question.Answers
}

func newBench(s *session) *bench {
	b := &bench{s: s, views: views}
	b.forms = forms(s, b)
	b.prove = newProvePage(s, b)
	b.trouble = newTroublePage(s, b)
	b.deskPages = []destination{
		{key: agreedKey, name: s.say("page-agreed"), does: "agreed", page: newAgreePage(s, b)},
		{key: boothKey, name: s.say("page-booth"), does: "booth", page: newSavePage(s, b)},
		{key: outcomeKey, name: s.say("page-outcome"), does: outcomeID, page: outcomePage(s, b)},
	}
	b.manage = destination{key: manageKey, does: "manage", page: managePage(s, b)}
	return b
}

func (b *bench) skip() bool { return false }

func (b *bench) terms() (view string, of *answer.Plan) { return b.views[b.view].id, &b.tried.Plan }

func (b *bench) press(tea.KeyMsg) move { return nil }

// conditions is the day and the supply that the answer is for.
func (b *bench) conditions() string {
	if b.err != nil {
		return ""
	}
	s, r := b.s, b.tried.Request
	between := " " + string(s.glyphs.Between) + " "
	return between + unit.Temperature.Text(s.sys, float64(r.Day.Air), unit.Usual) + ", " + unit.Share.Text(s.sys, r.Day.Humidity, unit.Usual) + between + unit.Pressure.Text(s.sys, float64(r.Supply), unit.Usual)
}

func (b *bench) heading() (left, right string) {
	s, all := b.s, b.s.counting(b.tried.answers)
	coat := s.called(question.Coat, all)
	if len(b.tried.Stages) > 1 {
		coat += " (" + plain(b.tried.StageName(s.words)) + ")"
	}
	job := coat + ", " + s.called(question.Gun, all)
	if booth := s.desk.boothName(); booth != "" {
		job += " " + string(s.glyphs.Between) + " " + plain(booth)
	}
	return job + b.conditions(), s.unitsName()
}

// enter works the answers out anew. What is moved first is the wall as it stands, which
// is mostly what is wrong.
func (b *bench) enter() *question.Fault {
	b.view, b.screenful, b.marked = 0, 0, note{}
	b.s.asBefore = false
	b.arrive()
	f := b.work()
	b.s.finished = b.s.finished || b.err == nil
	wall := slices.IndexFunc(b.inputs(), func(in edit.Input) bool { return in.Field == question.Wall })
	b.input = max(wall, 0)
	return f
}

// work works out the answers as they were taken.
func (b *bench) work() *question.Fault {
	b.kept, b.err = b.s.work(b.s.answers)
	b.tried, b.moves = b.kept, nil
	b.input = min(b.input, max(len(b.inputs())-1, 0))
	return faultOf(b.err)
}

// fail shows what is wrong where no question is to blame.
func (b *bench) fail(err error) { b.err = err }

// rework works out anew what is kept, and what is tried where something was moved; false where
// what is kept will not do.
func (b *bench) rework(tried question.Answers, changed bool) bool {
	if b.work() != nil || b.err != nil {
		return false
	}
	if changed {
		if j, err := b.s.work(tried); err == nil {
			b.tried = j
		}
	}
	return true
}

// changeUnits works out anew what is kept, and what is tried where that is another job: the
// mark of the wall's gauge is the system's where it was not answered, and what that moves is
// said. What was moved stays moved.
func (b *bench) changeUnits(string) move {
	before, sys := b.tried, b.s.sys
	b.s.changeUnits()
	tried, changed := b.tried.answers, b.changed()
	if !b.rework(tried, changed) {
		return nil
	}
	if sameAnswers(b.marked.of, b.tried.answers) && b.tried.Request.Mark == b.marked.was {
		b.marked = note{}
		return nil
	}
	b.marked = note{b.markChange(&before, sys), b.tried.answers, before.Request.Mark}
	return nil
}

// nextStage goes to the coat's next stage, and from the last to the first: with what is tried
// still tried.
func (b *bench) nextStage(string) move {
	stages := b.kept.Request.Stages
	at := slices.IndexFunc(stages, func(c calc.Coat) bool { return c.Stage.ID == b.kept.Request.Coat.Stage.ID })
	id := stages[(at+1)%len(stages)].Stage.ID
	in := func(a question.Answers) question.Answers {
		return a.With(question.Stage, question.Value{Text: id, ID: id})
	}
	tried, changed, was := b.tried.answers, b.changed(), b.kept.answers
	b.s.answers = in(was)
	if !b.rework(in(tried), changed) {
		return nil
	}
	return func(r *root) { r.follow(was) }
}

// markChange says which mark counts, and what it made of the settings before it, as they
// read in the system they were in; empty where the mark is as it was.
func (b *bench) markChange(before *job, sys unit.System) string {
	now := b.tried
	if before.Setup == nil || now.Request.Mark == before.Request.Mark {
		return ""
	}
	id := "mark-changed"
	was, is := before.Setup, now.Setup
	if math.Abs(float64(was.Wall.Flowing-is.Wall.Flowing)) < 1 { // Pa: the wall is set as it was
		id = "mark-changed-alone"
	}
	return b.s.text(id, calc.FigureOf("mark", calc.FigureDrop, now.Request.Mark),
		calc.TextFigure("wasWall", unit.Pressure.Text(sys, float64(was.Wall.Flowing), unit.Usual)), calc.TextFigure("wall", unit.Pressure.Text(b.s.sys, float64(is.Wall.Flowing), unit.Usual)),
		calc.FigureOf("wasOpening", calc.FigureShare, was.Valve.Opening), calc.FigureOf("opening", calc.FigureShare, is.Valve.Opening))
}

func (b *bench) keys(room size) []binding {
	if b.err != nil {
		return []binding{bindKey(backKeys, "do-back", always(back)), bindExplained(againKeys, "do-again", always(restart)), quitKey()}
	}
	onward := bindKey(onKeys, "do-next-view", func(string) move { return b.next(room) })
	goBack := bindKey(backKeys, "do-back", always(back))
	moves := []binding{bindExplained(walkKeys, "do-walk", b.walk), bindExplained(nudgeKeys, "do-nudge", b.nudge(1))}
	var all []binding
	if b.changed() {
		onward = bindExplained(takeKeys, "do-keep", b.keep)
		goBack = bindExplained(backKeys, "do-put-back", b.putBack)
		all = append([]binding{onward, goBack}, moves...)
	} else {
		all = append(moves, onward, goBack)
	}
	all = append(all, b.destinationBindings(room)...)
	if len(b.kept.Stages) > 1 {
		all = append(all, bindExplained(stageKeys, "do-stage", b.nextStage))
	}
	all = append(all, b.readBindings()...)
	all = append(all, bindExplained(unitsKeys, "do-units", b.changeUnits), bindExplained(againKeys, "do-again", always(restart)), quitKey())
	all = append(append(all, b.takeBindings()...), bindKey(farKeys, "do-nudge-far", b.nudge(10)))
	if b.count(room) > 1 {
		all = append(all, bindKey(screenfulKeys, "do-screenful", func(pressed string) move {
			by := 1
			if pressed == "pgup" {
				by = -1
			}
			b.screenful = min(max(b.screenfulIn(room)+by, 0), b.count(room)-1)
			return nil
		}))
	}
	return append(all, deskBindings(b.besideTabs(), func(pressed string) move {
		d, _ := b.destination(pressed)
		return b.lead(d, room)
	})...)
}

// offer is what the answer has for a field of the coat's own questions, nothing where it
// has none.
func (b *bench) offer(f *question.Field) []question.Value {
	setup := b.kept.Setup
	switch {
	case f == question.Pressure && setup.Short.Is:
		return b.s.value(unit.Pressure, float64(setup.Short.Best), unit.Pressure.Fine(b.s.sys))
	case f == question.Pressure:
		return b.s.value(unit.Pressure, float64(setup.Working.Pressure), unit.Pressure.Fine(b.s.sys))
	case f == question.Distance:
		return b.s.value(unit.Distance, float64(setup.Distance.Target), unit.Usual)
	}
	return b.s.counting(b.s.answers).Get(f)
}

// value is a quantity as an answer: it counts as it is read on the screen.
func (s *session) value(of *unit.Quantity, si float64, decimals int) []question.Value {
	return []question.Value{{Text: of.Text(s.sys, si, decimals), SI: [2]float64{of.Rounded(s.sys, si, decimals)}}}
}
