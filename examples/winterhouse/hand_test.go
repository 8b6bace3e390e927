package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
)

// The figures of the demo report recomputed with plain arithmetic from the plan,
// section by section. Where a step needs an iteration, the figures of the report
// that enter it are named.

func demoAnswers(t testing.TB) answers.Result {
	t.Helper()
	p := demo(t, `{}`)
	a, err := answers.Of(&p.Plan, true)
	require.NoError(t, err)
	return a
}

// saturation is the saturation vapour pressure over water or ice, Pa, by Magnus'
// formula, good to half a per cent here.
func saturation(t float64) float64 {
	if t < 0 {
		return 611.2 * math.Exp(22.46*t/(272.62+t))
	}
	return 611.2 * math.Exp(17.62*t/(243.12+t))
}

const (
	pressure = 97307.0 // 101325 (1 - 2.25577e-5 × 340)^5.2559
	floor    = 6.4 * 14.8
	volume   = floor*0.7 + 14.8*(6.4*1.3+6.4*1.8/2)
)

func humidity(e float64) float64 { return 0.621945 * e / (pressure - e) }

func TestHandAirAndShape(t *testing.T) {
	a := demoAnswers(t)
	require.InDelta(t, pressure, a.Air.Pressure, 1)
	require.InEpsilon(t, humidity(0.8*saturation(15)), a.Air.InsideW, 0.01)
	require.InEpsilon(t, humidity(0.85*saturation(-14)), a.Air.OutsideW, 0.01)
	require.InDelta(t, 0.8*saturation(15), saturation(a.Air.InsideDew), 8)
	require.InDelta(t, 0.85*saturation(-14), saturation(a.Air.OutsideDew), 1.5)
	// Wet bulb: W falls short of saturation by cp ΔT over the latent heat.
	require.InEpsilon(t, a.Air.InsideW, humidity(saturation(a.Air.InsideWet))-1006/2.47e6*(15-a.Air.InsideWet), 0.02)
	// Sky: Berdahl and Martin at midnight and at this pressure.
	d := a.Air.OutsideDew / 100
	e := 0.711 + 0.56*d + 0.73*d*d + 0.013 + 0.00012*(pressure/100-1000)
	require.InDelta(t, 259.15*math.Pow(e, 0.25)-273.15, a.Air.Sky, 0.3)

	slope := math.Hypot(3.2, 1.8) * 14.8
	end := 6.4*1.3 + 6.4*1.8/2
	require.InDelta(t, floor, a.Shape.Floor, 1e-9)
	require.InDelta(t, volume, a.Shape.Volume, 1e-9)
	require.InDelta(t, floor*0.7, a.Shape.BelowGrade, 1e-9)
	require.InDelta(t, 2*(6.4+14.8), a.Shape.Perimeter, 1e-9)
	require.InDelta(t, 2*slope+2*14.8*1.3+2*end, a.Shape.Cover, 1e-9)
	require.InDelta(t, a.Shape.Cover/floor, a.Shape.Ratio, 1e-12)
	areas := map[string]float64{"roof, north": slope, "roof, south": slope, "side wall, north": 14.8 * 1.3, "side wall, south": 14.8 * 1.3, "end wall, east": end, "end wall, west": end - 0.95*2}
	require.Len(t, a.Wet.Facets, len(areas))
	for _, f := range a.Wet.Facets {
		require.InDelta(t, areas[f.Name], f.Area, 1e-9, f.Name)
	}
}

func TestHandLoss(t *testing.T) {
	a := demoAnswers(t)
	cover, condensate := 0.0, 0.0
	for _, f := range a.Wet.Facets {
		require.InDelta(t, f.Area*f.U*29, f.Loss, 1e-6, f.Name)
		require.InDelta(t, f.Dry+f.Condensing+f.Sky, f.Loss, 1e-6, f.Name)
		// A litre an hour gives up 2.5 MJ.
		require.InEpsilon(t, f.Condensate/3600*2.5e6, f.Condensing, 0.03, f.Name)
		// Heat meets the inner face by at most convection and radiation from 15 °C
		// and the water that condenses on it.
		require.Greater(t, f.Inner, -14.0)
		require.Less(t, f.Inner, a.Air.InsideDew)
		cover += f.Loss
		condensate += f.Condensate
	}
	terms := map[string]float64{}
	sum := 0.0
	for _, term := range a.Wet.Terms {
		terms[term.Name] = term.Loss
		sum += term.Loss
		require.InDelta(t, term.Loss/a.Wet.Total, term.Share, 1e-9)
	}
	require.InEpsilon(t, a.Wet.Total, sum, 1e-9)
	require.InEpsilon(t, a.Wet.Total/29, a.Wet.Coefficient, 1e-9)
	require.InEpsilon(t, a.Wet.Total/floor, a.Wet.PerFloor, 1e-9)
	require.InEpsilon(t, 0.04*cover, terms["frame"], 0.25)   // bars add to what is not latent too
	require.InEpsilon(t, 0.95*2*2.4*29, terms["doors"], 0.1) // and what condenses on them
	require.LessOrEqual(t, condensate, a.Wet.Condensate*1.2)

	// Leakage: 0.8 house volumes an hour; 15 °C and 97307 Pa make 1.17 kg/m³; dry
	// air takes 1006 J/(kg K), and water that evaporates in the house at 15 °C
	// 2.501 MJ/kg less 2326 J/(kg K), its vapour's heat capacity less its own.
	flow := 0.8 * volume / 3600
	dry := flow * (pressure - 0.8*saturation(15)) / 287.04 / 288.15
	dw := a.Air.InsideW - a.Air.OutsideW
	require.InEpsilon(t, flow, a.Wet.LeakageFlow, 1e-9)
	require.InEpsilon(t, dry*(1006+1860*a.Air.OutsideW)*29, terms["leakage, sensible"], 0.002)
	require.InEpsilon(t, dry*dw*(2.501e6-2326*15), terms["leakage, latent"], 0.003)
	require.InEpsilon(t, a.Wet.Condensate+3600*dry*dw, a.Wet.Evaporation, 0.002)

	// Ground, ISO 13370 heated basement: B' and the equivalent thicknesses of floor
	// and wall in clay of 1.5 W/(m K), 3 MJ/(m³ K).
	b := floor / (0.5 * 42.4)
	df, dwall := 0.2+1.5*(0.17+0.04), 1.5*(0.13+0.5+0.04)
	require.Less(t, df+0.35, b)
	uf := 2 * 1.5 / (math.Pi*b + df + 0.35) * math.Log(math.Pi*b/(df+0.35)+1)
	uw := 2 * 1.5 / (math.Pi * 0.7) * (1 + 0.5*df/(df+0.7)) * math.Log(0.7/dwall+1)
	steady := (floor*uf + 0.7*42.4*uw) * (13 - mean(demo(t, `{}`).Site.Months.Temperature))
	require.InEpsilon(t, steady, a.Wet.GroundYear, 0.02)
	require.InEpsilon(t, a.Wet.GroundMonth, terms["ground and buried walls"], 1e-9)

	// The dry night holds no more water than the air outside.
	require.InEpsilon(t, a.Air.OutsideW/(0.621945+a.Air.OutsideW)*pressure/saturation(15), a.Dry.Humidity, 0.01)
	require.InDelta(t, 0, a.Dry.Evaporation, 1e-6)
	require.InDelta(t, 0, a.Dry.Condensate, 1e-9)
}

func mean(v []float64) (m float64) {
	for _, x := range v {
		m += x / float64(len(v))
	}
	return m
}
