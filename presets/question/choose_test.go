package question_test

import (
	"slices"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// An entry is named by its id or an alias, in any case of letters; the exact id comes first.
func TestAnEntryByItsNames(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		field     *question.Field
		typed, id string
	}{
		{question.Gun, "high-volume-low-pressure", "high-volume-low-pressure"},
		{question.Gun, "High-Volume-Low-Pressure", "high-volume-low-pressure"},
		{question.Gun, "hvlp", "high-volume-low-pressure"},
		{question.Gun, "HVLP", "high-volume-low-pressure"},
		{question.Gun, " hvlp ", "high-volume-low-pressure"},
		{question.Gun, "conventional", "high-pressure"},
		{question.Coat, "CLEAR", "clear"},
		{question.Coat, "Clearcoat", "clear"},
		{question.Coat, "epoxy", "epoxy-primer"},
		{question.Coat, "Primer surfacer", "surfacer"},
		{question.Coat, "UV primer", "ultraviolet-primer"},
		{question.Coat, "waterborne basecoat", "waterborne-base"},
		{question.Coat, "metallic", "metallic-base"},
		{question.Coat, "high solids clear", "high-solids-clear"},
		{question.Regulator, "1/2IN", "1/2in"},
		{question.Regulator, "None", "none"},
		{question.Filter, "none", "none"},
		{question.RegulatorAt, "Wall", "wall"},
		{question.Gauge, "HANDLE", "handle"},
	} {
		v := r.Read(x.field, x.typed, unit.US)
		assert.Nil(t, v.Fault, x.typed)
		assert.Equal(t, x.id, v.ID, x.typed)
		assert.Equal(t, x.typed, v.Text)
	}
	for _, typed := range []string{"", "hvl", "high", "hvlp gun", "none"} {
		assert.NotNil(t, r.Read(question.Gun, typed, unit.US).Fault, typed)
	}
	cased := questiontest.Shop(t, "[coat.Clear]\nworking.reduced-pressure = { start = \"26psi\", low = \"23psi\", high = \"30psi\" }\n")
	assert.Equal(t, "Clear", cased.Read(question.Coat, "Clear", unit.US).ID)
	assert.Equal(t, "clear", cased.Read(question.Coat, "clear", unit.US).ID)
}

// A request that names an entry by an alias is that of its id.
func TestAnAliasIsTheSameRequest(t *testing.T) {
	r := questiontest.Open(t)
	assert.Equal(t, plan(t, r, questiontest.MildDay("clear", "high-volume-low-pressure"), unit.US), plan(t, r, questiontest.MildDay("Clear", "HVLP"), unit.US))
}

// On the command line an unambiguous beginning of an id or an alias will do.
func TestExpand(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		field       *question.Field
		typed, want string
	}{
		{question.Gun, "hv", "high-volume-low-pressure"},
		{question.Gun, "HV", "high-volume-low-pressure"},
		{question.Gun, "high-v", "high-volume-low-pressure"},
		{question.Gun, "high", "high"}, // of two
		{question.Gun, "h", "h"},
		{question.Gun, "hvlp", "hvlp"}, // it is a name already
		{question.Gun, "conv", "high-pressure"},
		{question.Gun, "r", "reduced-pressure"},
		{question.Gun, "reduced-pressures", "reduced-pressures"},
		{question.Coat, "cle", "clear"},
		{question.Coat, "s", "s"},
		{question.Coat, "si", "single-stage"},
		{question.Coat, "", ""},
		{question.Filter, "n", "none"},
		{question.Filter, "po", "point-of-use"},
		{question.Regulator, "3", "3/8in"},
		{question.Regulator, "1/", "1/"},
		{question.RegulatorAt, "w", "wall"},
		{question.Gauge, "f", "foot"},
		{question.Temp, "7", "7"},
		{question.Compressor, "no", "no"},
	} {
		assert.Equal(t, x.want, r.Expand(x.field, x.typed), "%s %q", x.field.Name, x.typed)
	}
}

