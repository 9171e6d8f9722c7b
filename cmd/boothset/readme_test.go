//go:build unix

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
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
	"make run":                       "it is go run of the program that is run here, and needs a terminal",
	"make test":                      "it is these tests",
	"boothset":                       "it needs a terminal: TestFromTheFirstKeyToTheSettings",
	"boothset --card":                "it needs a terminal: TestTheCardFitsTheTerminal",
	"boothset --shop ./tryout":       "it needs a terminal: the tests of the assistant's desk",
	"boothset --plain":               "it asks until it is answered; with answers it is run",
	"boothset serve --listen :2222":  "it serves until it is stopped: the tests of boothset-serve",
	"git pull --no-rebase; git push": "it needs another machine: presets/shop merges two clones",
}

// filled is what is run where a command of the README leaves out what goes by the job.
var filled = []struct{ text, with string }{
	{"...", "--gun clear-1 --coat clear --temp 75F --humidity 45"},
	{"boothset day", "boothset day --coat clear --temp 75F --humidity 45"},
	{"boothset thin", "boothset thin --coat clear --temp 75F --cup zahn2 --seconds 20"},
	{"boothset film", "boothset film --coat clear --gun hvlp"},
	{"boothset mix", "boothset mix --coat clear --gun hvlp --area hood"},
	{"boothset demo DIR", "boothset demo other-tryout"},
	{"boothset shop add FILE --dry-run", "boothset shop add neighbour.toml --dry-run"},
}

// inline is a command within a sentence of the README.
var inline = regexp.MustCompile("`(boothset(?: [^`]*)?)`")

// readmeCommands is every command of the README: the lines of its code blocks, without what is
// said behind them, and the program where a sentence has it with arguments.
func readmeCommands(t *testing.T) (all []string) {
	t.Helper()
	readme, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	require.NoError(t, err)
	fenced := false
	for row := range strings.Lines(string(readme)) {
		if strings.HasPrefix(row, "```") {
			fenced = !fenced
			require.Regexp(t, "^```(toml)?\n", row, "a block of another kind: are there commands in it?")
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
		cmd.Env = []string{"HOME=" + home, "TMPDIR=" + dir, "LANG=C.UTF-8", "PATH=" + filepath.Dir(program) + ":" + os.Getenv("PATH"),
			"GIT_AUTHOR_NAME=shop", "GIT_AUTHOR_EMAIL=shop@localhost", "GIT_COMMITTER_NAME=shop", "GIT_COMMITTER_EMAIL=shop@localhost"}
		out, _ := cmd.CombinedOutput() // its code says what it came to
		return string(out), cmd.ProcessState.ExitCode()
	}
	out, code := sh("boothset demo home/.local/share/boothset/shop && cp home/.local/share/boothset/shop/booths/two.toml neighbour.toml && cp -r home/.local/share/boothset/shop north && cp -r north south && cp -r north git")
	require.Zero(t, code, out)
	require.NoError(t, os.WriteFile(filepath.Join(dir, "answers.txt"), []byte("3\n3\n8\n75F\n45\n"+strings.Repeat("\n", 12)), 0o600))

	all := readmeCommands(t)
	require.Greater(t, len(all), 30)
	for text := range notRun {
		require.Contains(t, all, text, "it is not in the README")
	}
	for _, f := range filled {
		require.True(t, slices.ContainsFunc(all, func(c string) bool { return c == f.text || f.text == "..." && strings.Contains(c, f.text) }), f.text)
	}
	for _, text := range all {
		if notRun[text] != "" {
			continue
		}
		line := text
		for _, f := range filled {
			if text == f.text || f.text == "..." {
				line = strings.ReplaceAll(line, f.text, f.with)
			}
		}
		if strings.HasPrefix(line, "git ") {
			line = "cd git; " + line
		}
		out, code := sh(line + " </dev/null")
		if strings.Contains(line, "<") {
			out, code = sh(line)
		}
		assert.Contains(t, []int{command.ExitAnswered, command.ExitCannot}, code, "%s\n%s", line, out)
		assert.NotEmpty(t, out, line)
	}
}
