package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

// bench is a workshop in a folder of its own, holding the given files.
func bench(t *testing.T, files map[string]string) (workshop, *bytes.Buffer) {
	t.Helper()
	w := workshop{root: t.TempDir()}
	for name, text := range files {
		path := filepath.Join(w.root, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	said := new(bytes.Buffer)
	w.out = said
	return w, said
}

func TestAFailedStepDoesNotHideTheNext(t *testing.T) {
	w, said := bench(t, nil)
	err := w.summarise(w.walk([]step{
		{"first", func() error { return errors.New("it leaks") }},
		{"second", func() error { return nil }},
		{"third", func() error { return errors.New("it squeaks") }},
	}))
	if err == nil || !strings.Contains(err.Error(), "first, third") {
		t.Errorf("error %v does not name the failed steps", err)
	}
	for _, s := range []string{"it leaks", "it squeaks", "== second", "passed", "FAILED"} {
		if !strings.Contains(said.String(), s) {
			t.Errorf("the report lacks %q:\n%s", s, said)
		}
	}
	if err := w.summarise(w.walk([]step{{"only", func() error { return nil }}})); err != nil {
		t.Errorf("all steps passed, yet %v", err)
	}
}

func TestUnformattedFilesAreNamed(t *testing.T) {
	w, _ := bench(t, map[string]string{
		"geometry/a/good.go":        "package a\n\nvar x = 1\n",
		"geometry/a/bad.go":         "package a\nvar  x=1\n",
		"geometry/a/testdata/no.go": "package a\nvar  x=1\n",
	})
	err := w.formatted()
	if err == nil || err.Error() != "run gofmt -w geometry/a/bad.go" {
		t.Errorf("error %v, want the one bad file named", err)
	}
}

func TestFuzzTargetsAreFoundWithTheirPackages(t *testing.T) {
	const list = "ok  \togive/geometry/arch\t0.003s\n" +
		"?   \togive/geometry/hand\t[no test files]\n" +
		"FuzzOne\nFuzzTwo\nok  \togive/geometry/norms\t0.002s\n" +
		"FuzzThree\nok  \togive/imaging/photo\t(cached)\n"
	want := []fuzzTargets{
		{"ogive/geometry/norms", []string{"FuzzOne", "FuzzTwo"}},
		{"ogive/imaging/photo", []string{"FuzzThree"}},
	}
	if got := parseTargets(list); !reflect.DeepEqual(got, want) {
		t.Errorf("found %v, want %v", got, want)
	}
}

func TestAHangingTargetIsToldFromASlowOne(t *testing.T) {
	const start = "fuzz: elapsed: 0s, gathering baseline coverage: 0/1 completed\n" +
		"fuzz: elapsed: 0s, gathering baseline coverage: 1/1 completed, now fuzzing with 2 workers\n"
	for name, c := range map[string]struct {
		report  string
		stalled bool
	}{
		"slow": {start +
			"fuzz: elapsed: 15s, execs: 300 (20/sec), new interesting: 0 (total: 1)\n" +
			"fuzz: elapsed: 18s, execs: 301 (0/sec), new interesting: 0 (total: 1)\n" +
			"fuzz: elapsed: 20s, execs: 301 (0/sec), new interesting: 0 (total: 1)\n", false},
		"hanging": {start +
			"fuzz: elapsed: 9s, execs: 300 (20/sec), new interesting: 0 (total: 1)\n" +
			"fuzz: elapsed: 12s, execs: 300 (20/sec), new interesting: 0 (total: 1)\n" +
			"fuzz: elapsed: 15s, execs: 300 (20/sec), new interesting: 0 (total: 1)\n" +
			"fuzz: elapsed: 18s, execs: 300 (0/sec), new interesting: 0 (total: 1)\n" +
			"fuzz: elapsed: 20s, execs: 300 (0/sec), new interesting: 1 (total: 2)\n", true},
		"hanging on a seed": {
			"fuzz: elapsed: 9s, gathering baseline coverage: 3/9 completed\n" +
				"fuzz: elapsed: 12s, gathering baseline coverage: 3/9 completed\n" +
				"fuzz: elapsed: 15s, gathering baseline coverage: 3/9 completed\n" +
				"fuzz: elapsed: 18s, gathering baseline coverage: 3/9 completed\n" +
				"fuzz: elapsed: 21s, gathering baseline coverage: 3/9 completed\n", true},
		"silent": {"", true},
	} {
		if got := stalled(c.report); got != c.stalled {
			t.Errorf("a %s target is taken as stalled: %v", name, got)
		}
	}
}

func TestTheBatchProgramIsBuiltForEverySystem(t *testing.T) {
	built := map[string]bool{}
	for _, target := range targets() {
		built[target.String()] = true
	}
	for _, s := range []string{"linux/amd64", "windows/amd64", "darwin/arm64"} {
		if !built[s] {
			t.Errorf("not built for %s", s)
		}
	}
	if got := program("ogive-batch", "windows"); filepath.Base(got) != "ogive-batch.exe" {
		t.Errorf("on Windows the program is called %s", got)
	}
}

func TestDebianAndItsKinAreRecognised(t *testing.T) {
	for release, kin := range map[string]bool{
		"PRETTY_NAME=\"Debian\"\nID=debian\n":       true,
		"ID=ubuntu\nID_LIKE=debian\n":               true,
		"ID=linuxmint\nID_LIKE=\"ubuntu debian\"\n": true,
		"ID=fedora\n": false,
		"ID='opensuse-leap'\nID_LIKE='suse opensuse'\n":  false,
		"NAME=debian\nVARIANT_ID=debian\nHOME_URL=ID=\n": false,
		"": false,
	} {
		if got := debianKin(osRelease(release)); got != kin {
			t.Errorf("%q is taken as kin of Debian: %v, want %v", release, got, kin)
		}
	}
}

func TestOtherSystemsAreToldExactlyWhatToInstall(t *testing.T) {
	for system, says := range map[string]string{
		"fedora": "dnf install", "opensuse-leap": "zypper install", "arch": "pacman -S",
		"darwin": "xcode-select --install", "windows": "MSYS2", "plan9": "on Debian are gcc",
	} {
		if got := windowNeeds.advice([]string{system}); !strings.Contains(got, says) {
			t.Errorf("%s is told %q, want %q in it", system, got, says)
		}
	}
}

func TestOnlyPresentNeedsAreInstalled(t *testing.T) {
	without, _ := bench(t, map[string]string{"cmd/ogive-batch/main.go": "package main\n"})
	if got := without.present(); len(got) != 0 {
		t.Errorf("without a window the repository needs %v", got)
	}
	with, _ := bench(t, map[string]string{"cmd/ogive/main.go": "package main\n"})
	if got := with.present(); len(got) == 0 || got[0].purpose != windowNeeds.purpose {
		t.Errorf("with a window the repository needs %v", got)
	}
}

func TestAMissingProgramIsMissed(t *testing.T) {
	n := needs{programs: []string{"go", "no-such-program-anywhere"}}
	if got := n.missing(); !reflect.DeepEqual(got, []string{"no-such-program-anywhere"}) {
		t.Errorf("missing are %v", got)
	}
}

func TestEveryCommandSaysWhatItDoes(t *testing.T) {
	var said bytes.Buffer
	usage(&said)
	for _, name := range []string{"start", "test", "house"} {
		if !strings.Contains(said.String(), name) {
			t.Errorf("the usage lacks %s", name)
		}
	}
	for _, c := range commands {
		if c.does == "" || c.run == nil {
			t.Errorf("command %q does nothing or does not say what", c.name)
		}
	}
}
