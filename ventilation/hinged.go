package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// Hinge says where a flap is hung.
type Hinge uint8

// Where a flap is hung.
const (
	TopHinged Hinge = iota
	BottomHinged
	SideHinged
)

var hingeNames = []string{"top", "bottom", "side"}

// String names the side that the flap hangs on.
func (h Hinge) String() string { return enumName("Hinge", hingeNames, uint8(h)) }

// Hinged is a flap in a frame. Along is the length of the hinge: for a top-
// or bottom-hinged flap its width, for a side-hinged one its height.
type Hinged struct {
	Hinge Hinge   // where the flap is hung
	Along float64 // m, more than 0, at most 200; length of the hinge
	Depth float64 // m, more than 0, at most 200; from the hinge to the free edge
	Angle float64 // degree, opened from the frame, 0 to 90
	// Blocked is the count of ends whose side triangle is closed, 0 to 2: one
	// run of flaps end to end has the inner ends blocked by the neighbours.
	Blocked int
}

// Ranges of a flap.
var (
	flapRange      = domain.Range{Min: 0, Max: 200, Unit: "m", Source: "vents of protected-cropping houses, continuous ones included"}
	openFlapRange  = domain.Range{Min: domain.MoreThan(0), Max: 200, Unit: "m", Source: "vents of protected-cropping houses, continuous ones included"}
	flapAngleRange = domain.Range{Min: 0, Max: 90, Unit: "degree", Source: "a flap opens to a right angle at most in the models here"}
)

// check joins every fault of h, by field.
func (h Hinged) check() error {
	err := errors.Join(
		openFlapRange.Check("Along", h.Along),
		openFlapRange.Check("Depth", h.Depth),
		flapAngleRange.Check("Angle", h.Angle),
	)
	err = errors.Join(err, enumFault("Hinge", "Hinge", hingeNames, uint8(h.Hinge)))
	if h.Blocked < 0 || h.Blocked > 2 {
		err = errors.Join(err, &RangeError{Field: "Blocked", Value: float64(h.Blocked), Min: 0, Max: 2, Unit: "count"})
	}
	return err
}

// FlapAngle returns the angle, degree, of a flap of the given depth, m, more than 0,
// at most 200, whose free edge stands stroke, m, from the frame in a straight line:
// 2 asin(stroke/(2 depth)). NaN outside and unless stroke lies between 0 and 2 depth.
func FlapAngle(stroke, depth float64) float64 {
	if !(openFlapRange.Contains(depth) && stroke >= 0 && stroke <= 2*depth) {
		return math.NaN()
	}
	return 2 * math.Asin(stroke/(2*depth)) * 180 / math.Pi
}

// FlapStroke returns the straight distance, m, of the free edge of a flap of
// the given depth, m, 0 to 200, from the frame at angle, degree, 0 to 90: 2 depth
// sin(angle/2). NaN outside.
func FlapStroke(angle, depth float64) float64 {
	if !flapAngleRange.Contains(angle) || !flapRange.Contains(depth) {
		return math.NaN()
	}
	return 2 * depth * math.Sin(angle*math.Pi/360)
}

// FlapArea is the geometry of an open flap.
type FlapArea struct {
	Frame   float64 // m², hole that the flap closes
	Front   float64 // m², between the free edge and the frame
	Sides   float64 // m², triangles at the ends that are not blocked
	Free    float64 // m², Front and Sides together, in series with Frame
	Smaller float64 // m², for comparison: the smaller of Front and Sides together, and Frame
}

// Area returns the geometry of h: front s l and side triangles s d cos(a/2)/2
// each, s the stroke, in series with the frame: the flap's jet passes both,
// 1/A² adding [AixLib24]. The error joins the faults of h.
func (h Hinged) Area() (FlapArea, error) {
	if err := h.check(); err != nil {
		return FlapArea{}, err
	}
	s := FlapStroke(h.Angle, h.Depth)
	a := FlapArea{
		Frame: h.Along * h.Depth,
		Front: s * h.Along,
		Sides: float64(2-h.Blocked) * 0.5 * s * h.Depth * math.Cos(h.Angle*math.Pi/360),
	}
	a.Smaller = math.Min(a.Front+a.Sides, a.Frame)
	if s > 0 {
		a.Free = SeriesArea(a.Front+a.Sides, a.Frame)
	}
	return a, nil
}

