package command

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// manyBooths is a folder of 200 booths and 100 guns, invented.
func manyBooths(b *testing.B) func(string) string {
	b.Helper()
	const booths, guns = 200, 100
	var files []string
	for i := range booths {
		files = append(files, fmt.Sprintf("booths/booth-%d.toml", i), fmt.Sprintf(
			"format = \"boothset.booth/1\"\nline = [\"regulator=1/2in\", \"filter=point-of-use\", \"coupling=slim\", \"hose=%dft,5/16in\", \"coupling=slim\"]\nsupply = \"100psi\"\n", 20+i/8))
	}
	for i := range guns {
		files = append(files, fmt.Sprintf("guns/gun-%d.toml", i), "format = \"boothset.gun/1\"\nclass = \"reduced-pressure\"\ninlet = \"30psi\"\nflow = \"9.5cfm\"\n")
	}
	_, env := quarryLane(b, files...)
	return env
}

// With ranges, as JSON has them.
func BenchmarkSheetOfAGun(b *testing.B) {
	env := manyBooths(b)
	for b.Loop() {
		r := boothsetIn(env, "", "sheet", "--booth", "booth-7", "--gun", "gun-7", "--json")
		require.Equal(b, ExitAnswered, r.code, r.err)
	}
}

func BenchmarkTwentyBoothsSideBySide(b *testing.B) {
	env := manyBooths(b)
	args := append([]string{"compare"}, mildJob...)
	for i := range 20 {
		args = append(args, "--booth", fmt.Sprintf("booth-%d", i*9))
	}
	args = append(args, "--gun", "gun-7")
	for b.Loop() {
		r := boothsetIn(env, "", args...)
		require.Equal(b, ExitAnswered, r.code, r.err)
	}
}

// BenchmarkBatchOfPlans answers 2,000 lines on one core and on two: the ratio of both is how much
// the second core is worth.
func BenchmarkBatchOfPlans(b *testing.B) {
	in := strings.Repeat(goodLine+"\n", 2000)
	for _, jobs := range []string{"1", "2"} {
		b.Run(jobs, func(b *testing.B) {
			for b.Loop() {
				r := boothset(in, "plan", "--batch", "--jobs", jobs)
				require.Equal(b, ExitAnswered, r.code, r.err)
			}
		})
	}
}
