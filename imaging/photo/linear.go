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

// linear16 is linearOf for values from 0 to 65535.
var linear16Table = sync.OnceValue(func() []float32 {
	t := make([]float32, 1<<16)
	for i := range t {
		t[i] = float32(linearOf(float64(i) / 0xffff))
	}
	return t
})

func linear16(v uint32) float32 { return linear16Table()[v&0xffff] }
