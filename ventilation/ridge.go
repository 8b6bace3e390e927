package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// RidgeVent is a continuous vent along the ridge, on one slope: a run of flaps
// hung at the ridge that lie on the roof when closed. It has next to no side
// triangles: the neighbours block them.
type RidgeVent struct {
	Length float64 // m, more than 0, at most 200; of the run
	Depth  float64 // m, more than 0, at most 20; of the flaps from the hinge to the free edge
	Pitch  float64 // degree, slope of the roof, 0 to 80
	Ridge  float64 // m, -10 to 50, above the datum, of the hinge
	Angle  float64 // degree, opened from the roof's plane, 0 to 90
}

// pitchRange limits the slope of a roof.
var pitchRange = domain.Range{Min: 0, Max: 80, Unit: "degree", Source: "roofs"}

// check joins every fault of v, by field.
func (v RidgeVent) check() error {
	return errors.Join(
		openFlapRange.Check("Length", v.Length),
		openVerticalRange.Check("Depth", v.Depth),
		pitchRange.Check("Pitch", v.Pitch),
		heightRange.Check("Ridge", v.Ridge),
		flapAngleRange.Check("Angle", v.Angle),
	)
}

// ends returns the heights, m, of the lip of the hole and of the flap's edge.
func (v RidgeVent) ends() (lip, edge float64) {
	rad := math.Pi / 180
	return v.Ridge - v.Depth*math.Sin(v.Pitch*rad), v.Ridge - v.Depth*math.Sin((v.Pitch-v.Angle)*rad)
}

// Opening returns v opened to Angle as an opening between the lip of the hole
// in the roof and the free edge of the flap, on its frame area Length times
// Depth. Its discharge coefficient is that of model m with the coefficient
// sharp (dimensionless) of a sharp-edged hole, its pressure coefficient the
// given coefficient, dimensionless, -3 to 2, of the slope. Where one house has such vents on
// both slopes each is an opening of its own. The error joins the faults by
// field; a closed vent, Angle zero, is none.
func (v RidgeVent) Opening(m HingedModel, sharp, coefficient float64) (Opening, error) {
	err := errors.Join(v.check(), pressureCoefRange.Check("coefficient", coefficient))
	if v.Angle == 0 {
		err = errors.Join(err, &RangeError{Field: "Angle", Value: 0, Min: 0, Max: flapAngleRange.Max, Unit: "degree", Source: "more than zero; a closed vent is no opening: leave it out"})
	}
	cd, fault := m.Discharge(Hinged{Hinge: TopHinged, Along: v.Length, Depth: v.Depth, Angle: v.Angle, Blocked: 2}, sharp)
	if v.check() == nil {
		err = errors.Join(err, fault) // else the faults stand above by their own names
	}
	if err != nil {
		return Opening{}, err
	}
	lip, edge := v.ends()
	return Opening{Name: "ridge", Height: 0.5 * (lip + edge), Vertical: edge - lip, Area: v.Length * v.Depth, Discharge: cd, PressureCoefficient: coefficient}, nil
}
