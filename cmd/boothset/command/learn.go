package command

import (
	"slices"
	"sync"

	"boothset/calc"
	"boothset/calc/learn"
	"boothset/calc/prove"
	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/shop"

	"github.com/spf13/cobra"
)

// learning is the flags of what is kept of a booth's readings.
type learning struct {
	keep     bool
	replaced []string
}

// The names of these flags.
const (
	flagKeep     = "keep"
	flagReplaced = "replaced"
)

func (l *learning) flags(c *cobra.Command) {
	c.Flags().BoolVar(&l.keep, flagKeep, false, "usage-keep")
	c.Flags().StringArrayVar(&l.replaced, flagReplaced, nil, "usage-replaced")
}

// learnIn answers what readings say of a booth's line, those that were typed after those that are
// kept of it, and where it proves a plan what was seen at the gun. What is to be kept is kept once
// it was answered.
func (a *asked) learnIn(o *opened, shops *booths, typed question.Answers) (answer.Answer, error) {
	q, faults := o.reader.Learn(typed, o.sys)
	taken := q.Readings
	var seen prove.Seen
	if a.q == question.Prove {
		of, more := o.reader.Seen(typed, taken, o.sys)
		seen, faults = of, append(faults, more...)
	}
	if len(faults) > 0 {
		return nil, faults[0]
	}
	if f := o.reader.Unused(a.q, typed, typed, o.sys); f != nil {
		return nil, f
	}
	now := a.p.now()
	ids := append(learn.PieceIDs(q.Plan), shop.ReplacedGun)
	var fresh []shop.GaugeReading
	for _, id := range a.replaced {
		if !slices.Contains(ids, id) {
			return nil, &fieldError{flagReplaced, id, o.words.Choose(ids)}
		}
		fresh = append(fresh, shop.GaugeReading{At: now, Booth: a.booth, Gun: q.Plan.Gun.ID, Replaced: id})
	}
	kept, wrong := shops.folder.Readings(a.booth)
	shops.tell(wrong...)
	for i := range fresh {
		kept = append(kept, &fresh[i])
	}
	before, others := shop.History(o.reader, q.Plan, q.Plan.Gun.ID, kept, shops.otherGun(*o, a.booth))
	q.Readings, q.Others = append(before, q.Readings...), others
	found, err := learn.Solve(&q)
	if err != nil {
		return nil, o.reader.Refused(err, typed, o.sys)
	}
	fresh = append(fresh, shop.ReadingsOf(q.Plan, a.booth, q.Plan.Gun.ID, typed.Get(question.GaugeReading), now, o.sys)...)
	if fresh = append(fresh, shop.SeenOf(o.reader, q.Plan, a.booth, typed, now, o.sys)...); a.keep && len(fresh) > 0 {
		m, err := shop.MachineOf(a.p.Getenv)
		if err != nil {
			return nil, unkept(o.words, err)
		}
		if err := shops.folder.KeepReadings(m, a.booth, fresh); err != nil {
			return nil, unkept(o.words, err)
		}
	}
	of := answer.Learn{Request: &q, Found: found}
	if a.q == question.Learn {
		return &of, nil
	}
	p := &answer.Prove{Learn: of, Before: shop.LastSeen(o.reader, q.Plan, kept, o.sys)}
	p.See(seen, taken)
	return p, nil
}

// learntOf is what the kept readings of a booth left of its lines.
func (b *booths) learntOf(o opened, booth string, r *question.Reader) func(*calc.Request) *calc.Learnt {
	kept := sync.OnceValue(func() []*shop.GaugeReading {
		all, wrong := b.folder.Readings(booth)
		b.tell(wrong...)
		return all
	})
	lines := new(shop.Lines)
	return func(described *calc.Request) *calc.Learnt {
		return lines.Of(r, described, kept(), b.otherGun(o, booth))
	}
}

// otherGun finds a gun that a booth's line was read with.
func (b *booths) otherGun(o opened, booth string) func(id string) *learn.OtherGun {
	return func(id string) *learn.OtherGun {
		plain, err := b.p.open() // o reads with the plan's own gun
		if err != nil {
			return nil
		}
		r, err := b.reader(plain, booth, id)
		if err != nil {
			return nil
		}
		gun := r.Read(question.Gun, id, unit.Named)
		q, _ := r.Described(r.AnyJob().With(question.Gun, gun), o.sys)
		if gun.Fault != nil || q.Gun.ID != id {
			return nil
		}
		return &learn.OtherGun{Gun: q.Gun, Gauge: q.Gauge}
	}
}
