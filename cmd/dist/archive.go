package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"cmp"
	"compress/gzip"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"slices"
	"time"
)

// archive writes the files of a target into one archive, in a folder of its own: a zip for
// Windows, else a tar.gz.
func (r *release) archive(t target, files []file) error {
	stem := fmt.Sprintf("%s_%s_%s", name, r.version, t)
	pack, ext := tarred, ".tar.gz"
	if t.os == "windows" {
		pack, ext = zipped, ".zip"
	}
	data, err := pack(stem, files, r.made)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(r.out, stem+ext), data, 0o644)
}

// sorted is files in the order of their names.
func sorted(files []file) []file {
	return slices.SortedFunc(slices.Values(files), func(a, b file) int { return cmp.Compare(a.name, b.name) })
}

// tarred is a tar.gz that goes by its files and the time alone: sorted, of nobody, and without
// a name or time in what compresses it.
func tarred(folder string, files []file, made time.Time) ([]byte, error) {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	t := tar.NewWriter(z)
	for _, f := range sorted(files) {
		h := &tar.Header{Typeflag: tar.TypeReg, Name: path.Join(folder, f.name), Size: int64(len(f.data)), Mode: int64(f.mode), ModTime: made, Format: tar.FormatUSTAR}
		if err := t.WriteHeader(h); err != nil {
			return nil, err
		}
		if _, err := t.Write(f.data); err != nil {
			return nil, err
		}
	}
	if err := t.Close(); err != nil {
		return nil, err
	}
	err = z.Close()
	return b.Bytes(), err
}

// zipped is the same as a zip.
func zipped(folder string, files []file, made time.Time) ([]byte, error) {
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, f := range sorted(files) {
		h := &zip.FileHeader{Name: path.Join(folder, f.name), Method: zip.Deflate, Modified: made.UTC()}
		h.SetMode(f.mode)
		w, err := z.CreateHeader(h)
		if err != nil {
			return nil, err
		}
		if _, err := w.Write(f.data); err != nil {
			return nil, err
		}
	}
	err := z.Close()
	return b.Bytes(), err
}

// gzipped is one file compressed, without its name or time.
func gzipped(data []byte) ([]byte, error) {
	var b bytes.Buffer
	z, err := gzip.NewWriterLevel(&b, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	if _, err := z.Write(data); err != nil {
		return nil, err
	}
	err = z.Close()
	return b.Bytes(), err
}
