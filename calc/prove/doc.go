// Package prove judges what is seen at the gun, besides the readings of gauges that package learn
// takes: each beside what the plan's models expect of it, and what to do where it is otherwise.
//
//	found, _ := learn.Solve(&q)
//	j := prove.Judge(q.Plan, found, q.Readings, &prove.Seen{Felt: unit.Inches(7)})
//	j.Push.Hold.Target // how far to hold the gun
package prove
