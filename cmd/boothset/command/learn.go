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
	before := shops.readingsOf(*o, a.booth, kept).Request(o.reader, q.Plan)
	q.Readings, q.Others, q.Elsewhere = append(before.Readings, q.Readings...), before.Others, before.Elsewhere
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
	kept := sync.OnceValue(func() *shop.Kept {
		own, wrong := b.folder.Readings(booth)
		b.tell(wrong...)
		return b.readingsOf(o, booth, own)
	})
	lines := new(shop.Lines)
	return func(described *calc.Request) *calc.Learnt { return lines.Of(r, described, kept()) }
}

// readingsOf is a booth's own readings and those of other booths.
func (b *booths) readingsOf(o opened, booth string, own []*shop.GaugeReading) *shop.Kept {
	return &shop.Kept{
		Own: own, Away: b.folder.AwayReadings(booth),
		Gun: func(id string) *learn.OtherGun {
			if q := b.described(o, booth, id); q != nil {
				return &learn.OtherGun{Gun: q.Gun, Gauge: q.Gauge}
			}
			return nil
		},
		Plan: func(booth, gun string) *calc.Request { return b.described(o, booth, gun) },
	}
}

// described is any job in a booth with a gun, its line as it is described; nil where either is not
// there.
func (b *booths) described(o opened, booth, gun string) *calc.Request {
	plain, err := b.p.open() // o reads with the plan's own gun
	if err != nil {
		return nil
	}
	r, err := b.reader(plain, booth, gun)
	if err != nil {
		return nil
	}
	v := r.Read(question.Gun, gun, unit.Named)
	q, _ := r.Described(r.AnyJob().With(question.Gun, v), o.sys)
	if v.Fault != nil || q.Gun.ID != gun {
		return nil
	}
	return q
}
