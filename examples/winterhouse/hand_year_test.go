package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/psychro"
)

var days = []float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

// handBelow is by how much the hours of a month lie below 13 °C in their mean, K:
// they lie about the month's by the normal law with 5.5 K.
func handBelow(mean float64) float64 {
	z := (13 - mean) / 5.5
	return (13-mean)*0.5*math.Erfc(-z/math.Sqrt2) + 5.5*math.Exp(-z*z/2)/math.Sqrt(2*math.Pi)
}

// heatedMonths are outside air, °C, and relative humidity of the months, each by
// what is lost in it at 13 °C inside.
func heatedMonths(temperature, humidity []float64) (outside, rh float64) {
	n := 0.0
	for i, x := range temperature {
		w := handBelow(x) * days[i]
		outside, rh, n = outside+w*x, rh+w*humidity[i], n+w
	}
	return outside / n, rh / n
}

func TestHandYear(t *testing.T) {
	a := demoAnswers(t)
	y := a.Year
	p := demo(t, `{}`)
	require.InDelta(t, (15+11)/2.0, y.SetPoint, 1e-9)
	outside, rh := heatedMonths(p.Site.Months.Temperature, p.Site.Months.RelativeHumidity)
	lamps := 0.0
	for i, m := range y.Months {
		require.InDelta(t, p.Site.Months.Sun[i]/3.6*a.Sun.Gain*floor*days[i], m.Sun, 1e-6)
		// Lamps give what daylight leaves of 17 mol/(m² d), at most for 18 hours.
		short := max(0, 17-p.Site.Months.Sun[i]*2.016*a.Sun.OnTrays)
		hours := min(18, short*1e6/a.Light.Mean/3600)
		require.InDelta(t, 3.48*hours*days[i], m.Lamps, 1e-6)
		require.InDelta(t, m.Lamps*0.31, m.LampCost, 1e-6)
		lamps += m.Lamps
		// No month takes more than its loss, nor less than loss less all gains.
		require.LessOrEqual(t, m.Heat, m.Loss+1e-6)
		require.GreaterOrEqual(t, m.Heat, m.Loss-m.Sun-m.Lamps-1e-6)
	}
	require.InDelta(t, outside, y.Outside, 1e-9)
	rise := 13 - outside

	// At the mean of the heated months 2 kg/h condense and leak out.
	air := a.House.Night
	var err error
	air.Inside, err = psychro.FromRelativeHumidity(13, y.Humidity, a.Air.Pressure)
	require.NoError(t, err)
	air.Outside, err = psychro.FromRelativeHumidity(outside, rh, a.Air.Pressure)
	require.NoError(t, err)
	air.Wind, air.Cloud = 2.2, 0.6
	r, err := a.House.Loss(air, 1)
	require.NoError(t, err)
	require.InEpsilon(t, 2, answers.Evaporation(&r, air), 1e-6)
	require.Less(t, y.Humidity, 0.85)
	require.InDelta(t, 0, y.Vented, 1e-12)

	// The loss of each month: that of its colder hours, summed by the half kelvin,
	// vapour by night alone, the ground by its steady coefficient, and the passages
	// through the door.
	const by = 0.5
	var at, heat, vapour []float64
	for x := -26.0 + by/2; x < 13; x += by {
		q, v := handHour(t, &a, x, rh)
		at, heat, vapour = append(at, x), append(heat, q), append(vapour, v)
	}
	ground := a.Wet.GroundYear / (13 - mean(p.Site.Months.Temperature))
	door := a.Doors[0].Daily * 1000 / 24 / rise
	lost, kelvins := 0.0, 0.0
	for i, m := range y.Months {
		// Day length by the sun's declination in the middle of the month.
		dec := 0.409 * math.Sin(2*math.Pi/365*(30.4*(float64(i)+0.5)+1)-1.39)
		night := 1 - math.Acos(-math.Tan(50.6*math.Pi/180)*math.Tan(dec))/math.Pi
		loss := (ground + door) * handBelow(m.Outside)
		for k, x := range at {
			share := by / 5.5 / math.Sqrt(2*math.Pi) * math.Exp(-0.5*math.Pow((x-m.Outside)/5.5, 2))
			loss += share * (heat[k] + night*vapour[k])
		}
		if m.Outside < 13 {
			require.InEpsilon(t, loss*24*days[i]/1000, m.Loss, 0.01, "month %d", m.Month)
		}
		lost, kelvins = lost+loss*days[i], kelvins+handBelow(m.Outside)*days[i]
	}
	require.InEpsilon(t, lost/kelvins, y.Loss, 0.005)
	require.InEpsilon(t, a.Doors[0].Each*20/1000, a.Doors[0].Daily, 1e-9)
	require.InEpsilon(t, lamps, y.LampEnergy, 1e-9)
	require.InEpsilon(t, lamps*0.31, y.LampCost, 1e-9)
	require.InEpsilon(t, y.HeatCost+y.LampCost+y.FanCost, y.Total, 1e-9)
	require.InEpsilon(t, y.Amount*0.38, y.HeatCost, 1e-9)
	require.InEpsilon(t, y.Energy*3.6/17.5, y.Amount, 0.05) // pellets of 16.8 to 18.3 MJ/kg
	// The burner's heat at 0.88, and 1 % of its fuel power while it stands ready in
	// the months colder than 15 °C, less the hours that it burns.
	ready := 0.0
	for i, m := range y.Months {
		if m.Outside < 15 {
			ready += 24 * days[i]
		}
	}
	require.InEpsilon(t, (y.Heat+0.01*34*(ready+1-y.Heat/34))/0.88, y.Energy, 1e-6)
	require.InEpsilon(t, y.Heat/34*a.Ducts.Electric/1000, y.FanEnergy, 1e-6)
	require.InEpsilon(t, y.FanEnergy*0.31, y.FanCost, 1e-9)

	for _, s := range a.Savings {
		if !s.Possible || s.Years == nil {
			continue
		}
		require.InEpsilon(t, s.Cost/s.Money, *s.Years, 1e-9, s.Code)
		if s.Interest != nil {
			// Paid back: the yearly sums, each with its interest, are the cost.
			paid := s.Money * (1 - math.Pow(1.03, -*s.Interest)) / 0.03
			require.InEpsilon(t, s.Cost, paid, 1e-9, s.Code)
		}
	}
	cost := map[string]float64{"screen": 14 * floor, "digging_in": 45 * 0.5 * floor, "edge_insulation": 22 * 42.4, "ridge_return": 250}
	for _, s := range a.Savings {
		if want, ok := cost[s.Code]; ok {
			require.InEpsilon(t, want, s.Cost, 1e-9, s.Code)
		}
	}
}

