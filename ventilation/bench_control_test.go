package ventilation_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/speed"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Some divisions and comparisons: 10 ns.
func BenchmarkOpeningRule(b *testing.B) {
	r := rule()
	r.DeadBand, r.Step = 0.05, 0.1
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		sum += r.Next(18+0.25*float64(i&63), float64(i&15), i&7 == 0, 0.4).Opening
	}
	speed.Sink = sum
}

// A wet bulb, a state from it and two powers.
func BenchmarkPadWall(b *testing.B) {
	var air [16]psychro.State
	for i := range air {
		air[i] = humid(b, 24+float64(i), 0.3)
	}
	p := pads()
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		c, _ := p.Cool(air[i&15], 5)
		sum += c.Evaporated
	}
	speed.Sink = sum
}

func BenchmarkShade(b *testing.B) {
	s := shade(ventilation.InsideScreen)
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		s.Drawn = float64(i&15) / 15
		r, _ := s.Balance()
		sum += r.Transmitted
	}
	speed.Sink = sum
}

// A day of 24 steps: where the vents move, some ten states of the house each.
func BenchmarkDayByRule(b *testing.B) {
	c, steps := dayHouse(b), summer(b)
	b.ReportAllocs()
	for b.Loop() {
		d, _ := c.Day(steps, time.Hour, rule(), ventilation.DefaultDayLimits())
		speed.Sink = d.Mean
	}
}

func TestCoolingAllocatesNothing(t *testing.T) {
	air, p, s := humid(t, 34, 0.3), pads(), shade(ventilation.Whitewash)
	require.Zero(t, testing.AllocsPerRun(50, func() { _, _ = p.Cool(air, 5) }))
	require.Zero(t, testing.AllocsPerRun(50, func() { _, _ = s.Balance() }))
}
