package command

import (
	"encoding/json"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/answer"
	"boothset/presets/question"
	"boothset/presets/question/questiontest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// pathsIn adds the path of each value of an answer.
func pathsIn(v any, path string, to map[string]bool) {
	switch v := v.(type) {
	case map[string]any:
		for key, below := range v {
			at := strings.TrimPrefix(path+"."+key, ".")
			to[at] = true
			pathsIn(below, at, to)
		}
	case []any:
		for _, one := range v {
			pathsIn(one, path, to)
		}
	}
}

// answersTo is answers to all that a question can be asked, as JSON.
func answersTo(t *testing.T, q *question.Question) string {
	t.Helper()
	got := boothset(requestsTo(t, q), q.Name, "--batch")
	require.NotContains(t, got.out, errorSchema, q.Name)
	return got.out
}

// requestsTo is requests to a question: of a plan drawn ones, of the others what brings about
// each of their values.
func requestsTo(t *testing.T, q *question.Question) string {
	t.Helper()
	var in strings.Builder
	if q == question.Plan {
		r := questiontest.Open(t)
		for texts := range questiontest.Requests(r, 120) {
			request := map[string]any{"spread": true}
			for name, all := range texts {
				if len(all) > 0 && all[0] != "" {
					row, _ := q.Field(name)
					request[strings.ReplaceAll(name, "-", "_")] = all[0]
					if row.Repeats {
						request[strings.ReplaceAll(name, "-", "_")] = all
					}
				}
			}
			line, err := json.Marshal(request)
			require.NoError(t, err)
			in.WriteString(string(line) + "\n")
		}
	}
	for _, row := range wideRequests[q.Name] {
		in.WriteString(row + "\n")
	}
	return in.String()
}

// wideRequests is requests that bring about values which drawn ones may not.
var wideRequests = map[string][]string{
	"plan": {
		goodLine,
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi","working":"26psi","sheet_distance":"6in","flash":"10min","recoat":"4h","pot_life":"4h","tip":"1.3mm","spread":true}`,
		`{"coat":"clear","gun":"pressure-feed","temp":"75F","humidity":45,"supply":"90psi"}`,
	},
	"day": {
		`{"coat":"clear","temp":"75F","humidity":45}`, `{"coat":"clear","temp":"75F","humidity":60,"panel":"60F","pot_life":"4h","started":"14:30","panels":3}`,
		`{"coat":"waterborne-base","temp":"95F","humidity":95}`, `{"coat":"clear","temp":"40F","humidity":99}`,
	},
	"thin": {
		`{"coat":"clear","cup":"din4","seconds":21,"paint":"62F","sheet_seconds":"16-18","max_thinner":"5%"}`, `{"coat":"clear","cup":"ford4","seconds":26,"paint":"68F"}`,
		`{"coat":"clear","cup":"ford4","seconds":15,"paint":"68F"}`,
	},
	"film": {
		`{"coat":"clear","gun":"reduced-pressure","cup_volume":"100mL","cup_time":"33s"}`, `{"coat":"clear","solids":42,"wet":"4mil,5mil"}`, `{"coat":"clear"}`,
	},
	"mix": {
		`{"coat":"clear","gun":"reduced-pressure","area":["12ft2","hood"],"ratio":"4:1:1"}`, `{"coat":"clear","gun":"reduced-pressure","area":"4m2","price":"60/L","distance":"9in"}`,
		`{"coat":"clear","gun":"pressure-feed","area":"4m2","ratio":"4:1:1","distance":"9in"}`,
	},
	"learn": {
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi","reading":["still wall=30psi gun=28.5psi","wall=31psi gun=16psi"]}`,
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi","reading":["still wall=30psi gun=30psi","wall=31psi gun=16psi","without=coupling-2 wall=31psi gun=26psi"]}`,
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi","gauge":"none","reading":["wall=31psi foot=27psi","wall=31psi foot=20psi"]}`,
	},
	"prove": {
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi"}`,
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi","reading":["still wall=31psi gun=29.5psi","wall=31psi gun=16psi"]}`,
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi","reading":["still wall=30psi gun=30psi","wall=31psi gun=16psi","without=coupling-2 wall=31psi gun=26psi"]}`,
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi","gauge":"none","reading":["wall=31psi foot=27psi","wall=31psi foot=20psi"]}`,
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi","reading":["wall=34psi gun=30psi","wall=33psi gun=26psi turns=3/4"],"first_gun":"33psi","held_supply":"60psi","felt":"7in","pattern":"split","flood":"even","wet":"4mil"}`,
		`{"coat":"clear","gun":"reduced-pressure","temp":"75F","humidity":45,"supply":"90psi","reading":["wall=34psi gun=30psi"],"first_gun":"30psi","felt":"5.5in","pattern":"even","wet":"2mil,3mil","sheet_distance":"6in"}`,
	},
	"trouble": {
		`{"sign":["orange-peel","runs"]}`, `{"sign":"air-leak","found":"listen=hisses"}`,
		`{"sign":"fading","found":["valve-open=climbs","tank-gauge=skip"],"coat":"clear","gun":"reduced-pressure","temp":"95F","humidity":15,"supply":"90psi","wall":"80psi"}`,
		`{"sign":"blushing","found":["dew=near","grade-look=fits"],"coat":"clear","gun":"reduced-pressure","temp":"72F","humidity":82,"supply":"90psi","distance":"9in"}`,
		`{"sign":"dry-spray","found":"grade-look=fast","coat":"clear","gun":"reduced-pressure","temp":"110F","humidity":8,"supply":"90psi","grade":"fast"}`,
	},
}

// The paths that can be named are those of the answers, all of them and no others. With
// UPDATE_GOLDEN=1 they are written; look at what changed.
func TestThePathsAreThoseOfTheAnswers(t *testing.T) {
	var rows []string
	add := func(schema, documents string) {
		all := map[string]bool{}
		for line := range strings.Lines(documents) {
			var v any
			require.NoError(t, json.Unmarshal([]byte(line), &v), line)
			pathsIn(v, "", all)
		}
		for _, path := range slices.Sorted(maps.Keys(all)) {
			rows = append(rows, schema+" "+path)
		}
	}
	documents := shopDocuments(t)
	for _, q := range question.Commands() {
		add(q.Name, answersTo(t, q)+documents[q.Name])
		delete(documents, q.Name)
	}
	for _, schema := range slices.Sorted(maps.Keys(documents)) {
		add(schema, documents[schema])
	}
	text := strings.Join(rows, "\n") + "\n"
	if os.Getenv("UPDATE_GOLDEN") != "" {
		require.NoError(t, os.WriteFile("paths.txt", []byte(text), 0o644))
	}
	want, err := os.ReadFile("paths.txt")
	require.NoError(t, err)
	assert.Equal(t, string(want), text)
}

// kept is what of an answer lies at some paths.
func kept(v any, path string, paths []string) any {
	whole := func(at string) bool {
		return slices.ContainsFunc(paths, func(p string) bool { return at == p || strings.HasPrefix(at, p+".") })
	}
	onTheWay := func(at string) bool {
		return slices.ContainsFunc(paths, func(p string) bool { return strings.HasPrefix(p, at+".") })
	}
	switch v := v.(type) {
	case map[string]any:
		all := map[string]any{}
		for key, below := range v {
			switch at := strings.TrimPrefix(path+"."+key, "."); {
			case whole(at):
				all[key] = below
			case onTheWay(at):
				all[key] = kept(below, at, paths)
			}
		}
		return all
	case []any:
		all := make([]any, len(v))
		for i, one := range v {
			all[i] = kept(one, path, paths)
		}
		return all
	}
	return v
}

// Whatever paths are picked, what is written is the whole answer without the rest.
func TestPickedIsTheAnswerWithoutTheRest(t *testing.T) {
	r := questiontest.Open(t)
	var found []answer.Answer
	var whole []string
	for _, texts := range []question.Texts{
		questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "temp", "95F", "humidity", "80", "supply", "90psi", "wall", "60psi", "compressor", "5hp", "receiver", "60gal"),
		questiontest.Texts("coat", "clear", "gun", "reduced-pressure", "temp", "72F", "humidity", "45", "supply", "20psi"),
	} {
		a, err := askTyped(r, question.Plan, r.ReadAll(question.Plan, texts, unit.US), unit.US)
		require.NoError(t, err)
		a.(*answer.Plan).Sure()
		found = append(found, a)
		whole = append(whole, string(appendAnswer(nil, question.Plan, a, false, unit.US, r.Words(), nil)))
	}
	require.True(t, found[1].Stopped())
	known := pathsOf("plan")
	rapid.Check(t, func(t *rapid.T) {
		paths := rapid.SliceOfN(rapid.SampledFrom(known), 1, 6).Draw(t, "paths")
		pick, err := pickOf("plan", strings.Join(paths, ", "), r.Words())
		if err != nil {
			t.Fatal(err)
		}
		for i := range found {
			got := appendAnswer(nil, question.Plan, found[i], false, unit.US, r.Words(), pick)
			var all, picked any
			if err := json.Unmarshal([]byte(whole[i]), &all); err != nil {
				t.Fatal(err)
			}
			if err := json.Unmarshal(got, &picked); err != nil {
				t.Fatalf("%s: %v", got, err)
			}
			assert.Equal(t, kept(all, "", paths), picked, "%v of %s", paths, got)
		}
	})
}

