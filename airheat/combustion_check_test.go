package airheat

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// solid is a fuel by its ultimate analysis C, H, O, S, N; the rest is ash.
func solid(in []float64) Fuel {
	var v [5]float64
	copy(v[:], in)
	c := Composition{Carbon: v[0], Hydrogen: v[1], Oxygen: v[2], Sulphur: v[3], Nitrogen: v[4]}
	c.Ash = math.Max(0, 1-v[0]-v[1]-v[2]-v[3]-v[4])
	return Fuel{Name: "analysis", Composition: c, Lower: 25e6, Higher: 26e6}
}

// inOldWeights is solid with as many atoms as sources count that take the atomic
// weights 12, 1, 16, 32 and 14, and the factor by which that scales the fuel:
// what a source prints per kg of fuel is that factor times what the fuel gives.
func inOldWeights(in []float64) (f Fuel, factor float64) {
	var v [5]float64
	copy(v[:], in)
	v[0] *= molarC / 12
	v[1] *= molarH2 / 2
	v[2] *= molarO2 / 32
	v[3] *= molarS / 32
	v[4] *= molarN2 / 28
	factor = math.Max(1, v[0]+v[1]+v[2]+v[3]+v[4])
	for i := range v {
		v[i] /= factor
	}
	return solid(v[:]), factor
}

// The source's own 34.56 (C/3 + H - O/8) in the old weights and 23.15 % of
// oxygen by mass, where that is needed to meet its print.
func TestLeastAirOfSolidsAndOil(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "BWSteam11/air/coke", In: []float64{0.94, 0, 0}, Printed: "10.8"},
		{Where: "BWSteam11/air/anthracite", In: []float64{0.915, 0.035, 0.026}, Printed: "11.7", Suspect: "rounded up: the source's own formula gives 11.64", Right: "11.6"},
		{Where: "BWSteam11/air/bituminous", In: []float64{0.87, 0.05, 0.04}, Printed: "11.6"},
		{Where: "BWSteam11/air/lignite", In: []float64{0.7, 0.05, 0.2}, Printed: "8.9"},
		{Where: "BWSteam11/air/wood", In: []float64{0.5, 0.06, 0.435}, Printed: "6.0"},
		{Where: "BWSteam11/air/oil", In: []float64{0.85, 0.13, 0.01}, Printed: "14.3", Suspect: "rounded up: the source's own formula gives 14.24", Right: "14.2"},
	}, func(in ...float64) float64 {
		f, factor := inOldWeights(in)
		s, err := f.Stoichiometry(DefaultCombustionAir())
		require.NoError(t, err)
		return factor * s.Oxygen * 32 / 0.2315
	})
}

func TestFlueGasByAnalysis(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "BWSteam11/p262/dry-gas", In: []float64{0.1433, 0.0454, 0.0011, 0.8102, 0.7857}, Printed: "13.7", Suspect: "the formula printed on the same page gives 13.82", Right: "13.8"},
	}, func(in ...float64) float64 {
		return DryGasFromAnalysis(GasAnalysis{CO2: in[0], O2: in[1], CO: in[2], N2: in[3]}, in[4])
	})
	// By hand with much air and little oxide: (11*0.05 + 8*0.15 + 7*0.80)/(3*0.05)*0.8 = 39.2.
	require.InDelta(t, 39.2, DryGasFromAnalysis(GasAnalysis{CO2: 0.05, O2: 0.15, N2: 0.80}, 0.8), 1e-12)
	check.Run(t, []check.Row{
		{Where: "BWSteam11/p263/carbon-monoxide-Btu-lb", In: []float64{0.11, 14.33, 0.7857}, Printed: "61"},
	}, func(in ...float64) float64 {
		return IncompleteCarbonLoss(GasAnalysis{CO: in[0] / 100, CO2: in[1] / 100}, in[2]) / 2326
	})
}

// 13.7 lb of gas a lb of fuel, 0.24 Btu/(lb °F), flue 480 °F, air 81 °F.
func TestDryGasLoss(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "BWSteam11/p263/dry-gas-loss-Btu-lb", In: []float64{13.7, 0.24, 480, 81}, Printed: "1311", Tol: 1, Why: "1311.9, printed without rounding up"},
	}, func(in ...float64) float64 {
		celsius := func(f float64) float64 { return (f - 32) / 1.8 }
		return DryGasLoss(in[0], in[1]*4186.8, celsius(in[2])-celsius(in[3])) / 2326
	})
}

