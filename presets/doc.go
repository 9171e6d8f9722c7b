// Package presets holds the catalogue: the coats, guns, couplings, hoses, regulators
// and filters that ship (TOML, embedded), what a shop adds to them or overrides, and
// the turning of what people typed (Answers) into a complete calc.Request.
//
//	catalogue, err := presets.Load(nil, "")
//	request, err := catalogue.Request(presets.Answers{Coat: "clear", ...}, unit.US)
package presets
