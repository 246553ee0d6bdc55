package casebook

import (
	"bufio"
	"bytes"
	"context"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/appraisal"
	"ogive/imaging/marksfile"
)

var kills = flag.Int("kills", 20, "how often the program is killed while it works")

// readAs is set where there are users to read as, workOnFull where a process can
// have a disk of its own.
var (
	readAs     func(folder string)
	workOnFull func(disk string) error
)

const workerFolder = "OGIVE_CASEBOOK_WORKER"

func TestMain(m *testing.M) {
	if folder := os.Getenv(workerFolder); folder != "" {
		if err := work(folder); err != nil {
			fmt.Println("failed", err)
			os.Exit(1)
		}
		return
	}
	if folder := os.Getenv("OGIVE_CASEBOOK_READER"); folder != "" && readAs != nil {
		readAs(folder)
		return
	}
	if disk := os.Getenv("OGIVE_CASEBOOK_FULL"); disk != "" && workOnFull != nil {
		if err := workOnFull(disk); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
		fmt.Println("all is well")
		return
	}
	os.Exit(m.Run())
}

// tinyJPEG is a photograph that no other number gives.
func tinyJPEG(n int) []byte {
	m := image.NewRGBA(image.Rect(0, 0, 48, 32))
	for i := range 24 {
		if n>>i&1 == 1 {
			for y := range 8 {
				for x := range 8 {
					m.SetRGBA(i%6*8+x, i/6*8+y, color.RGBA{230, 200, 180, 255})
				}
			}
		}
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, m, nil); err != nil {
		panic(err)
	}
	return out.Bytes()
}

func marksAt(x float64) marksfile.File {
	f := marksfile.File{Photograph: "x.jpg"}
	f.Marks.Side, f.Marks.View, f.Marks.ClickSD = hand.Left, hand.Dorsal, 2
	f.Marks.Joints = map[hand.Digit]map[hand.Joint]plane.PixelPoint{hand.Middle: {hand.MCP: plane.Pt(plane.Pixel(x), 3)}}
	return f
}

// work makes gesture after gesture and says so after each, until it is killed.
func work(folder string) error {
	book, err := Open(folder)
	if err != nil {
		return err
	}
	all, err := book.Cases("")
	if err != nil {
		return err
	}
	id := all[0].ID
	photos, err := book.Photographs(id)
	if err != nil {
		return err
	}
	for i := 0; ; i++ {
		x := float64(100+i%4000) / 100 // of two decimals: a longer number is refused in a note
		if err := book.SaveMarks(photos[0].ID, "AB", marksAt(x)); err != nil {
			return err
		}
		fmt.Println("marked", x)
		if err := book.SavePlan(photos[0].ID, "AB", fmt.Sprintf(`{"at": %g}`, x)); err != nil {
			return err
		}
		fmt.Println("planned", x)
		if err := book.SaveAppraisal(photos[0].Sitting, felt("AB", "thickened", fmt.Sprintf("at %g", x))); err != nil {
			return err
		}
		fmt.Println("appraised", x)
		path := filepath.Join(filepath.Dir(folder), fmt.Sprintf("in-%d.jpg", os.Getpid()))
		if err := os.WriteFile(path, tinyJPEG(os.Getpid()%4096<<12|i), 0o666); err != nil {
			return err
		}
		r, err := book.Import(context.Background(), id, []Item{{Path: path, Hand: hand.Left, View: hand.Dorsal, Date: "2024-05-01"}}, nil)
		if err != nil || r[0].Err != nil {
			return fmt.Errorf("%v %v", err, r)
		}
		fmt.Println("imported", r[0].Photograph)
		if i%3 == 2 && r[0].Photograph > 0 {
			fmt.Println("removing", r[0].Photograph)
			if err := book.RemovePhotograph(r[0].Photograph); err != nil {
				return err
			}
			fmt.Println("removed", r[0].Photograph)
		}
	}
}

