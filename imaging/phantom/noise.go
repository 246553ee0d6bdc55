package phantom

import "math"

// noise is a smooth random surface of wavelength 1, mean 0, within -1 to 1,
// that is the same for the same seed.
type noise uint64

func (n noise) at(x, y float64) float64 {
	fx, fy := math.Floor(x), math.Floor(y)
	u, v := x-fx, y-fy
	i, j := int64(fx), int64(fy)
	u, v = u*u*(3-2*u), v*v*(3-2*v)
	a, b := n.corner(i, j), n.corner(i+1, j)
	c, d := n.corner(i, j+1), n.corner(i+1, j+1)
	top, bottom := a+(b-a)*u, c+(d-c)*u
	return top + (bottom-top)*v
}

func (n noise) corner(i, j int64) float64 {
	x := uint64(n) ^ uint64(i)*0x9E3779B97F4A7C15 ^ uint64(j)*0xC2B2AE3D27D4EB4F
	x ^= x >> 32
	x *= 0xD6E8FEB86659FD93
	x ^= x >> 32
	return float64(int64(x)) / (1 << 63)
}

// octaves adds ever finer noise of ever smaller height.
func (n noise) octaves(x, y float64, count int) float64 {
	sum, weight := 0.0, 1.0
	for k := range count {
		sum += weight * (n+noise(k)*977).at(x, y)
		x, y, weight = 2.03*x+17.3, 2.03*y-9.1, weight*0.5
	}
	return sum
}