func joelGas(t *testing.T) Fuel {
	f, err := NewGasFuel("gas of Ex. 8.12", GasShares{Methane: 0.94, Ethane: 0.035, Propane: 0.007, Nitrogen: 0.018})
	require.NoError(t, err)
	return f
}

func TestNaturalGasByVolume(t *testing.T) {
	f := joelGas(t)
	s, err := f.Stoichiometry(CombustionAir{Oxygen: 0.21})
	require.NoError(t, err)
	what := []float64{s.DryAir * f.MolarMass, 100 * s.CO2 / s.WetFlue, 100 * s.H2O / s.WetFlue}
	check.Run(t, []check.Row{
		{Where: "Joel96.Ex8.12/air-volume", In: []float64{0}, Printed: "9.702"},
		{Where: "Joel96.Ex8.12/wet-CO2", In: []float64{1}, Printed: "9.6"},
		{Where: "Joel96.Ex8.12/wet-H2O", In: []float64{2}, Printed: "18.8"},
	}, func(in ...float64) float64 { return what[int(in[0])] })
}

// airByMass is air of the given mass fraction of oxygen in the old weights.
func airByMass(oxygen float64) CombustionAir {
	o, n := oxygen/32, (1-oxygen)/28
	return CombustionAir{Oxygen: o / (o + n)}
}

func TestOilWithExcessAir(t *testing.T) {
	f, _ := inOldWeights([]float64{0.86, 0.14})
	g, err := f.Burn(airByMass(0.23), 1.2)
	require.NoError(t, err)
	what := []float64{100 * g.CO2 / g.Wet, 100 * g.H2O / g.Wet}
	check.Run(t, []check.Row{
		{Where: "Joel96.Ex8.10/wet-CO2", In: []float64{0}, Printed: "10.98"},
		{Where: "Joel96.Ex8.10/wet-H2O", In: []float64{1}, Printed: "10.72"},
	}, func(in ...float64) float64 { return what[int(in[0])] })
}

func TestCoalOfMurphyAndMcKay(t *testing.T) {
	air := airByMass(0.232)
	coal, factor := inOldWeights([]float64{0.74, 0.05, 0.05, 0.01, 0.001})
	s, err := coal.Stoichiometry(air)
	require.NoError(t, err)
	g, err := coal.Burn(CombustionAir{Oxygen: 0.21}, 1.5) // that example takes 21 % by volume
	require.NoError(t, err)
	poor := solid([]float64{0.66, 0.042, 0.076, 0.015, 0.012})
	p, err := poor.Stoichiometry(DefaultCombustionAir())
	require.NoError(t, err)
	dulong := Composition{Carbon: 0.86, Hydrogen: 0.05, Oxygen: 0.08, Sulphur: 0.001}
	gross, net := Dulong(dulong)
	boiler := 4100 * (763 + 0.95*2013 - 335) * 1000.0 / 3600
	mass := factor * s.Oxygen * 32 / 0.232
	what := []float64{mass, mass / 29 * molarVolume, 100 * g.DryCO2, gross / 1e6, net / 1e6, 100 * p.CO2Max, 100 * boiler / (238.0 / 3600 * 48e6)}
	check.Run(t, []check.Row{
		{Where: "MurMck03.Ex6.5/air-mass", In: []float64{0}, Printed: "10.06"},
		{Where: "MurMck03.Ex6.5/air-volume", In: []float64{1}, Printed: "7.77"},
		{Where: "MurMck03.Ex6.7/dry-CO2", In: []float64{2}, Printed: "12.09"},
		{Where: "MurMck03.Ex6.8/gross", In: []float64{3}, Printed: "34.8831"},
		{Where: "MurMck03.Ex6.8/net", In: []float64{4}, Printed: "34.0031"},
		{Where: "MurMck03.Ex6.12/CO2max", In: []float64{5}, Printed: "20.64", Suspect: "moles of oxygen multiplied by the mass ratio 76.8/23.2; the excess air then is 18 %, not 30 %", Right: "18.6"},
		{Where: "MurMck03.Ex6.9/net-efficiency", In: []float64{6}, Printed: "83.99"},
	}, func(in ...float64) float64 { return what[int(in[0])] })
	// The same boiler on the gross value: the basis must be stated.
	require.InDelta(t, 83.99*48/53.5, 100*boiler/(238.0/3600*53.5e6), 0.005)
}

