package tui

import (
	"slices"

	"boothset/calc/unit"
	"boothset/presets/edit"
	"boothset/presets/question"
)

// changed reports whether something was moved and not kept.
func (b *bench) changed() bool { return !sameAnswers(b.kept.answers, b.tried.answers) }

// sameAnswers reports whether two jobs were answered alike.
func sameAnswers(a, b question.Answers) bool {
	return !slices.ContainsFunc(question.Plan.Fields, func(row question.Row) bool { return a.Text(row.Field) != b.Text(row.Field) })
}

// inputs is what can be moved now.
func (b *bench) inputs() []edit.Input {
	return edit.Inputs(b.s.reader, b.s.counting(b.tried.answers))
}

// walk goes to the next input or the one before.
func (b *bench) walk(pressed string) move {
	n := len(b.inputs())
	if pressed == "up" || pressed == "k" {
		b.input = (b.input + n - 1) % n
	} else {
		b.input = (b.input + 1) % n
	}
	return nil
}

// nudge moves the input by steps and works everything out again.
func (b *bench) nudge(steps int) func(string) move {
	return func(pressed string) move {
		by := steps
		if pressed == "left" || pressed == "shift+left" {
			by = -steps
		}
		b.move(b.inputs()[b.input], by)
		return nil
	}
}

// move moves an input by steps and works out once what comes of it. Where it goes no
// farther, or no line can be made of what it comes to, all stays.
func (b *bench) move(in edit.Input, by int) {
	answers, moves, ok := b.stepped(in, by)
	if !ok {
		return
	}
	j, err := b.s.work(answers)
	if err != nil {
		return
	}
	b.tried, b.moves = j, moves
	inputs := b.inputs()
	if at := slices.Index(inputs, in); at >= 0 {
		b.input = at
	}
	b.input = min(b.input, len(inputs)-1)
}

// stepped is the answers with an input moved by steps, and the steps that lead there; false
// where it goes no farther. A step back of the last one is just that: an answer that was
// rounded to a whole step is what it was again, and a usual one is usual again.
func (b *bench) stepped(in edit.Input, by int) (a question.Answers, moves []inputStep, ok bool) {
	if last := len(b.moves) - 1; last >= 0 && b.moves[last].in == in && b.moves[last].by == -by {
		return b.moves[last].before, b.moves[:last], true
	}
	s, before := b.s, b.tried.answers
	all := s.counting(before)
	if in.Field == question.Wall && !all.Has(in.Field) { // it starts from what is to be set
		all = all.With(in.Field, s.value(unit.Pressure, float64(b.tried.Setup.Wall.Flowing), unit.Pressure.Fine(s.sys))...)
	}
	all, ok = edit.Step(s.reader, all, b.tried.Request, in, by, s.sys)
	return before.Changed(in.Field, all.Get(in.Field)...), append(b.moves, inputStep{in, by, before}), ok
}

// keep takes what was moved as the answers, in the questions too.
func (b *bench) keep(string) move {
	was := b.kept.answers
	b.kept, b.moves = b.tried, nil
	b.s.answers = b.kept.answers
	return func(r *root) { r.follow(was) }
}

// putBack forgets what was moved.
func (b *bench) putBack(string) move {
	b.tried, b.moves = b.kept, nil
	b.input = min(b.input, len(b.inputs())-1)
	return nil
}
