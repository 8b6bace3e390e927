package lighting

import "math"

// fastTable is a Table laid out for maps: the cell of an angle comes from a
// list of starting cells at even steps, and each cell holds the four
// coefficients of its interpolant about its low corner.
type fastTable struct {
	polar, azi   finder
	cells        [][4]float64 // [azimuth][polar]
	across       int          // polar cells
	round        bool         // the same at all azimuths
	first, after float64      // rad, polar range with slack
	left, right  float64      // rad, azimuth range with slack
}

// finder tells in which interval of ascending angles a value lies.
type finder struct {
	angle []float64
	start []int32
	scale float64
	even  bool // a step is an interval
}

// maxSteps bounds the list of starting cells.
const maxSteps = 4096

func newFinder(angle []float64) finder {
	low, high := angle[0], angle[len(angle)-1]
	least := high - low
	for i := 1; i < len(angle); i++ {
		if w := angle[i] - angle[i-1]; w > 0 {
			least = math.Min(least, w)
		}
	}
	steps := int(math.Min(math.Round((high-low)/least), maxSteps))
	f := finder{angle: angle, scale: float64(steps) / (high - low), start: make([]int32, steps+1), even: steps == len(angle)-1}
	i := 0
	for k := range f.start {
		at := low + float64(k)/f.scale + angleSlack
		for i+2 < len(angle) && angle[i+1] <= at {
			i++
		}
		f.start[k] = int32(i)
	}
	return f
}

// in returns the interval that holds v, which lies within the ends but for
// angleSlack; so near an angle it may be the next one, whose line meets there.
func (f *finder) in(v float64) int {
	k := int((v - f.angle[0]) * f.scale)
	if uint(k) >= uint(len(f.start)) {
		k = 0
	}
	if f.even && k < len(f.start)-1 {
		return k
	}
	i := int(f.start[k])
	for i+2 < len(f.angle) && v >= f.angle[i+1] {
		i++
	}
	return i
}

// angleSlack is the rounding error, rad, allowed at the ends of a table.
const angleSlack = 1e-12

func newFastTable(t *Table) *fastTable {
	n := len(t.polar)
	f := &fastTable{polar: newFinder(t.polar), azi: newFinder(t.azi), across: n - 1,
		first: t.polar[0] - angleSlack, after: t.polar[n-1] + angleSlack,
		left: t.azi[0] - angleSlack, right: t.azi[len(t.azi)-1] + angleSlack,
		round: t.web.Coordinates == TypeC && len(t.web.Horizontal) == 1}
	for j := 0; j+1 < len(t.azi); j++ {
		width := t.azi[j+1] - t.azi[j]
		if width == 0 {
			width = 1 // the two rows of a seam: the finder steps over it
		}
		for i := range n - 1 {
			a, b := t.value[j*n+i], t.value[j*n+i+1]
			c, d := t.value[(j+1)*n+i], t.value[(j+1)*n+i+1]
			h := t.polar[i+1] - t.polar[i]
			s := (b - a) / h
			f.cells = append(f.cells, [4]float64{a, s, (c - a) / width, ((d-c)/h - s) / width})
		}
	}
	return f
}

// tableSource is a point with a table. Its rows turn a world vector into the
// frame of the polar axis.
type tableSource struct {
	x, y, z float64
	u, v, w Vector
	table   *fastTable
}

func newTableSource(f Fixture, t *Table, fast *fastTable) tableSource {
	r := f.Aim.matrix()
	local := [3]Vector{{r[0][0], r[1][0], r[2][0]}, {r[0][1], r[1][1], r[2][1]}, {r[0][2], r[1][2], r[2][2]}}
	down := Vector{-local[2].X, -local[2].Y, -local[2].Z}
	s := tableSource{x: f.At.X, y: f.At.Y, z: f.At.Z, table: fast, u: local[0], v: local[1], w: down}
	if t.web.Coordinates == TypeB {
		s.u, s.v, s.w = down, local[0], local[1]
	}
	return s
}

