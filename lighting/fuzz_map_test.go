package lighting

import (
	"math"
	"testing"
)

// FuzzMap hangs one fixture and maps one point: an error, or a number that is
// not negative and agrees with the definition.
func FuzzMap(f *testing.F) {
	f.Add(100.0, 110.0, 1.0, 0.5, 1.2, 0.0, 0.0, 0.0, 0.3, 0.2, 0.0, 0.0)
	f.Add(96.0, 60.0, 1.0, 0.5, 1.2, 30.0, 20.0, 0.0, 0.3, 0.2, 0.0, 1.2)
	f.Add(1.0, 2.0, 0.0, 0.0, 1e-9, 0.0, 90.0, 0.0, 0.0, 0.0, 0.0, 0.0)
	f.Add(1.0, 178.0, 0.0, 0.0, 1e4, 0.0, 90.0, 0.0, 9e3, 0.0, 0.0, 100.0)
	f.Add(math.NaN(), math.Inf(1), 0.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, -1.0)
	f.Fuzz(func(t *testing.T, ppf, beam, x, y, z, yaw, tilt, spin, px, py, pz, length float64) {
		light, err := FromBeamAngle(ppf, beam)
		if err != nil {
			return
		}
		fixture := Fixture{Light: light, At: Point{x, y, z}, Aim: Aim(AimAngles{yaw, tilt, spin}), Length: length}
		l, err := NewLights(fixture)
		if err != nil {
			return
		}
		p, err := NewPoints(Receiver{Point{px, py, pz}, up})
		if err != nil {
			return
		}
		v, err := l.MapTo(nil, p)
		if err != nil {
			return
		}
		if !(v[0] >= 0) || math.IsInf(v[0], 0) {
			t.Fatalf("PPFD %g", v[0])
		}
		if length != 0 {
			return
		}
		// The rounding of the cosine near the edge of the beam is no fault.
		want := direct(fixture, Point{px, py, pz}, up)
		tol := 1e-9 * (1 + light.m)
		if d := math.Abs(v[0] - want); d > tol*want+1e-9*light.axial()/((z-pz)*(z-pz)) {
			t.Fatalf("PPFD %g, by definition %g", v[0], want)
		}
	})
}

// FuzzWeb makes a web of what bytes give: an error, or a flux that is finite
// and a map that follows the definition.
func FuzzWeb(f *testing.F) {
	f.Add(uint8(0), 30.0, 90.0, 1.0, 2.0, 3.0, 10.0, 20.0, 0.3)
	f.Add(uint8(2), -30.0, 90.0, 1.0, 2.0, 3.0, 0.0, 0.0, 0.0)
	f.Add(uint8(1), -90.0, 0.0, 1.0, math.MaxFloat64, 3.0, 0.0, 90.0, -2.0)
	f.Add(uint8(1), -90.0, 0.0, 1.0, 5.0, 3.0, 77.0, 90.0, 1e-9)
	f.Add(uint8(9), 0.0, 0.0, math.NaN(), -2.0, 3.0, 0.0, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, kind uint8, v0, v1, a, b, c, yaw, tilt, x float64) {
		for _, h := range [][]float64{{0}, {0, 90}, {0, 180}, {90, 270}, {-90, 90}, {0, 100, 360}} {
			w := Web{Coordinates: Coordinates(kind), Vertical: []float64{v0, v1}, Horizontal: h}
			for i := range h {
				w.Intensity = append(w.Intensity, [][]float64{{a, b}, {c, a}, {b, c}}[i])
			}
			d, err := NewTable(w)
			if err != nil {
				continue
			}
			if flux := d.Flux(); math.IsNaN(flux) || math.IsInf(flux, 0) || flux < 0 {
				t.Fatalf("flux %g of %v", flux, w)
			}
			if v := d.Intensity(v0, v1); math.IsNaN(v) || v < 0 {
				t.Fatalf("intensity %g of %v", v, w)
			}
			fixture := Fixture{Light: d, At: Point{0, 0, 1}, Aim: Aim(AimAngles{yaw, tilt, 0})}
			l, err := NewLights(fixture)
			if err != nil {
				continue
			}
			p, err := NewPoints(Receiver{Point{x, 0.2, 0}, up})
			if err != nil {
				continue
			}
			got, err := l.MapTo(nil, p)
			if err != nil {
				t.Fatal(err)
			}
			// On the edge of the table one may see light and the other none.
			want := direct(fixture, p.At(0), up)
			if most := math.Max(a, math.Max(b, c)); math.Abs(got[0]-want) > 1e-9*most && !onEdge(d, fixture, p.At(0)) {
				t.Fatalf("PPFD %g, by definition %g, of %v", got[0], want, w)
			}
		}
	})
}

// onEdge tells whether a point lies within rounding of the first or last angle
// of a table, or the table is so narrow that rounding tilts it.
func onEdge(d *Table, f Fixture, at Point) bool {
	r := f.Aim.matrix()
	v := [3]float64{at.X - f.At.X, at.Y - f.At.Y, at.Z - f.At.Z}
	var local [3]float64
	for j := range local {
		for i := range v {
			local[j] += r[i][j] * v[i]
		}
	}
	u, w, z := d.polarFrame(local[0], local[1], local[2])
	near := func(angle float64, list []float64) bool {
		width := list[len(list)-1] - list[0]
		return width < 1e-3 || math.Abs(angle-list[0]) < 1e-9 || math.Abs(angle-list[len(list)-1]) < 1e-9
	}
	return near(math.Atan2(math.Hypot(u, w), z), d.polar) || near(math.Atan2(w, u), d.azi)
}
