package main

import (
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/ventilation"
)

// at is the house in a step with its vents opened to the given fraction of their
// area, in the plan's order, and with its fans running past wet pads, or not.
func (d *day) at(step ventilation.DayStep, opening float64, fans bool) (ventilation.ClimateState, error) {
	s := step.Setting
	if s.Opening = 0; opening > 0 {
		openings, err := fromplan.OpenedInTurn(d.plan, opening)
		if err != nil {
			return ventilation.ClimateState{}, err
		}
		var blow []ventilation.FixedFan
		if fans {
			blow, s.Pad = fromplan.VentFans(d.plan), d.pad
		}
		if len(openings)+len(blow) > 0 {
			if s.Air, err = ventilation.NewNetwork(openings, nil, blow); err != nil {
				return ventilation.ClimateState{}, err
			}
			s.Opening = 1
		}
	}
	return d.climate.Solve(step.Weather, s)
}

// run has the vents stand in the plan's order, lets fans run in the steps in which
// open vents alone leave the house warmer than they are to hold it, and sums the
// day anew.
func (d *day) run(c *ventilation.DayCourse, limits ventilation.DayLimits) (err error) {
	for i := range c.Points {
		p := &c.Points[i]
		if p.State, err = d.at(d.steps[i], p.Vents.Opening, false); err != nil {
			return err
		}
		if len(d.plan.VentFans) == 0 || p.Vents.Opening == 0 || p.State.Temperature <= d.plan.SetPoints.Day.VentTemperature {
			continue
		}
		if p.State, err = d.at(d.steps[i], p.Vents.Opening, true); err != nil {
			return err
		}
	}
	d.sum(c, limits)
	return nil
}

// sum fills the summary of a course from its points.
func (d *day) sum(c *ventilation.DayCourse, limits ventilation.DayLimits) {
	was := *c
	*c = ventilation.DayCourse{Points: was.Points, Moves: was.Moves, Travel: was.Travel, Low: math.Inf(1), High: math.Inf(-1), DeficitLow: math.Inf(1), DeficitHigh: math.Inf(-1)}
	n, seconds := float64(len(c.Points)), d.step.Seconds()
	for _, p := range c.Points {
		s := p.State
		c.Mean += s.Temperature / n
		c.DeficitMean += s.Deficit / n
		c.Low, c.DeficitLow, c.DeficitHigh = min(c.Low, s.Temperature), min(c.DeficitLow, s.Deficit), max(c.DeficitHigh, s.Deficit)
		if s.Temperature > c.High {
			c.High, c.HighAt = s.Temperature, p.Time
		}
		if over := s.Temperature - limits.Temperature; over > 0 {
			c.Above += d.step
			c.DegreeHours += over * d.step.Hours()
		}
		if s.Deficit < limits.DeficitLow {
			c.Humid += d.step
		} else if s.Deficit > limits.DeficitHigh {
			c.Dry += d.step
		}
		c.Water += (s.FromPad + s.Mist) * seconds
		c.Dripped += s.Drip * seconds
		c.Transpired += s.Transpired * seconds
	}
}
