package photo

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"
)

// Where the stored row 0 and column 0 lie is the definition of each value:
// Exif 2.32 (JEITA CP-3451), tag Orientation. Corners from the top left on,
// clockwise.
var orientations = map[orientation][4]color.RGBA{
	upright:     {red, green, grey, blue}, // row 0 top, column 0 left
	topRight:    {green, red, blue, grey}, // row 0 top, column 0 right
	bottomRight: {grey, blue, red, green}, // row 0 bottom, column 0 right
	bottomLeft:  {blue, grey, green, red}, // row 0 bottom, column 0 left
	leftTop:     {red, blue, grey, green}, // row 0 left, column 0 top
	rightTop:    {blue, red, green, grey}, // row 0 right, column 0 top
	rightBottom: {grey, green, red, blue}, // row 0 right, column 0 bottom
	leftBottom:  {green, grey, blue, red}, // row 0 left, column 0 bottom
}

func TestPhotographIsUprightInAllEightOrientations(t *testing.T) {
	for turn, want := range orientations {
		for _, order := range []binary.AppendByteOrder{binary.LittleEndian, binary.BigEndian} {
			p, err := Decode(jpegWith(flag(), exifBlock(order, uint16(turn), nil)))
			if err != nil {
				t.Fatal(err)
			}
			if got := corners(p); got != want {
				t.Errorf("orientation %d: corners %v, want %v", turn, got, want)
			}
			if got := corners(From(p.Picture())); got != want {
				t.Errorf("orientation %d: corners drawn %v, want %v", turn, got, want)
			}
			if p.Picture().Rect.Size() != p.Size() {
				t.Errorf("orientation %d: the picture is %v, the photograph %v", turn, p.Picture().Rect.Size(), p.Size())
			}
		}
	}
}

// A patch of a turned photograph is that part of the whole, to the pixel.
func TestPatchOfTurnedPhotographIsItsPartOfThePicture(t *testing.T) {
	img := speckled(37, 23)
	for turn := range orientations {
		p := &Photograph{pixels: img, turn: turn}
		whole := From(p.Picture())
		for _, shrink := range []int{1, 3} {
			r := image.Rect(4, 2, 21, 20)
			got, want := p.Patch(r, shrink), whole.Patch(r, shrink)
			for i := range want.R {
				if d := got.R[i] - want.R[i]; d > 1e-6 || d < -1e-6 {
					t.Fatalf("orientation %d by %d: sample %d is %g, want %g", turn, shrink, i, got.R[i], want.R[i])
				}
			}
		}
	}
}

func TestFilesOfAnotherProgramAreReadUprightWithTheirFacts(t *testing.T) {
	facts := Facts{
		Taken:   time.Date(2024, 5, 17, 9, 30, 12, 0, time.FixedZone("", 2*3600)),
		Camera:  "Lens & Sons Model 35",
		Focal35: 60,
	}
	for _, c := range []struct {
		file  string
		turn  orientation
		facts Facts
	}{
		{"turned.jpg", rightTop, facts},
		{"turned.png", rightTop, facts},
		{"turned.webp", rightTop, facts},
		{"turned.tif", rightTop, Facts{}}, // libvips writes no EXIF data into TIFF
		{"flag.heic", upright, facts},
	} {
		path := filepath.Join("..", "..", "testdata", "photographs", c.file)
		p, err := Open(path)
		if err != nil {
			t.Error(err)
			continue
		}
		if got := corners(p); got != orientations[c.turn] {
			t.Errorf("%s: corners %v", c.file, got)
		}
		got := p.Facts()
		if !got.Taken.Equal(c.facts.Taken) || got.Camera != c.facts.Camera || got.Focal35 != c.facts.Focal35 {
			t.Errorf("%s: facts %v, want %v", c.file, got, c.facts)
		}
		if size, err := ReadSize(path); err != nil || size != p.Size() {
			t.Errorf("%s: size %v in the header (%v), %v decoded", c.file, size, err, p.Size())
		}
	}
}

