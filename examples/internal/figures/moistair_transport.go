package figures

import (
	"fmt"

	"cloche.example/psychro"
)

func transport() Figure {
	return Figure{
		Name: "transport", Title: "What carries heat, momentum and vapour", Subject: "moist air", Package: "psychro", Example: "Example_transport",
		Question: "How do viscosity, conductivity and diffusivity of air change with its temperature and its vapour?",
		Given: []Given{
			{"t", "temperature for the steps", "°C", 15, -40, 80},
			{"p", "pressure", "Pa", 101325, 70e3, 110e3},
		},
		Assumes: []string{"Dry air by the standard atmosphere's formulas; saturated air by Wilke's rule of mixtures."},
		Change:  []string{"Go to 60 °C: vapour makes saturated air thinner than dry air, and the Lewis factor gives way at last."},
		Code:    "solveTransport",
		Solve:   solveTransport,
	}
}

func solveTransport(v []float64) (r Result, err error) {
	t0, p := v[0], v[1]
	r.Lines = []string{"   °C  viscosity Pa s  saturated   W/(m K)  saturated  vapour m²/s  Lewis factor"}
	for _, t := range []float64{-10, 0, 15, 30, 60} {
		s, err := psychro.FromRelativeHumidity(t, 1, p)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%5.0f  %14.4g  %9.4g  %8.5f  %9.5f  %11.4g  %12.3f", t, psychro.Viscosity(t), s.Viscosity(),
			psychro.Conductivity(t), s.Conductivity(), psychro.VapourDiffusivity(t, p), s.LewisFactor()))
	}
	T := t0 + 273.15
	r.Steps = []Step{
		{Says: "Viscosity of dry air.", Formula: "μ = 1.458e-6 T^1.5/(T + 110.4)", Source: "UsStd76 eq. 51", Values: numbers{"T": T}, Value: psychro.Viscosity(t0), Unit: "Pa s"},
		{Says: "Its conductivity.", Formula: "k = 2.64638e-3 T^1.5/(T + 245.4·10^(-12/T))", Source: "UsStd76 eq. 53", Values: numbers{"T": T}, Value: psychro.Conductivity(t0), Unit: "W/(m K)"},
		{Says: "Diffusivity of vapour in it.", Formula: "D = 2.178e-5 (101325/p) (T/273.15)^1.81", Source: "Massman98", Values: numbers{"T": T, "p": p}, Value: psychro.VapourDiffusivity(t0, p), Unit: "m²/s"},
	}
	saturated := func(f func(psychro.State) float64) func(float64) float64 {
		return func(t float64) float64 { s, _ := psychro.FromRelativeHumidity(t, 1, p); return f(s) }
	}
	r.Picture, err = charts("Viscosity and Lewis factor", "Viscosity of dry air rises steadily, that of saturated air bends down from about 40 °C; the Lewis factor stays near 0.9.", "Vapour is the lighter and thinner gas: above 40 °C it shows.",
		chart{title: "viscosity", x: "temperature, °C", y: "viscosity, µPa s", high: 190, curves: []curve{
			{"dry", along(-20, 70, 60, func(t float64) float64 { return 1e6 * psychro.Viscosity(t) })},
			{"saturated", along(-20, 70, 60, saturated(func(s psychro.State) float64 { return 1e6 * s.Viscosity() }))}}},
		chart{title: "Lewis factor", x: "temperature, °C", y: "Lewis factor", high: 150, curves: []curve{{"", along(-20, 70, 60, saturated(psychro.State.LewisFactor))}}})
	return r, err
}
