package ventilation_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

type dice struct{ *rand.Rand }

func (d dice) from(a, b float64) float64 { return a + (b-a)*d.Float64() }

// anyHouse returns a house, weather and setting over the whole span of what may
// occur.
func anyHouse(t testing.TB, d dice) (ventilation.ClimateHouse, ventilation.Weather, ventilation.Setting) {
	area := math.Exp(d.from(1, 7))
	h := ventilation.ClimateHouse{FloorArea: area, Volume: area * 3, Cover: ventilation.DefaultSimpleCover(area * d.from(1.2, 2.5)), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(0)}
	if d.Float64() < 0.8 {
		h.Crop = ventilation.DefaultCanopy(d.from(0.05, 8))
		h.Crop.Stomata = ventilation.Stomata(d.IntN(2))
		h.Crop.AirSpeed = math.Exp(d.from(-3, 0))
	}
	h.Cover.U = math.Exp(d.from(-1.5, math.Log(5.9)))
	h.Cover.Emissivity = d.Float64()
	h.Floor.Wet = d.Float64()
	h.Floor.Resistance = d.from(0, 2000)
	h.Floor.Conductance = d.from(0, 5)
	var o []ventilation.Opening
	for range 1 + d.IntN(6) {
		v := point(d.from(0, 4), area*math.Exp(d.from(-6, -2)), d.from(-0.8, 0.6))
		switch d.IntN(5) {
		case 0:
			v.Vertical = d.from(0.1, 2)
		case 1:
			v.Viscous = d.from(0.1, 10) / area
		}
		o = append(o, v)
	}
	var leaks []ventilation.Leak
	if d.IntN(2) == 0 {
		leaks = append(leaks, ventilation.Leak{Height: d.from(0, 3), Flow: area * 1e-4, Exponent: 0.65, PressureCoefficient: d.from(-0.5, 0.5)})
	}
	var fans []ventilation.FixedFan
	if d.IntN(5) == 0 {
		fans = append(fans, ventilation.FixedFan{Height: 1, Flow: d.from(-0.03, 0.03) * area})
	}
	var err error
	h.Air, err = ventilation.NewNetwork(o, leaks, fans)
	require.NoError(t, err)
	to := d.from(-25, 42)
	a, err := psychro.FromRelativeHumidity(to, d.Float64(), d.from(80000, 104000))
	require.NoError(t, err)
	w := ventilation.Weather{Air: a, Wind: d.from(0, 8) * float64(d.IntN(2)), Sky: to - d.from(0, 25), Ground: d.from(0, 25), Sun: d.from(0, 1000) * float64(d.IntN(4)) / 3}
	s := ventilation.Setting{Opening: d.Float64()}
	if d.IntN(10) == 0 && len(fans) == 0 {
		s.Opening = 0
	}
	if d.IntN(3) == 0 {
		s.Heat = d.from(0, 200) * area
	}
	if d.IntN(4) == 0 {
		s.Mist = d.from(0, 2e-4) * area
	}
	if d.IntN(4) == 0 {
		s.Moisture = d.from(0, 2e-4) * area
	}
	if d.IntN(4) == 0 && a.WetBulb() > 1 {
		s.Pad = d.from(0, 0.9)
	}
	return h, w, s
}

