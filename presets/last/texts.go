package last

import (
	"encoding/json"
	"strings"
)

// Texts is what was typed, by field: one text a value, or one for all of them.
type Texts map[string][]string

// MarshalJSON writes a field of one text as that text, one of several as a list.
func (t Texts) MarshalJSON() ([]byte, error) {
	plain := make(map[string]any, len(t))
	for field, texts := range t {
		if len(texts) == 1 {
			plain[field] = texts[0]
		} else {
			plain[field] = texts
		}
	}
	return json.Marshal(plain)
}

// UnmarshalJSON reads a text or a list of texts for each field; a number is its text, a text
// in which nothing can be printed is none. Fields are called by their names: an underscore, as files of older runs
// had it, is a hyphen.
func (t *Texts) UnmarshalJSON(b []byte) error {
	var raw map[string]json.RawMessage
	if err := json.Unmarshal(b, &raw); err != nil {
		return err
	}
	*t = Texts{}
	for field, v := range raw {
		var values []json.RawMessage
		if json.Unmarshal(v, &values) != nil {
			values = []json.RawMessage{v}
		}
		field = strings.ReplaceAll(field, "_", "-")
		for _, one := range values {
			text, err := textOf(one)
			if err != nil {
				return err
			}
			if text = clean(text); text != "" {
				(*t)[field] = append((*t)[field], text)
			}
		}
	}
	return nil
}

// textOf is a text or a number as text, empty for null.
func textOf(v json.RawMessage) (text string, err error) {
	if json.Unmarshal(v, &text) == nil {
		return text, nil
	}
	var number json.Number
	err = json.Unmarshal(v, &number)
	return number.String(), err
}
