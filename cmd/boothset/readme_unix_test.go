//go:build unix

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The commands that the README shows of the shop's folder are run as they stand, block by block,
// by a shell with nobody's settings.
func TestTheReadmesShopCommands(t *testing.T) {
	if _, err := exec.LookPath("git"); err != nil {
		t.Skip("there is no git here")
	}
	readme, err := os.ReadFile(filepath.Join("..", "..", "README.md"))
	require.NoError(t, err)
	_, section, ok := strings.Cut(string(readme), "\n## The shop's folder\n")
	require.True(t, ok)
	section, _, _ = strings.Cut(section, "\n## ")
	bin := t.TempDir()
	require.NoError(t, os.Symlink(program, filepath.Join(bin, "boothset")))
	blocks := strings.Split(section, "```sh\n")[1:]
	require.Len(t, blocks, 2)
	ran := ""
	for _, block := range blocks {
		block, _, ok := strings.Cut(block, "```")
		require.True(t, ok)
		dir := t.TempDir()
		shell := exec.Command("sh", "-e", "-c", block)
		shell.Dir = dir
		shell.Env = []string{
			"PATH=" + bin + ":" + os.Getenv("PATH"), "HOME=" + dir, "GIT_CONFIG_GLOBAL=" + os.DevNull, "GIT_CONFIG_SYSTEM=" + os.DevNull,
			"GIT_AUTHOR_NAME=north", "GIT_AUTHOR_EMAIL=north@example.invalid", "GIT_COMMITTER_NAME=north", "GIT_COMMITTER_EMAIL=north@example.invalid",
		}
		out, err := shell.CombinedOutput()
		require.NoError(t, err, "%s\n%s", block, out)
		ran += string(out)
	}
	for _, says := range []string{"It replaces", "orange peel, polish", "Likeliest: it grows", "0 to mend", "Booth two (invented) (./south)"} {
		assert.Contains(t, ran, says)
	}
}
