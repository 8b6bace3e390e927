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
	steps := int(math.Min(math.Ceil((high-low)/least), maxSteps)) + 1
	f := finder{angle: angle, scale: float64(steps-1) / (high - low), start: make([]int32, steps+1)}
	i := 0
	for k := range f.start {
		at := low + float64(k)/f.scale*(1-1e-12)
		for i+2 < len(angle) && angle[i+1] <= at {
			i++
		}
		f.start[k] = int32(i)
	}
	return f
}

// in returns the interval that holds v, which lies within the ends but for a
// rounding error.
func (f *finder) in(v float64) int {
	k := int((v - f.angle[0]) * f.scale)
	if k < 0 {
		k = 0
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

// add adds I cos φ/r². The two arctangents come from arctangent with the
// quotients of a single division.
func (s *tableSource) add(out []float64, p *Points, lo int) {
	n := len(out)
	x, y, z := p.x[lo:lo+n], p.y[lo:lo+n], p.z[lo:lo+n]
	nx, ny, nz := p.nx[lo:lo+n], p.ny[lo:lo+n], p.nz[lo:lo+n]
	t := s.table
	for i := range out {
		dx, dy, dz := x[i]-s.x, y[i]-s.y, z[i]-s.z
		g := -(nx[i]*dx + ny[i]*dy + nz[i]*dz)
		if !(g > 0) {
			if dx == 0 && dy == 0 && dz == 0 {
				out[i] = math.NaN()
			}
			continue
		}
		u := s.u.X*dx + s.u.Y*dy + s.u.Z*dz
		v := s.v.X*dx + s.v.Y*dy + s.v.Z*dz
		w := s.w.X*dx + s.w.Y*dy + s.w.Z*dz
		rho2 := u*u + v*v
		r2 := rho2 + w*w
		rho, r := math.Sqrt(rho2), math.Sqrt(r2)
		au, av, aw := math.Abs(u), math.Abs(v), math.Abs(w)
		small, large := math.Min(rho, aw), math.Max(rho, aw)
		if t.round {
			inv := 1 / (large * r2 * r)
			theta := arctangent(small * (r2 * r) * inv)
			theta = unfold(theta, rho > aw, w < 0)
			if theta < t.first || theta > t.after {
				continue
			}
			k := t.polar.in(theta)
			c := &t.cells[k]
			out[i] += g * (large * inv) * (c[0] + c[1]*(theta-t.polar.angle[k]))
			continue
		}
		side, main := math.Min(au, av), math.Max(au, av)
		if main < tiny {
			side, main = 0, 1 // straight along the polar axis: any azimuth
		}
		r3 := r2 * r
		inv := 1 / (large * main * r3)
		theta := unfold(arctangent(small*main*r3*inv), rho > aw, w < 0)
		phi := math.Copysign(unfold(arctangent(side*large*r3*inv), av > au, u < 0), v)
		if theta < t.first || theta > t.after || phi < t.left || phi > t.right {
			continue
		}
		k, j := t.polar.in(theta), t.azi.in(phi)
		c := &t.cells[j*t.across+k]
		dt := theta - t.polar.angle[k]
		out[i] += g * (large * main * inv) * (c[0] + c[1]*dt + (phi-t.azi.angle[j])*(c[2]+c[3]*dt))
	}
}

// tiny is a distance, m, below which an azimuth has no meaning.
const tiny = 1e-100

// unfold turns the arctangent of the smaller over the larger side into the
// angle from 0 to π.
func unfold(a float64, steep, behind bool) float64 {
	if steep {
		a = math.Pi/2 - a
	}
	if behind {
		a = math.Pi - a
	}
	return a
}

// arctangentCells are the intervals of 0..1 that arctangent tabulates.
const arctangentCells = 64

// arctangentTable holds the Taylor coefficients of the arctangent, degree 6,
// about the middle of each interval.
var arctangentTable = makeArctangentTable()

func makeArctangentTable() (t [arctangentCells + 1][7]float64) {
	for i := range t {
		x := (float64(i) + 0.5) / arctangentCells
		// atan(x+d) = atan x + Σ (-1)^(k-1) sin(kβ) sin^k β d^k/k, β = atan(1/x).
		beta := math.Atan2(1, x)
		t[i][0] = math.Atan(x)
		sign := 1.0
		for k := 1; k < len(t[i]); k++ {
			t[i][k] = sign * math.Sin(float64(k)*beta) * math.Pow(math.Sin(beta), float64(k)) / float64(k)
			sign = -sign
		}
	}
	return t
}

// arctangent returns atan x for x from 0 to 1 (a rounding error more does no
// harm), right to 1e-15.
func arctangent(x float64) float64 {
	i := int(x * arctangentCells)
	if uint(i) > arctangentCells {
		return math.Atan(x)
	}
	c := &arctangentTable[i]
	d := x - (float64(i)+0.5)*(1.0/arctangentCells)
	return c[0] + d*(c[1]+d*(c[2]+d*(c[3]+d*(c[4]+d*(c[5]+d*c[6])))))
}
