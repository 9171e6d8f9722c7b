// Package textfile reads the files that people keep: a shop's file, the last answers. It
// takes plain files up to a size, and refuses at once what would be waited for or has no end.
//
//	data, err := textfile.Read(file, textfile.Most)
//	if textfile.Absent(err) { ... } // there is none
//	var unfit *textfile.Error // says why, as a sentence with its figures
package textfile
