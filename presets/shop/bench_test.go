package shop_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/require"
)

// largeShop is a folder of 200 booths and 100 guns, with 100,000 lines of log over five years,
// invented.
func largeShop(b *testing.B) *shop.Folder {
	b.Helper()
	const booths, guns, lines, months = 200, 100, 100_000, 60
	dir := b.TempDir()
	for i := range booths {
		put(b, dir, fmt.Sprintf("booths/booth-%d.toml", i), boothTwo)
	}
	for i := range guns {
		put(b, dir, fmt.Sprintf("guns/gun-%d.toml", i), gunFour)
	}
	f, m := at(b, dir), machine(b)
	_, err := f.Keep(m, job(1), unit.US)
	require.NoError(b, err)
	one, err := os.ReadFile(logFile(b, f))
	require.NoError(b, err)
	require.NoError(b, os.RemoveAll(filepath.Join(dir, "log")))
	id := string(one[strings.Index(string(one), `"id":"`)+6:][:36])
	n := 0
	for i := range booths {
		for month := range months {
			var file strings.Builder
			at := aDay.AddDate(0, month-months, 0)
			for range lines*(month+1)/(booths*months) - lines*month/(booths*months) {
				n++
				line := strings.Replace(string(one), id, fmt.Sprintf("%08x%s", n, id[8:]), 1)
				file.WriteString(strings.Replace(line, "2031-03-04T10:30:00Z", at.Format(time.RFC3339), 1))
			}
			put(b, dir, fmt.Sprintf("log/booth-%d/%s-%s.jsonl", i, at.Format("2006-01"), m.ID), file.String())
		}
	}
	require.Equal(b, lines, n)
	return f
}

func BenchmarkPickABooth(b *testing.B) {
	f, r := largeShop(b), questiontest.Open(b)
	for b.Loop() {
		ids := f.BoothIDs()
		booth, _ := f.Booth(r, ids[len(ids)/2])
		require.NotNil(b, booth)
	}
}

func BenchmarkListBooths(b *testing.B) {
	f, r := largeShop(b), questiontest.Open(b)
	for b.Loop() {
		all, _ := f.Booths(r)
		require.Len(b, all, 200)
	}
}

func BenchmarkListGuns(b *testing.B) {
	f, r := largeShop(b), questiontest.Open(b)
	for b.Loop() {
		all, _ := f.Guns(r)
		require.Len(b, all, 100)
	}
}

func BenchmarkLogOfABooth(b *testing.B) {
	f := largeShop(b)
	for b.Loop() {
		log, _ := f.Log("booth-7")
		require.Len(b, log, 500)
	}
}
