package last

import (
	"encoding/json"
	"strings"
)

// between parts the texts of a field that was kept as one.
const between = " + "

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

// UnmarshalJSON reads a text or a list of texts for each field; an empty text is none.
// Fields are called by their names: an underscore, as files of older runs had it, is a
// hyphen.
func (t *Texts) UnmarshalJSON(b []byte) error {
	var raw map[string]json.RawMessage
	if err := json.Unmarshal(b, &raw); err != nil {
		return err
	}
	*t = Texts{}
	for field, v := range raw {
		var texts []string
		if err := json.Unmarshal(v, &texts); err != nil {
			var one string
			if err := json.Unmarshal(v, &one); err != nil {
				return err
			}
			texts = strings.Split(one, between)
		}
		field = strings.ReplaceAll(field, "_", "-")
		for _, s := range texts {
			if s = strings.TrimSpace(s); s != "" {
				(*t)[field] = append((*t)[field], s)
			}
		}
	}
	return nil
}