// What a beginning stands for is an id that begins so, or has an alias that does, and no
// other does; what is a name stays.
func TestExpandEveryBeginning(t *testing.T) {
	r := questiontest.Open(t)
	for _, row := range question.Plan.Fields {
		all := r.Choices(row.Field)
		for _, c := range all {
			for _, name := range slices.Concat([]string{c.ID}, c.Aliases, c.Shared) {
				for n := 1; n <= len(name); n++ {
					beginning := name[:n]
					whose, exact := map[string]bool{}, false
					for _, other := range all {
						for _, name := range slices.Concat([]string{other.ID}, other.Aliases, other.Shared) {
							if strings.HasPrefix(name, beginning) {
								whose[other.ID] = true
							}
							exact = exact || name == beginning && !slices.Contains(other.Shared, name)
						}
					}
					want := beginning
					if len(whose) == 1 && !exact {
						want = c.ID
					}
					assert.Equal(t, want, r.Expand(row.Field, beginning), "%s %q", row.Name, beginning)
				}
			}
		}
	}
}

// To a name of the trade that several have it is asked which one is meant, on the command line as
// elsewhere; an alias of the shop's own settles it.
func TestANameThatSeveralHaveIsAskedWhich(t *testing.T) {
	r := questiontest.Open(t)
	for typed, which := range map[string][]string{
		"basecoat": {"solvent-base", "metallic-base", "waterborne-base"},
		"Base":     {"solvent-base", "metallic-base", "waterborne-base"},
		"primer":   {"epoxy-primer", "surfacer", "ultraviolet-primer", "adhesion-promoter"},
		"2K":       {"epoxy-primer", "surfacer", "sealer", "single-stage", "clear", "matte-clear", "high-solids-clear"},
		"2k clear": {"clear", "matte-clear", "high-solids-clear"},
		"topcoat":  {"single-stage", "clear"},
	} {
		assert.Equal(t, typed, r.Expand(question.Coat, typed))
		f := r.Read(question.Coat, typed, unit.US).Fault
		require.NotNil(t, f, typed)
		assert.Equal(t, "which-entry", f.ID, typed)
		asked := strings.FieldsFunc(strings.TrimPrefix(f.Want(), "which one: "), func(c rune) bool { return strings.ContainsRune(", ?", c) })
		assert.ElementsMatch(t, append(which, "or"), asked, typed)
	}
	own := questiontest.Shop(t, "[coat.waterborne-base]\naliases = [\"basecoat\"]\n")
	assert.Equal(t, "waterborne-base", own.Read(question.Coat, "Basecoat", unit.US).ID)
}

// An unknown name is answered with the nearest, where one is near: no more than a third of
// its letters differ.
func TestAnUnknownNameIsAnsweredWithTheNearest(t *testing.T) {
	r := questiontest.Open(t)
	for _, x := range []struct {
		field          *question.Field
		typed, nearest string
	}{
		{question.Coat, "claer", "clear"},
		{question.Coat, "cleer", "clear"},
		{question.Coat, "clears", "clear"},
		{question.Coat, "CLEER", "clear"},
		{question.Coat, "seeler", "sealer"},
		{question.Coat, "metalic-base", "metallic-base"},
		{question.Coat, "singlestage", "single-stage"},
		{question.Coat, "varnish", ""},
		{question.Gun, "hvpl", "high-volume-low-pressure"},
		{question.Gun, "hvlpp", "high-volume-low-pressure"},
		{question.Gun, "reduced-presure", "reduced-pressure"},
		{question.Gun, "convential", "high-pressure"},
		{question.Gun, "x", ""},
		{question.Gun, strings.Repeat("x", 100_000), ""},
		{question.Regulator, "3/4in", "1/4in"},
		{question.Gauge, "foots", "foot"},
		{question.RegulatorAt, "gum", "gun"},
		{question.Filter, "non", "none"},
		{question.Filter, "", ""},
	} {
		f := r.Read(x.field, x.typed, unit.US).Fault
		require.NotNil(t, f, x.typed)
		if x.nearest == "" {
			assert.Equal(t, "choose", f.ID, x.typed)
			assert.NotContains(t, f.Want(), "nearest", x.typed)
			continue
		}
		assert.Equal(t, "choose-nearest", f.ID, x.typed)
		assert.True(t, strings.HasSuffix(f.Want(), "nearest is "+x.nearest), f.Want())
		assert.Contains(t, f.Want(), "choose ", "all the same, what there is")
	}
}
