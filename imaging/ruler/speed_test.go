package ruler

import "testing"

// BenchmarkFindTicks times one search on one core, on a level ruler and on a
// slanting one of 50 ticks, 24 pixels to a millimetre.
func BenchmarkFindTicks(b *testing.B) {
	for name, turn := range map[string]float64{"level": 0.05, "slanting": 0.8} {
		s := millimetreRuler(4)
		s.perMM, s.spaces, s.turn = 24, 50, turn
		d := s.draw()
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if _, err := FindTicks(d.photograph, d.from, d.to); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
