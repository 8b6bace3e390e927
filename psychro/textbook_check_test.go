package psychro_test

import (
	"testing"

	"cloche.example/internal/check"
	"cloche.example/psychro"
)

// Worked examples of the handbook and of textbooks, with the ideal form that
// they use; where a textbook slipped, the row says how.

func TestHandbookExamples(t *testing.T) {
	ideal, p := psychro.IdealGas, 101325.0
	// [HoF17] ch. 1 example 1: read off the chart.
	s := must(t)(ideal.FromWetBulb(40, 20, p))
	const chart = "read off a chart"
	check.Run(t, []check.Row{{Where: "HoF17.ch1.Ex1/W", Printed: "0.0065", Tol: 1e-4, Why: chart}}, func(...float64) float64 { return s.HumidityRatio() })
	check.Run(t, []check.Row{{Where: "HoF17.ch1.Ex1/tdp", Printed: "7", Tol: 0.5, Why: chart}}, func(...float64) float64 { return s.DewPoint() })
	check.Run(t, []check.Row{{Where: "HoF17.ch1.Ex1/RH", Printed: "0.14"}}, func(...float64) float64 { return s.RelativeHumidity() })
	check.Run(t, []check.Row{{Where: "HoF17.ch1.Ex1/h", Printed: "56.7", Tol: 0.1, Why: chart}}, func(...float64) float64 { return s.Enthalpy() / 1000 })
	check.Run(t, []check.Row{{Where: "HoF17.ch1.Ex1/v", Printed: "0.896", Tol: 0.002, Why: chart}}, func(...float64) float64 { return s.SpecificVolume() })
	// Equations 30 and 26 as a public test suite evaluates them.
	check.Run(t, []check.Row{{Where: "HoF17.ch1.eq30", Printed: "81316"}}, func(...float64) float64 {
		return must(t)(ideal.FromHumidityRatio(30, 0.02, p)).Enthalpy()
	})
	check.Run(t, []check.Row{{Where: "HoF17.ch1.eq11", Printed: "1.08411986", Tol: 2e-6, Why: "the suite's gas constant has another last place"}}, func(...float64) float64 {
		return must(t)(ideal.FromHumidityRatio(30, 0.02, 95461)).Density()
	})
	check.Run(t, []check.Row{{Where: "HoF17.ch1.eq35", Printed: "0.001204", Tol: 1e-6, Why: "the suite allows 0.03 %"}}, func(...float64) float64 {
		return must(t)(ideal.FromWetBulb(-1, -5, 95461)).HumidityRatio()
	})
}

