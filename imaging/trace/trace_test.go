package trace

import (
	"image"
	"image/color"
	"image/draw"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"ogive/geometry/plane"
	"ogive/imaging/photo"
)

// traced traces a drawn scene and fails the test where that can't be done.
func traced(t *testing.T, s scene, seed uint64, clickSD float64) (figures, Border) {
	t.Helper()
	d := s.draw(seed)
	b, err := Web(d.photograph, d.seeds(rand.New(rand.NewPCG(seed, 2)), clickSD))
	if err != nil {
		t.Fatal(err)
	}
	var f figures
	f.add(d, b, nil)
	return f, b
}

// clean is a round web on a green drape without shadow, shading or noise.
func clean() scene {
	return scene{shape: "round", radius: 20, meet: 90, flare: 4, shaft: 25, turn: 30, finger: 45,
		skin: skins["tan"], drape: plain(drapes["green"]), gain: 1, blur: 1.2, noise: 0.003}
}

func TestCleanBorderIsFoundToAFewHundredthsOfAPixel(t *testing.T) {
	f, b := traced(t, clean(), 1, 1)
	if f.off[0] > 0.06 || math.Abs(f.bias[0]) > 0.04 || f.worst[0] > 0.2 {
		t.Errorf("median off %.3f, bias %+.3f, 95 per cent within %.3f px; want 0.06, 0.04, 0.2", f.off[0], f.bias[0], f.worst[0])
	}
	if math.Abs(float64(b.Blur)-1.2) > 0.35 {
		t.Errorf("blur %.2f px; want about 1.2", b.Blur)
	}
	if len(b.Warnings) > 0 {
		t.Errorf("warnings on a clean picture: %q", b.Warnings)
	}
}

func TestPointsRunFromTheFirstClickToTheLastAPixelApart(t *testing.T) {
	d := clean().draw(1)
	seeds := d.seeds(rand.New(rand.NewPCG(1, 2)), 0)
	for range 2 {
		b, err := Web(d.photograph, seeds)
		if err != nil {
			t.Fatal(err)
		}
		n := len(b.Points)
		if b.Points[0].Distance(seeds[0]) > 2.5 || b.Points[n-1].Distance(seeds[2]) > 2.5 {
			t.Errorf("ends %v and %v; want near %v and %v", b.Points[0], b.Points[n-1], seeds[0], seeds[2])
		}
		for i := 1; i < n; i++ {
			if step := b.Points[i].Distance(b.Points[i-1]); step < 0.2 || step > 2.5 {
				t.Fatalf("points %d and %d are %.2f px apart", i-1, i, step)
			}
		}
		seeds[0], seeds[2] = seeds[2], seeds[0]
	}
}

func TestSameInputSameBorder(t *testing.T) {
	d := clean().draw(3)
	seeds := d.seeds(rand.New(rand.NewPCG(1, 2)), 2)
	a, errA := Web(d.photograph, seeds)
	b, errB := Web(d.photograph, seeds)
	if errA != nil || errB != nil || len(a.Points) != len(b.Points) {
		t.Fatal(errA, errB, len(a.Points), len(b.Points))
	}
	for i := range a.Points {
		if a.Points[i] != b.Points[i] {
			t.Fatalf("point %d: %v, then %v", i, a.Points[i], b.Points[i])
		}
	}
}

func TestBlurDoesNotMoveTheBorder(t *testing.T) {
	for _, blur := range []float64{0.5, 1, 2, 3} {
		s := clean()
		s.blur = blur
		if f, _ := traced(t, s, 1, 1); math.Abs(f.bias[0]) > 0.12 {
			t.Errorf("blur %.1f px: bias %+.3f px", blur, f.bias[0])
		}
	}
}

func TestShadowAndShadingDoNotPassForTheBorder(t *testing.T) {
	for _, drape := range drapeNames {
		s := clean()
		s.drape = plain(drapes[drape])
		s.shadow, s.shadowFar = 0.5, 8
		s.shade, s.shadeFar = 0.35, 8
		if f, _ := traced(t, s, 2, 1.5); f.off[0] > 0.5 || f.worst[0] > 1.6 {
			t.Errorf("%s drape: median off %.2f, 95 per cent within %.2f px", drape, f.off[0], f.worst[0])
		}
	}
}

