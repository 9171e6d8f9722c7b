//go:build unix

package main

import (
	"cmp"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"boothset/cmd/boothset/command"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// notRun is the commands of the README that are not run here, with why.
var notRun = map[string]string{
	"sudo apt install ./boothset_VERSION-1_amd64.deb": "make dist-check installs the package, in a clean system",
	"sudo rpm -i boothset-VERSION-1.x86_64.rpm":       "make dist-check installs the package, in a clean system",
	"make run":                 "it is go run of the program that is run here, and needs a terminal",
	"make test":                "it is these tests",
	"boothset":                 "it needs a terminal: TestFromTheFirstKeyToTheSettings",
	"boothset --card":          "it needs a terminal: TestTheCardFitsTheTerminal",
	"boothset --shop ./tryout": "it needs a terminal: the tests of the assistant's desk",
	"boothset --plain":         "it asks until it is answered; with answers it is run",
	"boothset practice":        "it asks until it is answered: its own tests",
	"boothset practice --seed 7 --initials MK --booth two": "it asks until it is answered: its own tests",
	"boothset serve --listen :2222":                        "it serves until it is stopped: the tests of boothset-serve",
}

// job is one of the invented shop.
const job = " --booth two --gun clear-1 --coat clear --temp 75F --humidity 45"

// filled is what is run where a command of the README leaves out what goes by the job.
var filled = map[string]string{
	"boothset plan --booth two --gun clear-1 ...": "boothset plan" + job,
	"boothset day":           "boothset day --coat clear --temp 75F --humidity 45",
	"boothset thin":          "boothset thin --coat clear --temp 75F --cup zahn2 --seconds 20",
	"boothset film":          "boothset film --coat clear --gun hvlp",
	"boothset mix":           "boothset mix --coat clear --gun hvlp --area hood",
	"boothset demo DIR":      "boothset demo other-tryout",
	"boothset shop add FILE": "boothset shop add neighbour.toml",
	"boothset agree":         "boothset agree --set wall=50psi" + job,
	"boothset card":          "boothset card" + job,
	"boothset compare":       "boothset compare --coat clear --gun hvlp --temp 75F --humidity 45",
	"boothset log record":    "boothset log record --read wall=50psi" + job,
	"boothset log outcome":   "boothset log outcome --booth two --outcome good",
}

// inline is a command within a sentence of the README.
var inline = regexp.MustCompile("`(boothset(?: [^`]*)?)`")

// readmeCommands is every command of the README: the lines of its code blocks, without what is
// said behind them, and the program where a sentence has it. Blocks of a shell stand under the
// shop's folder alone: TestTheReadmesShopCommands runs them.
func readmeCommands(t *testing.T) (all []string) {
	t.Helper()
	readme, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	require.NoError(t, err)
	fenced, heading := false, ""
	for row := range strings.Lines(string(readme)) {
		if strings.HasPrefix(row, "```") {
			fenced = !fenced
			shell := heading == "## The shop's folder\n" && row == "```sh\n"
			require.True(t, shell || row == "```toml\n" || row == "```\n", "a block %q under %s: who runs its commands?", row, heading)
		}
		if strings.HasPrefix(row, "## ") {
			heading = row
		}
		block, in := strings.CutPrefix(row, "    ")
		switch {
		case fenced:
		case in:
			command, _, _ := strings.Cut(block, "  #")
			all = append(all, strings.TrimSpace(command))
		default:
			for _, m := range inline.FindAllStringSubmatch(row, -1) {
				all = append(all, m[1])
			}
		}
	}
	return all
}

// Each command of the README answers as it is written, one after the other, in a home of its own
// in whose shop the invented one is.
func TestTheCommandsOfTheReadme(t *testing.T) {
	dir := t.TempDir()
	home := filepath.Join(dir, "home")
	require.NoError(t, os.Mkdir(home, 0o700))
	sh := func(line string) (string, int) {
		cmd := exec.Command("sh", "-c", line)
		cmd.Dir = dir
		cmd.Env = []string{"HOME=" + home, "TMPDIR=" + dir, "LANG=C.UTF-8", "PATH=" + filepath.Dir(program) + ":" + os.Getenv("PATH")}
		out, _ := cmd.CombinedOutput() // its code says what it came to
		return string(out), cmd.ProcessState.ExitCode()
	}
	out, code := sh("boothset demo home/.local/share/boothset/shop && cp home/.local/share/boothset/shop/booths/two.toml neighbour.toml")
	require.Zero(t, code, out)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "answers.txt"), []byte("3\n3\n8\n75F\n45\n"+strings.Repeat("\n", 12)), 0o600))

	all := readmeCommands(t)
	require.Greater(t, len(all), 30)
	for text := range notRun {
		require.Contains(t, all, text, "it is not in the README")
	}
	for text := range filled {
		require.Contains(t, all, text, "it is not in the README")
	}
	for _, text := range all {
		if notRun[text] != "" {
			continue
		}
		line := cmp.Or(filled[text], text)
		out, code := sh(line + " </dev/null")
		if strings.Contains(line, "<") {
			out, code = sh(line)
		}
		assert.Contains(t, []int{command.ExitAnswered, command.ExitCannot}, code, "%s\n%s", line, out)
		assert.NotEmpty(t, out, line)
	}
}
