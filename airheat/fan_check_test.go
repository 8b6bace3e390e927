package airheat

import (
	"testing"

	"cloche.example/internal/check"
)

const (
	testCfm  = 0.3048 * 0.3048 * 0.3048 / 60 // m³/s
	testInch = 249.0889                      // Pa, inch of water at 4 °C
)

// cengelFan is Ex. 14-1 of Cengel and Cimbala, Fluid Mechanics: a hood and 13.4
// m of 230 mm duct.
func cengelFan(t *testing.T) OperatingPoint {
	air := AirProperties{Density: 1.184, Viscosity: 1.184 * 1.562e-5, HeatCapacity: 1006}
	flow := []float64{0, 250, 500, 750, 1000, 1200}
	inch := []float64{0.90, 0.95, 0.90, 0.75, 0.40, 0}
	for i := range flow {
		flow[i] *= testCfm
		inch[i] *= testInch * StandardDensity / air.Density // the source's curve is for its own air
	}
	fan, err := NewFanTable(flow, inch)
	if err != nil {
		t.Fatal(err)
	}
	s, err := NewSystem(Segment{Section: Round(0.23), Length: 13.4, Roughness: 0.15e-3, Fittings: 1.3 + 5*0.21 + 1.8 + 1.05})
	if err != nil {
		t.Fatal(err)
	}
	p, err := s.OperatingPoint(fan, DefaultFanDrive(), air)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func TestFanPublished(t *testing.T) {
	p := cengelFan(t)
	check.Run(t, []check.Row{
		{Where: "Cengel.Ex14-1/flow", Printed: "650", Tol: 10, Why: "read off a chart by the source; the table is joined by straight lines here"},
	}, func(...float64) float64 { return p.Flow / testCfm })
	check.Run(t, []check.Row{
		{Where: "Cengel.Ex14-1/head", Printed: "0.83", Tol: 0.02, Why: "as the flow: the straight line runs below the source's curve"},
	}, func(...float64) float64 { return p.Pressure / testInch })
	// A. V. Arasu, Turbomachines. Not run: the pressure behind a fan, a sum of two columns.
	check.Run(t, []check.Row{
		{Where: "Arasu.Ex3.14/flow", In: []float64{260, 0.75 * 13590 * 9.81, 298 - 273.15}, Printed: "222.4"},
	}, func(in ...float64) float64 { return in[0] / DryAir(in[2], in[1]).Density })
	check.Run(t, []check.Row{
		{Where: "Arasu.Ex3.11/efficiency", In: []float64{3.82, 0.063 * 9810, 3000}, Printed: "78.7"},
	}, func(in ...float64) float64 {
		fan, err := NewFanPolynomial(1, 5, in[1])
		if err != nil {
			t.Fatal(err)
		}
		air := AirProperties{Density: 1.2, Viscosity: 1.8e-5, HeatCapacity: 1006}
		duct := Segment{Section: Round(1)}
		duct.Fittings = in[1] / duct.Loss(in[0], air).VelocityPressure
		s, err := NewSystem(duct)
		if err != nil {
			t.Fatal(err)
		}
		p, err := s.OperatingPoint(fan, DefaultFanDrive(), air)
		if err != nil {
			t.Fatal(err)
		}
		return 100 * p.AirPower / in[2]
	})
	// All shaft power ends in the air: 2.5 m³/s at 315 K and 1.02 bar, 10 K.
	air := AirProperties{Density: 102000 / (287.0 * 315), Viscosity: 1.9e-5, HeatCapacity: 1005}
	check.Run(t, []check.Row{
		{Where: "Arasu.Ex4.12/power", In: []float64{2.5, 10}, Printed: "28.35"},
	}, func(in ...float64) float64 {
		// The inverse of FanRise: the pressure at efficiency 1 that warms by 10 K.
		return in[0] * in[1] / FanRise(1, 1, air) / 1000
	})
}
