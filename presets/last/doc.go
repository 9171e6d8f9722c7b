// Package last keeps what was answered last, so that the next start can offer it and a
// run that was broken off comes back where it was.
//
//	file := last.File(os.Getenv)
//	draft, found, err := last.Load(file) // go on without where err is not nil
//	err = last.Save(file, draft)
package last