func TestTextbookExamples(t *testing.T) {
	ideal := psychro.IdealGas
	// P. K. Nag, Basic and Applied Thermodynamics, examples 15.1, 15.2, 15.5. Not run: the
	// heat of a coil and of mixed air from enthalpies that the book reads off a chart.
	s := must(t)(ideal.FromWetBulb(32, 26, 101320))
	check.Run(t, []check.Row{{Where: "Nag.Ex15.1/W", Printed: "0.018624", Right: "0.0188",
		Suspect: "the saturation pressure at 26 °C is typed 0.033363 bar for 0.03363"}}, func(...float64) float64 { return s.HumidityRatio() })
	check.Run(t, []check.Row{{Where: "Nag.Ex15.1/RH", Printed: "61.366", Right: "62.5",
		Suspect: "inherits that, and takes 0.048 bar for 0.04759 at 32 °C"}}, func(...float64) float64 { return 100 * s.RelativeHumidity() })
	check.Run(t, []check.Row{{Where: "Nag.Ex15.1/tdp", Printed: "24.1", Tol: 0.2, Why: "interpolated in a table"}}, func(...float64) float64 { return s.DewPoint() })
	check.Run(t, []check.Row{{Where: "Nag.Ex15.1/h", Printed: "80.113", Tol: 0.4, Why: "inherits the error of the humidity ratio"}}, func(...float64) float64 { return s.Enthalpy() / 1000 })
	check.Run(t, []check.Row{{Where: "Nag.Ex15.2/W", Printed: "0.010722", Tol: 1e-5, Why: "steam tables"}}, func(...float64) float64 {
		return must(t)(ideal.FromWetBulb(30, 20, 100e3)).HumidityRatio()
	})
	check.Run(t, []check.Row{{Where: "Nag.Ex15.2/RH", Printed: "39.911", Tol: 0.1, Why: "steam tables"}}, func(...float64) float64 {
		return 100 * must(t)(ideal.FromWetBulb(30, 20, 100e3)).RelativeHumidity()
	})
	check.Run(t, []check.Row{{Where: "Nag.Ex15.5/W", Printed: "0.0144"}}, func(...float64) float64 {
		m, err := psychro.Mix(
			psychro.Stream{State: must(t)(ideal.FromHumidityRatio(30, 0.0187, 101325)), DryAir: 2},
			psychro.Stream{State: must(t)(ideal.FromHumidityRatio(35, 0.0058, 101325)), DryAir: 1})
		if err != nil {
			t.Fatal(err)
		}
		return m.Air.State.HumidityRatio()
	})
	// R. Joel, Basic Engineering Thermodynamics, examples 19.2 and 19.3.
	check.Run(t, []check.Row{
		{Where: "Joel.Ex19.2/W", In: []float64{20, 0.65, 100e3}, Printed: "0.0096"},
		{Where: "Joel.Ex19.3/W", In: []float64{25, 0.60, 101.3e3}, Printed: "0.0119"},
	}, func(in ...float64) float64 {
		return must(t)(ideal.FromRelativeHumidity(in[0], in[1], in[2])).HumidityRatio()
	})
	check.Run(t, []check.Row{{Where: "Joel.Ex19.3/tdp", Printed: "10.08", Right: "16.7",
		Suspect: "the companion's notebook scales the pressure wrongly; further on it uses 16.69 itself"}}, func(...float64) float64 {
		return must(t)(ideal.FromRelativeHumidity(25, 0.60, 101.3e3)).DewPoint()
	})
	// Two changes an hour of 56,000 m³ at 20 °C and 60 %, from saturated air of 8 °C:
	// volume and water of the air that enters, and the heat of the dry air.
	room, outside := must(t)(ideal.FromRelativeHumidity(20, 0.60, 101325)), must(t)(ideal.FromRelativeHumidity(8, 1, 101325))
	dry := 2 * 56000 / room.SpecificVolume() // kg/h
	check.Run(t, []check.Row{{Where: "Joel.Ex19.4/volume", Printed: "107057", Tol: 200, Why: "steam tables"}}, func(...float64) float64 { return dry * outside.SpecificVolume() })
	check.Run(t, []check.Row{{Where: "Joel.Ex19.4/water", Printed: "276.7", Tol: 3, Why: "steam tables"}}, func(...float64) float64 {
		return dry * (room.HumidityRatio() - outside.HumidityRatio())
	})
	check.Run(t, []check.Row{{Where: "Joel.Ex19.4/heat of the dry air", Printed: "458.226", Right: "1.61e3",
		Suspect: "the companion's notebook multiplies by the gas constant 0.287 for the heat capacity"}}, func(...float64) float64 { return dry * 1006 * 12 / 1e6 })
	// W. R. Murphy, G. McKay, Energy Management, example 9.6.
	check.Run(t, []check.Row{{Where: "MurphyMcKay.Ex9.6/tdp", Printed: "10.5", Tol: 0.5, Why: "read off a chart"}}, func(...float64) float64 {
		return must(t)(ideal.FromRelativeHumidity(21, 0.5, 101325)).DewPoint()
	})
	// G. F. Hundy et al., Refrigeration and Air-Conditioning, example 22.1: a
	// pad of 75 % from 37 °C with a wet bulb of 21.5 °C.
	check.Run(t, []check.Row{{Where: "Hundy.Ex22.1/t", Printed: "25.4"}}, func(...float64) float64 {
		pad, err := psychro.Stream{State: must(t)(ideal.FromWetBulb(37, 21.5, 101325)), DryAir: 1}.Pad(0.75)
		if err != nil {
			t.Fatal(err)
		}
		return pad.Out.State.Temperature()
	})
	// A grower's magazine: air of 80 % at 68 °F, warmed to 79 °F.
	check.Run(t, []check.Row{{Where: "gpnmag.com/warming", Printed: "56", Tol: 1, Why: "rounded between °F and °C"}}, func(...float64) float64 {
		in := must(t)(psychro.FromRelativeHumidity(20, 0.8, 101325))
		return 100 * must(t)(psychro.FromHumidityRatio(26.11, in.HumidityRatio(), 101325)).RelativeHumidity()
	})
}

// A wet floor of 18 °C below air as warm and 80 % humid, with 1.7 W/(m² K): a
// greenhouse model's short form, 6.4e-9 times coefficient and deficit, g/(m² h).
func TestWetFloorOfAGreenhouseModel(t *testing.T) {
	check.Run(t, []check.Row{{Where: "Vanthoor11 eq. 42 computed apart/wet floor", Printed: "16.17638", Tol: 1.5, Why: "the short form has vapour pass nearly as heat does, without the tenth by which it is quicker"}}, func(...float64) float64 {
		v, err := must(t)(psychro.FromRelativeHumidity(18, 0.8, 101325)).VapourFlux(18, 1.7)
		if err != nil {
			t.Fatal(err)
		}
		return -3.6e6 * v.Flux
	})
}
