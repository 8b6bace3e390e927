package ventilation

import (
	"errors"

	"cloche.example/internal/domain"
)

// TallVent is a rectangular vent in a wall by its bottom, top and width. Air may
// pass it both ways at once.
type TallVent struct {
	Name                string  // names the vent in errors and reports
	Bottom              float64 // m above the datum (outside grade), -10 to 50
	Top                 float64 // m above the datum, more than Bottom, at most 20 m above it
	Width               float64 // m, more than 0, at most 200
	Discharge           float64 // dimensionless, more than 0, at most 1, discharge coefficient on width times height
	PressureCoefficient float64 // dimensionless, -3 to 2, wind pressure coefficient of the wall
}

// ventWidthRange limits the width of a tall vent.
var ventWidthRange = domain.Range{Min: domain.MoreThan(0), Max: 200, Unit: "m", Source: "vents of protected-cropping houses, continuous ones included"}

// Opening returns v as an opening of a network. The error joins the faults by
// field.
func (v TallVent) Opening() (Opening, error) {
	top := heightRange
	if heightRange.Contains(v.Bottom) {
		top = domain.Range{Min: domain.MoreThan(v.Bottom), Max: v.Bottom + verticalRange.Max, Unit: "m", Source: "above Bottom"}
	}
	if err := errors.Join(
		heightRange.Check("Bottom", v.Bottom),
		top.Check("Top", v.Top),
		ventWidthRange.Check("Width", v.Width),
		openDischargeRange.Check("Discharge", v.Discharge),
		pressureCoefRange.Check("PressureCoefficient", v.PressureCoefficient),
	); err != nil {
		return Opening{}, err
	}
	height := v.Top - v.Bottom
	return Opening{
		Name: v.Name, Height: v.Bottom + 0.5*height, Vertical: height, Area: v.Width * height,
		Discharge: v.Discharge, PressureCoefficient: v.PressureCoefficient,
	}, nil
}
