package command

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"boothset/calc/unit"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/stretchr/testify/require"
)

// The README's table of fields is the one that the program goes by. UPDATE_GOLDEN=1
// writes it.
func TestTheTableOfFieldsIsTheProgramsOwn(t *testing.T) {
	file := filepath.Join("..", "..", "..", "README.md")
	readme, err := os.ReadFile(file)
	require.NoError(t, err)
	const start, end = "<!-- fields -->\n", "<!-- /fields -->"
	before, rest, ok := strings.Cut(string(readme), start)
	require.True(t, ok)
	table, after, ok := strings.Cut(rest, end)
	require.True(t, ok)
	want := fieldTable(t)
	if os.Getenv("UPDATE_GOLDEN") != "" {
		table = want
		require.NoError(t, os.WriteFile(file, []byte(before+start+want+end+after), 0o644))
	}
	require.Equal(t, want, table, "UPDATE_GOLDEN=1 go test ./cmd/boothset/command -run TableOfFields")
}

// defaults is where a field's value comes from where it is left out, as the table says it.
var defaults = map[question.Default]string{
	question.Required: "must be given", question.LeftOut: "does not count",
	question.ShopOrAsk: "the shop's usual", question.ShopOrOut: "the shop's usual, if any",
	question.OfEntry: "the catalogue's, by coat or gun", question.OfOther: "another field's", question.Fixed: "as said",
}

// fieldTable is every field with the commands that take it, as a table in Markdown.
func fieldTable(t *testing.T) string {
	r, err := question.Open(noEnv, words.English())
	require.NoError(t, err)
	var b strings.Builder
	b.WriteString("| field | of | takes | left out |\n| --- | --- | --- | --- |\n")
	for i, q := range question.Commands() {
		for _, row := range q.Fields {
			first, of := true, []string{}
			for j, other := range question.Commands() {
				if other.Has(row.Field) {
					of = append(of, other.Name)
					first = first && j >= i
				}
			}
			if !first {
				continue // an earlier question has told of it
			}
			_, takes := unquote(words.English().Text(unit.US, row.Usage(), r.UsageFigures(row, unit.US)))
			fmt.Fprintf(&b, "| `%s` | %s | %s | %s |\n", row.Name, strings.Join(of, ", "), strings.ReplaceAll(takes, "|", "\\|"), defaults[row.Default])
		}
	}
	return b.String()
}
