package lighting

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Point is a place in the right-handed frame of the package.
type Point struct {
	X float64 // m, -10000 to 10000; along the floor
	Y float64 // m, -10000 to 10000; along the floor
	Z float64 // m, -10000 to 10000; above the floor
}

// Vector is a direction; its length does not matter.
type Vector struct {
	X float64 // any unit
	Y float64 // any unit
	Z float64 // any unit
}

// Up returns the direction that a level sensor faces.
func Up() Vector { return up }

var up = Vector{0, 0, 1}

// Orientation is how a fixture hangs. The zero value points straight down with
// the fixture's x axis along +x.
type Orientation struct {
	turn [3][3]float64 // rotation matrix less the identity
}

// AimAngles turn a fixture that points straight down, all any finite value.
type AimAngles struct {
	Yaw  float64 // degree, about the vertical, counter-clockwise from +x seen from above
	Tilt float64 // degree, from straight down towards the yaw
	Spin float64 // degree, about the fixture's own axis, counter-clockwise seen from above
}

// Aim returns the orientation after three rotations of a fixture that pointed
// straight down: first by Spin about its own axis, then by Tilt, which lifts
// the axis from straight down towards +x, then by Yaw about the vertical. In
// matrices R = Rz(yaw) Ry(-tilt) Rz(spin), and the axis comes to lie along
// (sin tilt cos yaw, sin tilt sin yaw, -cos tilt).
func Aim(a AimAngles) Orientation {
	return fromMatrix(multiply(rotZ(a.Yaw), multiply(rotY(-a.Tilt), rotZ(a.Spin))))
}

// BarAngles turn a bar that lies along +x and points straight down, all any
// finite value.
type BarAngles struct {
	Yaw   float64 // degree, counter-clockwise from +x seen from above
	Slope float64 // degree, upwards along the bar
	Roll  float64 // degree, right-handed about the bar
}

// AimBar returns the orientation of a bar, whose x axis runs along it. Without
// roll the axis of emission is the direction across the bar nearest to straight
// down.
func AimBar(a BarAngles) Orientation {
	return fromMatrix(multiply(rotZ(a.Yaw), multiply(rotY(-a.Slope), rotX(a.Roll))))
}

func fromMatrix(r [3][3]float64) Orientation {
	for i := range r {
		r[i][i]--
	}
	return Orientation{r}
}

// matrix returns R: its columns are the fixture's axes in the world.
func (o Orientation) matrix() [3][3]float64 {
	r := o.turn
	for i := range r {
		r[i][i]++
	}
	return r
}

// Axis returns the direction in which the fixture points.
func (o Orientation) Axis() Vector {
	r := o.matrix()
	return Vector{-r[0][2], -r[1][2], -r[2][2]}
}

// along returns the direction of the fixture's x axis, along which a bar lies.
func (o Orientation) along() Vector {
	r := o.matrix()
	return Vector{r[0][0], r[1][0], r[2][0]}
}

func rotX(a float64) [3][3]float64 {
	s, c := sincos(a)
	return [3][3]float64{{1, 0, 0}, {0, c, -s}, {0, s, c}}
}

func rotY(a float64) [3][3]float64 {
	s, c := sincos(a)
	return [3][3]float64{{c, 0, s}, {0, 1, 0}, {-s, 0, c}}
}

func rotZ(a float64) [3][3]float64 {
	s, c := sincos(a)
	return [3][3]float64{{c, -s, 0}, {s, c, 0}, {0, 0, 1}}
}

// sincos is exact at the multiples of 90 degree.
func sincos(a float64) (s, c float64) {
	a = math.Remainder(a, 360)
	switch a {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case -90:
		return -1, 0
	case 180, -180:
		return 0, -1
	}
	return math.Sincos(a * radian)
}

func multiply(a, b [3][3]float64) (c [3][3]float64) {
	for i := range 3 {
		for j := range 3 {
			c[i][j] = a[i][0]*b[0][j] + a[i][1]*b[1][j] + a[i][2]*b[2][j]
		}
	}
	return c
}

// Fixture is one luminaire, or one channel of one: a point, or a straight bar
// that emits evenly along its length.
type Fixture struct {
	Light  Distribution // what it emits
	At     Point        // its middle
	Aim    Orientation  // how it hangs
	Length float64      // m, 0 to 100; along its x axis, 0 for a point
	Power  float64      // W, 0 to 20000; of electricity at full output, driver included
	Group  string       // the group it is switched and dimmed with
}

// Ranges of the fixtures' places, lengths and powers.
var (
	coordinateRange = domain.Range{Min: -1e4, Max: 1e4, Unit: "m"}
	barLengthRange  = domain.Range{Min: 0, Max: 100, Unit: "m"}
	powerRange      = domain.Range{Min: 0, Max: 20000, Unit: "W"}
)

// check reports every fault of the fixture.
func (f Fixture) check() error {
	var errs []error
	if f.dark() {
		errs = append(errs, fmt.Errorf("Light is missing, or a Table that NewTable did not make: %w", ErrRange))
	}
	errs = append(errs, domain.Within("At", f.At.check()), barLengthRange.Check("Length", f.Length), powerRange.Check("Power", f.Power))
	for _, row := range f.Aim.turn {
		for _, v := range row {
			if math.IsNaN(v) {
				return errors.Join(append(errs, fmt.Errorf("Aim has an angle that is not finite: %w", ErrRange))...)
			}
		}
	}
	return errors.Join(errs...)
}

func (p Point) check() error {
	return errors.Join(coordinateRange.Check("X", p.X), coordinateRange.Check("Y", p.Y), coordinateRange.Check("Z", p.Z))
}

// ends returns the two ends of a bar, twice the place of a point.
func (f Fixture) ends() (a, b Point) {
	u := f.Aim.along()
	return f.At.plus(u, -f.Length/2), f.At.plus(u, f.Length/2)
}

func (p Point) plus(u Vector, s float64) Point {
	return Point{p.X + s*u.X, p.Y + s*u.Y, p.Z + s*u.Z}
}

// ppf returns the fixture's photon flux in µmol/s.
func (f Fixture) ppf() float64 {
	if f.dark() {
		return 0
	}
	return f.Light.Flux()
}

// dark reports whether the fixture has no light, or a table that NewTable did
// not make.
func (f Fixture) dark() bool {
	t, ok := f.Light.(*Table)
	return f.Light == nil || ok && t.empty()
}
