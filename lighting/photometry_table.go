package lighting

import (
	"fmt"
	"math"
	"sort"

	"cloche.example/internal/domain"
)

// Table is a tabulated distribution: intensities on planes through a polar
// axis, linear in the angle along each plane and between planes, zero outside
// the tabulated angles. Make it with NewTable; it never changes afterwards and may
// be used by several goroutines at once.
type Table struct {
	web   Web
	polar []float64 // rad from the polar axis, ascending
	azi   []float64 // rad about it, ascending within -π..π
	value []float64 // [azimuth][polar]
	flux  float64
}

// Coordinates says how the angles of a Web lie.
type Coordinates uint8

// The three systems of goniometers. In the fixture's frame (z up, x along the
// fixture, straight down the direction that the aim moves):
// type C has vertical angles from straight down and horizontal angles
// counter-clockwise from x; type A has the same axis with the vertical angle
// from the horizontal plane (-90 is straight down) and horizontal angles
// clockwise from x; type B has a horizontal polar axis along y: zero is
// straight down, the vertical angle turns about y towards x, the horizontal
// angle leans towards -y.
const (
	TypeC Coordinates = iota
	TypeB
	TypeA
)

// String returns the letter of the type.
func (c Coordinates) String() string {
	switch c {
	case TypeC:
		return "C"
	case TypeB:
		return "B"
	case TypeA:
		return "A"
	}
	return fmt.Sprintf("Coordinates(%d)", uint8(c))
}

// Web is a web of photon intensities in the order in which LM-63 files hold
// candela (CandelaWeb).
// Horizontal angles of type C: 0 alone (the same all round), 0 to 90 (both
// mirror planes), 0 to 180 (mirrored in the plane 0-180), 90 to 270 (mirrored
// in the plane 90-270) or 0 to 360. Of types A and B: from 0 on (mirrored) or
// from a negative angle on, within -90 to 90.
type Web struct {
	Coordinates Coordinates // how the angles lie
	Vertical    []float64   // degree, strictly increasing; C within 0 to 180, A and B within -90 to 90
	Horizontal  []float64   // degree, strictly increasing
	Intensity   [][]float64 // µmol/(s sr), 0 to 1e12: one row for each horizontal angle, one value for each vertical angle
}

// NewTable checks the web, expands its symmetry and returns the distribution.
// Every fault is reported, with the index of the angle or value.
func NewTable(w Web) (*Table, error) {
	if err := w.check(); err != nil {
		return nil, err
	}
	t := &Table{web: w.clone()}
	polar, azi, rows := expand(t.web)
	for i := 1; i < len(polar); i++ {
		if !(polar[i] > polar[i-1]) {
			return nil, fmt.Errorf("two angles about %g degree from the polar axis lie too close to tell apart: %w", polar[i]/radian, ErrRange)
		}
	}
	t.polar, t.azi = polar, azi
	for _, row := range rows {
		t.value = append(t.value, row...)
	}
	t.flux = t.integral()
	return t, nil
}

// integral is the exact integral of the interpolant over the sphere.
func (t *Table) integral() float64 {
	sum, n := 0.0, len(t.polar)
	last := 0.0
	for j := range t.azi {
		plane := planeIntegral(t.polar, t.value[j*n:(j+1)*n])
		if j > 0 {
			sum += 0.5 * (t.azi[j] - t.azi[j-1]) * (plane + last)
		}
		last = plane
	}
	return sum
}

// narrow is the half width of a segment, radian, below which the series to h⁸ is exact
// to rounding and keeps the digits that the difference loses.
const narrow = 0.1

// planeIntegral is ∫ I sin θ dθ of the piecewise linear I, exactly: each
// segment gives 2 Ia sin m sin h + (Ib-Ia) (cos m (sin h/h - cos h) + sin m sin h)
// with its middle m and half width h.
func planeIntegral(theta, value []float64) float64 {
	sum := 0.0
	for i := 1; i < len(theta); i++ {
		h := (theta[i] - theta[i-1]) / 2
		sinM, cosM := math.Sincos(theta[i-1] + h)
		sinH, cosH := math.Sincos(h)
		lean := sinH/h - cosH
		if h < narrow {
			h2 := h * h
			lean = h2 / 3 * (1 - h2/10*(1-h2/28*(1-h2/54)))
		}
		sum += 2*value[i-1]*sinM*sinH + (value[i]-value[i-1])*(cosM*lean+sinM*sinH)
	}
	return sum
}

