// Package drift tells from readings over time whether a line loses more, or less, than it did:
// an individuals chart with its limits (after ISO 7870-2) and a tabular CUSUM (after ISO
// 7870-4), the reading since when, and by how much.
//
//	w := drift.Watch(readings)
//	if w.Alarm >= 0 {
//		fmt.Println(readings[w.Since], w.Shift)
//	}
//
// It knows no file and no clock: readings come in the order they were taken.
package drift
