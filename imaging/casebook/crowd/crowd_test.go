package crowd

import (
	"bytes"
	"context"
	"fmt"
	"image/jpeg"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"ogive/imaging/audit"
	"ogive/imaging/casebook"
	"ogive/imaging/casebook/readings"
	"ogive/imaging/measure"
)

// Targets of the project, for 1,000 cases with 10,000 photographs.
const (
	listIn       = 300 * time.Millisecond
	searchIn     = 50 * time.Millisecond
	thumbnailsIn = 300 * time.Millisecond // a case with 40 photographs
	auditIn      = 2 * time.Second
	memory       = 250 // MB
)

const workerFolder = "OGIVE_CROWD_WORKER"

func TestMain(m *testing.M) {
	if folder := os.Getenv(workerFolder); folder != "" {
		if err := workAndTellMemory(folder); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
		return
	}
	status := m.Run()
	for _, folder := range made {
		_ = os.RemoveAll(filepath.Dir(folder)) // a temporary folder
	}
	os.Exit(status)
}

var (
	made   = map[int]string{}
	making sync.Mutex
)

// filled is a casebook with so many photographs, ten to a case, made once. It is
// filled in memory, where a system has a place for that, and then laid on the
// disk: the thousands of times that it waits for the disk are none of what is
// measured here.
func filled(t testing.TB, photographs int) string {
	t.Helper()
	making.Lock()
	defer making.Unlock()
	if folder := made[photographs]; folder != "" {
		return folder
	}
	quick, err := os.MkdirTemp("/dev/shm", "crowd")
	if err != nil {
		quick = t.TempDir()
	}
	defer func() { _ = os.RemoveAll(quick) }() // a temporary folder
	if err := Fill(filepath.Join(quick, "book"), photographs/10, photographs, nil); err != nil {
		t.Fatal(err)
	}
	folder, err := os.MkdirTemp("", "crowd")
	if err != nil {
		t.Fatal(err)
	}
	made[photographs] = filepath.Join(folder, "book")
	if err := os.CopyFS(made[photographs], os.DirFS(filepath.Join(quick, "book"))); err != nil {
		t.Fatal(err)
	}
	return made[photographs]
}

func opened(t testing.TB, folder string) *casebook.Casebook {
	t.Helper()
	book, err := casebook.Open(folder)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := book.Close(); err != nil {
			t.Error(err)
		}
	})
	return book
}

// list is what stands between the click and a usable list of cases.
func list(folder string) error {
	book, err := casebook.Open(folder)
	if err != nil {
		return err
	}
	all, err := book.Cases("")
	if err == nil && len(all) == 0 {
		err = fmt.Errorf("no cases in %s", folder)
	}
	if err != nil {
		return err
	}
	return book.Close()
}

func search(book *casebook.Casebook) error {
	found, err := book.Cases("right phal")
	if err == nil && len(found) == 0 {
		err = fmt.Errorf("nothing found")
	}
	return err
}

// thumbnails opens the case with forty photographs up to its decoded thumbnails.
func thumbnails(book *casebook.Casebook) (n int, err error) {
	photos, err := book.Photographs(1)
	for _, p := range photos {
		data, err := book.Thumbnail(p)
		if err != nil {
			return n, err
		}
		if _, err := jpeg.Decode(bytes.NewReader(data)); err != nil {
			return n, err
		}
		n++
	}
	return n, err
}

func auditAll(book *casebook.Casebook, with measure.Settings) (rows int, err error) {
	a, err := audit.Of(context.Background(), book, with, nil)
	if err != nil {
		return 0, err
	}
	if len(a.Faults) > 0 {
		return 0, a.Faults[0]
	}
	var out bytes.Buffer
	return len(a.Rows), a.CSV(&out)
}

// workAndTellMemory does a day's work in a process of its own and prints the
// most memory it ever had.
func workAndTellMemory(folder string) error {
	with, err := measure.Defaults()
	if err != nil {
		return err
	}
	if err := list(folder); err != nil {
		return err
	}
	book, err := casebook.Open(folder)
	if err != nil {
		return err
	}
	if err := search(book); err != nil {
		return err
	}
	if _, err := thumbnails(book); err != nil {
		return err
	}
	if _, err := auditAll(book, with); err != nil {
		return err
	}
	var heap runtime.MemStats
	runtime.ReadMemStats(&heap)
	fmt.Printf("heap from the system: %d kB\n", heap.HeapSys>>10)
	if status, err := os.ReadFile("/proc/self/status"); err == nil {
		fmt.Printf("%s\n", status)
	}
	return book.Close()
}

var peak = regexp.MustCompile(`VmHWM:\s+(\d+) kB|heap from the system: (\d+) kB`)

