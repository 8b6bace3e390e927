package envelope

import (
	"math"
	"testing"
)

// A pile of sheets is refused or shares out exactly what falls on it.
func FuzzOptics(f *testing.F) {
	f.Add(1.526, 32.0, 0.0023, 60.0)
	f.Add(1.0, 0.0, 1e-6, 90.0)
	f.Add(math.NaN(), -1.0, 0.0, 100.0)
	f.Fuzz(func(t *testing.T, index, extinction, thickness, angle float64) {
		x := Sheet{index, extinction, thickness}
		s, err := NewLightLayers(x, Sheet{1.5, 5, 0.004}, x)
		if err != nil || !incidenceAngleRange.Contains(angle) {
			return
		}
		l := s.At(angle)
		sum := l.Transmittance + l.Reflectance + l.Absorptance[0] + l.Absorptance[1] + l.Absorptance[2]
		if !(math.Abs(sum-1) < 1e-9) || l.Transmittance < 0 || l.Reflectance < 0 {
			t.Fatalf("%+v sums to %v", l, sum)
		}
	})
}
