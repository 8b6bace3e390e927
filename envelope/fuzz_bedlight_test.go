package envelope_test

import (
	"math"
	"testing"

	. "cloche.example/envelope"
)

// FuzzBedLight sets a bed anywhere in any house of one bay: an error, or shares
// that are fractions and make up what lies in the sun.
func FuzzBedLight(f *testing.F) {
	f.Add(uint8(0), 6.0, 12.0, 1.8, 3.2, 0.0, 0.0, 0.0, 6.0, 12.0, 0.0, 35.0, 180.0)
	f.Add(uint8(2), 8.0, 20.0, 0.5, 4.0, 0.4, 77.0, 2.0, 3.0, 9.0, 0.8, 0.001, 270.0)
	f.Add(uint8(3), 8.0, 20.0, 1.5, 4.5, 0.0, 10.0, 0.0, 8.0, 20.0, 0.0, 89.9, 10.0)
	f.Add(uint8(4), 3.0, 5.0, 0.0, 2.0, 1.0, 300.0, 0.5, 2.0, 4.0, 1.0, 12.0, -20.0)
	f.Add(uint8(1), 3.0, 5.0, 1.0, 2.0, 0.0, 300.0, 3.0, 1.0, 4.0, 1.0, math.NaN(), 500.0)
	f.Fuzz(func(t *testing.T, section uint8, span, length, eave, ridge, depth, azimuth, left, width, long, height, elevation, sun float64) {
		form := DefaultForm()
		form.Section, form.Span, form.Length, form.Eave, form.Ridge = Section(section), span, length, eave, ridge
		form.Depth, form.Azimuth, form.RidgeOffset, form.RidgeTilt, form.BackWallOpen = depth, azimuth, span/3, 8, true
		shape, err := NewShape(form)
		if err != nil {
			return
		}
		layers, err := NewLightLayers(nothing)
		if err != nil {
			t.Fatal(err)
		}
		lights := make([]FacetLight, len(shape.Facets))
		for i := range lights {
			lights[i] = FacetLight{Sheets: layers, Factors: DefaultLightFactors()}
		}
		g, err := NewGlazing(shape, lights, 0.8)
		if err != nil {
			t.Fatal(err)
		}
		l, err := NewBedLight(g, BedPlace{Left: left, Width: width, Length: long, Height: height})
		if err != nil {
			return
		}
		if d := l.Diffuse(); !(d >= 0 && d <= 1+1e-6) {
			t.Fatalf("%g of the sky's light", d)
		}
		b := l.Beam(elevation, sun)
		if math.IsNaN(elevation) || math.Abs(elevation) > 90 || !(sun >= -180 && sun <= 360) {
			if !math.IsNaN(b.Lit) {
				t.Fatalf("lit %g", b.Lit)
			}
			return
		}
		sum := 0.0
		for _, v := range b.Facets {
			if !(v >= 0 && v <= 1+1e-6) {
				t.Fatalf("share %g", v)
			}
			sum += v
		}
		if !(b.Lit <= 1+1e-6) || math.Abs(sum-b.Lit) > 1e-9 || !(b.Transmittance >= 0 && b.Transmittance <= 1+1e-6) {
			t.Fatalf("lit %g, transmittance %g, sum %g", b.Lit, b.Transmittance, sum)
		}
		if depth == 0 && elevation > 0.01 && b.Lit < 1-1e-5 {
			t.Fatalf("lit %g of a bed without any shadow", b.Lit)
		}
	})
}

func BenchmarkBedBeam(b *testing.B) {
	f := DefaultForm()
	_, g := glazed(b, f, Sheet{Index: 1.526, Extinction: 20, Thickness: 0.004})
	l, err := NewBedLight(g, wholeFloor(f))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	i, sum := 0, 0.0
	for b.Loop() {
		i = (i + 7) % 80
		sum += l.Beam(float64(5+i), float64(4*i)).Transmittance
	}
	_ = sum
}
