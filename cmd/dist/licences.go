package main

import (
	"bytes"
	"debug/buildinfo"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// What a module's licence is called, and what else is handed on beside it.
var (
	licence = regexp.MustCompile(`(?i)^(licen[cs]e|copying|unlicen[cs]e)([-_.].*)?$`)
	notice  = regexp.MustCompile(`(?i)^(notice|patents|copyright)([-_.].*)?$`)
)

// linked is a package that is linked in.
type linked struct {
	Dir      string
	Standard bool
	Module   *struct {
		Path, Version, Dir string
		Main               bool
	}
}

// stated is the file of a module that has none of a licence's name but says in it which it is.
var stated = map[string]string{
	"github.com/mattn/go-localereader v0.0.1": "README.md", // MIT
}

// notices is the licence of everything in the programs: of each module that they themselves
// name, with those that stand deeper, beside a linked package; and of the language itself. One
// without a licence is an error.
func (t target) notices(infos []*buildinfo.BuildInfo) ([]byte, error) {
	packages, err := t.linked()
	if err != nil {
		return nil, err
	}
	folders, roots := modules(packages)
	var b bytes.Buffer
	fmt.Fprintf(&b, "%s itself has no licence yet: that is its owner's to choose.\nIts programs hold the following.\n", name)
	root, err := run(nil, "go", "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	goroot := strings.TrimSpace(string(root))
	if err := texts(&b, "Go "+infos[0].GoVersion, goroot, []string{goroot}); err != nil {
		return nil, err
	}
	named := map[string]bool{}
	for _, info := range infos {
		for _, m := range info.Deps {
			named[m.Path+" "+m.Version] = true
		}
	}
	all := slices.Sorted(maps.Keys(folders))
	if in := slices.Sorted(maps.Keys(named)); !slices.Equal(in, all) {
		return nil, fmt.Errorf("the programs name other modules than their packages come from:\n%v\n%v", in, all)
	}
	for _, id := range all {
		if err := texts(&b, id, roots[id], folders[id]); err != nil {
			return nil, err
		}
	}
	return b.Bytes(), nil
}

// modules is the folders of the packages that are not ours or the language's, by module, and the
// root of each.
func modules(packages []linked) (folders map[string][]string, roots map[string]string) {
	folders, roots = map[string][]string{}, map[string]string{}
	for _, p := range packages {
		if p.Standard || p.Module == nil || p.Module.Main {
			continue
		}
		id := p.Module.Path + " " + p.Module.Version
		roots[id] = p.Module.Dir
		folders[id] = append(folders[id], p.Dir)
	}
	return folders, roots
}

// linked lists the packages of the programs for the target.
func (t target) linked() (all []linked, err error) {
	out, err := run(t.env(), "go", append([]string{"list", "-deps", "-json=Dir,Standard,Module"}, sources()...)...)
	if err != nil {
		return nil, err
	}
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var p linked
		switch err := d.Decode(&p); {
		case errors.Is(err, io.EOF):
			return all, nil
		case err != nil:
			return nil, err
		}
		all = append(all, p)
	}
}

// texts writes the licences and notices of a module: those in its root, and in the folders from
// there to each linked package.
func texts(w io.Writer, id, root string, packages []string) error {
	dirs := map[string]bool{root: true}
	for _, dir := range packages {
		for ; dir != root && strings.HasPrefix(dir, root); dir = filepath.Dir(dir) {
			dirs[dir] = true
		}
	}
	licensed := false
	for _, dir := range slices.Sorted(maps.Keys(dirs)) {
		entries, err := os.ReadDir(dir)
		if err != nil {
			return err
		}
		for _, e := range entries {
			isLicence := licence.MatchString(e.Name()) || e.Name() == stated[id]
			if e.IsDir() || filepath.Ext(e.Name()) == ".go" || !isLicence && !notice.MatchString(e.Name()) {
				continue
			}
			text, err := os.ReadFile(filepath.Join(dir, e.Name()))
			if err != nil {
				return err
			}
			licensed = licensed || isLicence && dir == root
			below, err := filepath.Rel(root, filepath.Join(dir, e.Name()))
			if err != nil {
				return err
			}
			fmt.Fprintf(w, "\n======== %s: %s\n\n%s\n", id, filepath.ToSlash(below), bytes.TrimRight(text, "\n"))
		}
	}
	if !licensed {
		return fmt.Errorf("%s has no licence in %s", id, root)
	}
	return nil
}
