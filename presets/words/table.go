package words

// table is the sentences of a language as they stand in the program: nothing is made of
// them at a start, and no memory is touched but that of the sentences asked for.
type table struct {
	ids       string // every id, sorted, one behind the other
	sentences string // of the ids, in their order
	ends      []end  // where each one before ends: as many as there are ids, and one
	// slots are as many as a power of two and half empty at the least: an id's number from 1
	// stands at its hash or in the next free place behind; 0 is a free one.
	slots []uint16
}

// end is where an id and its sentence end, bytes.
type end struct{ id, sentence uint32 }

// hash is 32-bit FNV-1a.
func hash(id string) uint32 {
	h := uint32(2166136261)
	for i := range len(id) {
		h = (h ^ uint32(id[i])) * 16777619
	}
	return h
}

func (t *table) slot(h uint32) uint32 { return h & uint32(len(t.slots)-1) }

// id is an id by its number, from 1 to below the count of ends.
func (t *table) id(n int) string { return t.ids[t.ends[n-1].id:t.ends[n].id] }

// get is the sentence of an id; false where there is none.
func (t *table) get(id string) (sentence string, ok bool) {
	for slot := t.slot(hash(id)); t.slots[slot] != 0; slot = t.slot(slot + 1) {
		if n := int(t.slots[slot]); t.id(n) == id {
			return t.sentences[t.ends[n-1].sentence:t.ends[n].sentence], true
		}
	}
	return "", false
}