// Heat, water and dry air close to 1e-9 of their terms in thousands of houses,
// the flow is the one that the network drives, and no house fails but those
// that would pass the end of the range.
func TestEveryBalanceClosesOverAGridOfHouses(t *testing.T) {
	d := dice{rand.New(rand.NewPCG(5, 7))}
	solved, hot := 0, 0
	for i := range 2500 {
		h, w, s := anyHouse(t, d)
		c := climate(t, h)
		x, err := c.Solve(w, s)
		if err != nil {
			require.ErrorIs(t, err, ventilation.ErrNoSolution, "case %d", i)
			hot++
			continue
		}
		solved++
		heat := math.Abs(x.HeatIn) + math.Abs(x.HeatOut) + math.Abs(x.AirLatent) + math.Abs(x.AirSensible) + math.Abs(x.CoverLoss)
		require.InDelta(t, 0, x.HeatResidual, 1e-9*heat, "case %d", i)
		require.InDelta(t, 0, x.WaterResidual, 1e-9*(math.Abs(x.Transpired)+math.Abs(x.FloorEvaporated)+x.Condensed+x.DryAir*(x.HumidityRatio+x.EnteringRatio)+x.Mist+x.Moisture+1e-6*h.FloorArea), "case %d", i)
		require.Less(t, x.NodeResidual, 1e-9, "case %d", i)
		require.InDelta(t, x.AirSensible+x.AirLatent, x.DryAir*(enthalpy(x.Temperature, x.HumidityRatio)-enthalpy(x.Entering, x.EnteringRatio)), 1e-9*heat, "case %d", i)
		canopy := x.SunCanopy - x.CanopyHeat - x.CanopyLatent - x.CanopyUp - x.CanopyDown
		require.InDelta(t, 0, canopy, 1e-9*heat, "case %d", i)
		require.InDelta(t, 0, x.SunFloor+x.CanopyDown-x.FloorHeat-x.FloorLatent-x.FloorUp-x.Ground, 1e-9*heat, "case %d", i)
		require.InDelta(t, 0, x.CoverHeat+x.CanopyUp+x.FloorUp+x.CoverLatent-x.CoverLoss, 1e-9*heat, "case %d", i)
		require.InDelta(t, w.Sun*(1-s.Shade)*h.Cover.Transmittance*h.FloorArea, x.SunCanopy+x.SunFloor+x.SunReflected, 1e-9*(1+heat), "case %d", i)
		require.LessOrEqual(t, x.RelativeHumidity, 1+1e-9)
		require.GreaterOrEqual(t, x.Condensed, 0.0)
		if x.Drip > 0 {
			require.InDelta(t, 1, x.RelativeHumidity, 1e-9)
		}
		require.Equal(t, x.Condensed > 0, x.CoverTemperature < psychro.SaturationTemperature(x.VapourPressure), "case %d: the cover is wet below the dew point", i)

		flows, err := c.PathsTo(nil, w, s, x)
		require.NoError(t, err)
		in, out := 0.0, 0.0
		for _, f := range flows {
			in += f.In
			out += f.Out
		}
		require.InDelta(t, x.DryAir, in/(1+w.Air.HumidityRatio()), 1e-9*x.DryAir+1e-12, "case %d", i)
		require.InDelta(t, x.DryAir, out/(1+x.HumidityRatio), 1e-9*x.DryAir+1e-12, "case %d", i)
	}
	require.Greater(t, solved, 2200)
	t.Logf("%d solved, %d too hot", solved, hot)
}

func enthalpy(t, w float64) float64 { return 1006*t + w*(2501000+1860*t) }

// Stable and unstable states take turns, the strongest flow first, and it is
// the one that Solve returns.
func TestStatesTakeTurns(t *testing.T) {
	d := dice{rand.New(rand.NewPCG(11, 3))}
	several := 0
	for i := range 150 {
		h, w, s := anyHouse(t, d)
		if i%4 != 0 { // wind that exchanges air leaves few houses several states
			h.Air = pressures(t, h.Air)
		}
		c := climate(t, h)
		all, err := c.States(w, s)
		if err != nil {
			require.ErrorIs(t, err, ventilation.ErrNoSolution, "case %d", i)
			continue
		}
		x, err := c.Solve(w, s)
		require.NoError(t, err)
		require.InDelta(t, x.Temperature, all[0].Temperature, 1e-7)
		for j, y := range all {
			require.Equal(t, j%2 == 0, y.Stable, "case %d state %d of %d", i, j, len(all))
			require.Less(t, y.NodeResidual, 1e-9)
			if j > 0 {
				require.Less(t, y.DryAir, all[j-1].DryAir)
			}
		}
		if len(all) > 1 {
			several++
		}
	}
	require.NotZero(t, several)
}

// Without sun, crop, water and anything colder or warmer about it, the house is
// as the weather, and calm air stands.
func TestAnIdleHouseIsAsTheWeather(t *testing.T) {
	h := summerHouse(t)
	h.Crop, h.Floor.Wet = ventilation.Canopy{}, 0
	a := air(t, 21, 0.4)
	for _, wind := range []float64{0, 3} {
		x, err := climate(t, h).Solve(ventilation.Weather{Air: a, Wind: wind, Sky: 21, Ground: 21}, ventilation.Setting{Opening: 1})
		require.NoError(t, err)
		for _, v := range []float64{x.Temperature, x.FloorTemperature, x.CoverTemperature} {
			require.InDelta(t, 21, v, 1e-9)
		}
		require.InDelta(t, a.HumidityRatio(), x.HumidityRatio, 1e-12)
		if wind == 0 {
			require.InDelta(t, 0, x.DryAir, 1e-4)
		} else {
			require.Greater(t, x.DryAir, 1.0)
		}
	}
}

