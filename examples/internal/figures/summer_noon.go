package figures

import (
	"fmt"
	"math"

	"cloche.example/examples/internal/page"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func summerNoon() Figure {
	return Figure{
		Name: "noon", Title: "A house at summer noon", Subject: "summer", Package: "ventilation", Example: "Example_summerNoon",
		Question: "Sun on a house with a crop and open vents: how warm and how humid does it become, and where does the heat go?",
		Sketch:   "Sun passes the cover to leaves and floor. The leaves turn most of theirs into vapour, and the air that the warmth itself drives carries both out.",
		Given: []Given{
			{"t_o", "outside", "°C", 27, 5, 40},
			{"φ_o", "outside humidity", "fraction", 0.5, 0.1, 0.95},
			{"I", "sun", "W/m²", 820, 50, 1100},
			{"U", "wind", "m/s", 1.5, 0, 10},
			{"L", "leaf area over floor area", "", 2.5, 0.2, 8},
			{"u", "vents open", "fraction", 1, 0.05, 1},
		},
		Assumes: []string{"94.7 m² and 275 m³, a single film, side vents of 1.9 m² to windward and lee and 2.8 m² at the ridge, bare moist soil of 17 °C below, a sky of 11 °C, 97,300 Pa. The hour is taken as steady; leaves are one layer; the tomato's stomata are from memory."},
		Change:  []string{"Take the leaves away, to 0.2: the air hardly changes, but the bare moist floor, now in the sun, passes 50 °C.", "Half the vents: the flow falls by less than half, for the house grows warmer and pulls harder."},
		Code:    "solveSummerNoon",
		Solve:   solveSummerNoon,
	}
}

func solveSummerNoon(v []float64) (r Result, err error) {
	air, err := psychro.FromRelativeHumidity(v[0], v[1], 97300)
	if err != nil {
		return r, err
	}
	vents, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "south side", Height: 0.7, Area: 1.9, Discharge: 0.62, PressureCoefficient: 0.25},
		{Name: "north side", Height: 0.7, Area: 1.9, Discharge: 0.62, PressureCoefficient: -0.25},
		{Name: "ridge", Height: 2.9, Area: 2.8, Discharge: 0.60, PressureCoefficient: -0.40},
	}, nil, nil)
	if err != nil {
		return r, err
	}
	house := ventilation.ClimateHouse{
		FloorArea: 94.7, Volume: 275,
		Cover: ventilation.DefaultSimpleCover(186),
		Floor: ventilation.DefaultFloorSurface(),
		Crop:  ventilation.DefaultCanopy(v[4]),
		Air:   vents,
	}
	c, err := ventilation.NewClimate(house)
	if err != nil {
		return r, err
	}
	s, err := c.Solve(ventilation.Weather{Air: air, Sun: v[2], Wind: v[3], Sky: 11, Ground: 17}, ventilation.Setting{Opening: v[5]})
	if err != nil {
		return r, err
	}
	row := func(label string, v float64, unit string) {
		digits := 2
		if unit == "W" || unit == "Pa" || unit == "s/m" {
			digits = 0
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%-36s %8.*f %s", label, digits, v, unit))
	}
	title := func(words string) { r.Lines = append(r.Lines, words) }
	title("Sun")
	row(fmt.Sprintf("tau I Af = 0.65 x %g x 94.7", v[2]), s.SunCanopy+s.SunFloor+s.SunReflected, "W")
	row("leaves, (1-0.2)(1-exp(-0.48 LAI))", s.SunCanopy, "W")
	row("floor, 0.8 exp(-0.48 LAI)", s.SunFloor, "W")
	row("goes out again", s.SunReflected, "W")
	title("State")
	row("inside air", s.Temperature, "°C")
	row("relative humidity", s.RelativeHumidity, "fraction")
	row("deficit", s.Deficit, "Pa")
	row("leaves", s.CanopyTemperature, "°C")
	row("floor", s.FloorTemperature, "°C")
	row("inner surface of the cover", s.CoverTemperature, "°C")
	title("Air")
	row("flow of dry air", s.DryAir, "kg/s")
	row("air changes", s.AirChanges, "1/h")
	row("neutral level", s.Neutral, "m")
	title("Leaves: sun = sensible + latent + long-wave")
	row("boundary layer, on 2 LAI", s.Boundary, "s/m")
	row("stomata, on 2 LAI", s.Stomata, "s/m")
	row("sensible", s.CanopyHeat, "W")
	row("latent", s.CanopyLatent, "W")
	row("long-wave to cover and floor", s.CanopyUp+s.CanopyDown, "W")
	title("Where the heat goes")
	row("air, sensible: m c (T - To)", s.AirSensible, "W")
	row("air, latent: m (W - Wo) hg(T)", s.AirLatent, "W")
	row("through the cover", s.CoverLoss, "W")
	row("into the ground", s.Ground, "W")
	row("less: liquid water in, from 0 °C", -s.Liquid, "W")
	title("Water")
	row("transpired", 3600*s.Transpired/house.FloorArea, "kg/(m² h)")
	row("from the soil", 3600*s.FloorEvaporated/house.FloorArea, "kg/(m² h)")
	title(fmt.Sprint("heat in ", math.Round(s.HeatIn), " W, heat out ", math.Round(s.HeatOut), " W; closed to 1e-9: ",
		math.Abs(s.HeatResidual) < 1e-9*s.HeatIn && math.Abs(s.WaterResidual) < 1e-9*s.WaterIn))
	r.Steps = noonSteps(v, air, s)
	r.Picture = noonPicture(s)
	return r, nil
}