// The decoder of HEIC turns the picture itself: the EXIF data must not turn it
// once more.
func TestRotationOfHEICIsAppliedOnce(t *testing.T) {
	for steps, c := range map[byte]struct{ same orientation }{0: {upright}, 1: {leftBottom}, 2: {bottomRight}, 3: {rightTop}} {
		data := turnedHEIC(t, steps, uint16(c.same))
		if block := exifInHEIC(data); block == nil {
			t.Error("the EXIF block is lost")
		} else if turn, _ := readEXIF(block); turn != c.same {
			t.Fatalf("the EXIF block says %d, want %d", turn, c.same)
		}
		p, err := Decode(data)
		if err != nil {
			t.Fatal(err)
		}
		if got := corners(p); got != orientations[c.same] {
			t.Errorf("turned by %d: corners %v", 90*int(steps), got)
		}
		path := filepath.Join(t.TempDir(), "turned.heic")
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		if size, err := ReadSize(path); err != nil || size != p.Size() {
			t.Errorf("turned by %d: size %v in the header (%v), %v decoded", 90*int(steps), size, err, p.Size())
		}
	}
}

func TestDamagedHEICGivesAPictureOrAnError(t *testing.T) {
	good := seed(t, "flag.heic")
	r := rand.New(rand.NewPCG(1, 9))
	refused := 0
	for range 150 {
		data := bytes.Clone(good)
		for range 1 + r.IntN(6) {
			data[r.IntN(len(data))] ^= 1 << r.IntN(8)
		}
		p, err := Decode(data)
		if err != nil {
			refused++
		} else if p.Size().X < narrowHEIC {
			t.Errorf("size %v", p.Size())
		}
	}
	if refused == 0 || refused == 150 {
		t.Errorf("%d of 150 refused", refused)
	}
}

func TestHEICIsReadBySeveralAtATime(t *testing.T) {
	good := seed(t, "flag.heic")
	var readers sync.WaitGroup
	for range 4 {
		readers.Go(func() {
			if _, err := Decode(good); err != nil {
				t.Error(err)
			}
		})
	}
	readers.Wait()
}

func TestPreviewIsUpright(t *testing.T) {
	var small bytes.Buffer
	small.Write(jpegWith(flag(), exifBlock(binary.LittleEndian, 8, nil))) // its own say counts for nothing
	dir := t.TempDir()
	path := filepath.Join(dir, "hand.jpg")
	if err := os.WriteFile(path, jpegWith(flag(), exifBlock(binary.BigEndian, uint16(rightTop), small.Bytes())), 0o600); err != nil {
		t.Fatal(err)
	}
	img, ok := Preview(path)
	if !ok {
		t.Fatal("no preview found")
	}
	if got := corners(From(img)); got != orientations[rightTop] {
		t.Errorf("corners %v", got)
	}
	bare := filepath.Join(dir, "bare.png")
	if err := os.WriteFile(bare, pngOf(flag()), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, ok := Preview(bare); ok {
		t.Error("a preview was found where there is none")
	}
}

func TestKindOfFileIsToldByContentNotName(t *testing.T) {
	path := filepath.Join(t.TempDir(), "right-dorsal.jpg")
	if err := os.WriteFile(path, pngOf(flag()), 0o600); err != nil {
		t.Fatal(err)
	}
	if p, err := Open(path); err != nil || p.Size() != image.Pt(flagW, flagH) {
		t.Errorf("a PNG file named .jpg: %v", err)
	}
}

func TestErrorsNameTheFileAndTheMend(t *testing.T) {
	dir := t.TempDir()
	good := jpegWith(flag(), exifBlock(binary.LittleEndian, 1, nil))
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"text.jpg":  {[]byte("Dear surgeon,\n"), "text.jpg is not a picture this program reads (JPEG, PNG, TIFF, WebP, HEIC); export it from the camera as JPEG"},
		"empty.jpg": {nil, "empty.jpg is empty; copy it from the camera again"},
		"cut.jpg":   {good[:len(good)/2], "cut.jpg is a damaged JPEG file or one of an unknown kind (unexpected EOF); copy it from the camera again or export it as JPEG"},
	} {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, c.data, 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := Open(path); err == nil || err.Error() != c.want {
			t.Errorf("got  %v\nwant %s", err, c.want)
		}
	}
	if _, err := Open(filepath.Join(dir, "gone.jpg")); err == nil || !strings.HasPrefix(err.Error(), "gone.jpg is not there; check the name and the folder") {
		t.Error(err)
	}
	if _, err := Open(dir); err == nil || !strings.Contains(err.Error(), "is not a file") {
		t.Error(err)
	}
}
