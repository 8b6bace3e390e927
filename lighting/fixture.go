package lighting

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// Point is a place in the right-handed frame of the package.
type Point struct {
	X float64 // m, along the floor
	Y float64 // m, along the floor
	Z float64 // m, upwards
}

// Vector is a direction; its length does not matter.
type Vector struct {
	X float64 // any unit
	Y float64 // any unit
	Z float64 // any unit
}

// Up is the direction that a level sensor faces.
var Up = Vector{0, 0, 1}

// Orientation is how a fixture hangs. The zero value points straight down with
// the fixture's x axis along +x.
type Orientation struct{ turn [3][3]float64 } // rotation matrix less the identity

// Aim returns the orientation after three rotations of a fixture that pointed
// straight down: first by spin about its own axis, then by tilt, which lifts
// the axis from straight down towards +x, then by yaw about the vertical; all
// in degree, any finite value, yaw and spin counter-clockwise seen from above.
// In matrices R = Rz(yaw) Ry(-tilt) Rz(spin), and the axis comes to lie along
// (sin tilt cos yaw, sin tilt sin yaw, -cos tilt).
func Aim(yaw, tilt, spin float64) Orientation {
	return fromMatrix(multiply(rotZ(yaw), multiply(rotY(-tilt), rotZ(spin))))
}

// AimBar returns the orientation of a bar, whose x axis runs along it: azimuth
// in degree counter-clockwise from +x seen from above, slope in degree upwards
// along it, and roll in degree, right-handed about the bar. Without roll the
// axis of emission is the direction across the bar nearest to straight down.
func AimBar(azimuth, slope, roll float64) Orientation {
	return fromMatrix(multiply(rotZ(azimuth), multiply(rotY(-slope), rotX(roll))))
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

// Along returns the direction of the fixture's x axis, along which a bar lies.
func (o Orientation) Along() Vector {
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
	Length float64      // m, along its x axis; 0 for a point
	Power  float64      // W of electricity at full output, driver included
	Group  string       // the group it is switched and dimmed with
}

// Ranges of the fixtures' places, lengths and powers.
var (
	coordinateRange = domain.Range{Min: -1e4, Max: 1e4, Unit: "m"}
	barLengthRange  = domain.Range{Min: 0, Max: 100, Unit: "m"}
	powerRange      = domain.Range{Min: 0, Max: 20000, Unit: "W"}
)

// check reports every fault of the fixture; name stands before each field.
func (f Fixture) check(name string) error {
	var errs []error
	if f.dark() {
		errs = append(errs, fmt.Errorf("%s has no light: %w", name, ErrRange))
	}
	errs = append(errs, f.At.check(name+" place"),
		barLengthRange.Check(name+" length", f.Length), powerRange.Check(name+" power", f.Power))
	for _, row := range f.Aim.turn {
		for _, v := range row {
			if math.IsNaN(v) {
				return errors.Join(append(errs, fmt.Errorf("%s aim has an angle that is not finite: %w", name, ErrRange))...)
			}
		}
	}
	return errors.Join(errs...)
}

func (p Point) check(name string) error {
	return errors.Join(coordinateRange.Check(name+" x", p.X), coordinateRange.Check(name+" y", p.Y), coordinateRange.Check(name+" z", p.Z))
}

// ends returns the two ends of a bar, twice the place of a point.
func (f Fixture) ends() (a, b Point) {
	u := f.Aim.Along()
	return f.At.plus(u, -f.Length/2), f.At.plus(u, f.Length/2)
}

func (p Point) plus(u Vector, s float64) Point {
	return Point{p.X + s*u.X, p.Y + s*u.Y, p.Z + s*u.Z}
}

// PPF returns the fixture's photon flux in µmol/s.
func (f Fixture) PPF() float64 {
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
