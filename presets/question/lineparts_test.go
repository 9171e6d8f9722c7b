package question_test

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc"
	"boothset/calc/line"
	"boothset/calc/unit"
	"boothset/presets/catalogue"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// ofParts is a mild day with a line given part by part.
func ofParts(parts ...string) question.Texts {
	texts := questiontest.MildDay("clear", "reduced-pressure")
	texts["line"] = parts
	return texts
}

func names(parts []line.Part) (all []string) {
	for i := range parts {
		all = append(all, parts[i].Name)
	}
	return all
}

// A list gives every part, in its order, each unlike the others by name.
func TestALineOfParts(t *testing.T) {
	r := questiontest.Open(t)
	q := plan(t, r, ofParts(
		"Dryer=refrigerated", "filter = point-of-use", "regulator=1/2in", "filter=point-of-use", "coupling=slim", "hose=25ft,3/8in",
		"coupling=large-bore", "hose=6,5/16", "coupling=ordinary", "regulator=1/4in", "valve=air-adjusting",
	), unit.US)
	assert.Equal(t, []string{
		"dryer (refrigerated)", "filter (point-of-use)", "wall regulator (1/2in)", "filter (point-of-use) no. 2", "wall coupling (slim)", "main hose",
		"whip coupling (large-bore)", "whip hose", "gun coupling (ordinary)", "regulator at the gun inlet (1/4in)", "valve in the line (air-adjusting)",
	}, names(q.Line))
	assert.InDelta(t, 3, q.Line[0].DewPoint.C(), 1e-9)
	assert.InDelta(t, 6, q.Line[7].Hose.Length.Feet(), 1e-9, "a bare number is in the system's unit")
	assert.Equal(t, calc.Wall, q.RegulatorAt())
	s, err := calc.Solve(q)
	require.NoError(t, err)
	assert.True(t, s.Foot.Is)

	q = plan(t, r, ofParts("regulator=1/2in", "hose=50ft,3/8in", "regulator=3/8in", "hose=6ft,5/16in"), unit.US)
	assert.Equal(t, []string{"wall regulator (1/2in)", "main hose", "second regulator (3/8in)", "whip hose"}, names(q.Line))
}

// The usual line is the list that its answers stand for, to the last name and figure.
func TestTheUsualLineAsAList(t *testing.T) {
	r := questiontest.Open(t)
	rapid.Check(t, func(t *rapid.T) {
		texts := questiontest.MildDay("clear", "reduced-pressure")
		choose := func(f *question.Field) string {
			text := questiontest.Drawer{T: t}.Choice(r, f)
			texts[f.Name] = []string{text}
			return text
		}
		regulator, at, filter, coupling := choose(question.Regulator), choose(question.RegulatorAt), choose(question.Filter), choose(question.Coupling)
		hoses := []string{"25ft,3/8in", "6ft,5/16in", "3ft,1/4in"}[:rapid.IntRange(1, 3).Draw(t, "hoses")]
		texts["hose"] = hoses
		var parts []string
		add := func(kind, entry string) {
			if entry != question.None {
				parts = append(parts, kind+"="+entry)
			}
		}
		if at == question.AtWall {
			add("regulator", regulator)
		}
		add("filter", filter)
		add("coupling", coupling)
		for _, h := range hoses {
			add("hose", h)
			add("coupling", coupling)
		}
		if at == question.AtGun {
			add("regulator", regulator)
		}
		require.Equal(t, plan(t, r, texts, unit.US), plan(t, r, ofParts(parts...), unit.US))
	})
}

// A list and what says the usual line are refused together, naming both; a line cannot be read
// where it names no part.
func TestFaultsOfALine(t *testing.T) {
	r := questiontest.Open(t)
	for field, text := range map[string]string{"hose": "25ft,3/8in", "coupling": "slim", "filter": "none", "regulator": "none", "regulator-at": "gun"} {
		faults := planFaults(r, questiontest.With(ofParts("hose=25ft,3/8in"), field, text), unit.US)
		require.Len(t, faults, 1, field)
		assert.Equal(t, field, faults[0].Field)
		assert.Equal(t, "give "+field+" or line, not both: line gives every part", faults[0].Want())
	}
	for _, c := range []struct{ part, want string }{
		{"slim", "give a part as kind=entry, such as coupling=slim or hose=25ft,3/8in; kinds: regulator, filter, dryer, coupling, hose or valve"},
		{"pipe=3/4in", "kinds: regulator, filter, dryer, coupling, hose or valve"},
		{"coupling=none", "choose large-bore, ordinary or slim"},
		{"coupling=slin", "choose large-bore, ordinary or slim; nearest is slim"},
		{"hose=25ft", "type length and bore, such as 25ft,3/8in or 8m,10mm"},
		{"hose=25ft,3/8in,1", "type length and bore"},
		{"hose=2000ft,3/8in", "2000 ft long is outside 0.5 to 500 ft"},
	} {
		faults := planFaults(r, ofParts("regulator=1/2in", c.part), unit.US)
		require.Len(t, faults, 1, c.part)
		assert.Equal(t, "line", faults[0].Field, c.part)
		assert.Contains(t, faults[0].Want(), c.want, c.part)
	}
	faults := planFaults(r, ofParts("regulator=1/2in", "regulator=1/2in", "hose=25ft,3/8in", "regulator=1/2in"), unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, "3 regulators in one line; at most 2: one at the wall, one nearer the gun", faults[0].Want())
	assert.Equal(t, "line", faults[0].Field)

	faults = planFaults(r, ofParts("none", "hose=25ft,3/8in"), unit.US)
	require.NotEmpty(t, faults)
}

