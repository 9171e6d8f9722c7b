package main

import (
	"cmp"
	"encoding/json"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"boothset/presets/words"
)

// maintainer is who made the packages, where MAINTAINER does not say.
const maintainer = "Whoever built this package <root@localhost>"

// noLicence is what the field of the program's own licence says.
const noLicence = "not chosen yet"

// packages makes the packages of a target for the two kinds of package that Linux has most.
func (r *release) packages(t target, files []file) error {
	about := words.English().Say("usage-intro")
	for _, kind := range []string{"deb", "rpm"} {
		dir := filepath.Join(r.work, t.String(), kind)
		c, err := r.contents(dir, kind, files)
		if err != nil {
			return err
		}
		config := packaging{
			Name: name, Arch: t.pkg, Platform: "linux", Version: r.version, VersionSchema: "none", Release: "1",
			Section: "utils", Priority: "optional", License: noLicence, MTime: r.made,
			Maintainer:  cmp.Or(os.Getenv("MAINTAINER"), maintainer),
			Description: about, RPM: rpm{BuildHost: "localhost", Summary: about}, Contents: c,
		}
		data, err := json.Marshal(config) // JSON is YAML too
		if err != nil {
			return err
		}
		file := filepath.Join(dir, "nfpm.yaml")
		if err := os.WriteFile(file, data, 0o644); err != nil {
			return err
		}
		if _, err := run(nil, "go", "run", "github.com/goreleaser/nfpm/v2/cmd/nfpm@v2.45.2",
			"package", "--config", file, "--packager", kind, "--target", r.out); err != nil {
			return err
		}
	}
	return nil
}

// packaging is what the packager is told.
type packaging struct {
	Name          string    `json:"name"`
	Arch          string    `json:"arch"`
	Platform      string    `json:"platform"`
	Version       string    `json:"version"`
	VersionSchema string    `json:"version_schema"`
	Release       string    `json:"release"`
	Section       string    `json:"section"`
	Priority      string    `json:"priority"`
	Maintainer    string    `json:"maintainer"`
	Description   string    `json:"description"`
	License       string    `json:"license"`
	MTime         time.Time `json:"mtime"`
	RPM           rpm       `json:"rpm"`
	Contents      []content `json:"contents"`
}

type rpm struct {
	BuildHost string `json:"buildhost"`
	Summary   string `json:"summary"`
}

// content is a file of a package, or with the type dir a folder that is its own.
type content struct {
	Src  string   `json:"src,omitempty"`
	Dst  string   `json:"dst"`
	Type string   `json:"type,omitempty"`
	Info fileInfo `json:"file_info"`
}

type fileInfo struct {
	Mode  uint32    `json:"mode"`
	Owner string    `json:"owner"`
	Group string    `json:"group"`
	MTime time.Time `json:"mtime"`
}

func (r *release) info(mode fs.FileMode) fileInfo {
	return fileInfo{Mode: uint32(mode), Owner: "root", Group: "root", MTime: r.made}
}

// Where the package's own folders are.
const docs, share = "/usr/share/doc/boothset", "/usr/share/boothset"

// place is where a file of an archive lies on a system with packages of a kind, empty for one
// that it has no use for.
func place(name, kind string) string {
	dir, base := path.Split(name)
	switch {
	case slices.Contains(programs, name):
		return "/usr/bin/" + name
	case name == "licences.txt" && kind == "deb": // Debian Policy 12.5
		return docs + "/copyright"
	case name == "licences.txt", name == "README.md":
		return docs + "/" + name
	case dir == "man/en/":
		return "/usr/share/man/man1/" + base + ".gz"
	case strings.HasPrefix(dir, "man/"):
		return "/usr/share/man/" + path.Base(dir) + "/man1/" + base + ".gz"
	case base == shells["bash"]:
		return "/usr/share/bash-completion/completions/boothset"
	case base == shells["fish"]:
		return "/usr/share/fish/vendor_completions.d/" + base
	case base == shells["zsh"] && kind == "deb":
		return "/usr/share/zsh/vendor-completions/" + base
	case base == shells["zsh"]:
		return "/usr/share/zsh/site-functions/" + base
	case strings.HasPrefix(dir, "demo/"):
		return share + "/" + name
	}
	return ""
}

// contents writes the files of a package into a folder and lists them, and the folders that
// are the package's own.
func (r *release) contents(dir, kind string, files []file) (all []content, err error) {
	own := map[string]bool{}
	for _, f := range sorted(files) {
		dst := place(f.name, kind)
		if dst == "" {
			continue
		}
		data := f.data
		if path.Ext(dst) == ".gz" {
			if data, err = gzipped(data); err != nil {
				return nil, err
			}
		}
		src := filepath.Join(dir, "root", filepath.FromSlash(dst))
		if err := os.MkdirAll(filepath.Dir(src), 0o755); err != nil {
			return nil, err
		}
		if err := os.WriteFile(src, data, f.mode); err != nil {
			return nil, err
		}
		all = append(all, content{Src: src, Dst: dst, Info: r.info(f.mode)})
		for at := path.Dir(dst); strings.HasPrefix(at, docs) || strings.HasPrefix(at, share); at = path.Dir(at) {
			own[at] = true
		}
	}
	for _, at := range slices.Sorted(maps.Keys(own)) {
		all = append(all, content{Dst: at, Type: "dir", Info: r.info(0o755)})
	}
	return all, nil
}
