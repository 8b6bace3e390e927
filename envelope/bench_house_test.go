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

// fourteen is a round arch of 14 facets, seven of which have a twin.
func fourteen(b *testing.B, room RadiantRoom) *House {
	f := DefaultForm()
	f.Section, f.Span, f.Length, f.Eave, f.Ridge, f.ArchStrips = RoundArch, 6, 20, 1.2, 3.4, 5
	s, err := NewShape(f)
	if err != nil {
		b.Fatal(err)
	}
	film := DoubleInfraredFilm()
	h, err := NewHouse(HousePlan{Shape: s, Covers: map[FacetKind]Cover{Roof: film, SideWall: film, EndWall: film},
		Ground: DefaultGround(ClaySoil()), Climate: DefaultGroundClimate(), Leakage: DefaultLeakage(), Radiant: room})
	if err != nil {
		b.Fatal(err)
	}
	return h
}

// BenchmarkVapour finds the humidity of a house of 14 facets with 20 g/(m² h)
// set free, alone and as an enclosure, cold and from the hour before. Its limit
// is that of the cover solver for the seven facets that differ: in each of the
// Solutions but the last, which closes it, one or two steps of Newton's method
// with three right-hand sides.
func BenchmarkVapour(b *testing.B) {
	for _, c := range []struct {
		name string
		room RadiantRoom
		near bool
	}{{"cold", RadiantAir, false}, {"near", RadiantAir, true}, {"enclosure cold", RadiantEnclosure, false}, {"enclosure near", RadiantEnclosure, true}} {
		b.Run(c.name, func(b *testing.B) {
			h := fourteen(b, c.room)
			v := VapourSources{Released: 20e-3 / 3600 * h.Shape().FloorArea}
			var r VapourBalance
			b.ReportAllocs()
			i, solutions := 0, 0
			for b.Loop() {
				k := winterNight()
				k.Outside += 0.5 * float64(i&7)
				if !c.near {
					r = VapourBalance{}
				}
				if err := h.SolveVapourTo(&r, &k, v); err != nil {
					b.Fatal(err)
				}
				sinkLoss += r.Total
				solutions += r.Solutions
				i++
			}
			b.ReportMetric(float64(solutions)/float64(i), "solutions/op")
			b.ReportMetric(float64(len(r.Loss.Facets)), "facets")
		})
	}
}
