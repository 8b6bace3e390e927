package envelope_test

import (
	"errors"
	"math"
	"testing"

	. "cloche.example/envelope"
)

// FuzzHouse builds any form and loses heat from it: an error that matches
// ErrRange or ErrNoSolution, or finite numbers that add up.
func FuzzHouse(f *testing.F) {
	f.Add(uint8(0), 6.4, 14.8, 1.3, 3.1, 0.7, 0.2, 90.0, 2.0, 10.0, uint8(1), 15.0, 0.8, -14.0, -32.0, 3.5, uint8(0))
	f.Add(uint8(2), 6.0, 12.0, 0.0, 3.0, 0.0, 0.0, 0.0, 0.0, 0.0, uint8(3), -3.0, 1.0, -40.0, -70.0, 0.0, uint8(5))
	f.Add(uint8(4), 3.0, 8.0, 1.5, 3.0, 1.5, 0.5, 181.0, 1.0, 5.0, uint8(1), 5.0, 0.3, 30.0, 12.0, 40.0, uint8(9))
	f.Add(uint8(3), 8.0, 10.0, 0.5, 6.0, 2.0, 0.1, 359.9, 1.0, 30.0, uint8(2), 20.0, 0.99, 20.0, 20.0, 1.0, uint8(2))
	covers := Covers()
	f.Fuzz(func(t *testing.T, section uint8, span, length, eave, ridge, depth, dwarf, azimuth, offset, slope float64, bays uint8,
		inside, rh, outside, sky, wind float64, pick uint8) {
		form := Form{Section: Section(section % 6), Span: span, Length: length, Eave: eave, Ridge: ridge, Depth: depth, DwarfWall: dwarf,
			Azimuth: azimuth, RidgeOffset: offset, RidgeTilt: slope, ArchStrips: int(pick % 5), Bays: int(bays % 5), GutterWidth: 0.2}
		if pick&16 != 0 {
			form.Annexes = []Annex{{Name: "lobby", Place: Place(pick % 5), Width: 2, Reach: 1.5, High: 2, Low: 1.8, Depth: depth / 2}}
		}
		s, err := NewShape(form)
		if err != nil {
			if !errors.Is(err, ErrRange) {
				t.Fatal(err)
			}
			return
		}
		for _, x := range s.Facets {
			if !(x.Area > 0) || math.IsInf(x.Area, 0) || !(x.Tilt >= 0 && x.Tilt <= 180) || !(x.Azimuth >= 0 && x.Azimuth < 360) {
				t.Fatalf("%+v", x)
			}
		}
		if c := Closure(s); len(form.Annexes) == 0 && !(c < 0.12) {
			t.Fatalf("closure %g of %+v", c, form)
		}
		list := map[FacetKind]Cover{}
		for k := Roof; k < Floor; k++ {
			list[k] = covers[(int(pick)+int(k))%len(covers)].Cover
		}
		p := HousePlan{Shape: s, Covers: list, Ground: DefaultGround(ClaySoil()), Climate: DefaultGroundClimate(), Leakage: DefaultLeakage()}
		if pick&32 != 0 {
			p.Leakage.Model = LeakagePressure
		}
		for range s.Annexes {
			plan := AnnexPlan{Covers: list, PartitionU: 3, AirChanges: 1, Humidity: 0.5, Ground: DefaultGround(ClaySoil())}
			p.Annexes = append(p.Annexes, plan)
		}
		h, err := NewHouse(p)
		if err != nil {
			if !errors.Is(err, ErrRange) {
				t.Fatal(err)
			}
			return
		}
		k := DefaultHouseConditions()
		k.Inside, k.InsideHumidity = inside, rh
		k.Outside, k.SkyDrop, k.Wind = outside, outside-sky, wind
		r, err := h.Loss(k)
		if err != nil {
			if !errors.Is(err, ErrRange) {
				t.Fatalf("%v for %+v", err, k)
			}
			return
		}
		sum := 0.0
		for _, x := range r.Terms() {
			sum += x.Loss
		}
		if math.IsInf(r.Total, 0) || !(math.Abs(sum-r.Total) <= 1e-6*(1+math.Abs(sum))) {
			t.Fatalf("total %g of terms %g, %+v", r.Total, sum, k)
		}
	})
}

// FuzzGround solves any ground: an error that matches ErrRange, or positive,
// finite coefficients.
func FuzzGround(f *testing.F) {
	f.Add(94.7, 42.4, 0.7, 0.1, 0.0, 0.5, 1.5, 3e6, uint8(0), 0.6, 0.05, 0.036)
	f.Add(94.7, 42.4, 0.0, 0.3, 2.0, 0.0, 2.0, 2e6, uint8(2), 1.0, 0.1, 0.03)
	f.Fuzz(func(t *testing.T, area, perimeter, depth, wall, rf, rw, lambda, capacity float64, edge uint8, width, thick, k float64) {
		g := DefaultGround(ClaySoil())
		g.Area, g.Perimeter, g.Depth, g.WallThickness, g.FloorResistance, g.WallResistance = area, perimeter, depth, wall, rf, rw
		g.Soil.Conductivity, g.Soil.HeatCapacity = lambda, capacity
		g.Edge, g.EdgeWidth, g.EdgeThickness, g.EdgeConductivity = Edge(edge%4), width, thick, k
		r, err := g.Solve()
		if err != nil {
			if !errors.Is(err, ErrRange) {
				t.Fatal(err)
			}
			return
		}
		for _, v := range []float64{r.UFloor, r.Inside, r.Outside, r.PenetrationDepth, r.FloorThickness, r.WallThickness} {
			if !(v > 0) || math.IsInf(v, 0) {
				t.Fatalf("%+v of %+v", r, g)
			}
		}
		if !(r.UWall >= 0) || !(r.EdgePsi <= 0) || math.IsInf(r.Total, 0) || math.IsNaN(r.Total) {
			t.Fatalf("%+v of %+v", r, g)
		}
	})
}