// addTable adds I cos φ/r². The arctangents stand in the loop, by table, with
// the quotients of a single division: a call would cost as much again.
func (r *run) addTable(s *tableSource) {
	t := s.table
	dy, dz := r.y-s.y, r.z-s.z
	g0, gx := -(r.n.Y*dy + r.n.Z*dz), -r.n.X
	u0, v0, w0 := s.u.Y*dy+s.u.Z*dz, s.v.Y*dy+s.v.Z*dz, s.w.Y*dy+s.w.Z*dz
	ux, vx, wx := s.u.X, s.v.X, s.w.X
	out := r.out[:len(r.x)]
	for i, x := range r.x {
		dx := x - s.x
		g := g0 + gx*dx
		u, v, w := u0+ux*dx, v0+vx*dx, w0+wx*dx
		rho2 := u*u + v*v
		r2 := rho2 + w*w
		if !(g > 0) {
			if r2 == 0 {
				out[i] = math.NaN()
			}
			continue
		}
		rho, r3 := math.Sqrt(rho2), r2*math.Sqrt(r2)
		au, av, aw := math.Abs(u), math.Abs(v), math.Abs(w)
		// Neighbours mostly lie in the same octant: branches cost little.
		small, large, o := rho, aw, 0
		if rho > aw {
			small, large, o = aw, rho, 1
		}
		if w < 0 {
			o |= 2
		}
		side, main, a := av, au, 0
		if av > au {
			side, main, a = au, av, 1
		}
		if u < 0 {
			a |= 2
		}
		if main < tiny {
			main = 1 // straight along the polar axis: any azimuth
		}
		both := large * main
		inv := 1 / (both * r3)
		r3inv := r3 * inv

		q := small * main * r3inv
		c := &arctangentTable[int(q*arctangentCells)&arctangentMask]
		d := q - c[0]
		d2 := d * d
		f := &octant[o]
		theta := f[0] + f[1]*((c[1]+c[2]*d)+d2*((c[3]+c[4]*d)+d2*c[5]))
		if theta < t.first || theta > t.after {
			continue
		}
		k := t.polar.in(theta)
		dt := theta - t.polar.angle[k]
		if t.round {
			e := &t.cells[k]
			out[i] += g * (both * inv) * (e[0] + e[1]*dt)
			continue
		}

		q = side * large * r3inv
		c = &arctangentTable[int(q*arctangentCells)&arctangentMask]
		d = q - c[0]
		d2 = d * d
		f = &octant[a]
		phi := math.Copysign(f[0]+f[1]*((c[1]+c[2]*d)+d2*((c[3]+c[4]*d)+d2*c[5])), v)
		if phi < t.left || phi > t.right {
			continue
		}
		j := t.azi.in(phi)
		e := &t.cells[j*t.across+k]
		out[i] += g * (both * inv) * (e[0] + e[1]*dt + (phi-t.azi.angle[j])*(e[2]+e[3]*dt))
	}
}

// tiny is a distance, m, below which an azimuth has no meaning.
const tiny = 1e-100

// octant turns the arctangent a of the smaller over the larger side into the
// angle f[0] + f[1] a: bit 0 tells that the side across is the larger, bit 1
// that the other one is negative.
var octant = [4][2]float64{{0, 1}, {math.Pi / 2, -1}, {math.Pi, -1}, {math.Pi / 2, 1}}

// arctangentTable holds, for each interval of 0..1, its middle and the Taylor
// coefficients of the arctangent about it, degree 4, right to 2e-13.
var arctangentTable = makeArctangentTable()

const (
	arctangentCells = 128
	arctangentMask  = 2*arctangentCells - 1
)

func makeArctangentTable() (t [2 * arctangentCells][6]float64) {
	for i := range t {
		x := (float64(i) + 0.5) / arctangentCells
		t[i][0], t[i][1] = x, math.Atan(x)
		// atan(x+d) = atan x + Σ (-1)^(k-1) sin(kβ) sin^k β d^k/k, β = atan(1/x).
		beta := math.Atan2(1, x)
		sign := 1.0
		for k := 1; k < len(t[i])-1; k++ {
			t[i][k+1] = sign * math.Sin(float64(k)*beta) * math.Pow(math.Sin(beta), float64(k)) / float64(k)
			sign = -sign
		}
	}
	return t
}
