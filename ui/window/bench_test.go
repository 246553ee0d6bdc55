package window

import (
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"ogive/geometry/hand"
	"ogive/geometry/plane"
	"ogive/imaging/measure"
	"ogive/imaging/photo"
	"ogive/ui/marking"
)

// BenchmarkFromDragToFigures prints how long it takes from the event of a drag
// to the new figures of all three webs: moving the point and measuring, without
// the drawing of a frame. The most it may take is 8 ms.
func BenchmarkFromDragToFigures(b *testing.B) {
	for _, spot := range []marking.Spot{
		{Kind: marking.JointPoint, Digit: hand.Ring, Joint: hand.PIP},
		{Kind: marking.SeedPoint, Web: hand.ThirdWeb, N: 1},
		{Kind: marking.ScalePoint, N: 1},
	} {
		b.Run(spot.Name(hand.Dorsal), func(b *testing.B) { dragToFigures(b, spot) })
	}
}

func dragToFigures(b *testing.B, spot marking.Spot) {
	work := markedWork(b)
	from := work.State().Points[spot]
	var took []time.Duration
	for n := 0; b.Loop(); n++ {
		begun := time.Now()
		work.Drag(spot, from.Add(plane.Vec(plane.Pixel(n%7)/2, plane.Pixel(n%5)/2)))
		if r := work.MeasureDragged(work.State()); len(r.Webs) != 3 {
			b.Fatalf("%d webs were read: %v", len(r.Webs), r.Problems)
		}
		took = append(took, time.Since(begun))
	}
	slices.Sort(took)
	b.ReportMetric(took[len(took)/2].Seconds()*1000, "ms-median")
	b.ReportMetric(took[len(took)*95/100].Seconds()*1000, "ms-p95")
}

// markedWork is the hand of the tests with everything marked as the truth is.
func markedWork(b *testing.B) *marking.Work {
	b.Helper()
	picture := aHand(b)
	path := filepath.Join(b.TempDir(), "hand.jpg")
	if err := os.WriteFile(path, picture.JPEG, 0o644); err != nil {
		b.Fatal(err)
	}
	p, err := photo.Open(path)
	if err != nil {
		b.Fatal(err)
	}
	settings, err := measure.Defaults()
	if err != nil {
		b.Fatal(err)
	}
	work, err := marking.With(path, p, settings)
	if err != nil {
		b.Fatal(err)
	}
	t := picture.Truth
	gestures := []error{
		work.SetHand(t.Side, t.View), work.SetLength(t.Ruler.Length),
		work.Place(marking.Spot{Kind: marking.ScalePoint, N: 0}, t.Ruler.From),
		work.Place(marking.Spot{Kind: marking.ScalePoint, N: 1}, t.Ruler.To),
	}
	for _, d := range hand.Digits[1:] {
		for _, j := range []hand.Joint{hand.MCP, hand.PIP} {
			gestures = append(gestures, work.Place(marking.Spot{Kind: marking.JointPoint, Digit: d, Joint: j}, t.Joints[d][j]))
		}
	}
	for _, web := range t.Webs {
		for n, at := range []plane.PixelPoint{web.Border[len(web.Border)/12], web.Crown, web.Border[len(web.Border)*11/12]} {
			gestures = append(gestures, work.Place(marking.Spot{Kind: marking.SeedPoint, Web: web.Web, N: n}, at))
		}
	}
	for _, err := range gestures {
		if err != nil {
			b.Fatal(err)
		}
	}
	return work
}