// Without a list, as where it is none, the usual line counts.
func TestNoListIsTheUsualLine(t *testing.T) {
	r := questiontest.Open(t)
	usual := plan(t, r, questiontest.MildDay("clear", "reduced-pressure"), unit.US)
	assert.Equal(t, usual, plan(t, r, ofParts("none"), unit.US))
}

// A shop's file may give its line part by part. What is answered of the usual line is then
// refused, unless the list is answered with none.
func TestAShopsLineOfParts(t *testing.T) {
	r := questiontest.Shop(t, "[line]\nparts = [\"regulator=1/2in\", \"coupling=slim\", \"hose=15m,10mm\", \"coupling=ordinary\"]\n[coupling.odd]\nbore = \"5mm\"\nratio = 0.3\n")
	mild := questiontest.MildDay("clear", "reduced-pressure")
	q := plan(t, r, mild, unit.US)
	assert.Equal(t, []string{"wall regulator (1/2in)", "wall coupling (slim)", "main hose", "gun coupling (ordinary)"}, names(q.Line))
	assert.InDelta(t, 15, float64(q.Line[2].Hose.Length), 1e-9)
	for _, id := range r.Usual().Texts()["line"] {
		assert.Contains(t, id, "=")
	}

	faults := planFaults(r, questiontest.With(mild, "hose", "50ft,3/8in"), unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, "hose", faults[0].Field)
	assert.Equal(t, "this shop's file gives the line part by part: give all of it with line, or line none for the usual line", faults[0].Want())

	none := questiontest.With(questiontest.With(mild, "line", "none"), "hose", "50ft,3/8in")
	q = plan(t, r, none, unit.US)
	assert.Equal(t, []string{"wall regulator (1/2in)", "wall coupling (large-bore)", "main hose", "gun coupling (large-bore)"}, names(q.Line), "the shipped usual line around it")
	q = plan(t, r, ofParts("hose=3ft,3/8in"), unit.US)
	assert.Equal(t, []string{"main hose"}, names(q.Line), "another list in its place")
	q = plan(t, r, ofParts("coupling=odd"), unit.US)
	assert.Equal(t, []string{"wall coupling (odd)"}, names(q.Line))
}

func TestFaultsOfAShopsLineOfParts(t *testing.T) {
	for _, c := range []struct{ toml, want string }{
		{"parts = [\"hose=25ft,3/8in\"]\nhose = [\"25ft,3/8in\"]", "give hose or parts, not both: parts gives every part"},
		{"regulator-at = \"gun\"\nparts = [\"hose=25ft,3/8in\"]", "give regulator-at or parts, not both"},
		{"parts = [\"hose=25,3/8in\"]", "give its unit"},
		{"parts = [\"tap=large\"]", "line: parts \"tap=large\": give a part as kind=entry"},
		{"parts = \"hose=25ft,3/8in\"", "takes a list"},
		{"parts = [\"coupling=huge\"]", "choose large-bore, ordinary or slim"},
	} {
		f := lineRefused(t, "[line]\n"+c.toml+"\n")
		assert.Contains(t, f.Why, c.want)
		assert.NotZero(t, f.Line, c.toml)
	}
}

// What is typed comes back as it was, with its units named, and means the same.
func TestALineOfPartsRoundTrips(t *testing.T) {
	r := questiontest.Open(t)
	a := r.ReadAll(question.Plan, ofParts("regulator=1/2in", "hose=25,3/8in", "coupling=slim"), unit.US)
	done := r.Completed(question.Line, a.Get(question.Line), unit.US)
	text := question.TextOf(done)
	assert.Equal(t, "regulator=1/2in + hose=25 ft, 3/8in + coupling=slim", text)
	back := r.ReadText(question.Line, text, unit.Metric)
	require.Len(t, back, 3)
	for i := range back {
		assert.Equal(t, a.Get(question.Line)[i].SI, back[i].SI)
		assert.Equal(t, done[i].Kind, back[i].Kind)
	}
	assert.Equal(t, "coupling=large-bore", r.Expand(question.Line, "coupling=l"))
	assert.Equal(t, "hose=l", r.Expand(question.Line, "hose=l"))
	assert.Equal(t, "l", r.Expand(question.Line, "l"))
}

