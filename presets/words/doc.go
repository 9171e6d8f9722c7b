// Package words holds what the program says: a file a language, of templates by id with
// placeholders for figures. A language is read when it is first asked for, and a file
// more in this folder is all that one more language takes.
//
//	w := words.English()
//	w.Text(unit.US, "wall-set", figures)
package words
