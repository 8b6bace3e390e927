package lighting

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"cloche.example/internal/domain"
)

// Layout is a set of fixtures.
type Layout []Fixture

// PPF returns the photon flux of all fixtures in µmol/s.
func (l Layout) PPF() float64 {
	sum := 0.0
	for _, f := range l {
		sum += f.ppf()
	}
	return sum
}

// Power returns the electrical power of all fixtures at full output in W.
func (l Layout) Power() float64 {
	sum := 0.0
	for _, f := range l {
		sum += f.Power
	}
	return sum
}

// groups returns the names of the groups in the order of their first fixture.
func (l Layout) groups() []string {
	var names []string
	for _, f := range l {
		if !slices.Contains(names, f.Group) {
			names = append(names, f.Group)
		}
	}
	return names
}

// group returns the fixtures of one group.
func (l Layout) group(name string) Layout {
	var out Layout
	for _, f := range l {
		if f.Group == name {
			out = append(out, f)
		}
	}
	return out
}

// checkPlan reports the faults that all regular layouts share.
func checkPlan(f Fixture, area Bed, height float64, counts ...int) error {
	errs := []error{domain.Within("fixture", f.check()), domain.Within("area", area.check()), heightRange.Check("height", height)}
	total := 1
	for _, n := range counts {
		if n < 1 || n > maxFixtures/total {
			errs = append(errs, fmt.Errorf("%d fixtures in a row or column, want 1 to %d in all: %w", n, maxFixtures, ErrRange))
			break
		}
		total *= n
	}
	return errors.Join(errs...)
}

// heightRange is that of fixtures above the plane they light.
var heightRange = domain.Range{Min: 0.01, Max: 100, Unit: "m"}

const maxFixtures = 1_000_000

// Rows returns nx fixtures along x in each of ny rows over the area, each over
// the centre of its equal share, at height, m, 0.01 to 100, above the plane of
// the area.
func Rows(f Fixture, area Bed, height float64, nx, ny int) (Layout, error) {
	if err := checkPlan(f, area, height, nx, ny); err != nil {
		return nil, err
	}
	out := make(Layout, 0, nx*ny)
	for j := range ny {
		for i := range nx {
			out = append(out, at(f, area, height, (float64(i)+0.5)/float64(nx), (float64(j)+0.5)/float64(ny)))
		}
	}
	return out, nil
}

// at places a fixture at the fractions u and v of the area's sides.
func at(f Fixture, area Bed, height, u, v float64) Fixture {
	f.At = Point{area.X + u*area.Length, area.Y + v*area.Width, area.Z + height}
	return f
}

// Staggered is Rows with every second row shifted by half a step and one
// fixture shorter; nx is at least 2. height in m, 0.01 to 100.
func Staggered(f Fixture, area Bed, height float64, nx, ny int) (Layout, error) {
	err := checkPlan(f, area, height, nx, ny)
	if nx < 2 {
		err = errors.Join(err, fmt.Errorf("%d fixtures in a staggered row, at least 2: %w", nx, ErrRange))
	}
	if err != nil {
		return nil, err
	}
	var out Layout
	for j := range ny {
		for i := range nx - j%2 {
			out = append(out, at(f, area, height, (float64(i)+0.5+0.5*float64(j%2))/float64(nx), (float64(j)+0.5)/float64(ny)))
		}
	}
	return out, nil
}

// Spacing is a grid of fixtures of given distances.
type Spacing struct {
	Height  float64 // m, 0.01 to 100; above the plane of the area
	X       float64 // m, 0.001 to 2000; between fixtures along x
	Y       float64 // m, 0.001 to 2000; between fixtures along y
	Columns int     // count along x
	Rows    int     // count along y
}

// Spaced returns fixtures in the columns and rows of the grid, centred over the
// area; they may reach beyond it.
func Spaced(f Fixture, area Bed, grid Spacing) (Layout, error) {
	err := errors.Join(checkPlan(f, area, grid.Height, grid.Columns, grid.Rows), sideRange.Check("X", grid.X), sideRange.Check("Y", grid.Y))
	if err != nil {
		return nil, err
	}
	out := make(Layout, 0, grid.Columns*grid.Rows)
	for j := range grid.Rows {
		for i := range grid.Columns {
			g := at(f, area, grid.Height, 0.5, 0.5)
			g.At.X += grid.X * (float64(i) - float64(grid.Columns-1)/2)
			g.At.Y += grid.Y * (float64(j) - float64(grid.Rows-1)/2)
			out = append(out, g)
		}
	}
	return out, nil
}

// Perimeter returns n fixtures at equal steps around the area's edge, moved
// inwards by inset, m, at least 0 and less than half the shorter side, at
// height, m, 0.01 to 100: the row that makes up for the light that the edge of
// a bed lacks [Ciolkosz01]. The first stands half a step from the corner with
// the smallest x and y, along x.
func Perimeter(f Fixture, area Bed, height, inset float64, n int) (Layout, error) {
	r := domain.Range{Min: 0, Max: 0.4999 * math.Min(area.Length, area.Width), Unit: "m", Source: "less than half the shorter side"}
	if err := errors.Join(checkPlan(f, area, height, n), r.Check("inset", inset)); err != nil {
		return nil, err
	}
	a, b := area.Length-2*inset, area.Width-2*inset
	out := make(Layout, 0, n)
	for i := range n {
		s := 2 * (a + b) * (float64(i) + 0.5) / float64(n)
		x, y := 0.0, 0.0
		switch {
		case s <= a:
			x = s
		case s <= a+b:
			x, y = a, s-a
		case s <= 2*a+b:
			x, y = 2*a+b-s, b
		default:
			y = 2*(a+b) - s
		}
		f.At = Point{area.X + inset + x, area.Y + inset + y, area.Z + height}
		out = append(out, f)
	}
	return out, nil
}

// Tiers returns the layout once for each of n shelves, rise, m, 0.1 to 10,
// apart, the first as it is. Shelves shade one another: map each tier alone,
// on its own bed, and add up power with Layout.Power.
func Tiers(layout Layout, n int, rise float64) ([]Layout, error) {
	var errs []error
	if n < 1 || n > 100 {
		errs = append(errs, &RangeError{Field: "n", Value: float64(n), Min: 1, Max: 100, Unit: "(count)"})
	}
	errs = append(errs, domain.Range{Min: 0.1, Max: 10, Unit: "m"}.Check("rise", rise))
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	out := make([]Layout, n)
	for i := range out {
		out[i] = slices.Clone(layout)
		for k := range out[i] {
			out[i][k].At.Z += float64(i) * rise
		}
	}
	return out, nil
}