// most is the most memory in MB: resident, where the system tells, and heap.
func most(t testing.TB, folder string) (resident, heap int) {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), workerFolder+"="+folder)
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	for _, m := range peak.FindAllStringSubmatch(string(out), -1) {
		if n, err := strconv.Atoi(m[1]); err == nil {
			resident = n >> 10
		}
		if n, err := strconv.Atoi(m[2]); err == nil {
			heap = n >> 10
		}
	}
	if heap == 0 {
		t.Fatalf("the worker tells no memory: %s", out)
	}
	return resident, heap
}

// BenchmarkCasebook measures what the project has targets for, and how it grows
// from a thousand photographs to ten thousand. Filling the casebooks takes some
// minutes first.
func BenchmarkCasebook(b *testing.B) {
	with, err := measure.Defaults()
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range []int{1000, 10000} {
		folder := filled(b, n)
		measured := func(name string, target time.Duration, action func(book *casebook.Casebook) error) {
			b.Run(fmt.Sprintf("%s/%d photographs", name, n), func(b *testing.B) {
				book := opened(b, folder)
				timed(b, target, func() error { return action(book) })
			})
		}
		b.Run(fmt.Sprintf("open to list/%d photographs", n), func(b *testing.B) {
			timed(b, listIn, func() error { return list(folder) })
		})
		measured("search", searchIn, search)
		measured("case of 40 to thumbnails", thumbnailsIn, func(book *casebook.Casebook) error {
			shown, err := thumbnails(book)
			if err == nil && shown != largeCase {
				err = fmt.Errorf("%d thumbnails", shown)
			}
			return err
		})
		measured("audit", auditIn, func(book *casebook.Casebook) error { _, err := auditAll(book, with); return err })
		b.Run(fmt.Sprintf("memory/%d photographs", n), func(b *testing.B) {
			resident, heap := 0, 0
			for b.Loop() {
				r, h := most(b, folder)
				resident, heap = max(resident, r), max(heap, h)
			}
			b.ReportMetric(float64(heap), "MB-heap")
			told(b, float64(resident), memory, "MB-resident")
		})
	}
}

// worked is how long the process has kept cores busy, where the system tells: on
// a machine with other work to do, less than the time on the clock.
var worked = func() time.Duration { return 0 }

// timed measures an action on the clock and by the work it makes.
func timed(b *testing.B, target time.Duration, action func() error) {
	before := worked()
	for b.Loop() {
		if err := action(); err != nil {
			b.Fatal(err)
		}
	}
	each := func(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 / float64(b.N) }
	b.ReportMetric(each(worked()-before), "ms-of-work")
	told(b, each(b.Elapsed()), float64(target.Milliseconds()), "ms")
}

// told puts a figure beside its target.
func told(b *testing.B, value, target float64, unit string) {
	b.ReportMetric(value, unit)
	b.ReportMetric(target, "target-"+unit)
	if value > target {
		b.Logf("misses its target: %.4g %s, at most %.4g are wanted", value, unit, target)
	}
}

// The same on a small casebook at every change: far within the targets.
func TestACasebookIsReadyAtOnce(t *testing.T) {
	const photographs = 100
	folder := filled(t, photographs)
	with, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	book := opened(t, folder)
	for name, c := range map[string]struct {
		within time.Duration
		action func() error
	}{
		"search":     {searchIn, func() error { return search(book) }},
		"thumbnails": {thumbnailsIn, func() error { _, err := thumbnails(book); return err }},
		"audit": {auditIn, func() error {
			rows, err := auditAll(book, with)
			if err == nil && rows != 2*photographs {
				err = fmt.Errorf("%d rows", rows)
			}
			return err
		}},
	} {
		var times []time.Duration
		for range 3 {
			from := time.Now()
			if err := c.action(); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			times = append(times, time.Since(from))
		}
		if took := slices.Min(times); took > c.within {
			t.Errorf("%s takes %v, at most %v is wanted even of %d times as many photographs", name, took, c.within, 10000/photographs)
		}
	}
}

func TestTheCrowdsReadingsAreWhatItsMarksComeTo(t *testing.T) {
	book := opened(t, filled(t, 100))
	with, err := measure.Defaults()
	if err != nil {
		t.Fatal(err)
	}
	kept, err := readings.In(book, with)
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range []int64{1, 42} {
		was, err := kept.Of(n, "AB")
		if err != nil {
			t.Fatal(err)
		}
		f, _, err := book.Marks(n, "AB")
		if err != nil {
			t.Fatal(err)
		}
		if err := book.SaveMarks(n, "AB", f); err != nil { // saved anew: the reading is forgotten
			t.Fatal(err)
		}
		anew, err := kept.Of(n, "AB")
		if err != nil || len(anew.Reading.Webs) != 2 {
			t.Fatal(anew, err)
		}
		if diff := cmp.Diff(was, anew); diff != "" {
			t.Errorf("photograph %d: %s", n, diff)
		}
	}
}