func TestEverySkinOnEveryDrape(t *testing.T) {
	var f figures
	rng := rand.New(rand.NewPCG(11, 3))
	for i, skin := range skinNames {
		for j, drape := range drapeNames {
			s := randomScene(rng, skin, drape, shapeNames[(i+j)%4], 30)
			d := s.draw(rng.Uint64())
			b, err := Web(d.photograph, d.seeds(rng, 2))
			f.add(d, b, err)
		}
	}
	t.Log(f)
	if f.failed > 0 || median(f.off) > 0.4 || quantile(f.off, 0.9) > 1.3 || math.Abs(median(f.bias)) > 0.15 || quantile(f.worst, 0.9) > 2.2 {
		t.Errorf("too far off: %v", f)
	}
}

func TestNarrowGapOfEightPixels(t *testing.T) {
	s := clean()
	s.radius, s.flare, s.shaft, s.blur, s.finger = 4, 0, 20, 0.7, 16
	f, _ := traced(t, s, 4, 0.7)
	if f.off[0] > 0.2 || f.worst[0] > 0.8 {
		t.Errorf("median off %.2f, 95 per cent within %.2f px", f.off[0], f.worst[0])
	}
}

func TestClicksWellOffTheBorder(t *testing.T) {
	for seed := range uint64(6) {
		if f, _ := traced(t, clean(), seed, 4); f.off[0] > 0.1 || f.worst[0] > 1.2 {
			t.Errorf("seed %d: median off %.2f, 95 per cent within %.2f px", seed, f.off[0], f.worst[0])
		}
	}
}

func TestCornersOfAUAreFollowed(t *testing.T) {
	s := clean()
	s.shape, s.radius, s.flat = "U", 6, 30
	if f, _ := traced(t, s, 5, 1.5); f.off[0] > 0.1 || f.worst[0] > 0.4 {
		t.Errorf("median off %.2f, 95 per cent within %.2f px", f.off[0], f.worst[0])
	}
}

func TestApexOfAVLosesNoMoreThanItsBlur(t *testing.T) {
	s := clean()
	s.shape, s.radius, s.flare, s.meet, s.shaft = "V", 0, 18, 18, 70
	d := s.draw(6)
	b, err := Web(d.photograph, d.seeds(rand.New(rand.NewPCG(6, 2)), 1))
	if err != nil {
		t.Fatal(err)
	}
	lost := math.Inf(1)
	for _, p := range b.Points {
		lost = math.Min(lost, float64(p.Distance(d.toPage(0, 0))))
	}
	if lost > 3*s.blur {
		t.Errorf("the apex lies %.1f px short; blur %.1f", lost, s.blur)
	}
}

// A drawing by a stranger: hard edges, a drape with a gradient, a pattern, or
// blown out to white.
func TestForeignPictures(t *testing.T) {
	pictures := map[string]func(*scene){
		"flat colours, no noise":   func(s *scene) { s.noise, s.blur = 0, 0 },
		"gradient drape":           func(s *scene) { s.drape = gradient },
		"striped drape":            func(s *scene) { s.drape = striped },
		"black and white":          func(s *scene) { s.skin, s.drape = colour{0.3, 0.3, 0.3}, plain(colour{0.7, 0.7, 0.7}) },
		"white skin on black":      func(s *scene) { s.skin, s.drape = colour{0.9, 0.9, 0.9}, plain(colour{0, 0, 0}) },
		"drawn in saturated green": func(s *scene) { s.drape, s.noise = plain(colour{0, 1, 0}), 0 },
	}
	for name, change := range pictures {
		s := clean()
		change(&s)
		if f, _ := traced(t, s, 7, 1.5); f.off[0] > 0.3 || f.worst[0] > 1 {
			t.Errorf("%s: median off %.2f, 95 per cent within %.2f px", name, f.off[0], f.worst[0])
		}
	}
}