func TestWhateverWasFinishedIsThereAfterTheProgramIsKilled(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "book")
	book := opened(t, folder)
	id := addCase(t, book, "K-1")
	importTiny(t, book, id, 0)
	closed(t, book)
	random := rand.New(rand.NewPCG(5, 8))
	gestures := 0
	for range *kills {
		said := killed(t, folder, time.Duration(20+random.IntN(220))*time.Millisecond)
		gestures += len(said)
		book := opened(t, folder)
		if f := book.Findings(); len(f.Missing)+len(f.Unclaimed) > 0 {
			t.Fatalf("after a kill: %+v", f)
		}
		if err := book.intact(); err != nil {
			t.Fatal(err)
		}
		if err := book.Check(t.Context()); err != nil {
			t.Fatal(err)
		}
		noOrphan(t, book, id)
		finished(t, book, id, said)
		closed(t, book)
	}
	t.Logf("%d kills, %d gestures said to be finished, all there", *kills, gestures)
	if gestures < *kills {
		t.Errorf("only %d gestures in %d lives: the test kills before anything happens", gestures, *kills)
	}
}

// killed lets a worker work for a while after its first word, kills it, and
// gives what it said.
func killed(t *testing.T, folder string, after time.Duration) (said []string) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), workerFolder+"="+folder)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	time.AfterFunc(after, func() { _ = cmd.Process.Kill() }) // it can only be gone already, which the wait below shows
	lines := bufio.NewScanner(out)
	for lines.Scan() {
		if strings.HasPrefix(lines.Text(), "failed") {
			t.Error(lines.Text())
		}
		said = append(said, lines.Text())
	}
	if err := cmd.Wait(); err == nil {
		t.Fatal("the worker ended by itself")
	}
	return said
}

func noOrphan(t *testing.T, book *Casebook, id int64) {
	t.Helper()
	photos, err := book.Photographs(id)
	if err != nil {
		t.Fatal(err)
	}
	files, err := os.ReadDir(book.path(photosName))
	if err != nil {
		t.Fatal(err)
	}
	if len(files) != len(photos) {
		t.Errorf("%d files for %d photographs", len(files), len(photos))
	}
}

// finished checks the last marks, plan and appraisal, and every import that was
// said to be done.
func finished(t *testing.T, book *Casebook, id int64, said []string) {
	t.Helper()
	photos, err := book.Photographs(id)
	if err != nil {
		t.Fatal(err)
	}
	there, removing := map[int64]bool{}, map[int64]bool{}
	for _, p := range photos {
		there[p.ID] = true
	}
	var marked, planned, appraised float64
	for _, line := range said {
		var n int64
		switch {
		case scanned(line, "marked %g", &marked):
		case scanned(line, "planned %g", &planned):
		case scanned(line, "appraised %g", &appraised):
		case scanned(line, "removing %d", &n):
			removing[n] = true
		case scanned(line, "removed %d", &n) && there[n]:
			t.Errorf("photograph %d was removed and is there", n)
		}
	}
	for _, line := range said {
		var n int64
		if scanned(line, "imported %d", &n) && n > 0 && !there[n] && !removing[n] {
			t.Errorf("photograph %d was imported and is gone", n)
		}
	}
	if marked > 0 {
		f, ok, err := book.Marks(photos[0].ID, "AB")
		got, _ := f.Marks.Joint(hand.Middle, hand.MCP) // nowhere if there is none
		last(t, "the marks", float64(got.X), marked, ok, err)
	}
	if planned > 0 {
		var at float64
		plan, ok, err := book.Plan(photos[0].ID, "AB")
		ok = ok && scanned(plan, `{"at": %g}`, &at)
		last(t, "the plan", at, planned, ok, err)
	}
	if appraised > 0 {
		var at float64
		all, err := book.Appraisals(id)
		ok := false
		for _, a := range all {
			g, _ := a.Appraisal.At(appraisal.Feel, thirdWeb)
			ok = ok || scanned(g.Note, "at %g", &at)
		}
		last(t, "the appraisal", at, appraised, ok, err)
	}
}

// last checks that a work stands where the last finished gesture put it, or one
// gesture on.
func last(t *testing.T, what string, got, want float64, there bool, err error) {
	t.Helper()
	if err != nil || !there {
		t.Fatalf("%s: %v, %v", what, there, err)
	}
	if got < want-1e-6 || got > want+0.011 {
		t.Errorf("%s stands at %g, the last finished gesture put it at %g", what, got, want)
	}
}

func scanned(line, form string, to any) bool {
	n, err := fmt.Sscanf(line, form, to)
	return err == nil && n == 1
}
