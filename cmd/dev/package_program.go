package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// edition is one system's build of both programs.
type edition struct {
	target
	// cross is the compiler for C where it is not this machine's own.
	cross string
}

// windowEnvironment is in which the window is built, which needs C.
func (e edition) windowEnvironment() []string {
	env := []string{"CGO_ENABLED=1", "GOOS=" + e.system, "GOARCH=" + e.processor}
	if e.cross != "" {
		env = append(env, "CC="+e.cross)
	}
	return env
}

// batchEnvironment is in which ogive-batch is built, which needs no C.
func (e edition) batchEnvironment() []string {
	return []string{"CGO_ENABLED=0", "GOOS=" + e.system, "GOARCH=" + e.processor}
}

// tags are those that Fyne's own tool sets for a release.
func (e edition) tags(a app) string {
	if a.Migrations["fyneDo"] {
		return "release,migrated_fynedo"
	}
	return "release"
}

func (e edition) linking() string {
	if e.system != "windows" {
		return "-s -w"
	}
	// No console opens behind the window, and no DLL of the compiler is wanted
	// where the program is run.
	return "-s -w -H=windowsgui -extldflags=-static"
}

// buildWindow builds the window with the program's name, version and icon
// compiled in, and gives the path of what it built.
func (w workshop) buildWindow(e edition, a app, folder string) (string, error) {
	source, err := a.metadata()
	if err != nil {
		return "", fmt.Errorf("write the program's metadata: %w", err)
	}
	overlay, err := w.overlay(folder, map[string][]byte{"cmd/ogive/packaged.go": source})
	if err != nil {
		return "", err
	}
	built := filepath.Join(folder, filepath.Base(program(programName, e.system)))
	return built, w.run(e.windowEnvironment(), "go", "build", "-trimpath", "-overlay", overlay, "-tags", e.tags(a),
		"-ldflags", e.linking(), "-o", built, windowPackage)
}

func (w workshop) buildBatch(e edition, folder string) (string, error) {
	built := filepath.Join(folder, filepath.Base(program(programName+"-batch", e.system)))
	return built, w.run(e.batchEnvironment(), "go", "build", "-trimpath", "-ldflags", "-s -w", "-o", built, batchPackage)
}

// overlay makes the Go command see files that are not in the repository, so
// that packaging writes nothing among the sources.
func (w workshop) overlay(folder string, files map[string][]byte) (string, error) {
	replaced := map[string]string{}
	for name, text := range files {
		kept := filepath.Join(folder, filepath.Base(name))
		if err := os.WriteFile(kept, text, 0o644); err != nil {
			return "", err
		}
		replaced[filepath.Join(w.root, filepath.FromSlash(name))] = kept
	}
	listed, err := json.Marshal(struct{ Replace map[string]string }{replaced})
	if err != nil {
		return "", err
	}
	path := filepath.Join(folder, "overlay.json")
	return path, os.WriteFile(path, listed, 0o644)
}

// contents is everything others wrote that the edition's two programs contain.
func (w workshop) contents(e edition, a app) ([]component, error) {
	golang, err := exec.Command("go", "env", "GOROOT", "GOVERSION").Output()
	if err != nil {
		return nil, fmt.Errorf("ask go where it lies: %w", err)
	}
	root, version, _ := strings.Cut(strings.TrimSpace(string(golang)), "\n")
	all := []component{standardLibrary(root, strings.TrimSpace(version))}
	if e.system == "windows" {
		c, err := windowsRuntime(os.DirFS("/"))
		if err != nil {
			return nil, err
		}
		all = append(all, c)
	}
	compiled, err := w.compiled(e.windowEnvironment(), e.tags(a), windowPackage)
	if err != nil {
		return nil, err
	}
	batch, err := w.compiled(e.batchEnvironment(), "", batchPackage)
	if err != nil {
		return nil, err
	}
	both, err := modules(bytes.NewReader(append(compiled, batch...)))
	return append(all, both...), err
}

// compiled asks Go which packages are compiled into a program.
func (w workshop) compiled(env []string, tags, path string) ([]byte, error) {
	asked := exec.Command("go", "list", "-deps", "-json=ImportPath,Standard,Module", "-tags", tags, path)
	asked.Dir, asked.Env, asked.Stderr = w.root, append(os.Environ(), env...), w.out
	answer, err := asked.Output()
	if err != nil {
		return nil, fmt.Errorf("ask go what %s is made of: %w", path, err)
	}
	return answer, nil
}
