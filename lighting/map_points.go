package lighting

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Bed is a level rectangle that light is mapped on, its sides along x and y.
type Bed struct {
	X      float64 // m, -10000 to 10000; of the corner with the smallest x
	Y      float64 // m, -10000 to 10000; of the corner with the smallest y
	Z      float64 // m, -10000 to 10000; height of the plane above the floor
	Length float64 // m, 0.001 to 2000; along x
	Width  float64 // m, 0.001 to 2000; along y
}

// sideRange is the accepted length of a bed's or room's side.
var sideRange = domain.Range{Min: 1e-3, Max: 2000, Unit: "m"}

// Area returns the bed's area in m².
func (b Bed) Area() float64 { return b.Length * b.Width }

// check reports every fault of the bed.
func (b Bed) check() error {
	return errors.Join(Point{b.X, b.Y, b.Z}.check(), sideRange.Check("Length", b.Length), sideRange.Check("Width", b.Width))
}

// Points are places with the direction that a sensor there faces, in the order
// of a map. Make them with Bed.Grid, Bed.GridFor or NewPoints; they never change
// afterwards and may be used by several goroutines at once.
type Points struct {
	x, y, z    []float64
	nx, ny, nz []float64 // unit normals
	columns    int       // of a grid: points per row, 0 otherwise
	ends       []int     // after each run of points that differ in x alone
	top        float64   // m, the highest point
	level      bool      // all face up
}

// Receiver is one point to map and the direction that its sensor faces.
type Receiver struct {
	At     Point  // where
	Normal Vector // what it faces; Up() for a level sensor
}

// NewPoints returns the receivers as points. Every fault is reported with the
// receiver's index.
func NewPoints(receivers ...Receiver) (*Points, error) {
	var errs []error
	if len(receivers) == 0 {
		errs = append(errs, fmt.Errorf("no receivers: %w", ErrRange))
	}
	p := newPoints(len(receivers))
	for i, r := range receivers {
		n := math.Sqrt(r.Normal.X*r.Normal.X + r.Normal.Y*r.Normal.Y + r.Normal.Z*r.Normal.Z)
		if !(n > 0) || math.IsInf(n, 0) {
			errs = append(errs, fmt.Errorf("receivers[%d].Normal faces no direction: %w", i, ErrRange))
		}
		if err := r.At.check(); err != nil {
			errs = append(errs, domain.Within(fmt.Sprintf("receivers[%d].At", i), err))
		}
		p.set(i, r.At, Vector{r.Normal.X / n, r.Normal.Y / n, r.Normal.Z / n})
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	return p, nil
}

func newPoints(n int) *Points {
	all := make([]float64, 6*n)
	column := func(i int) []float64 { return all[i*n : (i+1)*n : (i+1)*n] }
	return &Points{x: column(0), y: column(1), z: column(2), nx: column(3), ny: column(4), nz: column(5),
		top: math.Inf(-1), level: true}
}

func (p *Points) set(i int, at Point, n Vector) {
	p.x[i], p.y[i], p.z[i] = at.X, at.Y, at.Z
	p.nx[i], p.ny[i], p.nz[i] = n.X, n.Y, n.Z
	p.top = math.Max(p.top, at.Z)
	p.level = p.level && n == up
	if j := i - 1; j >= 0 && p.y[j] == at.Y && p.z[j] == at.Z && p.nx[j] == n.X && p.ny[j] == n.Y && p.nz[j] == n.Z {
		p.ends[len(p.ends)-1] = i + 1
	} else {
		p.ends = append(p.ends, i+1)
	}
}

// maxPoints bounds what one call may allocate.
const maxPoints = 50_000_000

// Grid returns the centres of nx by ny equal cells of the bed, facing up, in
// rows along x: point j*nx + i is cell i along x, j along y.
func (b Bed) Grid(nx, ny int) (*Points, error) {
	err := domain.Within("Bed", b.check())
	if nx < 1 || ny < 1 || nx > maxPoints/max(ny, 1) {
		err = errors.Join(err, fmt.Errorf("a grid of %d by %d cells, want 1 to %d in all: %w", nx, ny, maxPoints, ErrRange))
	}
	if err != nil {
		return nil, err
	}
	p := newPoints(nx * ny)
	for j := range ny {
		for i := range nx {
			p.set(j*nx+i, Point{b.X + b.Length*(float64(i)+0.5)/float64(nx), b.Y + b.Width*(float64(j)+0.5)/float64(ny), b.Z}, up)
		}
	}
	p.columns = nx
	return p, nil
}

// spacingShare is the widest spacing of a grid as a share of the clearance, so
// that the extremes between fixtures are caught.
const spacingShare = 0.2

// clearanceRange is that of the lowest fixture above the plane.
var clearanceRange = domain.Range{Min: domain.MoreThan(0), Max: math.Inf(1), Unit: "m"}

// GridFor returns the coarsest grid of cell centres, at least 5 by 5, whose
// spacing is at most a fifth of the clearance, m, more than 0, between the
// lowest fixture and the bed: a coarser one may miss minima and maxima.
func (b Bed) GridFor(clearance float64) (*Points, error) {
	if err := errors.Join(domain.Within("Bed", b.check()), clearanceRange.Check("clearance", clearance)); err != nil {
		return nil, err
	}
	return b.Grid(cells(b.Length, spacingShare*clearance), cells(b.Width, spacingShare*clearance))
}

// cells is the count of cells along a side, 5 at least, whose spacing, m, is no
// wider than this.
func cells(side, spacing float64) int {
	return int(math.Min(math.Max(5, math.Ceil(side/spacing*(1-1e-12))), maxPoints))
}

// Len returns the count of points.
func (p *Points) Len() int {
	if p == nil {
		return 0
	}
	return len(p.x)
}

// Columns returns the number of points in a row of a grid, 0 when the points
// form no grid.
func (p *Points) Columns() int { return p.columns }

// At returns the place of point i, from 0 on; NaN coordinates for a point that
// is not there.
func (p *Points) At(i int) Point {
	if p == nil || i < 0 || i >= len(p.x) {
		return Point{none, none, none}
	}
	return Point{p.x[i], p.y[i], p.z[i]}
}

// normal returns the unit vector that the sensor at point i faces.
func (p *Points) normal(i int) Vector { return Vector{p.nx[i], p.ny[i], p.nz[i]} }
