package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestHandHeaterAndDucts(t *testing.T) {
	a := demoAnswers(t)
	h, d := a.Heater, a.Ducts
	require.InEpsilon(t, max(a.Wet.Total, a.Wet.DryFilm, a.Dry.Total), h.Needed, 1e-12)
	require.InEpsilon(t, 34000/h.Needed-1, h.Margin, 1e-9)
	density := (pressure - 0.378*0.8*saturation(15)) / 287.04 / 288.15
	require.InEpsilon(t, d.Flow, h.Inlet, 1e-9)
	require.InEpsilon(t, density*h.Inlet, h.Mass, 0.001)
	require.InEpsilon(t, 34000/(h.Mass*(1006+1860*a.Air.InsideW)*(1-a.Air.InsideW)), h.Rise, 0.004)
	require.InDelta(t, 15+h.Rise, h.Supply, 1e-9)
	require.InEpsilon(t, h.Inlet*(273.15+h.Supply)/288.15, h.Outlet, 0.001)
	require.InDelta(t, h.Inlet*3600/volume, h.Passes, 1e-6)
	require.InEpsilon(t, 1.2*1005*h.Inlet*h.Rise, h.BySeaLevel, 0.001)
	require.InEpsilon(t, 15+h.Rise*h.Needed/34000, *h.SupplyAt, 0.002)
	require.InEpsilon(t, h.Inlet*h.Rise/25, *h.PlantsFlow, 0.003) // 40 °C is 25 K above 15 °C
	require.InEpsilon(t, h.Needed/0.88, h.FuelPerHour, 0.004)     // and the standby of the rest of the time

	// Fan: linear between 250 Pa at 0.75 and 150 Pa at 1 m³/s, for 1.2 kg/m³.
	fan := (250 - 100*(d.Flow-0.75)/0.25) * (pressure / 287.04 / 288.15) / 1.2
	require.InEpsilon(t, fan, d.Pressure, 0.002)
	require.InEpsilon(t, d.Flow*d.Pressure/0.5/0.75, d.Electric, 1e-6)
	// Duct: 3 m of 0.4 m with friction of about 0.017 and fittings of 1.5, and the
	// tube behind it.
	warm := pressure / 287.04 / (273.15 + h.Supply)
	speed := d.Branches[0].Flow / (math.Pi / 4 * 0.4 * 0.4)
	head := warm * speed * speed / 2
	require.InEpsilon(t, head*(1.5+3/0.4*0.0175)+d.Tube.Pressure, d.Pressure, 0.01)
	// Tube: the holes of 33 rows of 2 let out the flow at the mean of both ends'
	// pressure; the end has its static pressure alone.
	area := 66 * math.Pi / 4 * d.Tube.Hole * d.Tube.Hole
	require.InEpsilon(t, d.Branches[0].Flow, 0.65*area*math.Sqrt(2*d.Tube.Pressure/warm), 0.08)
}

// TestHandFrost follows the air by small steps with the two stores that decide
// the first hours; the report's loss per kelvin stands for the cover.
func TestHandFrost(t *testing.T) {
	a := demoAnswers(t)
	f := a.Frost
	require.Less(t, *f.PowerFails, *f.HeaterStops)
	require.InDelta(t, 24-8.1, f.NightLength, 0.2) // the middle of January at 50.6° north
	// Emergency heat needed at 0 °C: the loss of 14 K, less what the soil gives.
	require.Less(t, f.EmergencyNeed, a.Wet.Coefficient*14*1.3)
	require.Greater(t, f.EmergencyNeed, a.Wet.Coefficient*14*0.6)
	worse := max(a.Wet.Coefficient, a.Dry.Coefficient)
	air := volume * 1.17 * 1010
	structure := 11400e3
	exchange := 30 * floor * 0.5 // without the fan
	ta, ts := 15.0, 15.0
	minutes := 0.0
	for ta > 0 && minutes < 600 {
		const dt = 0.25 // s
		loss := worse * (ta + 14)
		gain := exchange * (ts - ta)
		ta += dt * (gain - loss + 0.5*5*floor*(13-ta)*0.5) / air
		ts -= dt * gain / structure
		minutes += dt / 60
	}
	require.InEpsilon(t, minutes, *f.PowerFails, 0.35)
}
