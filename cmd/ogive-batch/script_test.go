package main

import (
	"errors"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"ogive-batch": main})
}

// The scripts run the command as a user does, in a folder with a photograph
// (photo.png) and sound marks on it (marks.json).
func TestScripts(t *testing.T) {
	photograph := filepath.Join(t.TempDir(), "photo.png")
	if err := paint(photograph); err != nil {
		t.Fatal(err)
	}
	picture, err := os.ReadFile(photograph)
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(env *testscript.Env) error {
			return errors.Join(
				os.WriteFile(filepath.Join(env.WorkDir, "photo.png"), picture, 0o666),
				os.WriteFile(filepath.Join(env.WorkDir, "marks.json"), []byte(soundMarks), 0o666),
			)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"status": status, "change": change, "casebook": makeCasebook},
	})
}

// paint makes a photograph of one web that is a semicircle of radius 50 pixels
// between two straight borders, skin on a green drape. At 0.1 mm a pixel its
// span is 10 mm and its rise 5 mm; the crown lies at (200, 250).
func paint(path string) (err error) {
	const width, height, fine = 400, 440, 4
	gap := func(x, y float64) bool {
		if y < 200 {
			return math.Abs(x-200) < 50
		}
		return math.Hypot(x-200, y-200) < 50
	}
	img := image.NewRGBA(image.Rect(0, 0, width, height))
	for y := range height {
		for x := range width {
			covered := 0.0
			for i := range fine * fine {
				if gap(float64(x)+(float64(i%fine)+0.5)/fine, float64(y)+(float64(i/fine)+0.5)/fine) {
					covered += 1.0 / (fine * fine)
				}
			}
			grain := float64((x*7+y*13)%5 - 2)
			mix := func(skin, drape float64) uint8 { return uint8(skin + (drape-skin)*covered + grain) }
			img.SetRGBA(x, y, color.RGBA{mix(215, 40), mix(165, 110), mix(140, 90), 255})
		}
	}
	file, err := os.Create(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	return png.Encode(file, img)
}

// soundMarks put the MCP joints 150 pixels proximal to the crown and the PIP
// joints as far distal: the index is 0.5, the depth 15 mm.
const soundMarks = `{"ogive": 1, "photograph": "photo.png", "hand": "right", "view": "dorsal", "click_sd_px": 1,
 "scale": {"ruler": [[100, 430], [300, 430]], "length_mm": 20},
 "joints": {"middle": {"mcp": [120, 400], "pip": [120, 100]}, "ring": {"mcp": [280, 400], "pip": [280, 100]}},
 "webs": [{"web": 3, "seeds": [[150, 120], [200, 250], [250, 120]]}],
 "junctions": [{"web": 3, "line": [[20, 300], [40, 320], [60, 340]], "axis": [[20, 400], [90, 400]]}]}
`

// status runs a command that must leave with the given exit status.
func status(ts *testscript.TestScript, _ bool, args []string) {
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var left *exec.ExitError
		if !errors.As(err, &left) {
			ts.Fatalf("%v", err)
		}
		got = left.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status %d, want %d", got, want)
	}
}

// change writes bad.json: marks.json with one text put in place of another.
func change(ts *testscript.TestScript, _ bool, args []string) {
	text := ts.ReadFile("marks.json")
	if strings.Count(text, args[0]) != 1 {
		ts.Fatalf("%s stands %d times in marks.json", args[0], strings.Count(text, args[0]))
	}
	ts.Check(os.WriteFile(ts.MkAbs("bad.json"), []byte(strings.Replace(text, args[0], args[1], 1)), 0o666))
}
