package airheat

import (
	"testing"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

var sinkHeat float64

// BenchmarkWarmUp finds the time of an event from the description of a
// three-node house on: eigenproblem, turning points, crossing. Its floor is
// about 3 exponentials for each of some 12 evaluations.
func BenchmarkWarmUp(b *testing.B) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		n := testNodes()
		n.Cover += float64(i & 63)
		h, _ := NewTransient(n)
		e, _ := h.WarmUp(envelope.Drive{Heat: 40000, Outside: -8, Deep: 8}, 18, Forever)
		sinkHeat += e.Time.Seconds()
	}
}

// BenchmarkDuty makes the inlet's state from a relative humidity and solves for
// the rise, the bases in turn. Its floor is the saturation pressure: an
// exponential and a logarithm, then some twelve divisions.
func BenchmarkDuty(b *testing.B) {
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		in, _ := psychro.IdealGas.FromRelativeHumidity(float64(i&15), 0.6, 101325)
		d, _ := RiseFor(in, Flow{0.8, everyBasis[i&3]}, 30000)
		sinkHeat += d.Rise
	}
}

// BenchmarkYearEnergy runs 8,760 hours of the three-node house with thermostat
// and vents; the exponentials are those of one hour, all else is products:
// about 70 multiplications and 6 divisions an hour.
func BenchmarkYearEnergy(b *testing.B) {
	s := demoSeasonNodes(b)
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		s.Deep = float64(i & 7)
		c, _ := s.Solve()
		sinkHeat += c.Fuel
	}
}
