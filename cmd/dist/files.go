package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io"
	"io/fs"
	"math/rand/v2"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"time"

	"boothset/cmd/boothset/command"
	"boothset/presets/catalogue"
	"boothset/presets/demo"
	"boothset/presets/question"
	"boothset/presets/words"

	"github.com/google/uuid"
)

// file is a file that is handed out, its name with slashes.
type file struct {
	name string
	mode fs.FileMode
	data []byte
}

// shells is the file that a shell looks for completions in.
var shells = map[string]string{"bash": "boothset.bash", "zsh": "_boothset", "fish": "boothset.fish", "powershell": "boothset.ps1"}

// sharedFiles is what is the same for every target: the README, man pages, completions, the
// demo shop.
func (r *release) sharedFiles() (all []file, err error) {
	readme, err := os.ReadFile("README.md")
	if err != nil {
		return nil, err
	}
	all = append(all, file{"README.md", 0o644, readme})
	for _, lang := range words.Languages() {
		dir := filepath.Join(r.work, "man", lang)
		if _, err := run(nil, "go", "run", "./cmd/man", dir, lang); err != nil {
			return nil, err
		}
		pages, err := under(dir, path.Join("man", lang))
		if err != nil {
			return nil, err
		}
		all = append(all, pages...)
	}
	for shell, name := range shells {
		var out, errs bytes.Buffer
		p := &command.Program{Std: command.Stdio{Out: &out, Err: &errs}, Getenv: func(string) string { return "" }}
		if code := command.Run(p, []string{"completion", shell}); code != 0 {
			return nil, fmt.Errorf("completion %s: %d %s", shell, code, &errs)
		}
		all = append(all, file{"completions/" + name, 0o644, out.Bytes()})
	}
	shop, err := r.demo()
	return append(all, shop...), err
}

// demo is the demo shop as of the day of the commit, with the same random ids each time.
func (r *release) demo() ([]file, error) {
	c, err := catalogue.Load(nil, "")
	if err != nil {
		return nil, err
	}
	reader, err := question.New(c)
	if err != nil {
		return nil, err
	}
	uuid.SetRand(rand.NewChaCha8(sha256.Sum256([]byte("demo"))))
	dir := filepath.Join(r.work, "demo")
	if err := demo.Make(dir, reader, r.made.Truncate(24*time.Hour)); err != nil {
		return nil, err
	}
	files, err := under(dir, "demo")
	return renamed(files), err
}

// agreed is the file of a setting: its booth and number, then its random id.
var agreed = regexp.MustCompile(`^(.*/settings/.*/\d+)-([0-9a-f-]{36})\.toml$`)

// renamed is the demo shop with settings whose ids, which say when they were made, go by booth
// and number instead.
func renamed(files []file) []file {
	var pairs []string
	for _, f := range files {
		if m := agreed.FindStringSubmatch(f.name); m != nil {
			pairs = append(pairs, m[2], uuid.NewSHA1(uuid.Nil, []byte(m[1])).String())
		}
	}
	ids := strings.NewReplacer(pairs...)
	for i, f := range files {
		files[i] = file{ids.Replace(f.name), f.mode, []byte(ids.Replace(string(f.data)))}
	}
	return files
}

// under is every file in a folder, as below another name.
func under(dir, as string) (all []file, err error) {
	err = filepath.WalkDir(dir, func(at string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		below, err := filepath.Rel(dir, at)
		if err != nil {
			return err
		}
		data, err := os.ReadFile(at)
		if err != nil {
			return err
		}
		all = append(all, file{path.Join(as, filepath.ToSlash(below)), 0o644, data})
		return nil
	})
	return all, err
}

// sums writes the SHA-256 of every file in a folder beside them, as sha256sum -c reads it.
func sums(dir string) error {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	for _, e := range entries {
		f, err := os.Open(filepath.Join(dir, e.Name()))
		if err != nil {
			return err
		}
		h := sha256.New()
		_, err = io.Copy(h, f)
		f.Close()
		if err != nil {
			return err
		}
		fmt.Fprintf(&b, "%x  %s\n", h.Sum(nil), e.Name())
	}
	return os.WriteFile(filepath.Join(dir, "SHA256SUMS"), b.Bytes(), 0o644)
}
