package main

import "slices"

// The kinds of a fault. One request has one, so that the order in which a program looks at
// its fields makes no difference.
const (
	outOfBounds = "out-of-bounds"
	unreadable  = "unreadable"
	unknownName = "unknown-name"
	missing     = "missing"
	unknownKey  = "unknown-key"
	wrongKind   = "wrong-kind"
	notJSON     = "not-json"
)

// spoil plants one fault, of a kind that the request has a place for.
func (m *maker) spoil() {
	kinds := []struct {
		kind  string
		share float64
		plant func(m *maker) bool
	}{
		{outOfBounds, 0.33, (*maker).putOutOfBounds},
		{unreadable, 0.2, (*maker).garble},
		{unknownName, 0.15, (*maker).misname},
		{missing, 0.15, (*maker).omit},
		{unknownKey, 0.05, (*maker).addKey},
		{wrongKind, 0.08, (*maker).changeKind},
		{notJSON, 0.04, (*maker).breakJSON},
	}
	for {
		at := m.Float64()
		for _, k := range kinds {
			if at -= k.share; at < 0 {
				if k.plant(m) {
					m.fault = k.kind
					return
				}
				break
			}
		}
	}
}

// replace puts text into a field of the request, in place of one of its values.
func (m *maker) replace(i int, text string) {
	f := &m.fields[i]
	f.values = slices.Clone(f.values)
	f.values[m.IntN(len(f.values))] = text
	f.json = m.asJSON(f.name, f.values)
}

// where is one of the fields of the request that are so, -1 where none is.
func (m *maker) where(is func(f *field) bool) int {
	var all []int
	for i := range m.fields {
		if f := &m.fields[i]; len(f.values) > 0 && is(f) {
			all = append(all, i)
		}
	}
	if len(all) == 0 {
		return -1
	}
	return pick(m, all...)
}

// putOutOfBounds puts a value beyond the bounds of its field.
func (m *maker) putOutOfBounds() bool {
	i := m.where(func(f *field) bool {
		a, ok := amountOf(m.command, f.name)
		return ok && len(a.beyond) > 0
	})
	if i < 0 {
		return false
	}
	f := &m.fields[i]
	if lists[f.name] && m.chance(0.2) {
		m.repeat(f)
		return true
	}
	a, _ := amountOf(m.command, f.name)
	m.replace(i, pick(m, a.beyond...))
	return true
}

// tooMany is more values than any field takes, the readings of a comb as the longest list.
const tooMany = 21

// repeat gives a list more values than it takes.
func (m *maker) repeat(f *field) {
	f.values = slices.Repeat(f.values[:1], tooMany)
	f.json = m.asJSON(f.name, f.values)
}

// garble puts what is no quantity into a field that holds one.
func (m *maker) garble() bool {
	i := m.where(func(f *field) bool {
		a, ok := amountOf(m.command, f.name)
		return ok && len(a.units) > 0
	})
	if i < 0 {
		return false
	}
	a, _ := amountOf(m.command, m.fields[i].name)
	text := pick(m, "abc", "75 furlongs", "7..5", "1e3", "--5", "NaN", "0x10", "99999999999", "1/0",
		"\u0663\u0664", "75 80", "a quantity that is longer than 32 characters", " ", "?", `"`, "12 µ", "-")
	if !a.parted && m.chance(0.1) {
		text = pick(m, "1,500", "1.500,5")
	}
	m.replace(i, text)
	return true
}

// chosen is the fields whose answer is one of a list.
var chosen = []string{"coat", "gun", "coupling", "filter", "regulator", "regulator-at", "gauge", "cup", "sheet-cup", "units"}

// misname gives a name that is not in the list.
func (m *maker) misname() bool {
	i := m.where(func(f *field) bool { return slices.Contains(chosen, f.name) })
	if i < 0 {
		return false
	}
	if name := m.fields[i].name; (name == "cup" || name == "sheet-cup") && m.chance(0.3) {
		m.replace(i, pick(m, "4 mm", "ford", "ISO", "DIN 4 or ISO 4")) // which of several
		return true
	}
	m.replace(i, pick(m, "zinc-rich", "claer", "reducd-pressure", "5/8in", "left", "not one", "??", "\u00e9poxi", "din9"))
	return true
}

// omit leaves out a field that is needed, by itself or beside another.
func (m *maker) omit() bool {
	var needed []string
	switch m.command {
	case "plan":
		needed = []string{"coat", "gun", "temp", "humidity", "supply"}
		if m.has("compressor") {
			needed = append(needed, "receiver")
		}
	case "day":
		needed = []string{"coat", "temp", "humidity"}
		if m.has("started") {
			needed = append(needed, "pot-life", "pot-life")
		}
	case "thin":
		needed = []string{"coat", "cup", "seconds"}
		if !m.has("paint") || !m.has("temp") {
			needed = append(needed, "paint", "temp")
		}
		if m.has("second-temp") {
			needed = append(needed, "second-temp", "second-seconds")
		}
		if m.has("sheet-cup") || m.has("sheet-temp") {
			needed = append(needed, "sheet-seconds")
		}
	case "film":
		needed = []string{"coat", "cup-time", "cup-volume", "viscosity", "cup", "seconds"}
		if m.has("fluid-rate") || m.has("tip") || m.has("cup-time") {
			needed = append(needed, "gun")
		}
		if m.has("gun-speed") || m.has("height") || m.has("fan") || m.has("overlap") {
			needed = append(needed, "fluid-rate")
		}
	case "mix":
		needed = []string{"coat", "gun", "area"}
	}
	if m.has("thinner") {
		needed = append(needed, "solids")
	}
	needed = slices.DeleteFunc(needed, func(name string) bool { return !m.has(name) })
	m.drop(pick(m, needed...))
	return true
}

// addKey adds a field that the command does not have.
func (m *maker) addKey() bool {
	name := pick(m, "colour", "hoses", "temperature", "sheet", "wall-pressure")
	if m.command == "plan" {
		name = pick(m, "tip", "colour", "coats", "hoses")
	}
	m.give(name, pick(m, "1", "red", "75F"))
	return true
}

// changeKind gives a field another kind of JSON than it takes.
func (m *maker) changeKind() bool {
	if m.command == "plan" && m.chance(0.1) {
		m.drop("spread")
		m.fields = append(m.fields, field{name: "spread", json: pick(m, `"yes"`, "1", `[true]`)})
		return true
	}
	f := &m.fields[m.where(func(*field) bool { return true })]
	kinds := []string{"true", "false", `{"value":5}`, `[["5"]]`, `[true]`, `[{}]`}
	if m.command == "plan" {
		if lists[f.name] {
			kinds = append(kinds, `"25ft,3/8in"`, "5")
		} else {
			kinds = append(kinds, `["75F"]`, "[5]", "[]")
		}
	}
	f.json = pick(m, kinds...)
	return true
}

// breakJSON makes the line something else than one object.
func (m *maker) breakJSON() bool {
	whole := m.line()
	m.junk = pick(m, whole[:len(whole)-1], whole+"}", whole+" "+whole, "["+whole+"]", "coat=clear", "[]", `"clear"`, "42", "true", "null",
		`{'coat':'clear'}`, `{"coat":}`, "{\"coat\":\"cl\tear\"}", `{"coat" "clear"}`, "{,}")
	return true
}