// HingedModel names a published model of the discharge of an open flap. All
// return it on the frame area, so that they can be compared. They differ most for
// long flaps a little open: at 20 degrees with blocked ends 0.20 by geometry and
// 0.29 by the class of aspect.
type HingedModel uint8

// The models.
const (
	AspectExponential HingedModel = iota // [Bb18] sec. 8.3: Cd = Cmax (1 - exp(-M a)) by width over height
	EnPolynomial                         // [EnVent17] (annex of CEN/TR 16798-8): frame area times a cubic of the angle
	FlapGeometry                         // front and side triangles in series with the frame
)

var hingedModelNames = []string{"aspect class, exponential", "EN 16798 polynomial", "flap geometry"}

// String names the model.
func (h HingedModel) String() string { return enumName("HingedModel", hingedModelNames, uint8(h)) }

// DefaultHingedModel returns FlapGeometry, the default for the vents of houses: it
// knows how long a flap is and whether its ends are blocked. The two others were
// fitted to the windows of rooms, whose side triangles pass a good part of
// the air; a continuous vent has next to none, and the widest class, twice as wide
// as high and more, does not tell 2 from 100.
func DefaultHingedModel() HingedModel { return FlapGeometry }

// aspectClass is one class of [Bb18] sec. 8.3: width over height below limit.
type aspectClass struct{ limit, m, max float64 }

// aspectClasses in the source's order; M per degree.
var aspectClasses = [4]aspectClass{
	{0.5, 0.060, 0.612},
	{1, 0.048, 0.589},
	{2, 0.040, 0.563},
	{math.Inf(1), 0.038, 0.548},
}

// enCubic are the coefficients of a³, a² and a [EnVent17].
var enCubic = [3]float64{2.60e-7, -1.19e-4, 1.86e-2}

// aspectDischarge returns the discharge coefficient (dimensionless, on width
// times height) of a flap hung along its width, m, of the given height, m, at
// angle, degree: Cd = Cmax (1 - exp(-M angle)) [Bb18] sec. 8.3. Accuracy not
// stated in the source. NaN for sides of 0 or above
// 200 m and angles beyond 0 to 90.
func aspectDischarge(width, height, angle float64) float64 {
	if !(width > 0 && height > 0 && flapRange.Contains(width) && flapRange.Contains(height) && flapAngleRange.Contains(angle)) {
		return math.NaN()
	}
	for _, c := range aspectClasses {
		if width/height < c.limit {
			return c.max * (1 - math.Exp(-c.m*angle))
		}
	}
	return math.NaN()
}

// enAreaRatio returns the ratio (dimensionless) of the opening area of a
// tilted flap to its frame at angle, degree: 2.6e-7 a³ - 1.19e-4 a² + 1.86e-2 a
// [EnVent17]. It reaches 0.90 at 90 degrees, not 1. NaN beyond 0 to 90.
func enAreaRatio(angle float64) float64 {
	if !flapAngleRange.Contains(angle) {
		return math.NaN()
	}
	return ((enCubic[0]*angle+enCubic[1])*angle + enCubic[2]) * angle
}

// Discharge returns the discharge coefficient (dimensionless, on the frame
// area) of h by the model. The polynomial and the geometry give an area;
// sharp, more than 0, at most 1, is the coefficient of a sharp-edged hole that turns it
// into a flow, commonly 0.6 to 0.65. The first two models were published for
// flaps hung at top or bottom: for SideHinged they give an error. The error
// joins the faults of h.
func (m HingedModel) Discharge(h Hinged, sharp float64) (float64, error) {
	err := errors.Join(h.check(), openDischargeRange.Check("sharp", sharp))
	if fault := enumFault("HingedModel", "HingedModel", hingedModelNames, uint8(m)); fault != nil {
		err = errors.Join(err, fault)
	} else if m != FlapGeometry && h.Hinge == SideHinged {
		err = errors.Join(err, &RangeError{Field: "Hinge", Value: float64(h.Hinge), Max: float64(BottomHinged), Source: "the model was published for flaps hung at top or bottom"})
	}
	if err != nil {
		return 0, err
	}
	switch m {
	case AspectExponential:
		return aspectDischarge(h.Along, h.Depth, h.Angle), nil
	case EnPolynomial:
		return sharp * enAreaRatio(h.Angle), nil
	}
	a, err := h.Area()
	return sharp * a.Free / a.Frame, err
}
