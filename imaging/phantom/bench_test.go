package phantom

import "testing"

func BenchmarkRenderTwoMegapixels(b *testing.B) {
	c := Random(5)
	c.Width, c.Height = 1632, 1224
	for b.Loop() {
		if _, err := c.Render(); err != nil {
			b.Fatal(err)
		}
	}
}
