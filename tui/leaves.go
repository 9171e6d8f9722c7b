package tui

// leaves shares blocks of rows out over pages: a block that does not fit what is left of
// a page begins the next, and one higher than a page is split. Where there is more than
// one page the last row of each is left to say so.
func leaves(blocks [][]string, room size) [][]string {
	if all := paged(spaced(blocks), room.h); len(all) <= 1 {
		return all
	}
	if all := paged(blocks, room.h); len(all) <= 1 {
		return all
	}
	return paged(blocks, max(room.h-1, 1))
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

func paged(blocks [][]string, high int) (all [][]string) {
	var page []string
	for _, block := range blocks {
		switch {
		case len(block) == 0:
			continue
		case len(page)+len(block) <= high:
		case len(block) <= high && len(page) > 0:
			all, page = append(all, page), nil
		}
		for _, row := range block {
			if len(page) == high {
				all, page = append(all, page), nil
			}
			page = append(page, row)
		}
	}
	if len(page) > 0 {
		all = append(all, page)
	}
	return all
}
