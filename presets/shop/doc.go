// Package shop keeps a shop's folder of plain files: its booths and guns, the settings that
// were agreed on, and the log of what was really used and read.
//
//	f := shop.At(shop.Where(os.Getenv, ""))
//	booth, faults := f.Booth(reader, "two")
//	reader = reader.Over(booth.Answers)
//
// The folder may lie on a share, in a synchronised folder or in a git repository. A file that
// will not do costs itself and never the rest: it comes as a Fault, with its line and what
// would do. No path leaves the folder, and nothing in it decides by a clock.
package shop