func TestAFewFigures(t *testing.T) {
	got := boothset(goodLine+"\nnonsense\n", "plan", "--batch", "--fields", "wall.flowing.psi,verdict,line.name,valve.opening")
	assert.Equal(t, ExitBadInput, got.code)
	rows := strings.Split(got.out, "\n")
	assert.Regexp(t, `^\{"verdict":"go","wall":\{"flowing":\{"psi":[0-9.]+\}\},"valve":\{"opening":[0-9.]+\},"line":\[\{"name":"[^"]+"\},.*\]\}$`, rows[0])
	assert.Contains(t, rows[1], errorSchema, "a bad line is told whole")
	assert.Equal(t, `{"verdict":"go"}`+"\n", boothset("", clearJob("--json", "--fields", "verdict")...).out)

	for _, c := range []struct {
		args []string
		says string
	}{
		{clearJob("--json", "--fields", "wall,vlave"), `fields "vlave": no such value; nearest is valve`},
		{clearJob("--json", "--fields", "wall.flowing.kpa"), `fields "wall.flowing.kpa": no such value; nearest is wall.flowing.`},
		{clearJob("--json", "--fields", "x"), `fields "x": give paths of the JSON, with commas between, from: against, bottleneck, cautions, `},
		{clearJob("--json", "--fields", "wall,"), "fields: give paths of the JSON"},
		{clearJob("--fields", "wall"), `fields "wall": it goes with --json or --batch`},
		{clearJob("--jobs", "2"), `jobs "2": it goes with --batch`},
		{[]string{"plan", "--batch", "--jobs", "0"}, `jobs "0": give a whole number, 1 to 256`},
		{[]string{"plan", "--batch", "--jobs", "many"}, `jobs "many": give a whole number`},
		{[]string{"plan", "--batch", "--jobs", "99999999999999999999"}, "give a whole number"},
	} {
		got := boothset("", c.args...)
		assert.Equal(t, ExitBadInput, got.code, c.args)
		assert.Contains(t, got.err, c.says)
	}
}
