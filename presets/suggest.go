package presets

// Suggestions is what may be picked for a field that is typed, nil where there is
// nothing usual.
func (c *Catalogue) Suggestions(field string) []string { return nil }