// Where the drape is blown out its true brightness is lost and with it the
// exact place of the border; it must still be followed closely.
func TestBlownOutDrape(t *testing.T) {
	s := clean()
	s.drape, s.gain = plain(drapes["white"]), 1.6
	if f, _ := traced(t, s, 7, 1.5); f.off[0] > 0.7 || f.worst[0] > 1 {
		t.Errorf("median off %.2f, 95 per cent within %.2f px", f.off[0], f.worst[0])
	}
}

func gradient(x, y float64) colour {
	k := 0.25 + x/200
	return colour{0.15 * k, 0.3 * k, 0.6*k + y/1000}
}

func striped(x, y float64) colour {
	if math.Mod(x+0.6*y, 14) < 7 {
		return colour{0.75, 0.78, 0.8}
	}
	return colour{0.12, 0.25, 0.6}
}

func blank(c color.RGBA) *photo.Photograph {
	img := image.NewRGBA(image.Rect(0, 0, 200, 200))
	draw.Draw(img, img.Rect, image.NewUniform(c), image.Point{}, draw.Src)
	return photo.From(img)
}

func TestRefusalsSayWhatToDo(t *testing.T) {
	at := func(x, y plane.Pixel) point { return plane.Pt(x, y) }
	noisy := image.NewRGBA(image.Rect(0, 0, 200, 200))
	rng := rand.New(rand.NewPCG(1, 1))
	for i := range noisy.Pix {
		noisy.Pix[i] = uint8(110 + rng.IntN(30))
	}
	for i := 3; i < len(noisy.Pix); i += 4 {
		noisy.Pix[i] = 255
	}
	good := [3]point{at(60, 60), at(80, 120), at(100, 60)}
	flat := blank(color.RGBA{150, 120, 110, 255})
	for _, c := range []struct {
		name  string
		p     *photo.Photograph
		seeds [3]point
		want  string
	}{
		{"one colour", flat, good, "by hand"},
		{"noise", photo.From(noisy), good, "by hand"},
		{"outside", flat, [3]point{at(60, 60), at(80, 320), at(100, 60)}, "outside the photograph"},
		{"not a number", flat, [3]point{at(60, 60), at(80, plane.Pixel(math.NaN())), at(100, 60)}, "outside the photograph"},
		{"all at one place", flat, [3]point{at(60, 60), at(61, 60), at(60, 61)}, "further apart"},
		{"on one line", flat, [3]point{at(60, 60), at(80, 60), at(100, 60)}, "on one line"},
	} {
		_, err := Web(c.p, c.seeds)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v; want one that says %q", c.name, err, c.want)
		}
	}
}

func TestAnyClicksGiveABorderOrAnError(t *testing.T) {
	d := clean().draw(1)
	size := d.photograph.Size()
	tiny := photo.From(image.NewRGBA(image.Rect(0, 0, 14, 11)))
	rng := rand.New(rand.NewPCG(4, 4))
	for range 300 {
		p, w, h := d.photograph, size.X, size.Y
		if rng.IntN(4) == 0 {
			p, w, h = tiny, 14, 11
		}
		var seeds [3]point
		for i := range seeds {
			seeds[i] = plane.Pt(plane.Pixel(rng.Float64()*float64(w)), plane.Pixel(rng.Float64()*float64(h)))
			if rng.IntN(5) == 0 {
				seeds[i].X = plane.Pixel(w)
			}
		}
		b, err := Web(p, seeds)
		if err == nil && len(b.Points) < 3 {
			t.Fatalf("%v: neither a border nor an error", seeds)
		}
		for _, q := range b.Points {
			if !q.Finite() {
				t.Fatalf("%v: a point at %v", seeds, q)
			}
		}
	}
}

func TestFaintBorderIsWarnedOf(t *testing.T) {
	s := clean()
	pale := s.skin
	s.turn = 0
	s.drape = func(x, y float64) colour {
		if y < 80 {
			return pale
		}
		return drapes["green"]
	}
	d := s.draw(1)
	b, err := Web(d.photograph, [3]point{d.toPage(s.halfWidth(s.top()), s.top()), d.toPage(0, 0), d.toPage(-s.halfWidth(s.top()), s.top())})
	if err == nil && !strings.Contains(strings.Join(b.Warnings, " "), "faint") {
		t.Errorf("half of the drape has the skin's colour, and nothing is said: %q", b.Warnings)
	}
}
