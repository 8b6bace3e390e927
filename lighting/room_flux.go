package lighting

import "math"

// rectangleFlux is the photon flux in µmol/s of a fixture on a rectangle that
// it sees from inside the room.
func rectangleFlux(f Fixture, corners [4]Point) float64 {
	if f.ppf() == 0 {
		return 0
	}
	if f.Length > 0 {
		return barFlux(f, corners)
	}
	if d, ok := f.Light.(CosinePower); ok {
		var poly polygon
		for _, c := range corners {
			poly.add(Vector{c.X - f.At.X, c.Y - f.At.Y, c.Z - f.At.Z})
		}
		return poly.cosineFlux(f.Aim.Axis(), d)
	}
	return tableFlux(f, corners, 0)
}

// barFlux integrates along the bar, in panels no longer than the distance to
// the rectangle's plane.
func barFlux(f Fixture, corners [4]Point) float64 {
	n := planeNormal(corners)
	a, b := f.ends()
	c := corners[0]
	near := math.Min(math.Abs(dot(n, Vector{a.X - c.X, a.Y - c.Y, a.Z - c.Z})), math.Abs(dot(n, Vector{b.X - c.X, b.Y - c.Y, b.Z - c.Z})))
	panels := math.Min(math.Ceil(f.Length/near), 64)
	u := f.Aim.along()
	point := f
	point.Length = 0
	half := f.Length / panels / 2
	sum := 0.0
	for i := 0.0; i < panels; i++ {
		mid := -f.Length/2 + (2*i+1)*half
		for j, x := range gaussX {
			for _, s := range [2]float64{mid - half*x, mid + half*x} {
				point.At = f.At.plus(u, s)
				sum += gaussW[j] * rectangleFlux(point, corners)
			}
		}
	}
	return sum * half / f.Length
}

func planeNormal(c [4]Point) Vector {
	n := cross(Vector{c[1].X - c[0].X, c[1].Y - c[0].Y, c[1].Z - c[0].Z}, Vector{c[3].X - c[0].X, c[3].Y - c[0].Y, c[3].Z - c[0].Z})
	s := math.Sqrt(dot(n, n))
	return Vector{n.X / s, n.Y / s, n.Z / s}
}

// tableFlux halves the rectangle until it is small against its distance, then
// takes 4 by 4 Gauss points.
func tableFlux(f Fixture, c [4]Point, depth int) float64 {
	u := Vector{c[1].X - c[0].X, c[1].Y - c[0].Y, c[1].Z - c[0].Z}
	v := Vector{c[3].X - c[0].X, c[3].Y - c[0].Y, c[3].Z - c[0].Z}
	mid := c[0].plus(u, 0.5).plus(v, 0.5)
	d := Vector{mid.X - f.At.X, mid.Y - f.At.Y, mid.Z - f.At.Z}
	distance := math.Sqrt(dot(d, d))
	lu, lv := math.Sqrt(dot(u, u)), math.Sqrt(dot(v, v))
	if long := math.Max(lu, lv); long > tableStep*distance && depth < 16 {
		var first, second [4]Point
		if lu >= lv {
			m, n := c[0].plus(u, 0.5), c[3].plus(u, 0.5)
			first, second = [4]Point{c[0], m, n, c[3]}, [4]Point{m, c[1], c[2], n}
		} else {
			m, n := c[0].plus(v, 0.5), c[1].plus(v, 0.5)
			first, second = [4]Point{c[0], c[1], n, m}, [4]Point{m, n, c[2], c[3]}
		}
		return tableFlux(f, first, depth+1) + tableFlux(f, second, depth+1)
	}
	t := f.Light.(*Table)
	r := f.Aim.matrix()
	normal := planeNormal(c)
	sum := 0.0
	for i, x := range gauss4X {
		for j, y := range gauss4X {
			p := c[0].plus(u, 0.5*(1+x)).plus(v, 0.5*(1+y))
			d := Vector{p.X - f.At.X, p.Y - f.At.Y, p.Z - f.At.Z}
			r2 := dot(d, d)
			intensity := t.towards(r[0][0]*d.X+r[1][0]*d.Y+r[2][0]*d.Z, r[0][1]*d.X+r[1][1]*d.Y+r[2][1]*d.Z, r[0][2]*d.X+r[1][2]*d.Y+r[2][2]*d.Z)
			sum += gauss4W[i] * gauss4W[j] * intensity * math.Abs(dot(normal, d)) / (r2 * math.Sqrt(r2))
		}
	}
	return sum / 4 * lu * lv
}

// tableStep is the largest piece of a rectangle as a share of its distance.
const tableStep = 0.2

// gauss4X and gauss4W are the 4-point Gauss-Legendre rule on -1..1.
var (
	gauss4X = [4]float64{-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526}
	gauss4W = [4]float64{0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538}
)
