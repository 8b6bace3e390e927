package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/psychro"
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

func TestHandYear(t *testing.T) {
	a := demoAnswers(t)
	y := a.Year
	p := demo(t, `{}`)
	require.InDelta(t, (15+11)/2.0, y.SetPoint, 1e-9)
	outside, n := 0.0, 0.0
	lamps := 0.0
	days := []float64{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
	for i, m := range y.Months {
		if m.Outside < 13 {
			outside, n = outside+m.Outside, n+1
		}
		require.InDelta(t, max(0, y.Loss*(13-m.Outside))*24*days[i]/1000, m.Loss, 1e-6)
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
	require.InDelta(t, outside/n, y.Outside, 1e-9)

	// The loss per kelvin: the house at the humidity at which 2 kg/h condense and
	// leak out, its vapour by night alone, the ground by its steady coefficient, and
	// the passages through the door.
	h := a.House
	air := h.Night
	var err error
	air.Inside, err = psychro.FromRelativeHumidity(13, y.Humidity, a.Air.Pressure)
	require.NoError(t, err)
	rh := 0.0
	for i, m := range y.Months {
		if m.Outside < 13 {
			rh += p.Site.Months.RelativeHumidity[i] / n
		}
	}
	air.Outside, err = psychro.FromRelativeHumidity(outside/n, rh, a.Air.Pressure)
	require.NoError(t, err)
	air.Wind, air.Cloud = 2.2, 0.6
	r, err := h.Loss(air, 1)
	require.NoError(t, err)
	rise := 13 - outside/n
	require.InEpsilon(t, 2, answers.Evaporation(&r, air), 1e-6)
	require.Less(t, y.Humidity, 0.85)
	require.InDelta(t, 0, y.Vented, 1e-12)
	night := 0.0
	for i, m := range y.Months {
		if m.Outside < 13 {
			// Day length by the sun's declination in the middle of the month.
			dec := 0.409 * math.Sin(2*math.Pi/365*(30.4*(float64(i)+0.5)+1)-1.39)
			night += (1 - math.Acos(-math.Tan(50.6*math.Pi/180)*math.Tan(dec))/math.Pi) / n
		}
	}
	ground := a.Wet.GroundYear / (13 - mean(p.Site.Months.Temperature))
	door := a.Doors[0].Daily * 1000 / 24 / rise
	require.InEpsilon(t, (r.Total-r.Latent-r.Ground.Total+night*r.Latent)/rise+ground+door, y.Loss, 0.002)
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

// TestHandDampYear is the year of a crop that sets 7 kg/h free: at the limit of 85 %
// outside air carries off what covers and leaks leave.
func TestHandDampYear(t *testing.T) {
	p := demo(t, `{"crop":{"vapour_kg_h":7}}`)
	a, err := answers.Of(&p.Plan, false)
	require.NoError(t, err)
	y, air := a.Year, a.House.Night
	require.InDelta(t, 0.85, y.Humidity, 1e-9)
	rh, n := 0.0, 0.0
	for i, m := range y.Months {
		if m.Outside < 13 {
			rh, n = rh+p.Site.Months.RelativeHumidity[i], n+1
		}
	}
	air.Inside, err = psychro.FromRelativeHumidity(13, 0.85, a.Air.Pressure)
	require.NoError(t, err)
	air.Outside, err = psychro.FromRelativeHumidity(y.Outside, rh/n, a.Air.Pressure)
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
