package markshapes

import "image"

// Detail is how much of a box on a picture is occupied by sharp edges, such as
// those of numbers and ticks on a ruler: 0 for none, 1 for all. Parts of the box
// outside the picture do not count.
func Detail(img *image.RGBA, b Box) float64 {
	const step, sharp = 2, 90 // of the sum of three colours
	r := image.Rect(int(b.Left), int(b.Top), int(b.Right), int(b.Bottom)).Intersect(img.Rect.Inset(step))
	edges, all := 0, 0
	for y := r.Min.Y; y < r.Max.Y; y += step {
		for x := r.Min.X; x < r.Max.X; x += step {
			here, right, below := bright(img, x, y), bright(img, x+step, y), bright(img, x, y+step)
			if max(here-right, right-here, here-below, below-here) > sharp {
				edges++
			}
			all++
		}
	}
	if all == 0 {
		return 0
	}
	return float64(edges) / float64(all)
}

func bright(img *image.RGBA, x, y int) int {
	o := img.PixOffset(x, y)
	return int(img.Pix[o]) + int(img.Pix[o+1]) + int(img.Pix[o+2])
}