// dryHouse has no water, no radiation and a cover that is a plain conductance:
// the house of Network.SteadyStates.
func dryHouse(t testing.TB, n *ventilation.Network) ventilation.ClimateHouse {
	return ventilation.ClimateHouse{FloorArea: 100, Volume: 300,
		Cover: ventilation.SimpleCover{Area: 150, U: 4, Inside: 8, Outside: 23, Convection: 8, Transmittance: 1},
		Floor: ventilation.FloorSurface{Convection: 60, Absorptance: 1}, Air: n}
}

// With dry air the balance is that of SteadyStates, all three states of opposed
// wind included.
func TestDryHouseIsThatOfSteadyStates(t *testing.T) {
	n := build(t,
		ventilation.Opening{Height: 0.5, Area: 2, Discharge: 0.6, PressureCoefficient: -0.3},
		ventilation.Opening{Height: 3.5, Area: 2, Discharge: 0.6, PressureCoefficient: 0.3})
	c := climate(t, dryHouse(t, n))
	several := 0
	for _, wind := range []float64{0, 0.5, 1, 1.5, 2, 3, 5} {
		for _, sun := range []float64{30, 60, 120, 300, 800} {
			want, err := n.SteadyStates(ventilation.Load{Solar: 100 * sun, Loss: 600}, ventilation.Outdoors{Temperature: 15, Pressure: 101325, Wind: wind})
			require.NoError(t, err)
			dry := air(t, 15, 0)
			got, err := c.States(ventilation.Weather{Air: dry, Sun: sun, Wind: wind, Sky: 15, Ground: 10}, ventilation.Setting{Opening: 1})
			require.NoError(t, err)
			require.Len(t, got, len(want), "wind %v sun %v", wind, sun)
			for i := range want {
				require.InDelta(t, want[i].Temperature, got[i].Temperature, 1e-6)
				require.InEpsilon(t, want[i].Air.Flow, got[i].DryAir, 1e-7)
				require.InDelta(t, want[i].Air.Pressure, got[i].Pressure, 1e-6)
				require.Equal(t, want[i].Stable, got[i].Stable)
				require.InDelta(t, want[i].ByCover, got[i].CoverLoss, 1e-3)
				require.Zero(t, got[i].HumidityRatio)
			}
			if len(want) > 1 {
				several++
			}
		}
	}
	require.NotZero(t, several)
}

// The house grows no warmer with the area that is open, as long as it is warmer
// than what enters, nor with shade; it grows warmer with sun and heat.
func TestMonotony(t *testing.T) {
	d := dice{rand.New(rand.NewPCG(2, 9))}
	checked := 0
	for range 300 {
		h, w, s := anyHouse(t, d)
		if w.Wind > 0 {
			// Without openings at odds with the stack.
			o := h.Air.Openings()
			for i := range o {
				o[i].PressureCoefficient = 0
			}
			h.Air = build(t, o...)
		}
		s.Mist, s.Moisture, s.Opening = 0, 0, 0.3
		c := climate(t, h)
		solve := func(s ventilation.Setting, w ventilation.Weather) (float64, bool) {
			x, err := c.Solve(w, s)
			return x.Temperature, err == nil && x.Temperature > x.Entering+0.01 && x.RelativeHumidity < 1
		}
		base, ok := solve(s, w)
		if !ok {
			continue
		}
		more := s
		more.Opening = 0.4
		if v, ok := solve(more, w); ok {
			require.Less(t, v, base+1e-9)
			checked++
		}
		more = s
		more.Heat += 10 * h.FloorArea
		if v, ok := solve(more, w); ok {
			require.Greater(t, v, base)
		}
	}
	require.Greater(t, checked, 60)
}

// The heat that holds a temperature gives it back.
func TestHeatForIsTheInverseOfSolve(t *testing.T) {
	c := climate(t, summerHouse(t))
	for _, to := range []float64{-15, -5, 5} {
		for _, want := range []float64{8, 15, 20} {
			w := ventilation.Weather{Air: air(t, to, 0.8), Wind: 3, Sky: to - 15, Ground: 9}
			s := ventilation.Setting{Opening: 0.01}
			x, err := c.HeatFor(w, s, want)
			require.NoError(t, err)
			require.Equal(t, want, x.Temperature)
			require.Less(t, x.NodeResidual, 1e-9)
			require.Greater(t, x.Heat, 0.0)
			s.Heat = x.Heat
			y, err := c.Solve(w, s)
			require.NoError(t, err)
			require.InDelta(t, want, y.Temperature, 1e-8)
			require.InDelta(t, x.HumidityRatio, y.HumidityRatio, 1e-10)
		}
	}
	_, err := c.HeatFor(ventilation.Weather{Air: air(t, 0, 0.8), Sky: 0, Ground: 9}, ventilation.Setting{}, 293)
	require.ErrorContains(t, err, "temperature is 293")
}