// Flux returns the exact integral of the interpolated intensity over all
// directions, µmol/s; 0 for the zero Table.
func (t *Table) Flux() float64 { return t.flux }

// empty reports whether NewTable did not make the table.
func (t *Table) empty() bool { return t == nil || len(t.value) == 0 }

// times returns the table with every intensity multiplied by k, at least 0.
func (t *Table) times(k float64) (*Table, error) {
	if t.empty() {
		return nil, fmt.Errorf("a table without values: %w", ErrRange)
	}
	if err := (domain.Range{Min: 0, Max: math.MaxFloat64, Unit: "factor"}).Check("scale", k); err != nil {
		return nil, err
	}
	return NewTable(t.web.times(k))
}

func (t *Table) scaled(k float64) Distribution {
	s := &Table{polar: t.polar, azi: t.azi, flux: k * t.flux}
	s.web = t.web.times(k)
	s.value = make([]float64, len(t.value))
	for i, v := range t.value {
		s.value[i] = k * v
	}
	return s
}

// at returns the intensity at the web's own vertical and
// horizontal angles, degree; zero outside the tabulated angles.
func (t *Table) at(vertical, horizontal float64) float64 {
	switch t.web.Coordinates {
	case TypeB:
		return t.lookup((90+horizontal)*radian, vertical*radian)
	case TypeA:
		return t.lookup((90+vertical)*radian, -horizontal*radian)
	}
	return t.lookup(vertical*radian, math.Remainder(horizontal, 360)*radian)
}

// Intensity returns the photon intensity, µmol/(s sr), at gamma, degree, 0 to
// 180 from straight down in the fixture's frame, and c, degree
// counter-clockwise from the fixture's x axis seen from above.
func (t *Table) Intensity(gamma, c float64) float64 {
	if t.empty() {
		return 0
	}
	if t.web.Coordinates != TypeB {
		return t.lookup(gamma*radian, math.Remainder(c, 360)*radian)
	}
	sinG, cosG := math.Sincos(gamma * radian)
	sinC, cosC := math.Sincos(c * radian)
	return t.towards(sinG*cosC, sinG*sinC, -cosG)
}

// towards returns the intensity along a direction in the fixture's frame.
func (t *Table) towards(x, y, z float64) float64 {
	u, v, w := t.polarFrame(x, y, z)
	return t.lookup(math.Atan2(math.Hypot(u, v), w), math.Atan2(v, u))
}

// polarFrame turns a direction of the fixture's frame into the frame whose
// third axis is the table's polar axis.
func (t *Table) polarFrame(x, y, z float64) (u, v, w float64) {
	if t.web.Coordinates == TypeB {
		return -z, x, y
	}
	return x, y, -z
}

// lookup interpolates at the polar angle theta and the azimuth phi, rad.
func (t *Table) lookup(theta, phi float64) float64 {
	i, f := cell(t.polar, theta)
	j, g := cell(t.azi, phi)
	if i < 0 || j < 0 {
		return 0
	}
	n := len(t.polar)
	a, b := t.value[j*n+i:], t.value[(j+1)*n+i:]
	low := a[0] + f*(a[1]-a[0])
	high := b[0] + f*(b[1]-b[0])
	return low + g*(high-low)
}

// cell returns the interval of the ascending x that holds v and the fraction
// of it below v, or -1 when v lies outside by more than a rounding error.
func cell(x []float64, v float64) (int, float64) {
	const slack = 1e-12
	last := len(x) - 1
	if !(v >= x[0]-slack && v <= x[last]+slack) {
		return -1, 0
	}
	i := sort.SearchFloat64s(x, v)
	if i <= last && x[i] == v && i < last {
		for i+1 < last && x[i+1] == v {
			i++
		}
	} else {
		i--
	}
	i = min(max(i, 0), last-1)
	return i, min(max((v-x[i])/(x[i+1]-x[i]), 0), 1)
}
