// Package trouble goes from what is seen on paper or on the panel to its cause and the move
// that mends it. One cause is looked for at a time. What each sign is due to, what each check
// finds and what each move does come as data, a Book; what a job's own figures say of a cause
// comes from its solved setup.
//
//	r := book.Rank(&trouble.Known{Signs: []string{"orange-peel"}, Facts: job.Facts()})
//	r.Causes[0]    // the likeliest
//	r.Next.Check   // what to look at next
package trouble
