package envelope_test

import (
	"testing"

	. "cloche.example/envelope"
)

func BenchmarkEnclosure(b *testing.B) {
	p := filmHouse(b)
	for _, c := range []struct {
		name string
		room RadiantRoom
	}{{"apart", RadiantAir}, {"enclosure", RadiantEnclosure}} {
		p.Radiant = c.room
		h := built(b, p)
		k := winterNight()
		var r HouseLoss
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for i := range b.N {
				k.Outside = -14 + float64(i%16)
				if err := h.LossTo(&r, &k); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(c.name+", made", func(b *testing.B) {
			for range b.N {
				if _, err := NewHouse(p); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
