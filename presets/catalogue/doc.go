// Package catalogue holds the coats, guns, couplings, hoses, regulators and filters that
// ship (TOML, embedded, read when it is opened) and what a shop's own file adds to them or
// overrides. An entry gives what it describes as calc's types, with what it rests on.
//
//	c, err := catalogue.Open(os.Getenv, words.English())
//	clear, ok := c.Coats.Get("clear")
package catalogue
