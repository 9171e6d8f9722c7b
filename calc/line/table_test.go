package line_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

// table reads a CSV of numbers; a word in a cell is NaN.
func table(t *testing.T, file string) (rows []map[string]float64) {
	t.Helper()
	f, err := os.Open(file)
	require.NoError(t, err)
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	for _, l := range lines[1:] {
		row := map[string]float64{}
		for i, cell := range l {
			v, err := strconv.ParseFloat(cell, 64)
			if err != nil {
				v = math.NaN()
			}
			row[lines[0][i]] = v
		}
		rows = append(rows, row)
	}
	return rows
}