func TestFlueHeatOfCoalWithAsh(t *testing.T) {
	f, _ := inOldWeights([]float64{0.78, 0.06, 0.09})
	// Air of 23 % of oxygen by mass, half as much again as needed.
	s, err := f.Stoichiometry(airByMass(0.23))
	require.NoError(t, err)
	dry := 1.5*s.Oxygen*32/0.23 + 1 - 0.07 - s.H2O*18
	check.Run(t, []check.Row{
		{Where: "Joel96.Ex8.11/dry-gas-kJ", Printed: "5000", Suspect: "the source leaves the 7 % of ash in the mass of gas", Right: "4979"},
	}, func(...float64) float64 { return DryGasLoss(dry, 1.006, 320-20) })
}

func TestExcessAirOfNaturalGas(t *testing.T) {
	const sum = 0.9985 // of the tool's shares
	f, err := NewGasFuel("gas", GasShares{Methane: 0.941 / sum, Ethane: 0.024 / sum, Nitrogen: 0.0141 / sum, Hydrogen: 0.0003 / sum, Propane: 0.0049 / sum, Butane: 0.0029 / sum, CarbonMonoxide: 0.0042 / sum, CarbonDioxide: 0.0071 / sum})
	require.NoError(t, err)
	const loose = "the tool reckons oxygen by a short polynomial, which its own test allows 3 %"
	check.Run(t, []check.Row{
		{Where: "ORNL process-heating tests, GasFlueGasMaterial/O2 3 %", In: []float64{0.03}, Printed: "15.52234", Suspect: loose, Right: "15.02"},
		{Where: "ORNL process-heating tests, GasFlueGasMaterial/O2 7 %", In: []float64{0.07}, Printed: "45.1975", Suspect: loose, Right: "45.11"},
	}, func(in ...float64) float64 {
		r, err := f.AirRatioFromO2(DefaultCombustionAir(), in[0])
		require.NoError(t, err)
		return 100 * (r - 1)
	})
}

func TestCO2MaxFromMemory(t *testing.T) {
	gas, propane, oil, wood := naturalGas(), propane(), solid([]float64{0.862, 0.132}), solid([]float64{0.5, 0.06, 0.435})
	fuels := []Fuel{gas, propane, oil, wood}
	const why = "quoted in practice as a band; from memory"
	check.Run(t, []check.Row{
		{Where: "from memory/CO2max/methane", In: []float64{0}, Printed: "11.7"},
		{Where: "from memory/CO2max/propane", In: []float64{1}, Printed: "13.8", Tol: 0.1, Why: why},
		{Where: "from memory/CO2max/light oil", In: []float64{2}, Printed: "15.4", Tol: 0.15, Why: why},
		{Where: "from memory/CO2max/wood", In: []float64{3}, Printed: "20.3", Tol: 0.2, Why: why},
	}, func(in ...float64) float64 {
		f := fuels[int(in[0])]
		s, err := f.Stoichiometry(DefaultCombustionAir())
		require.NoError(t, err)
		return 100 * s.CO2Max
	})
}

