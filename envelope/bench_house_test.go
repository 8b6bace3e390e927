package envelope_test

import (
	"testing"

	. "cloche.example/envelope"
)

var sinkLoss float64

// BenchmarkHouseLoss solves the dug-in film house of the tests on eight
// weathers: ten facets, ground, leakage, moist air. The inner faces are taken
// as dry, so that each is solved once. Its limit is that of the cover solver,
// once for each facet; ground and moist air are about a twentieth.
func BenchmarkHouseLoss(b *testing.B) { benchHouse(b, InnerDry) }

// BenchmarkHouseLossWet is the same with the dew point deciding, where every
// facet drips: each is solved dry, for its threshold, and wet.
func BenchmarkHouseLossWet(b *testing.B) { benchHouse(b, InnerAuto) }

func benchHouse(b *testing.B, face InnerFace) {
	h, err := NewHouse(filmHouse(b))
	if err != nil {
		b.Fatal(err)
	}
	var hours [8]HouseConditions
	for i := range hours {
		k := winterNight()
		x := float64(i)
		k.Outside, k.SkyDrop, k.Wind, k.InnerFace = -14+x, 18-x, 1+0.7*x, face
		hours[i] = k
	}
	var r HouseLoss
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		if err := h.LossTo(&r, &hours[i&7]); err != nil {
			b.Fatal(err)
		}
		sinkLoss += r.Total
		i++
	}
}

// BenchmarkGround solves a dug-in house by ISO 13370 with its month.
func BenchmarkGround(b *testing.B) {
	g := DefaultGround(ClaySoil())
	g.Area, g.Perimeter = 94.7, 42.4
	c := DefaultGroundClimate()
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		g.Depth = 0.1 * float64(i&15)
		r, err := g.Solve()
		if err != nil {
			b.Fatal(err)
		}
		sinkLoss += r.Flow(c, 1).Total
		i++
	}
}
