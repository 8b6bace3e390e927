package ventilation_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/speed"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Drying with three surfaces: a saturation pressure and a Lewis relation each,
// the enthalpies, and the exhaust air of the exchanger solved for its fog:
// some 40 exponentials and roots.
func BenchmarkDrying(b *testing.B) {
	d := winter(b)
	var outside [64]psychro.State
	for i := range outside {
		outside[i] = moist(b, -12+0.3*float64(i), 0.9)
	}
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		d.Outside = outside[i&63]
		r, _ := d.Flow()
		sum += r.Cost
	}
	speed.Sink = sum
}

func BenchmarkDryingTime(b *testing.B) {
	d := winter(b)
	from := moist(b, 15, 0.98)
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		r, _ := d.Time(from, 0.3+0.01*float64(i&63), 250)
		sum += r.Vented
	}
	speed.Sink = sum
}

// Two ends of the band with 65 slopes along each axis, two roots each: 260
// roots.
func BenchmarkColdFall(b *testing.B) {
	j := coldJet(ventilation.SlotInlet)
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		j.Speed = 0.3 + 0.05*float64(i&63)
		sum += j.Fall(2, 6.4).Coldest
	}
	speed.Sink = sum
}

func BenchmarkColdVents(b *testing.B) {
	v := cold(b)
	fractions := []float64{0.2, 0.7}
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		v.Outside = -15 + 0.3*float64(i&63)
		a, _ := v.At(fractions)
		sum += a.Coldest
	}
	speed.Sink = sum
}

func BenchmarkDoor(b *testing.B) {
	d := visits(b)
	d.Leaks = []ventilation.Leak{{Height: 1, Flow: 0.02, Exponent: 0.65}}
	b.ReportAllocs()
	sum := 0.0
	for i := 0; b.Loop(); i++ {
		d.Wind = 0.1 * float64(i&63)
		r, _ := d.Loss()
		sum += r.Energy
	}
	speed.Sink = sum
}

func TestWinterAllocatesNothing(t *testing.T) {
	d := winter(t)
	from := moist(t, 15, 0.98)
	require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = d.Time(from, 0.5, 250) }))
	require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = d.Settled(0.5) }))
	door := visits(t)
	door.Leaks = []ventilation.Leak{{Height: 1, Flow: 0.02, Exponent: 0.65}}
	door.Wind = 3
	require.Zero(t, testing.AllocsPerRun(100, func() { _, _ = door.Loss() }))
	r := dried(t, d)
	require.Zero(t, testing.AllocsPerRun(100, func() { _ = r.Over(time.Hour) }))
}
