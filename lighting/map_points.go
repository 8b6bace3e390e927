package lighting

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Bed is a level rectangle that light is mapped on, its sides along x and y.
type Bed struct {
	X      float64 // m, of the corner with the smallest x
	Y      float64 // m, of the corner with the smallest y
	Z      float64 // m, height of the plane
	Length float64 // m, along x
	Width  float64 // m, along y
}

// RangeSide is the accepted length of a bed's or room's side.
var sideRange = domain.Range{Min: 1e-3, Max: 2000, Unit: "m"}

// Area returns the bed's area in m².
func (b Bed) Area() float64 { return b.Length * b.Width }

// At returns the bed at the height z, m: the crop as it grows.
func (b Bed) At(z float64) Bed { b.Z = z; return b }

// Check reports every fault of the bed: a side of no length, a coordinate out
// of range.
func (b Bed) Check() error {
	return errors.Join(Point{b.X, b.Y, b.Z}.check("bed"), sideRange.Check("bed length", b.Length), sideRange.Check("bed width", b.Width))
}

// Points are places with the direction that a sensor there faces, in the order
// of a map. Make them with Bed.Grid, Bed.GridFor or NewPoints.
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
	Normal Vector // what it faces; Up for a level sensor
}

// NewPoints returns the receivers as points. Every fault is reported with the
// receiver's number.
func NewPoints(receivers ...Receiver) (*Points, error) {
	var errs []error
	if len(receivers) == 0 {
		errs = append(errs, fmt.Errorf("no receivers: %w", ErrRange))
	}
	p := newPoints(len(receivers))
	for i, r := range receivers {
		n := math.Sqrt(r.Normal.X*r.Normal.X + r.Normal.Y*r.Normal.Y + r.Normal.Z*r.Normal.Z)
		if !(n > 0) || math.IsInf(n, 0) {
			errs = append(errs, fmt.Errorf("receiver %d faces no direction: %w", i+1, ErrRange))
		}
		if err := r.At.check(fmt.Sprintf("receiver %d", i+1)); err != nil {
			errs = append(errs, err)
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
	p.level = p.level && n == Up
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
	err := b.Check()
	if nx < 1 || ny < 1 || nx > maxPoints/max(ny, 1) {
		err = errors.Join(err, fmt.Errorf("a grid of %d by %d cells, want 1 to %d in all: %w", nx, ny, maxPoints, ErrRange))
	}
	if err != nil {
		return nil, err
	}
	p := newPoints(nx * ny)
	for j := range ny {
		for i := range nx {
			p.set(j*nx+i, Point{b.X + b.Length*(float64(i)+0.5)/float64(nx), b.Y + b.Width*(float64(j)+0.5)/float64(ny), b.Z}, Up)
		}
	}
	p.columns = nx
	return p, nil
}

// spacingShare is the widest spacing of a grid as a share of the clearance, so
// that the extremes between fixtures are caught.
const spacingShare = 0.2

// CheckSpacing returns an error that matches ErrRange when the spacing of a
// grid, m, is zero or more than a fifth of the clearance, m, between the
// lowest fixture and the plane: a coarser grid may miss minima and maxima.
func CheckSpacing(spacing, clearance float64) error {
	if !(clearance > 0) {
		return &RangeError{Field: "clearance", Value: clearance, Min: 0, Max: math.Inf(1), Unit: "m", Source: "must be more than 0"}
	}
	r := domain.Range{Min: 0, Max: spacingShare * clearance, Unit: "m", Source: "a fifth of the clearance"}
	if spacing == 0 {
		return &RangeError{Field: "grid spacing", Value: spacing, Min: r.Min, Max: r.Max, Unit: r.Unit, Source: r.Source}
	}
	return r.Check("grid spacing", spacing)
}

// GridFor returns the coarsest grid of cell centres, at least 5 by 5, whose
// spacing is at most a fifth of the clearance, m, above 0, between the lowest
// fixture and the bed.
func (b Bed) GridFor(clearance float64) (*Points, error) {
	if !(clearance > 0) || math.IsInf(clearance, 0) {
		return nil, errors.Join(b.Check(), &RangeError{Field: "clearance", Value: clearance, Min: 0, Max: math.Inf(1), Unit: "m", Source: "must be more than 0"})
	}
	if err := b.Check(); err != nil {
		return nil, err
	}
	n := func(side float64) int {
		return int(math.Min(math.Max(5, math.Ceil(side/(spacingShare*clearance)*(1-1e-12))), maxPoints))
	}
	return b.Grid(n(b.Length), n(b.Width))
}

// Len returns the count of points.
func (p *Points) Len() int { return len(p.x) }

// Columns returns the points in a row of a grid, 0 when the points are none.
func (p *Points) Columns() int { return p.columns }

// At returns the place of point i.
func (p *Points) At(i int) Point { return Point{p.x[i], p.y[i], p.z[i]} }

// Normal returns the unit vector that the sensor at point i faces.
func (p *Points) Normal(i int) Vector { return Vector{p.nx[i], p.ny[i], p.nz[i]} }
