package tui

import (
	"encoding/base64"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"boothset/presets/answer"
	"boothset/presets/card"
	"boothset/presets/question"
	"boothset/presets/shop"
	"boothset/presets/words"

	tea "github.com/charmbracelet/bubbletea"
	"github.com/stretchr/testify/require"
)

// follow presses a key and gives the model what its command comes to.
func follow(t *testing.T, r *root, key string) {
	t.Helper()
	_, cmd := r.Update(keyOf(key))
	for _, msg := range messages(cmd) {
		r.Update(msg)
	}
}

// messages is what a command comes to, and those it is made of.
func messages(cmd tea.Cmd) (all []tea.Msg) {
	if cmd == nil {
		return nil
	}
	msg := cmd()
	if batch, is := msg.(tea.BatchMsg); is {
		for _, c := range batch {
			all = append(all, messages(c)...)
		}
		return all
	}
	return append(all, msg)
}

// The card goes to a new file each time, whole, and the screen says which, until the next key.
func TestTheCardIsWrittenToAFileOfItsOwn(t *testing.T) {
	for _, lang := range words.Languages() {
		dir := t.TempDir()
		t.Chdir(dir)
		r := start(t, look{lang: lang})
		r.s.writeNew = writeNew
		press(r, toAnswer...)
		want := answer.Print(r.result().Plan.Card(r.s.words, r.s.sys), answer.Width, r.s.words)
		for _, name := range []string{"clear-2025-03-14.txt", "clear-2025-03-14-2.txt", "clear-2025-03-14-3.txt"} {
			before := r.View()
			follow(t, r, "w")
			require.Contains(t, strings.ReplaceAll(r.View(), "\n", ""), name)
			got, err := os.ReadFile(filepath.Join(dir, name))
			require.NoError(t, err)
			require.Equal(t, string(want), string(got))
			press(r, "down", "up")
			require.Equal(t, before, r.View())
		}
		all, err := os.ReadDir(dir)
		require.NoError(t, err)
		require.Len(t, all, 3)
	}
}

// What is tried is taken along as it shows.
func TestTheCardIsThatOfWhatIsTried(t *testing.T) {
	r := start(t, look{})
	press(r, toAnswer...)
	kept := string(r.bench.card())
	for r.bench.inputs()[r.bench.input].Field != question.Temp {
		press(r, "down")
	}
	press(r, "shift+right")
	require.NotEqual(t, kept, string(r.bench.card()))
	press(r, "esc")
	require.Equal(t, kept, string(r.bench.card()))
}

func TestAFolderThatTakesNoFileIsTold(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("a folder that is gone cannot be stood in there")
	}
	dir := filepath.Join(t.TempDir(), "gone")
	require.NoError(t, os.Mkdir(dir, 0o700))
	t.Chdir(dir)
	require.NoError(t, os.Remove(dir))
	r := start(t, look{size: size{120, 40}})
	r.s.writeNew = writeNew
	press(r, toAnswer...)
	follow(t, r, "w")
	require.Contains(t, r.View(), "No card written, no such file or directory: clear-2025-03-14.txt")
}

func TestFilesThatAreThereAreNotOverwritten(t *testing.T) {
	t.Chdir(t.TempDir())
	for range mostCards {
		_, err := writeNew("clear", []byte("card"))
		require.NoError(t, err)
	}
	_, err := writeNew("clear", []byte("another"))
	require.ErrorIs(t, err, os.ErrExist)
	all, err := filepath.Glob("clear*.txt")
	require.NoError(t, err)
	require.Len(t, all, mostCards)
	for _, f := range all {
		text, err := os.ReadFile(f)
		require.NoError(t, err)
		require.Equal(t, "card", string(text))
	}
}

// A coat of a shop's own file may be called anything: no folder is left by it.
func TestACardsNameIsAFilesName(t *testing.T) {
	s := start(t, look{}).s
	for coat, want := range map[string]string{"quick-clear": "quick-clear-2025-03-14", "../../etc/x": "------etc-x-2025-03-14", "a b\x00c": "a-b-c-2025-03-14", `c:\d`: "c--d-2025-03-14"} {
		require.Equal(t, want, s.cardName(coat))
	}
}

// The card is given to the terminal by OSC 52 (xterm's control sequences: "52;c;" and base64).
func TestTheCardIsCopiedThroughTheTerminal(t *testing.T) {
	r := start(t, look{})
	var sent string
	r.s.send = func(sequence string) { sent += sequence }
	press(r, toAnswer...)
	require.Empty(t, sent)
	follow(t, r, "y")
	require.Contains(t, r.View(), "Card copied, where the terminal allows it.")
	text, found := strings.CutPrefix(sent, "\x1b]52;c;")
	require.True(t, found)
	text, found = strings.CutSuffix(text, "\x07")
	require.True(t, found)
	card, err := base64.StdEncoding.DecodeString(text)
	require.NoError(t, err)
	require.Equal(t, string(r.bench.card()), string(card))
	require.Contains(t, string(card), "WALL")
}

// In a booth it is the booth's card: what was agreed on first, as `boothset card` has it.
func TestInABoothItIsItsCard(t *testing.T) {
	dir := shopCopy(t)
	t.Chdir(t.TempDir())
	r := start(t, look{folder: dir})
	r.s.writeNew = writeNew
	press(r, deskAnswer...)
	done(r, "a", "enter")
	r.s.atOnce = false
	follow(t, r, "w")
	got, err := os.ReadFile("clear-two-2025-03-14.txt")
	require.NoError(t, err)
	require.Contains(t, string(got), "Booth two")
	require.Contains(t, string(got), "Agreed on 2025-03-14.")
	require.Contains(t, string(got), "Check at the gun:")
	f, err := shop.At(dir)
	require.NoError(t, err)
	defer f.Close()
	plan := r.result().Plan
	agreed, _ := card.AgreedFor(f, "two", plan)
	c := card.Card{Plan: plan, Booth: "Booth two", Agreed: agreed, Printed: testDay}
	require.Equal(t, string(answer.Print(c.Rows(r.s.words, r.s.sys), answer.Width, r.s.words)), string(got))
}