// handHour is what the demo house at 13 °C loses in air of x °C outside, W, without
// the ground: heat, and what evaporates water and warms the air that is let in
// against damp. Found by halving humidities: at 85 % at most 2 kg/h condense and
// leak out, or outside air carries the rest away, no more than 5 house volumes an
// hour of it.
func handHour(t *testing.T, a *answers.Result, x, rh float64) (heat, vapour float64) {
	t.Helper()
	air := a.House.Night
	var err error
	air.Outside, err = psychro.FromRelativeHumidity(x, rh, a.Air.Pressure)
	require.NoError(t, err)
	air.Wind, air.Cloud = 2.2, 0.6
	out := air.Outside.HumidityRatio()
	most := 5 * a.Shape.Volume / 3600 / air.Outside.SpecificVolume()
	at := func(inside, vented float64) (left float64) { // kg/s
		air.Inside, err = psychro.FromRelativeHumidity(13, inside, a.Air.Pressure)
		require.NoError(t, err)
		r, err := a.House.Loss(air, 1)
		require.NoError(t, err)
		heat, vapour = r.Total-r.Latent-r.Ground.Total, r.Latent
		return (2-answers.Evaporation(&r, air))/3600 - vented*(air.Inside.HumidityRatio()-out)
	}
	halved := func(low, high, vented float64) {
		for high-low > 1e-7 {
			if mid := (low + high) / 2; at(mid, vented) > 0 {
				low = mid
			} else {
				high = mid
			}
		}
		at(low, vented)
	}
	vented := 0.0
	if left := at(0.85, 0); left <= 0 {
		halved(0, 0.85, 0)
	} else {
		drier := air.Inside.HumidityRatio() - out
		if vented = left / drier; drier <= 0 || vented > most {
			vented = most
			halved(0.85, 1, most)
		}
	}
	vapour += vented * ((air.Inside.HumidityRatio()-out)*2.47e6 + air.Outside.HeatCapacity()*(13-x))
	return heat, vapour
}

// TestHandDampYear is the year of a crop that sets 7 kg/h free: at the limit of 85 %
// outside air carries off what covers and leaks leave.
func TestHandDampYear(t *testing.T) {
	p := demo(t, `{"crop":{"vapour_kg_h":7}}`)
	a, err := answers.Of(&p.Plan, false)
	require.NoError(t, err)
	y, air := a.Year, a.House.Night
	require.InDelta(t, 0.85, y.Humidity, 1e-9)
	air.Inside, err = psychro.FromRelativeHumidity(13, 0.85, a.Air.Pressure)
	require.NoError(t, err)
	_, rh := heatedMonths(p.Site.Months.Temperature, p.Site.Months.RelativeHumidity)
	air.Outside, err = psychro.FromRelativeHumidity(y.Outside, rh, a.Air.Pressure)
	require.NoError(t, err)
	air.Wind, air.Cloud = 2.2, 0.6
	r, err := a.House.Loss(air, 1)
	require.NoError(t, err)
	dw := air.Inside.HumidityRatio() - air.Outside.HumidityRatio()
	vented := (7 - answers.Evaporation(&r, air)) / 3600 / dw // kg/s
	require.InEpsilon(t, vented*287.04*286.15*(1+1.608*air.Inside.HumidityRatio())/pressure, y.Vented, 0.002)
	// More vapour is more loss, by no more than what evaporates it and warms the air.
	less := demoAnswers(t).Year.Loss
	rise := 13 - y.Outside
	require.Greater(t, y.Loss, less)
	require.Less(t, y.Loss-less, (5*2.48e6/3600+vented*1015*rise)/rise)
}
