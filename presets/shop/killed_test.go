package shop_test

import (
	"bufio"
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"boothset/calc/unit"
	"boothset/presets/question/questiontest"
	"boothset/presets/shop"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// writesTo is set for the program that writes into a folder until it is killed, and tells what
// it was told is kept.
const writesTo, stateOf = "SHOP_WRITES_TO", "SHOP_STATE_OF"

func TestMain(m *testing.M) {
	if dir := os.Getenv(writesTo); dir != "" {
		writeUntilKilled(dir, os.Getenv(stateOf))
	}
	os.Exit(m.Run())
}

func writeUntilKilled(dir, state string) {
	f, err := shop.At(dir)
	if err != nil {
		panic(err)
	}
	m, err := shop.MachineOf(func(name string) string { return map[string]string{"XDG_STATE_HOME": state}[name] })
	if err != nil {
		panic(err)
	}
	for i := 0; ; i++ {
		r, err := f.Keep(m, job(i%500), unit.US)
		if err != nil {
			panic(err)
		}
		fmt.Println("record", r.ID)
		if i%8 == 0 {
			s := shop.Setting{Booth: fmt.Sprint("booth-", os.Getpid()%20), Subject: clearMild, Agreed: aDay}
			kept, err := f.Agree(s, unit.US)
			if err != nil {
				panic(err)
			}
			fmt.Println("setting", kept.ID)
		}
	}
}

// heard is what a writer says, and a sign that it has begun to.
type heard struct {
	said  bytes.Buffer
	begun chan struct{}
	once  sync.Once
}

func (h *heard) Write(p []byte) (int, error) {
	n, err := h.said.Write(p)
	h.once.Do(func() { close(h.begun) })
	return n, err
}

// Two writers are killed at random moments, 200 times, on one folder: each record and each
// setting that either was told is kept is there, torn lines are named, and nothing else is
// wrong.
func TestKilledWritersLoseNothing(t *testing.T) {
	dir, state := t.ArtifactDir(), t.TempDir()
	confirmed := map[string]bool{}
	for run := range 200 {
		var writers []*exec.Cmd
		var said []*heard
		for range 2 {
			out := &heard{begun: make(chan struct{})}
			w := exec.Command(os.Args[0])
			w.Env = append(os.Environ(), writesTo+"="+dir, stateOf+"="+state)
			w.Stdout, w.Stderr = out, os.Stderr
			require.NoError(t, w.Start())
			writers, said = append(writers, w), append(said, out)
		}
		if run%2 == 0 { // every second time wherever they are, else as they write
			select {
			case <-said[0].begun:
			case <-time.After(time.Minute):
				require.Fail(t, "a writer writes nothing")
			}
		}
		time.Sleep(time.Duration(rand.IntN(40)) * time.Millisecond)
		for _, w := range writers {
			require.NoError(t, w.Process.Kill())
		}
		for i, w := range writers {
			w.Wait() // it says that it was killed
			for lines := bufio.NewScanner(&said[i].said); lines.Scan(); {
				confirmed[lines.Text()] = true
			}
		}
	}
	f := at(t, dir)
	there := map[string]bool{}
	for _, booth := range f.LoggedBooths() {
		log, faults := f.Log(booth)
		for _, r := range log {
			there["record "+r.ID] = true
		}
		for _, fault := range faults {
			assert.Equal(t, "shop-torn", fault.ID)
		}
	}
	booths, err := filepath.Glob(filepath.Join(dir, "settings", "*"))
	require.NoError(t, err)
	for _, booth := range booths {
		all, faults := f.Settings(filepath.Base(booth))
		assert.Empty(t, faults)
		for _, s := range all {
			there["setting "+s.ID] = true
		}
	}
	for what := range confirmed {
		assert.True(t, there[what], what)
	}
	require.GreaterOrEqual(t, len(confirmed), 100)
	_, faults := f.Check(questiontest.Open(t), aDay.AddDate(1, 0, 0))
	for _, fault := range faults {
		known := []string{"shop-torn", "shop-cut-off", "shop-settings-alone", "shop-twins"}
		assert.Contains(t, known, fault.ID, fault.Error())
	}
	t.Logf("%d confirmed, %d there", len(confirmed), len(there))
}

// A full disk and a folder that may only be read are clear errors, and nothing is lost.
func TestAFullDisk(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "small")
	require.NoError(t, os.Mkdir(dir, 0o700))
	if out, err := exec.Command("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", dir).CombinedOutput(); err != nil {
		t.Skipf("whoever runs this may not mount a small disk: %s", bytes.TrimSpace(out))
	}
	t.Cleanup(func() { exec.Command("umount", dir).Run() })
	f, m := at(t, dir), machine(t)
	kept := 0
	var full error
	for full == nil && kept < 1000 {
		if _, full = f.Keep(m, job(kept%500), unit.US); full == nil {
			kept++
		}
	}
	require.ErrorContains(t, full, "no space left")
	require.ErrorContains(t, full, "what was there is as it was")
	log, faults := f.Log("two")
	assert.Empty(t, faults, "nothing torn is left")
	assert.Len(t, log, kept)
	_, err := f.Agree(shop.Setting{Booth: "two", Subject: clearMild, Why: strings.Repeat("x", 9000)}, unit.US)
	require.ErrorContains(t, err, "no space left")
	_, faults = f.Check(questiontest.Open(t), aDay.AddDate(1, 0, 0))
	assert.Empty(t, ids(faults), "what was on its way is gone")
}

func TestAFolderThatMayOnlyBeRead(t *testing.T) {
	if os.Geteuid() <= 0 {
		if out, err := exec.Command("mount", "--version").CombinedOutput(); err != nil {
			t.Skipf("whoever runs this may write anywhere: %s", out)
		}
	}
	dir := t.TempDir()
	f, m := at(t, dir), machine(t)
	_, err := f.Keep(m, job(1), unit.US)
	require.NoError(t, err)
	if os.Geteuid() <= 0 {
		if out, err := exec.Command("mount", "--bind", dir, dir).CombinedOutput(); err != nil {
			t.Skipf("whoever runs this may write anywhere, and not mount: %s", bytes.TrimSpace(out))
		}
		t.Cleanup(func() { exec.Command("umount", dir).Run() })
		if out, err := exec.Command("mount", "-o", "remount,ro,bind", dir).CombinedOutput(); err != nil {
			t.Skipf("whoever runs this may write anywhere, and not mount: %s", bytes.TrimSpace(out))
		}
	} else {
		require.NoError(t, filepath.Walk(dir, func(path string, info os.FileInfo, _ error) error { return os.Chmod(path, info.Mode()&^0o222) }))
		t.Cleanup(func() {
			filepath.Walk(dir, func(path string, info os.FileInfo, _ error) error { return os.Chmod(path, info.Mode()|0o200) }) //nolint:errcheck // the folder goes
		})
	}
	f = at(t, dir)
	_, err = f.Keep(m, job(2), unit.US)
	require.ErrorContains(t, err, "cannot be written")
	_, err = f.Agree(shop.Setting{Booth: "two", Subject: clearMild}, unit.US)
	require.ErrorContains(t, err, "cannot be written")
	log, faults := f.Log("two")
	assert.Empty(t, faults)
	assert.Len(t, log, 1)
}
