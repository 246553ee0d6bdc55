package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"os/exec"
	"strconv"
	"strings"
	"time"
)

// packed is one file of a package.
type packed struct {
	// name is its path in the archive, with slashes.
	name string
	data []byte
	// program is true of what may be run.
	program bool
}

// tarball packs files so that equal files give equal archives: nothing of the
// machine or the moment gets in but the given time.
func tarball(files []packed, at time.Time) ([]byte, error) {
	var out bytes.Buffer
	squeezed, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return nil, err
	}
	archive := tar.NewWriter(squeezed)
	for _, f := range files {
		header := &tar.Header{Typeflag: tar.TypeReg, Name: f.name, Size: int64(len(f.data)), Mode: 0o644, ModTime: at}
		if f.program {
			header.Mode = 0o755
		}
		if err := archive.WriteHeader(header); err != nil {
			return nil, fmt.Errorf("pack %s: %w", f.name, err)
		}
		if _, err := archive.Write(f.data); err != nil {
			return nil, fmt.Errorf("pack %s: %w", f.name, err)
		}
	}
	if err := archive.Close(); err != nil {
		return nil, err
	}
	if err := squeezed.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// zipped does for Windows what tarball does for Linux.
func zipped(files []packed, at time.Time) ([]byte, error) {
	var out bytes.Buffer
	archive := zip.NewWriter(&out)
	for _, f := range files {
		header := &zip.FileHeader{Name: f.name, Method: zip.Deflate, Modified: at}
		header.SetMode(0o644)
		if f.program {
			header.SetMode(0o755)
		}
		w, err := archive.CreateHeader(header)
		if err != nil {
			return nil, fmt.Errorf("pack %s: %w", f.name, err)
		}
		if _, err := io.Copy(w, bytes.NewReader(f.data)); err != nil {
			return nil, fmt.Errorf("pack %s: %w", f.name, err)
		}
	}
	if err := archive.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// stamp is the time that packed files bear: that of the last commit, so that a
// commit packed twice gives the same package. SOURCE_DATE_EPOCH overrules it, as
// reproducible-builds.org has it; a folder without history counts as 1 January
// 1980, the first day a zip file knows.
func stamp(environment func(string) string, root string) (time.Time, error) {
	seconds := environment("SOURCE_DATE_EPOCH")
	if seconds == "" {
		asked := exec.Command("git", "log", "-1", "--format=%ct")
		asked.Dir = root
		answer, err := asked.Output()
		if err != nil {
			return time.Date(1980, time.January, 1, 0, 0, 0, 0, time.UTC), nil
		}
		seconds = strings.TrimSpace(string(answer))
	}
	at, err := strconv.ParseInt(seconds, 10, 64)
	if err != nil {
		return time.Time{}, fmt.Errorf("the time of the package must be whole seconds since 1970, not %q", seconds)
	}
	return time.Unix(at, 0).UTC(), nil
}
