package airheat

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// TestGasHeatAgainstQuadrature holds every coefficient of the gases.
func TestGasHeatAgainstQuadrature(t *testing.T) {
	rows := check.CSV(t, "gasheat.csv")
	require.Len(t, rows, 25)
	for _, row := range rows[1:] {
		v := check.Floats(t, row)
		require.InEpsilon(t, v[2], gas(v[0]).heat(273.15, v[1]), 1e-9, "%v", row)
	}
}

// The upper ends of the pieces, K, a second time, as a guard against slips.
func TestPiecesOfTheGases(t *testing.T) {
	ends := [gases][2]float64{gasCO2: {1200}, gasH2O: {1700}, gasSO2: {1200}, gasN2: {500, 2000}, gasO2: {700, 2000}, gasCO: {1300}}
	for g, s := range shomates {
		require.Equal(t, ends[g], [2]float64{s[0].below, s[1].below})
	}
}

// TestReadyMadeFuels: the table a second time, as a guard against slips.
func TestReadyMadeFuels(t *testing.T) {
	rows := []struct {
		f                   Fuel
		c, h, o, n, s, w, a float64 // per cent of the dry matter, w of the whole
		dry                 float64 // MJ/kg
		emission            float64 // kg/GJ
	}{
		{LightOil(), 86.2, 13.2, 0.5, 0, 0.1, 0, 0, 42.7, 74.1},
		{Wood(), 50, 6, 43.5, 0, 0, 20, 0.5, 18.5, 0},
		{pellets(), 50, 6, 43.5, 0, 0, 8, 0.5, 18.5, 0},
		{straw(), 47, 6, 41, 0.5, 0.1, 15, 5.4, 17.4, 0},
		{hardCoal(), 77.487, 4.8168, 7.8534, 1.46597, 0.83770, 4.5, 7.5393, 30.4817, 94.6},
	}
	for _, r := range rows {
		d := 1 - r.w/100
		c := r.f.Composition
		for _, p := range [][2]float64{{r.c, c.Carbon}, {r.h, c.Hydrogen}, {r.o, c.Oxygen}, {r.n, c.Nitrogen}, {r.s, c.Sulphur}, {r.a, c.Ash}} {
			require.InDelta(t, p[0]/100*d, p[1], 1e-6, "%s %+v", r.f.Name, c)
		}
		require.InDelta(t, r.w/100, c.Water, 1e-12)
		require.InEpsilon(t, r.dry*1e6*d-2.443e6*r.w/100, r.f.Lower, 1e-5, r.f.Name)
		require.InDelta(t, r.emission, r.f.Emission*1e9, 1e-9)
	}
	require.InDelta(t, 56.1, naturalGas().Emission*1e9, 1e-9)
	require.InDelta(t, 63.1, propane().Emission*1e9, 1e-9)
	// Molar heats of the gases, MJ/m³ at 0 °C on the higher value: 39.7, 69.6,
	// 99.0, 128.4, 12.75, 12.63 (quotients of the same molar heats).
	for i, want := range []float64{890.58, 1560.69, 2219.17, 2877.40, 285.83, 282.98} {
		shares := []GasShares{{Methane: 1}, {Ethane: 1}, {Propane: 1}, {Butane: 1}, {Hydrogen: 1}, {CarbonMonoxide: 1}}[i]
		f, err := NewGasFuel("part", shares)
		require.NoError(t, err)
		require.InEpsilon(t, want, f.Higher*f.MolarMass/1e6, 1e-9)
		// g/mol, from memory of tables of molar masses.
		require.InDelta(t, []float64{16.04, 30.07, 44.10, 58.12, 2.016, 28.01}[i], f.MolarMass, 0.006, shares)
	}
	require.InDelta(t, 44.096, propane().MolarMass, 0.002)
	biogas, err := NewGasFuel("biogas", GasShares{Methane: 0.6, CarbonDioxide: 0.39, Oxygen: 0.01})
	require.NoError(t, err)
	require.InDelta(t, 0.6*16.043+0.39*44.009+0.01*31.998, biogas.MolarMass, 1e-9)
}

