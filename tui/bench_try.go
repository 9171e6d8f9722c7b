package tui

import (
	"slices"

	"boothset/presets"
	"boothset/presets/words"
)

// changed reports whether something was moved and not kept.
func (b *bench) changed() bool {
	differs := func(field string) bool { return b.kept.answers.Field(field) != b.tried.answers.Field(field) }
	return differs(presets.FieldMark) || slices.ContainsFunc(steps, func(st step) bool { return differs(st.id) })
}

// inputs is what can be moved now.
func (b *bench) inputs() []presets.Input {
	return b.s.catalogue.Inputs(b.s.complete(b.tried.answers))
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

// move moves an input by steps. A step back of the last one is just that: an answer that
// was rounded to a whole step is what it was again, and a usual one is usual again.
func (b *bench) move(in presets.Input, by int) {
	before := b.tried.answers
	if last := len(b.moves) - 1; last >= 0 && b.moves[last].in == in && b.moves[last].by == -by {
		j, err := b.s.work(b.moves[last].before)
		if err != nil {
			return
		}
		b.tried, b.moves = j, b.moves[:last]
	} else {
		j, ok := b.moved(in, by)
		for most := by; ok && in.Field == presets.FieldWall && most > 0 && j.request.Now > j.request.Supply; most-- {
			j, ok = b.moved(in, most-1) // no wall stands higher than its supply
		}
		if !ok {
			return
		}
		b.tried, b.moves = j, append(b.moves, nudged{in, by, before})
	}
	inputs := b.inputs()
	if at := slices.Index(inputs, in); at >= 0 {
		b.input = at
	}
	b.input = min(b.input, len(inputs)-1)
}

// moved is what comes of an input moved by steps; false where it goes no farther, or
// where the catalogue takes it and no line can be made of it.
func (b *bench) moved(in presets.Input, by int) (job, bool) {
	s := b.s
	all := s.complete(b.tried.answers)
	if in.Field == presets.FieldWall && all.Field(in.Field) == "" {
		all.Set(in.Field, s.sys.Gauge(b.tried.setup.Wall.Flowing, words.PressureDecimals(s.sys)))
	}
	there, ok := s.catalogue.Nudge(all, in, by, s.sys)
	if !ok {
		return job{}, false
	}
	a := b.tried.answers
	a.Set(in.Field, there.Field(in.Field))
	j, err := s.work(a)
	return j, err == nil
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