// noonSteps are the steps of the way to the state s.
func noonSteps(v []float64, air psychro.State, s ventilation.ClimateState) []Step {
	return []Step{
		{Says: "Sun that the leaves keep.", Formula: "S_l = 0.65 I · 94.7 (1 - 0.2) (1 - exp(-0.48 L))", Source: "MonsiSaeki53", Values: numbers{"I": v[2], "L": v[4]}, Value: s.SunCanopy, Unit: "W"},
		{Says: "Sun that the floor keeps.", Formula: "S_f = 0.65 I · 94.7 · 0.8 exp(-0.48 L)", Values: numbers{"I": v[2], "L": v[4]}, Value: s.SunFloor, Unit: "W"},
		{Says: "All balances close together: air, leaves, floor, cover and water. Inside air.", Symbol: "t", Value: s.Temperature, Unit: "°C"},
		{Says: "Vapour out of the leaves, through stomata and the air at them.", Formula: "E = 2 L · 94.7 (e_l - e)/(461.52 (t + 273.15) (r_a + r_s))", Source: "Stanghellini87, from memory", Values: numbers{"L": v[4], "e_l": s.LeafDeficit + s.VapourPressure, "e": s.VapourPressure, "t": s.Temperature, "r_a": s.Boundary, "r_s": s.Stomata}, Value: s.Transpired, Unit: "kg/s", Within: 1e-4, Why: "the gas constant of vapour in five digits"},
		{Says: "Air that brings the warmth out.", Formula: "Q_s = m (1006 + 1860 W_o) (t - t_o)", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"m": s.DryAir, "W_o": air.HumidityRatio(), "t": s.Temperature, "t_o": v[0]}, Value: s.AirSensible, Unit: "W"},
		{Says: "And the vapour.", Formula: "Q_l = m (W - W_o) (2501000 + 1860 t)", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"m": s.DryAir, "W": s.HumidityRatio, "W_o": air.HumidityRatio(), "t": s.Temperature}, Value: s.AirLatent, Unit: "W", Within: 1e-6, Why: "the balance of water closes to its own tolerance"},
		{Says: "In all it is what the sun left inside.", Formula: "Q = Q_s + Q_l + Q_c + Q_g - Q_w", Values: numbers{"Q_s": s.AirSensible, "Q_l": s.AirLatent, "Q_c": s.CoverLoss, "Q_g": s.Ground, "Q_w": s.Liquid}, Value: s.SunCanopy + s.SunFloor, Unit: "W", Within: 1e-6, Why: "the balance of heat closes to its own tolerance"},
	}
}

func noonPicture(s ventilation.ClimateState) Picture {
	d := gable(7, 1.5, 3, 0, 4)
	sun := page.Stroke{Color: css(page.PenOf(3).Color), Width: 2.5, Arrow: true}
	d.Line(sun, 0.1, 4.4, 1.8, 1.0)
	d.Text(page.End, 0, 4.1, "sun in "+kilowatts(s.SunCanopy+s.SunFloor+s.SunReflected))
	d.Line(page.Stroke{Color: sun.Color, Width: 1.5, Dash: "4 3", Arrow: true}, 2.0, 1.0, 2.6, 4.1)
	d.Text(page.Middle, 2.6, 4.25, "out "+kilowatts(s.SunReflected))
	d.Line(warm, 3.5, 2.4, 3.5, 3.8)
	d.Text(page.Start, 3.7, 3.75, "air "+kilowatts(s.AirSensible)+" warm, "+kilowatts(s.AirLatent)+" vapour")
	d.Line(warm, 5.6, 2.1, 6.4, 2.8)
	d.Text(page.Start, 6.5, 2.7, "cover "+kilowatts(s.CoverLoss))
	d.Line(cool, -1.4, 0.75, 0.6, 0.75)
	d.Text(page.End, -1.5, 0.6, fmt.Sprintf("%.2f kg/s", s.DryAir))
	d.Line(warm, 6.5, 0.3, 6.5, -0.55)
	d.Text(page.Start, 6.7, -0.6, "ground "+kilowatts(s.Ground))
	d.Text(page.Middle, 4.2, 1.4, fmt.Sprintf("%.1f °C, %.0f %%", s.Temperature, 100*s.RelativeHumidity))
	leaf := page.Stroke{Color: css(page.PenOf(2).Color), Width: 2}
	for x := 1.4; x < 6; x += 0.9 {
		d.Line(leaf, x, 0, x, 0.6)
		d.Line(leaf, x-0.25, 0.5, x, 0.3, x+0.25, 0.5)
	}
	d.Text(page.Middle, 4.2, 0.8, fmt.Sprintf("leaves %.1f °C", s.CanopyTemperature))
	return drawn(d, "Heat at noon, in section", "A house in section: sun comes in, a part goes out again; air leaves at the ridge with warmth and vapour; the rest passes cover and ground.", "Most of what the air carries is not warmth but the water of the leaves.")
}