// Every kind of part has a field of its own that reads the catalogue's entries of it.
func TestEveryKindOfPartIsRead(t *testing.T) {
	r := questiontest.Open(t)
	for _, kind := range question.PartKinds() {
		f := question.PartField(kind)
		require.NotNil(t, f, kind)
		for _, c := range r.Choices(f) {
			q := plan(t, r, ofParts(kind+"="+c.ID), unit.US)
			require.Len(t, q.Line, 1)
			assert.Equal(t, kind, q.Line[0].Kind.String())
			assert.Equal(t, c.ID, q.Line[0].Entry)
		}
	}
	assert.Nil(t, question.PartField("cap"))
	assert.Equal(t, catalogue.KindHose, question.PartKinds()[4])
}

// Heated air, or a hose on a cold floor.
func TestHoseTemp(t *testing.T) {
	r := questiontest.Open(t)
	texts := questiontest.MildDay("clear", "reduced-pressure")
	q := plan(t, r, texts, unit.US)
	assert.Zero(t, q.HoseAir)
	assert.Equal(t, q.Day.Air, q.HoseTemp())
	q = plan(t, r, questiontest.With(texts, "hose-temp", "110"), unit.US)
	assert.InDelta(t, 110, q.HoseTemp().F(), 1e-9)
	faults := planFaults(r, questiontest.With(texts, "hose-temp", "200F"), unit.US)
	require.Len(t, faults, 1)
	assert.Equal(t, "hose-temp", faults[0].Field)
}

// Of couplings that are all of one kind all are tried at once; of several kinds each by itself.
// No wetter air is advised than a dryer gives.
func TestSwapsGoByTheKindsInTheLine(t *testing.T) {
	r := questiontest.Open(t)
	kinds := func(parts ...string) map[calc.SwapKind]int {
		found := map[calc.SwapKind]int{}
		for _, w := range plan(t, r, ofParts(parts...), unit.US).Swaps {
			found[w.Kind]++
		}
		return found
	}
	alike := kinds("coupling=slim", "hose=25ft,3/8in", "coupling=slim")
	assert.Equal(t, 3, alike[calc.SwapCouplings])
	assert.Zero(t, alike[calc.SwapCoupling])
	mixed := kinds("coupling=slim", "hose=25ft,3/8in", "coupling=ordinary")
	assert.Zero(t, mixed[calc.SwapCouplings])
	assert.Equal(t, 6, mixed[calc.SwapCoupling])
	assert.Equal(t, 1, kinds("dryer=desiccant")[calc.SwapDryer])
	assert.Equal(t, 2, kinds("dryer=refrigerated")[calc.SwapDryer])
	assert.Equal(t, 1, kinds("valve=ball")[calc.DropValve])
	assert.Equal(t, 6, kinds("regulator=1/2in", "regulator=1/4in")[calc.SwapRegulator])
	assert.True(t, strings.HasPrefix(plan(t, r, ofParts("valve=ball"), unit.US).Line[0].Name, "valve"))
}

// A gun without an inlet valve is set with the valve that its line ends in; one that does not
// end the line stays open, and a gun with its own has no use for it.
func TestTheValveThatALineEndsIn(t *testing.T) {
	r := questiontest.Shop(t, "[gun.bare]\nclass = \"reduced-pressure\"\nno-valve = true\n")
	on := func(gun string, parts ...string) *calc.Request {
		return plan(t, r, questiontest.With(ofParts(parts...), "gun", gun), unit.US)
	}
	q := on("bare", "regulator=1/2in", "hose=25ft,3/8in", "valve=air-adjusting")
	assert.False(t, q.Gun.Valve.None)
	assert.InDelta(t, 4.5, q.Gun.Valve.Full.C.DM3PerSBar(), 1e-9)
	assert.Equal(t, "valve in the line (air-adjusting)", q.Parts.Valve)
	assert.Equal(t, "air-adjusting", q.Gun.ValveOfLine.Entry)
	assert.Len(t, q.Line, 2)

	q = on("bare", "regulator=1/2in", "valve=air-adjusting", "hose=25ft,3/8in")
	assert.True(t, q.Gun.Valve.None)
	assert.Len(t, q.Line, 3)
	for _, w := range q.Swaps {
		assert.NotEqual(t, calc.DropValve, w.Kind, "there is no valve of the gun's own to go by")
	}
	s, err := calc.Solve(q)
	require.NoError(t, err)
	assert.True(t, slices.ContainsFunc(s.Reasons, func(x calc.Reason) bool { return x.ID == "valve-in-line-alone" }))

	q = on("reduced-pressure", "regulator=1/2in", "hose=25ft,3/8in", "valve=air-adjusting")
	assert.Len(t, q.Line, 3)
	assert.InDelta(t, 6.5, q.Gun.Valve.Full.C.DM3PerSBar(), 1e-9)
}
