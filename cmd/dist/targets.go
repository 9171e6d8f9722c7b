package main

import (
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"time"
)

// target is a system and a processor that programs are built for.
type target struct {
	os, arch string
	as       string // what the processor is called in names of files
	pkg      string // what the packager calls it
}

var targets = []target{
	{"linux", "amd64", "amd64", "amd64"},
	{"linux", "arm64", "arm64", "arm64"},
	{"linux", "arm", "armv7", "arm7"},
	{"darwin", "amd64", "amd64", ""},
	{"darwin", "arm64", "arm64", ""},
	{"windows", "amd64", "amd64", ""},
}

// systems is what people call the systems.
var systems = map[string]string{"linux": "linux", "darwin": "macos", "windows": "windows"}

func (t target) String() string { return systems[t.os] + "_" + t.as }

// file is what a program is called there.
func (t target) file(program string) string {
	if t.os == "windows" {
		return program + ".exe"
	}
	return program
}

// env is what says to the toolchain what is built. What else a machine may have set is put
// back, so that it is the same everywhere. BUILD_CACHE is a build cache for the programs alone,
// an empty one builds them from nothing.
func (t target) env() []string {
	var cache []string
	if at := os.Getenv("BUILD_CACHE"); at != "" {
		cache = []string{"GOCACHE=" + at}
	}
	return append(cache, "CGO_ENABLED=0", "GOOS="+t.os, "GOARCH="+t.arch, "GOARM=7", "GOAMD64=v1", "GOARM64=v8.0", "GOFLAGS=", "GOEXPERIMENT=", "GOWORK=off")
}

// sources is where the programs come from.
func sources() (all []string) {
	for _, p := range programs {
		all = append(all, "./cmd/"+p)
	}
	return all
}

// build builds the programs into a folder.
func (t target) build(dir string) error {
	args := []string{"build", "-trimpath", "-buildvcs=true", "-ldflags=-s -w", "-o", dir + string(filepath.Separator)}
	_, err := run(t.env(), "go", append(args, sources()...)...)
	return err
}

// bill writes the bill of materials of a program that is built: the modules in it, in CycloneDX.
func (r *release) bill(t target, program, at string) error {
	file := filepath.Join(r.out, fmt.Sprintf("%s_%s_%s.cdx.json", program, r.version, t))
	if _, err := run([]string{"GOFLAGS=-trimpath"}, "go", "run", "github.com/CycloneDX/cyclonedx-gomod/cmd/cyclonedx-gomod@v1.9.0",
		"bin", "-json", "-std", "-noserial", "-version", r.version, "-output", file, at); err != nil {
		return err
	}
	bill, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	made := fmt.Appendf(nil, `"timestamp": %q`, r.made.Format(time.RFC3339))
	return os.WriteFile(file, timestamp.ReplaceAll(bill, made), 0o644)
}

// timestamp is when a bill was made, which is to be when the commit was.
var timestamp = regexp.MustCompile(`"timestamp": "[^"]*"`)
