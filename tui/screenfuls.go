package tui

// shareOut shares blocks of rows out over screenfuls: a block that does not fit what is left
// of one begins the next, and one higher than a screenful is split. Where there is more than
// one the last row of each is left to say so.
func shareOut(blocks [][]string, room size) [][]string {
	if all := filledUp(spaced(blocks), room.h); len(all) <= 1 {
		return all
	}
	if all := filledUp(blocks, room.h); len(all) <= 1 {
		return all
	}
	return filledUp(blocks, max(room.h-1, 1))
}

// spaced is blocks with an empty row before each but the first.
func spaced(blocks [][]string) (all [][]string) {
	for _, block := range blocks {
		if len(block) > 0 && len(all) > 0 {
			block = append([]string{""}, block...)
		}
		all = append(all, block)
	}
	return all
}

// filledUp is blocks as screenfuls of so many rows.
func filledUp(blocks [][]string, high int) (all [][]string) {
	var one []string
	for _, block := range blocks {
		switch {
		case len(block) == 0:
			continue
		case len(one)+len(block) <= high:
		case len(block) <= high && len(one) > 0:
			all, one = append(all, one), nil
		}
		for _, row := range block {
			if len(one) == high {
				all, one = append(all, one), nil
			}
			one = append(one, row)
		}
	}
	if len(one) > 0 {
		all = append(all, one)
	}
	return all
}
