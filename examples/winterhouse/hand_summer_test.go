package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
)

func TestHandLight(t *testing.T) {
	a := demoAnswers(t)
	l := a.Light
	// A point under the middle of the bed: each lamp gives I cos(γ)^(m+1)/d² with
	// I = PPF (m+1)/(2π) and half of it at 55 degrees.
	m := math.Log(0.5) / math.Log(math.Cos(55*math.Pi/180))
	at := func(x, y float64) (sum float64) {
		for row := range 3 {
			for i := range 8 {
				dx, dy := x-11.2*(float64(i)+0.5)/8, y-3.6*(float64(row)+0.5)/3
				d2 := dx*dx + dy*dy + 1.15*1.15
				sum += 380 * 0.9 * (m + 1) / (2 * math.Pi) * math.Pow(1.15/math.Sqrt(d2), m+1) / d2
			}
		}
		return sum
	}
	total, least, most := 0.0, math.Inf(1), 0.0
	for j := range l.GridAcross {
		for i := range l.GridAlong {
			v := at(11.2*(float64(i)+0.5)/float64(l.GridAlong), 3.6*(float64(j)+0.5)/float64(l.GridAcross))
			require.InEpsilon(t, v, l.PPFD[j*l.GridAlong+i], 1e-6)
			total, least, most = total+v, min(least, v), max(most, v)
		}
	}
	require.InEpsilon(t, total/float64(len(l.PPFD)), l.Mean, 1e-6)
	require.InEpsilon(t, least, l.Minimum, 1e-6)
	require.InEpsilon(t, most, l.Maximum, 1e-6)
	require.InEpsilon(t, l.Minimum/l.Mean, l.Even, 1e-9)
	// At half the light cos^(m+3) of the edge's angle is a half.
	edge := math.Acos(math.Pow(0.5, 1/(m+3)))
	require.InEpsilon(t, 2*1.15*math.Tan(edge), *l.Spot, 1e-6)
	require.InDelta(t, 1.4, l.Along, 1e-9)
	require.InDelta(t, 1.2, l.Across, 1e-9)
	require.InEpsilon(t, l.Mean*18*3600/1e6, l.DLI, 1e-9)
	require.InEpsilon(t, 3.1*2.016*a.Sun.OnTrays, l.Daylight, 1e-9)
	require.InDelta(t, 0.88*0.88*0.89*0.8, a.Sun.OnTrays, 0.01) // slanting light loses 11 % more
	require.InEpsilon(t, l.DLI+l.Daylight, l.Both, 1e-9)
	require.InDelta(t, 24*145, l.Power, 1e-9)
	require.InDelta(t, 24*145, l.Heat, 1e-9)
	require.InEpsilon(t, 3.48*18*0.31, l.CostPerDay, 1e-9)
	require.InEpsilon(t, 3480/(11.2*3.6), l.PowerDensity, 1e-9)
}

func TestHandSummer(t *testing.T) {
	a := demoAnswers(t)
	s := a.Summer
	require.InEpsilon(t, a.Sun.Gain*750*floor, s.SunKept, 1e-9)
	require.InDelta(t, 2*12*0.5+12*0.6, s.Vents, 1e-9)
	for _, n := range []*answers.Noon{s.Calm, s.Windy, s.SidesAlone, s.RidgeAlone} {
		require.InDelta(t, 29+n.Rise, n.Inside, 1e-9)
		require.InDelta(t, n.Flow*3600/volume, n.Changes, 1e-6)
		// Heat that the crop does not turn into vapour leaves with the air, of
		// 1006 J/(kg K) and the density outside, and through the cover, the same for
		// all four: the loss per kelvin that the first one leaves over.
		air := n.Flow * pressure / 287.04 / 302.15 * 1006
		cover := s.SunKept*0.55/n.Rise - air
		first := s.SunKept*0.55/s.Calm.Rise - s.Calm.Flow*pressure/287.04/302.15*1006
		require.InDelta(t, first, cover, 0.01*first+2)
	}
	// Stack in calm, lower vents in and ridge out: the flow through both in series
	// under the weight of the warm air between the middle of each.
	lower, upper := 0.6*2*12*0.5, 0.6*12*0.6
	dp := pressure / 287.04 * (1/302.15 - 1/(273.15+s.Calm.Inside)) * 9.80665 * (3.1 - 0.6)
	series := 1 / math.Sqrt(1/(lower*lower)+1/(upper*upper))
	require.InEpsilon(t, series*math.Sqrt(2*dp*287.04*302.15/pressure), s.Calm.Flow, 0.05)
}

func TestHandDrying(t *testing.T) {
	// The vapour that the cover leaves, over the difference of the humidity ratios,
	// is the dry air; a kilogram of it with its vapour fills R T (1 + 1.608 W)/p. It
	// takes 1006 J/(kg K) over 12 K and 2.5 MJ for a kilogram of vapour.
	d := demoAnswers(t).Drying
	require.InDelta(t, 7, d.Condensed+d.ToAir, 1e-9)
	require.InEpsilon(t, humidity(0.85*saturation(15)), d.InsideW, 0.01)
	require.InEpsilon(t, humidity(0.9*saturation(3)), d.OutsideW, 0.01)
	flow := d.ToAir / 3600 / (d.InsideW - d.OutsideW)
	require.InEpsilon(t, flow*287.042*288.15*(1+1.608*d.InsideW)/pressure, d.Flow, 0.002)
	require.InEpsilon(t, d.Flow*3600/volume, d.Changes, 1e-9)
	require.InEpsilon(t, 0.8*volume/3600, d.Leakage, 1e-9)
	require.InEpsilon(t, d.Flow-d.Leakage, d.Vent, 1e-9)
	require.InEpsilon(t, flow*12*(1006+1860*d.OutsideW), d.Sensible, 0.003)
	require.InEpsilon(t, d.ToAir/3600*(2.501e6+1860*15), d.Latent, 0.003)
	require.InEpsilon(t, (d.Sensible+d.Latent)*3/1000, d.Heat, 1e-6)
	require.InEpsilon(t, d.Heat/0.88, *d.Fuel, 0.2) // and what the burner loses standing ready
	require.InEpsilon(t, *d.Fuel*3.6*0.38/17.5, *d.Cost, 0.06)
	require.InEpsilon(t, 0.6*d.Sensible, d.Saved, 0.05)
}

func TestHandWaterAndPower(t *testing.T) {
	a := demoAnswers(t)
	// June's 18.9 MJ, 45 % of what stays in turned into vapour, and 2 kg/h through
	// nights of 7.9 h.
	night := 2 * 7.9
	require.InDelta(t, night, a.Water.Night, 2)
	require.InEpsilon(t, a.Sun.Gain*18.9e6*floor*0.45/2.44e6+a.Water.Night, a.Water.Crop, 0.002)
	require.InEpsilon(t, a.Water.Crop/0.85/0.85, a.Water.Given, 1e-9)
	require.InEpsilon(t, 2000/a.Water.Given, a.Water.TankDays, 1e-9)
	require.InEpsilon(t, a.Water.Given/1000*2.5, a.Water.CostPerDay, 1e-9)
	require.InEpsilon(t, 3480+a.Ducts.Electric, a.Power.Total, 1e-9)
	require.InEpsilon(t, a.Power.Total/230, a.Power.Current, 1e-9)
}