// Carbon dioxide by kilogram and by kilowatt-hour of the lower heating value, computed
// apart from the formulas of pure gases and of kerosene CH1.95 at 43.1 MJ/kg.
func TestCO2ByStoichiometry(t *testing.T) {
	gas := func(g GasShares) Fuel {
		f, err := NewGasFuel("gas", g)
		require.NoError(t, err)
		return f
	}
	const mass = 12.011 + 1.95*1.008
	kerosene, err := NewFuel("kerosene", Composition{Carbon: 12.011 / mass, Hydrogen: 1.95 * 1.008 / mass}, 43.1e6)
	require.NoError(t, err)
	fuels := []Fuel{gas(GasShares{Methane: 1}), gas(GasShares{Propane: 1}), gas(GasShares{Butane: 1}), kerosene}
	burnt := func(i float64) (Stoichiometry, float64) {
		f := fuels[int(i)]
		s, err := f.Stoichiometry(DefaultCombustionAir())
		require.NoError(t, err)
		return s, f.Lower
	}
	check.Run(t, []check.Row{
		{Where: "carbon dioxide computed apart/methane, kg/kg", In: []float64{0}, Printed: "2.743221", Tol: 3e-4, Why: "atomic weights of five digits here"},
		{Where: "carbon dioxide computed apart/propane, kg/kg", In: []float64{1}, Printed: "2.994047", Tol: 3e-4, Why: "the same"},
		{Where: "carbon dioxide computed apart/butane, kg/kg", In: []float64{2}, Printed: "3.028871", Tol: 3e-4, Why: "the same"},
		{Where: "carbon dioxide computed apart/kerosene, kg/kg", In: []float64{3}, Printed: "3.148799", Tol: 3e-4, Why: "the same"},
	}, func(in ...float64) float64 {
		s, _ := burnt(in[0])
		return s.CO2 * molarCO2
	})
	check.Run(t, []check.Row{
		{Where: "carbon dioxide computed apart/methane, kg/kWh", In: []float64{0}, Printed: "0.1973935", Tol: 2e-4, Why: "50.03 MJ/kg there"},
		{Where: "carbon dioxide computed apart/propane, kg/kWh", In: []float64{1}, Printed: "0.2325474", Tol: 2e-4, Why: "46.35 MJ/kg there"},
		{Where: "carbon dioxide computed apart/butane, kg/kWh", In: []float64{2}, Printed: "0.2383374", Tol: 2e-4, Why: "45.75 MJ/kg there"},
		{Where: "carbon dioxide computed apart/kerosene, kg/kWh", In: []float64{3}, Printed: "0.2630087", Tol: 3e-5, Why: "atomic weights of five digits here"},
	}, func(in ...float64) float64 {
		s, lower := burnt(in[0])
		return s.CO2 * molarCO2 / lower * 3.6e6
	})
	// A greenhouse model's table for a heater on natural gas, which is nearly methane.
	s, lower := burnt(0)
	check.Run(t, []check.Row{
		{Where: "Vanthoor11 table 1/carbon dioxide of a direct air heater, mg/J", In: []float64{s.CO2 * molarCO2 / lower * 1e6}, Printed: "0.057", Tol: 0.0025, Why: "pure methane here"},
		{Where: "Vanthoor11 table 1/vapour of a direct air heater, kg/J", In: []float64{s.H2O * molarH2O / lower}, Printed: "4.43e-8", Tol: 0.07e-8, Why: "pure methane here"},
	}, func(in ...float64) float64 { return in[0] })
}

func TestMoistWoodAndPellets(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "COFORD wood energy/NCV at 45 %", In: []float64{19.2e6, 0.45}, Printed: "9.42", Suspect: "the page's own 19.2 - 0.2164 M gives 9.462", Right: "9.46"},
	}, func(in ...float64) float64 { return moistHeating(in[0], in[1]) / 1e6 })
	// Pellets of class A1 hold at least 16.5 MJ/kg, printed as 4.6 kWh/kg.
	p := pellets()
	require.GreaterOrEqual(t, p.Lower, 16.5e6)
	check.Run(t, []check.Row{
		{Where: "ISO 17225-2 A1 as quoted by dealers/kWh per kg", In: []float64{16.5e6}, Printed: "4.6"},
	}, func(in ...float64) float64 {
		f, err := NewFuel("pellets of class A1", p.Composition, in[0])
		require.NoError(t, err)
		return f.Lower / 3.6e6
	})
}

func TestGasesInTheHouse(t *testing.T) {
	what := []float64{
		0.0024 / (10.0 / 10000) / 5400 * 3600,
		1e4 * MixedGas{0, 0.0024, 5400.0 / 3600, 5400}.ShareAfter(20*time.Minute),
		PurgeTime(100, 1).Hours(),
	}
	require.InDelta(t, 10.0/10000, steadyShare(0.0024, what[0]*5400/3600), 1e-15)
	check.Run(t, []check.Row{
		{Where: "Douglas, Fluid Mechanics, Ex25.11A", In: []float64{0}, Printed: "1.6"},
		{Where: "Douglas, Fluid Mechanics, Ex25.11C", In: []float64{1}, Printed: "4.535"},
		{Where: "Douglas, Fluid Mechanics, Ex25.11D", In: []float64{2}, Printed: "4.61"},
	}, func(in ...float64) float64 { return what[int(in[0])] })
}

func TestSiegertForm(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "from memory/BimschV10/oil 180-20 °C 5 %", In: []float64{0}, Printed: "7.92"},
		{Where: "from memory/BimschV10/gas 180-20 °C 5 %", In: []float64{1}, Printed: "7.94"},
		{Where: "from memory/BimschV10/propane 180-20 °C 5 %", In: []float64{2}, Printed: "7.58"},
	}, func(in ...float64) float64 {
		return 100 * []SiegertConstants{siegertOf("light oil"), siegertOf("natural gas"), siegertOf("propane")}[int(in[0])].Siegert(180, 20, 0.05)
	})
}
