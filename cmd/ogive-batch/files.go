package main

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"ogive/imaging/marksfile"
	"ogive/imaging/planfile"
	"ogive/imaging/report"
)

// marksFiles lists the marks files that the arguments name, each once: a folder
// stands for its *.json files in the order of their names, not for those of the
// folders inside it. Readings and plans that this program wrote are passed over. A file
// that is no marks file is listed too, so that nothing is left out in silence.
func marksFiles(arguments []string) (files []string, faults []error) {
	for _, a := range arguments {
		found, err := expanded(a)
		if err != nil {
			faults = append(faults, err)
		}
		for _, f := range found {
			if !slices.Contains(files, f) {
				files = append(files, f)
			}
		}
	}
	return files, faults
}

func expanded(argument string) ([]string, error) {
	if !isFolder(argument) {
		return []string{argument}, nil
	}
	entries, err := os.ReadDir(argument)
	if err != nil {
		return nil, fmt.Errorf("%s: the folder can't be read: %w; check that you may read it", argument, err)
	}
	var out []string
	for _, e := range entries {
		path := filepath.Join(argument, e.Name())
		if !e.IsDir() && strings.EqualFold(filepath.Ext(path), ".json") && !isOurs(path) {
			out = append(out, path)
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("%s: the folder holds no marks files (*.json); give the folder where they lie", argument)
	}
	return out, nil
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

func folderAmong(paths []string) bool { return slices.ContainsFunc(paths, isFolder) }

// isOurs reports whether the file is a reading or a plan.
func isOurs(path string) bool {
	info, err := os.Stat(path)
	if err != nil || !info.Mode().IsRegular() || info.Size() > marksfile.MaxSize {
		return false
	}
	data, err := os.ReadFile(path)
	return err == nil && (report.IsReading(data) || planfile.IsPlan(data))
}
