package ventilation_test

import (
	"math"
	"testing"
	"time"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// Pads and fog are refused or cool the air to somewhere between its own
// temperature and saturation.
func FuzzCooling(f *testing.F) {
	f.Add(35.0, 0.3, 101325.0, 0.75, 1.2, 5.0, 0.01, 0.6, 18.0)
	f.Add(-20.0, 1.0, 70000.0, 1.0, 0.1, 0.1, 0.0, 0.0, 0.01)
	f.Add(79.0, 0.0, 109999.0, 0.99, 3.0, 900.0, 99.0, 1.0, 60.0)
	f.Fuzz(func(t *testing.T, temperature, rh, p, efficiency, speed, flow, spray, evaporates, water float64) {
		air, err := psychro.FromRelativeHumidity(temperature, rh, p)
		if err != nil {
			return
		}
		wall := ventilation.PadWall{Area: 4, Efficiency: efficiency, Speed: speed, Cycles: 3}
		if c, err := wall.Cool(air, flow); err == nil {
			if !(c.Fall >= -1e-9 && c.Supply.Temperature() >= c.WetBulb-1e-6 && c.Evaporated >= -1e-9*flow && c.Efficiency <= 1) {
				t.Fatalf("%+v", c)
			}
		}
		c, err := ventilation.Fogging{Spray: spray, Evaporates: evaporates, Water: water}.Into(psychro.Stream{State: air, DryAir: flow})
		if err != nil {
			return
		}
		if !(c.Evaporated >= 0 && c.Dripped >= -1e-12 && c.Evaporated <= c.Limit && c.Air.RelativeHumidity() <= 1+1e-9) || math.IsNaN(c.Fall+c.Efficiency+c.Latent) {
			t.Fatalf("%+v", c)
		}
	})
}

// The sun is split into parts of a whole, whatever the layers.
func FuzzShade(f *testing.F) {
	f.Add(uint8(0), 0.5, 0.2, 1.0, 0.8, 0.1, 5.8, 23.0)
	f.Add(uint8(2), 0.0, 1.0, 0.5, 0.01, 0.99, 0.05, 0.5)
	f.Fuzz(func(t *testing.T, place uint8, t1, r1, drawn, t2, r2, u, outside float64) {
		b, err := ventilation.Shade{Place: ventilation.ShadePlace(place), Layer: ventilation.Optics{Transmittance: t1, Reflectance: r1}, Drawn: drawn,
			Cover: ventilation.Optics{Transmittance: t2, Reflectance: r2}, U: u, Outside: outside}.Balance()
		if err != nil {
			return
		}
		sum := 0.0
		for _, part := range []float64{b.Transmitted, b.Reflected, b.ToOutside, b.CoverInward, b.ShadeInward} {
			if !(part >= -1e-12 && part <= 1+1e-12) {
				t.Fatalf("%+v", b)
			}
			sum += part
		}
		if !(math.Abs(sum-1) < 1e-9 && b.Factor <= 1+1e-9) {
			t.Fatalf("%+v", b)
		}
	})
}

// A rule that passes its check keeps the vents between shut and its limit.
func FuzzRule(f *testing.F) {
	f.Add(22.0, 6.0, 0.1, 0.05, 0.1, 0.9, 8.0, 14.0, 0.1, 0.3, 25.0, 10.0, 0.5, true)
	f.Add(20.0, 0.1, 0.0, 1.0, 0.0, 1.0, 0.0, 0.0, 0.0, 0.0, 80.0, 45.0, 1.0, false)
	f.Fuzz(func(t *testing.T, start, band, dead, step, least, most, low, high, windMost, rainMost, inside, wind, last float64, rain bool) {
		r := ventilation.OpeningRule{Start: start, Band: band, DeadBand: dead, Step: step, Least: least, Most: most,
			WindLow: low, WindHigh: high, WindMost: windMost, RainMost: rainMost}
		if r.Check() != nil || math.IsNaN(inside) || !(wind >= 0 && last >= 0 && last <= 1) {
			return
		}
		p := r.Next(inside, wind, rain, last)
		if !(p.Opening >= 0 && p.Opening <= p.Limit && p.Limit <= 1 && p.Demand >= 0 && p.Demand <= 1) {
			t.Fatalf("%+v %+v", r, p)
		}
	})
}

// A day in a house of any crop and any constant weather ends with a course or
// an error, never with a number that is none.
func FuzzDay(f *testing.F) {
	f.Add(24.0, 0.5, 700.0, 2.0, 20.0, 22.0, 6.0, 0.3)
	f.Add(-10.0, 0.9, 0.0, 20.0, 9.0, 5.0, 1.0, 0.0)
	f.Fuzz(func(t *testing.T, outside, rh, sun, wind, ground, start, band, shade float64) {
		air, err := psychro.FromRelativeHumidity(outside, rh, 101325)
		if err != nil {
			return
		}
		step := ventilation.DayStep{Weather: ventilation.Weather{Air: air, Sun: sun, Wind: wind, Sky: outside - 10, Ground: ground}, Setting: ventilation.Setting{Shade: shade}}
		r := rule()
		r.Start, r.Band = start, band
		d, err := dayHouse(t).Day([]ventilation.DayStep{step, step}, time.Hour, r, ventilation.DefaultDayLimits())
		if err != nil {
			return
		}
		if p := d.Points[1].Vents; math.IsNaN(d.Mean+d.DegreeHours+d.Travel+d.DeficitMean) || !(p.Opening >= 0 && p.Opening <= 1) {
			t.Fatalf("%+v", d)
		}
	})
}
