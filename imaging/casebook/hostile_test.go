package casebook

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// packed is a zip file in the making; a nil content is a name only.
type packed struct {
	name    string
	content string
	mode    fs.FileMode
}

func zipped(t testing.TB, files ...packed) []byte {
	t.Helper()
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for _, f := range files {
		h := &zip.FileHeader{Name: f.name, Method: zip.Deflate}
		if f.mode != 0 {
			h.SetMode(f.mode)
		}
		to, err := z.CreateHeader(h)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := to.Write([]byte(f.content)); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func received(t testing.TB, book *Casebook, data []byte) (int64, error) {
	t.Helper()
	path := filepath.Join(filepath.Dir(book.Folder()), "in.zip")
	if err := os.WriteFile(path, data, 0o666); err != nil {
		t.Fatal(err)
	}
	return book.Receive(path, "")
}

// untouched checks that nothing came in: no case, no file, and nothing beside
// the casebook.
func untouched(t testing.TB, book *Casebook) {
	t.Helper()
	if all, err := book.Cases(""); err != nil || len(all) > 0 {
		t.Errorf("%d cases came in, %v", len(all), err)
	}
	for _, folder := range []string{photosName, thumbsName} {
		if files, err := os.ReadDir(book.path(folder)); err != nil || len(files) > 0 {
			t.Errorf("%d files are in %s, %v", len(files), folder, err)
		}
	}
	beside, err := os.ReadDir(filepath.Dir(book.Folder()))
	if err != nil || len(beside) != 2 { // the casebook and in.zip
		t.Errorf("beside the casebook lie %v, %v", beside, err)
	}
}

const soundManifest = `{"ogive_case": 2, "case": {"code": "S-1", "hand": "left", "joins": []}, "sittings": [{"date": "2024-05-01", "stage": "follow-up"}], "photographs": [], "marks": [], "plans": [], "appraisals": []}`

func TestNamesThatLeadElsewhereAndFilesThatAreNoneAreRefused(t *testing.T) {
	for _, f := range []packed{
		{name: "../evil.json"}, {name: "/etc/evil.json"}, {name: `..\evil.json`}, {name: "C:evil.json"}, {name: "photographs/../../evil.jpg"},
		{name: "photographs/" + strings.Repeat("a", 64) + ".jpg/evil"}, {name: "photographs/" + strings.Repeat("A", 64) + ".jpg"}, {name: "marks-0001.json/"},
		{name: "marks-0001.json", mode: fs.ModeSymlink | 0o777, content: "/etc/passwd"}, {name: "plans-0001.json", mode: fs.ModeDevice | 0o666},
		{name: "manifest.json", content: "{}"}, {name: "readme.txt"}, {name: "casebook.sqlite"}, {name: ""}, {name: "marks-1.json\x00.jpg"},
	} {
		t.Run(fmt.Sprintf("%q", f.name), func(t *testing.T) {
			book := fresh(t)
			_, err := received(t, book, zipped(t, packed{name: "manifest.json", content: soundManifest}, f))
			if err == nil || !strings.Contains(err.Error(), "does not belong there") && !strings.Contains(err.Error(), "no exported case") {
				t.Errorf("%v", err)
			}
			untouched(t, book)
		})
	}
}

func TestAManifestThatSaysWhatNoProgramWroteIsRefused(t *testing.T) {
	hash := strings.Repeat("0", 64)
	for change, want := range map[[2]string]string{
		{`"ogive_case": 2`, `"ogive_case": 3`}:                                         "of form 3",
		{`"ogive_case": 2`, `"ogive_case": "2"`}:                                       "damaged",
		{`"S-1"`, `"Anna Schmidt"`}:                                                    "looks like a name",
		{`"hand": "left"`, `"hand": "third"`}:                                          "affected hand",
		{`"joins": []`, `"joins": [{"hand": "middle", "web": 3}]`}:                     `on the hand "middle"`,
		{`"joins": []`, `"joins": [{"hand": "left", "web": 9}]`}:                       "names no hand or no web",
		{`"joins": []`, `"joins": [{"hand": "left", "web": 3, "operated": "1.1.24"}]`}: "is no date",
		{`"2024-05-01"`, `"yesterday"`}:                                                "no proper date",
		{`"2024-05-01"`, `""`}:                                                         "no proper date",
		{`"follow-up"`, `"never"`}:                                                     "is no stage",
		{`"stage": "follow-up"`, `"stage": "follow-up", "note": "born 2019-05-12"`}:    "full date",
		{`"sittings": [`, `"sittings": [{"date": "2024-05-01", "stage": "before"}, `}:  "two sittings on 2024-05-01",
		{`"photographs": []`, `"photographs": [{"file": "photographs/x.jpg"}]`}:        "no proper date",
		{`"photographs": []`, `"photographs": [{"file": "photographs/` + hash + `.jpg", "sha256": "` + hash + `", "original_sha256": "` + hash + `", "date": "2024-05-01"}]`}: "lacks",
		{`"photographs": []`, `"photographs": [{"file": "manifest.json", "original_sha256": "` + hash + `", "date": "2024-05-01"}]`}:                                          "is not a picture",
		{`"plans": []`, `"plans": [{"file": "manifest.json", "observer": "AB", "saved": "2024-05-01T00:00:00Z"}]`}:                                                            "belongs to nothing",
		{`"appraisals": []`, `"appraisals": [{"file": "manifest.json", "observer": "AB", "saved": "2024-05-01T00:00:00Z", "sitting": "2024-05-01"}]`}:                         "manifest.json in the exported case: ",
	} {
		text := strings.Replace(soundManifest, change[0], change[1], 1)
		if text == soundManifest {
			t.Fatalf("%s is not in the manifest", change[0])
		}
		book := fresh(t)
		_, err := received(t, book, zipped(t, packed{name: "manifest.json", content: text}))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", change[1], err, want)
		}
		untouched(t, book)
	}
}

func TestWhatWouldUnpackToFarTooMuchIsRefusedUnread(t *testing.T) {
	var many []packed
	text := strings.Repeat("[1,2,3,4,5,6,7,8,9] ", 100_000) // 2 MB that pack to some kilobytes
	for i := range 300 {
		many = append(many, packed{name: fmt.Sprintf("marks-%04d.json", i+1), content: text})
	}
	var crowd []packed
	for i := range mostExported + 1 {
		crowd = append(crowd, packed{name: fmt.Sprintf("plans-%05d.json", i+1)})
	}
	for want, files := range map[string][]packed{"unpack to far more": many, "more than 20000 files": crowd} {
		book := fresh(t)
		_, err := received(t, book, zipped(t, append(files, packed{name: "manifest.json", content: soundManifest})...))
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
		untouched(t, book)
	}
}

// A length that the directory of the zip states too small does not help.
func TestAFileLongerThanItIsSaidToBeIsRefused(t *testing.T) {
	data := zipped(t, packed{name: "manifest.json", content: soundManifest + strings.Repeat(" ", 5000)})
	at := bytes.Index(data, []byte("PK\x01\x02"))
	copy(data[at+24:], []byte{200, 0, 0, 0}) // the unpacked length in the directory
	book := fresh(t)
	if _, err := received(t, book, data); err == nil || !strings.Contains(err.Error(), "damaged") {
		t.Errorf("%v", err)
	}
	untouched(t, book)
}

// forFuzzing is a casebook that is used over and over.
func forFuzzing(f *testing.F) *Casebook {
	f.Helper()
	book, err := Open(filepath.Join(f.TempDir(), "book"))
	if err != nil {
		f.Fatal(err)
	}
	if _, err := book.db.Exec("PRAGMA synchronous=off"); err != nil { // nothing is killed here
		f.Fatal(err)
	}
	f.Cleanup(func() { _ = book.Close() }) // a temporary casebook
	return book
}

// admittedOrUntouched checks that the whole of a case is in, or nothing.
func admittedOrUntouched(t *testing.T, book *Casebook, data []byte) {
	t.Helper()
	id, err := received(t, book, data)
	if err != nil {
		if strings.ContainsAny(err.Error(), "\r\n") || !strings.Contains(err.Error(), ";") {
			t.Errorf("refused with %q", err)
		}
		untouched(t, book)
		return
	}
	if err := book.Check(t.Context()); err != nil {
		t.Error(err)
	}
	if _, err := book.Records(); err != nil {
		t.Error(err)
	}
	if err := book.RemoveCase(id); err != nil {
		t.Fatal(err)
	}
	untouched(t, book)
}

// thorough is an exported case with one of everything. The manifest names hashes
// by what they are of.
type thorough struct{ manifest, marks, plan, found, picture, file string }

func oneOfEverything(t testing.TB) thorough {
	t.Helper()
	x := thorough{plan: `{"at": 4}`, picture: string(tinyJPEG(9))}
	x.file = photosName + "/" + hashOf([]byte(x.picture)) + ".jpg"
	a, err := felt("AB", "soft", "a note").Encode()
	if err != nil {
		t.Fatal(err)
	}
	m := marksAt(4)
	m.Photograph = x.file
	marks, err := m.Encode()
	if err != nil {
		t.Fatal(err)
	}
	x.marks, x.found = string(marks), string(a)
	x.manifest = strings.NewReplacer(
		`"photographs": []`, `"photographs": [{"file": "@file", "sha256": "@photo", "original_sha256": "@photo", "date": "2024-05-01", "hand": "left", "view": "dorsal"}]`,
		`"marks": []`, `"marks": [{"file": "marks-0001.json", "sha256": "@marks", "photograph_sha256": "@photo", "observer": "AB", "saved": "2024-05-01T00:00:00Z"}]`,
		`"plans": []`, `"plans": [{"file": "plans-0001.json", "sha256": "@plan", "photograph_sha256": "@photo", "observer": "AB", "saved": "2024-05-01T00:00:00Z"}]`,
		`"appraisals": []`, `"appraisals": [{"file": "appraisals-0001.json", "sha256": "@found", "sitting": "2024-05-01", "observer": "AB", "saved": "2024-05-01T00:00:00Z"}]`,
	).Replace(soundManifest)
	return x
}

// pack writes it with the right hashes, whatever it says.
func (x thorough) pack(t testing.TB) []byte {
	hash := func(s string) string { return hashOf([]byte(s)) }
	text := strings.NewReplacer("@file", x.file, "@photo", hash(x.picture), "@marks", hash(x.marks), "@plan", hash(x.plan), "@found", hash(x.found)).Replace(x.manifest)
	return zipped(t, packed{name: "manifest.json", content: text}, packed{name: "marks-0001.json", content: x.marks},
		packed{name: "plans-0001.json", content: x.plan}, packed{name: "appraisals-0001.json", content: x.found}, packed{name: x.file, content: x.picture})
}

// Whatever is said in an exported case whose hashes are right.
func FuzzReceiveContents(f *testing.F) {
	book := forFuzzing(f)
	x := oneOfEverything(f)
	f.Add(x.manifest, x.marks, x.plan, x.found)
	f.Add(soundManifest, "", "", "")
	f.Fuzz(func(t *testing.T, manifest, marks, plan, found string) {
		admittedOrUntouched(t, book, thorough{manifest, marks, plan, found, x.picture, x.file}.pack(t))
	})
}

// Whatever the file.
func FuzzReceive(f *testing.F) {
	book := forFuzzing(f)
	f.Add(zipped(f, packed{name: "manifest.json", content: soundManifest}))
	f.Add(oneOfEverything(f).pack(f))
	f.Add([]byte(ageHead + "\n-> scrypt x 18\n"))
	f.Fuzz(func(t *testing.T, data []byte) { admittedOrUntouched(t, book, data) })
}

func TestTheSeedsOfTheFuzzersAreTakenIn(t *testing.T) {
	for name, data := range map[string][]byte{
		"an empty case": zipped(t, packed{name: "manifest.json", content: soundManifest}), "one of everything": oneOfEverything(t).pack(t),
	} {
		book := fresh(t)
		if id, err := received(t, book, data); err != nil || id == 0 {
			t.Errorf("%s: %v", name, err)
		}
	}
}
