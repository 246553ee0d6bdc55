package photo

import (
	"math"
	"sync"
)

// linearOf is the linear light of an sRGB value, both 0 to 1 (IEC 61966-2-1).
func linearOf(v float64) float64 {
	if v <= 0.04045 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

// linear8 holds the linear light of the values 0 to 255.
var linear8 = sync.OnceValue(func() *[256]float32 {
	var t [256]float32
	for i := range t {
		t[i] = float32(linearOf(float64(i) / 255))
	}
	return &t
})

// linear16 holds the linear light of the values 0 to 65535.
var linear16 = sync.OnceValue(func() *[1 << 16]float32 {
	var t [1 << 16]float32
	for i := range t {
		t[i] = float32(linearOf(float64(i) / 0xffff))
	}
	return &t
})

// Luma and chroma add up in quarters of a level, and to sums outside 0 to 255;
// the table takes the place of the clamping.
const (
	quarterZero = 1024 // where the level 0 stands
	quarterSize = 4096
)

// linearQuarter holds the linear light of levels in quarters.
var linearQuarter = sync.OnceValue(func() *[quarterSize]float32 {
	var t [quarterSize]float32
	for i := range t {
		t[i] = float32(linearOf(min(max(float64(i-quarterZero)/(4*255), 0), 1)))
	}
	return &t
})
