package main

import (
	"math"

	"cloche.example/ventilation"
)

// blow lets the plan's fans run in the steps in which open vents alone leave the
// house warmer than the vents are to hold it, and sums the day anew.
func (d *day) blow(c *ventilation.DayCourse, limits ventilation.DayLimits) error {
	fans, err := d.house.Climate(true)
	if err != nil {
		return err
	}
	for i := range c.Points {
		p := &c.Points[i]
		if p.Vents.Opening == 0 || p.State.Temperature <= d.plan.SetPoints.Day.VentTemperature {
			continue
		}
		s := d.steps[i].Setting
		s.Opening = p.Vents.Opening
		if p.State, err = fans.Solve(d.steps[i].Weather, s); err != nil {
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
