package answer

import (
	"boothset/calc/learn"
	"boothset/presets/words"
)

// MoveRows is what to do about each piece that was found odd, none where nothing was.
func (l *Learn) MoveRows(w *words.Words) (rows []Row) {
	if l.Stopped() {
		return nil
	}
	seen := map[string]bool{}
	for _, k := range l.Found.Found {
		id := "learn-move-gun"
		switch p := &l.Found.Pieces[k]; p.Role {
		case learn.InLine:
			id = "learn-move-" + p.Part.Kind.String()
		case learn.InletValve:
			id = "learn-move-inlet"
		}
		if !seen[id] {
			rows = append(rows, Row{Role: Remark, About: "move", ID: id, Text: w.Say(id)})
		}
		seen[id] = true
	}
	return rows
}