// TestCombustionLimitsStandWhereTheySay tries each side of the edges.
func TestCombustionLimitsStandWhereTheySay(t *testing.T) {
	f := naturalGas()
	try := func(a CombustionAir) error { _, err := f.Stoichiometry(a); return err }
	require.NoError(t, try(CombustionAir{Oxygen: 0.1501, HumidityRatio: 0.0999}))
	require.Error(t, try(CombustionAir{Oxygen: 0.1499}))
	require.Error(t, try(CombustionAir{Oxygen: 0.2, HumidityRatio: 0.1001}))
	_, err := f.AirRatioFromO2(DefaultCombustionAir(), 0.2095*0.979)
	require.NoError(t, err)
	_, err = f.AirRatioFromO2(DefaultCombustionAir(), 0.2095*0.981)
	require.Error(t, err)
	require.InDelta(t, 0.21/0.001, AirRatioRule(0.209), 1e-9)
	require.True(t, math.IsNaN(AirRatioRule(0.2101)))
	require.True(t, math.IsNaN(siegertOf("natural gas").Siegert(180, 20, 0.2101)))
	require.False(t, math.IsNaN(siegertOf("natural gas").Siegert(180, 20, 0.2099)))
	nearly := Composition{Carbon: 0.9, Hydrogen: 0.09901}
	_, err = NewFuel("nearly", nearly, 40e6)
	require.NoError(t, err)
	nearly.Hydrogen = 0.0989
	_, err = NewFuel("not", nearly, 40e6)
	require.Error(t, err)
	// Sulphur's molar mass, by what it burns to.
	s := solid([]float64{0.5, 0, 0, 0.5})
	g, err := s.Burn(DefaultCombustionAir(), 1)
	require.NoError(t, err)
	require.InEpsilon(t, 0.5/32.06, g.SO2, 1e-9)
	k, err := f.SiegertFor(180, 20)
	require.NoError(t, err)
	for _, o2 := range []float64{0.03, 0.10} {
		ratio, err := f.AirRatioFromO2(DefaultCombustionAir(), o2)
		require.NoError(t, err)
		l, err := f.FlueLoss(FlueState{Drawn: DefaultCombustionAir(), AirRatio: ratio, AirTemperature: 20, FlueTemperature: 180, Pressure: 101325})
		require.NoError(t, err)
		require.InEpsilon(t, l.OfLower, k.Siegert(180, 20, o2), 1e-9)
	}
	// Condensate leaves at the flue's temperature: 4.18 kJ/(kg K).
	l, err := f.FlueLoss(FlueState{Drawn: DefaultCombustionAir(), AirRatio: 1.2, AirTemperature: 20, FlueTemperature: 40, Pressure: 101325})
	require.NoError(t, err)
	T1, T2 := 293.15, 313.15
	vapour := l.Gas.H2O - l.Condensed/18.015
	gases := 1000 * (l.Gas.CO2*gasCO2.heat(T1, T2) + l.Gas.N2*gasN2.heat(T1, T2) + l.Gas.O2*gasO2.heat(T1, T2) + vapour*gasH2O.heat(T1, T2))
	require.InEpsilon(t, l.Condensed*4180*20, l.Sensible-gases, 1e-9)
}

// TestHeatingFormulasByHand holds each coefficient alone.
func TestHeatingFormulasByHand(t *testing.T) {
	for _, r := range []struct {
		c           Composition
		boie, gross float64 // MJ/kg
	}{
		{Composition{Carbon: 1}, 35.16, 33.9}, {Composition{Hydrogen: 1}, 116.225, 143}, {Composition{Oxygen: 1}, -11.09, -143.0 / 8},
		{Composition{Nitrogen: 1}, 6.28, 0}, {Composition{Sulphur: 1}, 10.465, 9.1},
	} {
		require.InDelta(t, r.boie*1e6, Boie(r.c), 1e-6)
		gross, _ := Dulong(r.c)
		require.InDelta(t, r.gross*1e6, gross, 1e-6)
	}
	// The two rivals and a declared value of bituminous coal lie near each other.
	coal := hardCoal()
	require.InEpsilon(t, coal.Higher, Boie(coal.Composition), 0.03)
	gross, _ := Dulong(coal.Composition)
	require.InEpsilon(t, coal.Higher, gross, 0.03)
	// Nitrogen of the fuel leaves as N2.
	with, without := solid([]float64{0.5, 0.05, 0, 0, 0.28014}), solid([]float64{0.5, 0.05})
	g, err := with.Burn(DefaultCombustionAir(), 1.2)
	require.NoError(t, err)
	h, err := without.Burn(DefaultCombustionAir(), 1.2)
	require.NoError(t, err)
	require.InEpsilon(t, 0.01, g.N2-h.N2, 1e-9)
	require.InEpsilon(t, 0.11/14.44*0.7857*10150*2326, IncompleteCarbonLoss(GasAnalysis{CO: 0.0011, CO2: 0.1433}, 0.7857), 1e-12)
	require.False(t, math.IsNaN(with.UnburntLoss(g, 0.05)))
	require.True(t, math.IsNaN(with.UnburntLoss(g, 0.0501)))
}

// TestFuelSlackAndHigherValue: shares may miss 1 by a thousandth, and a higher
// value lies between the lower one and 1.6 times that.
func TestFuelSlackAndHigherValue(t *testing.T) {
	for _, r := range []struct {
		carbon float64
		ok     bool
	}{{0.899001, true}, {0.898995, false}, {0.900999, true}, {0.901005, false}} {
		_, err := NewFuel("f", Composition{Carbon: r.carbon, Hydrogen: 0.1}, 35e6)
		require.Equal(t, r.ok, err == nil, "%g", r.carbon)
	}
	f := LightOil()
	for _, r := range []struct {
		ratio float64
		ok    bool
	}{{1, true}, {0.999, false}, {1.599, true}, {1.601, false}} {
		f.Higher = r.ratio * f.Lower
		_, err := f.Stoichiometry(DefaultCombustionAir())
		require.Equal(t, r.ok, err == nil, "%g", r.ratio)
	}
}
