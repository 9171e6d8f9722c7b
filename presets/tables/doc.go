// Package tables reads TOML as tables whose keys and values know where they stand, so that
// whatever is wrong with one can be told at its own line. It takes time in proportion to the
// text. What is wrong with the text itself is a Fault, a sentence's id with its figures.
//
//	root, fault := tables.Read([]byte("[coat.clear]\nrank = 1\n"))
package tables
