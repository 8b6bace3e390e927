package main

import (
	"math"
	"testing"

	"cloche.example/internal/domain"
	"github.com/stretchr/testify/require"
)

// TestFiguresByHand recomputes figures of the report with plain arithmetic.
func TestFiguresByHand(t *testing.T) {
	p, err := load("", nil)
	require.NoError(t, err)
	d, err := compute(p)
	require.NoError(t, err)

	// 1. Floor, roof and volume: 6.4 × 14.8 m; the slope is the root of half
	// the span and the rise from eave to ridge; the volume is the dug-in box
	// and the cross-section above grade.
	slope := math.Hypot(3.2, 3.1-1.3)
	require.InDelta(t, 94.72, d.Shape.Floor, 1e-9)
	require.InDelta(t, slope*14.8, d.Facets[0].Area, 1e-9)
	require.InDelta(t, 94.72*0.7+14.8*(6.4*1.3+6.4*1.8/2), d.Shape.Volume, 1e-9)

	// 2. Pressure at 340 m: 101325 (1 - 2.25577e-5 z)^5.2559.
	require.InDelta(t, 101325*math.Pow(1-2.25577e-5*340, 5.2559), d.Air.Pressure, 1)

	// 3. Sensible leakage: 0.8 changes an hour of 274.7 m³; the density of
	// air at 15 °C and 97307 Pa is 1.17 kg/m³, its heat capacity 1010 J/(kg K).
	require.InEpsilon(t, 0.8*274.688/3600*1.1705*1010*29, d.Loss.LeakSens, 0.02)

	// 4. Heater: 34 kW into 0.75 m³/s of air of 1.17 kg/m³.
	require.InEpsilon(t, 34000/(0.75*1.17*1018), d.Heater.Rise, 0.01)
	require.InDelta(t, 0.75*3600/274.688, d.Heater.Passes, 0.01)

	// 5. The terms add up to the total, and the total per kelvin is over 29 K.
	sum := 0.0
	for _, term := range d.Loss.Terms {
		sum += term.Loss
	}
	require.InEpsilon(t, d.Loss.Total, sum, 1e-9)
	require.InEpsilon(t, d.Loss.Total/29, d.Loss.Coefficient, 1e-9)

	// 6. Daily light: the mean PPFD for 18 hours, 3600 s an hour, and what the
	// roof leaves of January's 3.1 MJ/(m² d), 0.45 of it PAR at 4.48 µmol/J;
	// two films let 0.88² through straight and less of slanting light, dirt
	// and frame leave 0.8. The lamps' power is 24 × 145 W.
	require.InEpsilon(t, d.Light.Mean*18*3600/1e6, d.Light.DLI, 1e-9)
	require.InEpsilon(t, 3.1*0.45*4.48*d.Sun.OnTrays, d.Sun.Daylight, 1e-9)
	require.InDelta(t, 0.88*0.88*0.89*0.8, d.Sun.OnTrays, 0.01)
	require.InEpsilon(t, d.Light.DLI+d.Sun.Daylight, d.Light.DLIAll, 1e-9)
	require.InDelta(t, 3480, d.Light.Power, 1e-9)

	// 7. Summer: sun on the floor, less transpiration, leaves by air and
	// cover; the air at 1.1 kg/m³ and 1006 J/(kg K) carries flow × rise.
	sensible := d.Sun.Gain * 750 * 94.72 * (1 - 0.45)
	byAir := d.Summer.Calm.Flow * 97307 / (287.042 * (273.15 + d.Summer.Calm.Inside)) * 1006 * d.Summer.Calm.Rise
	require.InEpsilon(t, sensible-d.Loss.linear.Air()*d.Summer.Calm.Rise, byAir, 0.03)

	// 8. Drying: the vapour that the cover leaves, over the difference of the
	// humidity ratios, is the dry air; at 97307 Pa a kilogram of it with its
	// vapour fills R T (1 + 1.608 W)/p at 15 °C. It takes 1006 J/(kg K) over
	// 12 K and 2.5 MJ for a kilogram of vapour, which warms at 1860 J/(kg K).
	dry := d.Drying
	require.InDelta(t, 7, dry.Condensed+dry.ToAir, 1e-9)
	require.InDelta(t, 0.00945, dry.InsideW, 1e-5)
	require.InDelta(t, 0.00441, dry.OutsideW, 1e-5)
	flow := dry.ToAir / 3600 / (dry.InsideW - dry.OutsideW)
	require.InEpsilon(t, flow*287.042*288.15*(1+1.608*dry.InsideW)/97307, dry.Flow, 0.002)
	require.InEpsilon(t, flow*12*(1006+1860*dry.OutsideW), dry.Sensible, 0.003)
	require.InEpsilon(t, dry.ToAir/3600*(2.501e6+1860*15), dry.Latent, 0.003)
	require.InEpsilon(t, dry.Heat/3/0.88*3*3.6e6/17.5e6, *dry.Fuel, 0.1) // pellets of 17 to 18 MJ/kg
}

// TestClimateFindsTheColdestMonth moves one yearly wave through all months,
// half months among them.
func TestClimateFindsTheColdestMonth(t *testing.T) {
	for want := 0.5; want < 12.5; want += 0.25 {
		var p plan
		for i := range p.Site.MonthlyMean {
			p.Site.MonthlyMean[i] = 9 - 10*math.Cos(2*math.Pi*(float64(i+1)-want)/12)
		}
		c := climate(p)
		require.InDelta(t, 9, c.OutsideMean, 1e-9)
		require.InDelta(t, 10, c.OutsideSwing, 1e-9)
		require.InDelta(t, 0, math.Remainder(c.Coldest-want, 12), 1e-9)
		require.NoError(t, (domain.Range{Min: 0.5, Max: 12.5, Unit: "number of the month", Source: "1 stands for the mean of January, 12 of December"}).Check("Coldest", c.Coldest))
	}
}
