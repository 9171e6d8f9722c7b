// Package words holds the sentences: a template for each reason, caution and piece
// of help, one file a language, with places that a figure's value is printed into. The
// program holds tables made of the files by "make generated".
//
//	w := words.English()
//	w.Text(unit.US, "wall-set", figures)
package words
