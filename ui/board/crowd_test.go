package board

import (
	"image"
	"image/color"
	"testing"

	"fyne.io/fyne/v2"

	"ogive/geometry/arch"
	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/geometry/reading"
	"ogive/imaging/photo"
	"ogive/ui/marking"
)

func seed(n int, x, y plane.Pixel) marking.Placed {
	return marking.Placed{Spot: marking.Spot{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: n}, At: plane.Pt(x, y)}
}

func TestMarksThatCrowdOnTheScreenAreDrawnSmallerUntilItIsZoomed(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	placed := []marking.Placed{seed(0, 500, 400), seed(1, 520, 400), seed(2, 900, 700)}
	size := func(zoom float64) map[marking.Spot]float64 {
		b.see(b.view.ZoomedTo(zoom, b.view.Screen(placed[0].At)))
		return newPen(image.NewRGBA(image.Rect(0, 0, 600, 400)), b.view, 1).rooms(placed)
	}
	whole := size(b.view.Zoom)
	if whole[placed[0].Spot] != leastMark || whole[placed[1].Spot] != leastMark || whole[placed[2].Spot] != 1 {
		t.Errorf("seen whole the marks have the sizes %v", whole)
	}
	if near := size(2); near[placed[0].Spot] != 1 {
		t.Errorf("seen large the marks have the sizes %v", near)
	}
}

func TestANarrowArchHasSmallDarts(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	p := newPen(image.NewRGBA(image.Rect(0, 0, 600, 400)), b.view, 1)
	web := func(width plane.Pixel) reading.Web {
		a, c := plane.Pt[plane.Pixel](500, 300), plane.Pt(500+width, 300)
		return reading.Web{Web: hand.ThirdWeb, Shape: arch.U, Curve: []plane.PixelPoint{a, c}, Springing: [2]plane.PixelPoint{a, c}}
	}
	if wide, narrow := p.roomOf(web(300)), p.roomOf(web(40)); wide != 1 || narrow != leastMark {
		t.Errorf("a wide arch is drawn with marks of %v of their size, a narrow one with %v", wide, narrow)
	}
}

// framed is the board as it is painted.
func framed(b *Board) []byte {
	b.frame.unmarked = true
	return append([]byte(nil), b.paint(600, 400).(*image.RGBA).Pix...)
}

func TestACrowdedMarkIsNamedWhenThePointerIsOverIt(t *testing.T) {
	b, _ := newTestBoard(t, 1)
	b.Draw(Scene{View: hand.Dorsal, Placed: []marking.Placed{seed(0, 500, 400), seed(1, 530, 400)}})
	hover(b, b.on(100, 100))
	before := framed(b)
	hover(b, b.on(530, 400))
	named := differingPixels(before, framed(b))
	hover(b, b.on(100, 100))
	after := differingPixels(before, framed(b))
	if named < 200 || after != 0 {
		t.Errorf("under the pointer %d pixels change, away from it %d", named, after)
	}
}

func differingPixels(a, b []byte) int {
	n := 0
	for i := 0; i < len(a); i += 4 {
		if a[i] != b[i] || a[i+1] != b[i+1] || a[i+2] != b[i+2] {
			n++
		}
	}
	return n
}

// A ruler with its numbers at one side of the marked tick.
func TestTheNameOfAScalePointLeavesTheNumbersToBeRead(t *testing.T) {
	for name, numbers := range map[string]image.Rectangle{
		"at the right": image.Rect(315, 100, 420, 300), "at the left": image.Rect(180, 100, 285, 300),
		"below": image.Rect(200, 215, 400, 300), "above": image.Rect(200, 100, 400, 185),
	} {
		img := image.NewRGBA(image.Rect(0, 0, 600, 400))
		for y := range 400 {
			for x := range 600 {
				c := color.RGBA{230, 230, 226, 255}
				if image.Pt(x, y).In(numbers) && (x/6+y/9)%2 == 0 {
					c = color.RGBA{30, 30, 34, 255}
				}
				img.SetRGBA(x, y, c)
			}
		}
		b, w := newTestBoard(t, 1)
		w.Resize(fyne.NewSize(600, 400))
		b.ShowPhotograph(photo.From(img))
		end := marking.Spot{Kind: marking.ScalePoint}
		before := framed(b)
		b.Draw(Scene{View: hand.Dorsal, Placed: []marking.Placed{{Spot: end, At: plane.Pt[plane.Pixel](300, 200)}}, Selected: &end})
		after := framed(b)
		hidden, changed := 0, 0
		for y := range 400 {
			for x := range 600 {
				if o := 4 * (600*y + x); before[o] != after[o] {
					changed++
					if image.Pt(x, y).In(numbers) {
						hidden++
					}
				}
			}
		}
		if hidden > 60 || changed < 500 { // the bracket's corner may reach the numbers
			t.Errorf("numbers %s: %d of their pixels are hidden, %d changed in all", name, hidden, changed)
		}
	}
}
