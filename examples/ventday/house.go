package main

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/demo"
	"cloche.example/ventilation"
)

// The vents of the demo house, invented with it.
const (
	rollLength = 12.0 // m, each side wall's film that rolls up
	rollHeight = 0.7  // m, rolled up
	rollMiddle = 0.75 // m above grade
	flapLength = 12.0 // m, of the ridge vent, on the lee slope
	flapDepth  = 0.8  // m
	flapAngle  = 40.0 // degree
	sharpEdge  = 0.62 // dimensionless, discharge of a sharp-edged hole
	windAngle  = 30.0 // degree, between the wind and the normal of the windward eaves
	leakFlow   = 0.02 // m³/s at 1 Pa, gaps of the cover
	leakPower  = 0.65 // dimensionless
)

// climate returns the demo house with its vents wide open at an opening of 1.
func (c choice) climate() (*ventilation.Climate, error) {
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Azimuth, form.Depth = demo.Span, demo.Length, demo.Azimuth, demo.Depth
	form.Eave, form.Ridge = demo.EaveHeight, demo.RidgeHeight
	shape, err := envelope.NewShape(form)
	if err != nil {
		return nil, err
	}
	const shelter = ventilation.SemiSheltered
	side := func(name string, angle float64) ventilation.Opening {
		return ventilation.Opening{
			Name: name, Height: rollMiddle, Vertical: rollHeight, Area: rollLength * rollHeight,
			Discharge: sharpEdge, PressureCoefficient: shelter.Coefficient(ventilation.WindFaceWall, angle),
		}
	}
	pitch := math.Atan2(demo.RidgeHeight-demo.EaveHeight, demo.Span/2) * 180 / math.Pi
	ridge, err := ventilation.RidgeVent{Length: flapLength, Depth: flapDepth, Pitch: pitch, Ridge: demo.RidgeHeight, Angle: flapAngle}.
		Opening(ventilation.FlapGeometry, sharpEdge, shelter.Coefficient(ventilation.WindFaceMidRoof, 180-windAngle))
	if err != nil {
		return nil, err
	}
	openings := []ventilation.Opening{side("windward wall", windAngle), side("lee wall", 180-windAngle), ridge}
	network, err := ventilation.NewNetwork(openings, []ventilation.Leak{{Name: "gaps", Height: 1.5, Flow: leakFlow, Exponent: leakPower, PressureCoefficient: -0.2}}, nil)
	if err != nil {
		return nil, err
	}
	return ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: shape.FloorArea, Volume: shape.Volume,
		Cover: ventilation.DefaultSimpleCover(shape.CoverArea), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(c.lai), Air: network,
	})
}

// course is one way to run the vents.
type course struct {
	name string
	ventilation.DayCourse
}

// result is what the report prints.
type result struct {
	climate *ventilation.Climate
	steps   []ventilation.DayStep
	courses []course // by hand, automatic, wide open
}

// compute runs the day three times.
func compute(c choice) (r result, err error) {
	err = c.rule.Check()
	if err != nil {
		err = fmt.Errorf("automatic: %w", err)
	}
	if err = errors.Join(c.check(), err); err != nil {
		return r, err
	}
	if r.climate, err = c.climate(); err != nil {
		return r, err
	}
	if r.steps, err = c.day(r.climate); err != nil {
		return r, err
	}
	hours := func(h float64) time.Duration { return time.Duration(h * float64(time.Hour)) }
	limits := ventilation.DefaultDayLimits()
	limits.Temperature = c.limit
	for _, k := range []struct {
		name  string
		vents ventilation.Vents
	}{
		{"by hand", ventilation.Schedule{{At: hours(c.open), Opening: c.hand}, {At: hours(c.shut)}}},
		{"automatic", c.rule},
		{"wide open", ventilation.Schedule{{Opening: 1}}},
	} {
		d, err := r.climate.Day(r.steps, c.step, k.vents, limits)
		if err != nil {
			return r, fmt.Errorf("%s: %w", k.name, err)
		}
		r.courses = append(r.courses, course{k.name, d})
	}
	return r, nil
}
