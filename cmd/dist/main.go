// Dist makes what is handed out of the commit that is checked out: for each target an archive
// and, for Linux, packages, with manual, completions, a demo shop and the licences of all that
// is linked in; a bill of materials for each program; sums. The same commit makes the same
// bytes in any folder. It is run in a clone of its own, by make dist:
//
//	go run ./cmd/dist FOLDER
package main

import (
	"bytes"
	"debug/buildinfo"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"
)

// name is the package's; programs are what it brings, the first one the package's own.
const name = "boothset"

var programs = []string{"boothset", "boothset-serve"}

func main() {
	if len(os.Args) != 2 {
		fmt.Fprintln(os.Stderr, "dist", "FOLDER")
		os.Exit(2)
	}
	out, err := filepath.Abs(os.Args[1])
	if err == nil {
		err = dist(out)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "dist:", err)
		os.Exit(1)
	}
}

// release is what all targets share.
type release struct {
	out     string // where all goes
	work    string // where things are made
	made    time.Time
	version string
	shared  []file // what every target's archive holds
}

func dist(out string) error {
	made, err := commitTime()
	if err != nil {
		return err
	}
	work, err := os.MkdirTemp("", "boothset-dist")
	if err != nil {
		return err
	}
	defer os.RemoveAll(work)
	if err := os.RemoveAll(out); err != nil {
		return err
	}
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	r := &release{out: out, work: work, made: made}
	if r.shared, err = r.sharedFiles(); err != nil {
		return err
	}
	for _, t := range targets {
		fmt.Println(t)
		if err := r.make(t); err != nil {
			return fmt.Errorf("%s: %w", t, err)
		}
	}
	return sums(out)
}

// make is all of one target.
func (r *release) make(t target) error {
	dir := filepath.Join(r.work, t.String())
	if err := t.build(dir); err != nil {
		return err
	}
	var infos []*buildinfo.BuildInfo
	files := slices.Clone(r.shared)
	for _, p := range programs {
		at := filepath.Join(dir, t.file(p))
		info, err := buildinfo.ReadFile(at)
		if err != nil {
			return err
		}
		infos = append(infos, info)
		binary, err := os.ReadFile(at)
		if err != nil {
			return err
		}
		fmt.Printf("  %s %.1f MB\n", p, float64(len(binary))/1e6)
		files = append(files, file{t.file(p), 0o755, binary})
	}
	var err error
	if r.version, err = versionOf(infos[0].Main.Version); err != nil {
		return err
	}
	notices, err := t.notices(infos)
	if err != nil {
		return err
	}
	files = append(files, file{"licences.txt", 0o644, notices})
	for _, p := range programs {
		if err := r.bill(t, p, filepath.Join(dir, t.file(p))); err != nil {
			return err
		}
	}
	if err := r.archive(t, files); err != nil {
		return err
	}
	if t.os != "linux" {
		return nil
	}
	return r.packages(t, files)
}

// versionOf is a version of the build as packages write it: that of a commit without a tag is
// before the first release, its time and its beginning.
func versionOf(version string) (string, error) {
	if !strings.HasPrefix(version, "v") || strings.Contains(version, "+dirty") {
		return "", fmt.Errorf("version %q: not a commit that is checked out whole, in a clone of its own", version)
	}
	return strings.NewReplacer("-", "~").Replace(untagged.ReplaceAllString(version[1:], "~$1.$2")), nil
}

// untagged is what the toolchain adds to the last version for a commit of a time.
var untagged = regexp.MustCompile(`-(?:0\.)?(\d{14})-([0-9a-f]{12})$`)

// commitTime is when the commit was made, or what SOURCE_DATE_EPOCH says.
func commitTime() (time.Time, error) {
	epoch := os.Getenv("SOURCE_DATE_EPOCH")
	if epoch == "" {
		out, err := run(nil, "git", "log", "-1", "--format=%ct")
		if err != nil {
			return time.Time{}, err
		}
		epoch = strings.TrimSpace(string(out))
	}
	seconds, err := strconv.ParseInt(epoch, 10, 64)
	if err != nil {
		return time.Time{}, err
	}
	return time.Unix(seconds, 0).UTC(), nil
}

// run is what a command writes; with env beside what the environment holds.
func run(env []string, command string, args ...string) ([]byte, error) {
	cmd := exec.Command(command, args...)
	cmd.Env = append(os.Environ(), env...)
	var out, errs bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &errs
	if err := cmd.Run(); err != nil {
		return nil, fmt.Errorf("%s: %w\n%s%s", cmd, err, out.Bytes(), errs.Bytes())
	}
	return out.Bytes(), nil
}
