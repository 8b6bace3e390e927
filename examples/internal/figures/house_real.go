package figures

import (
	"errors"
	"fmt"

	"cloche.example/envelope"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// glassHouse is the invented house of glass of several figures, each of its faces
// as package envelope has it, with a screen below the roof.
func glassHouse(frame float64) (*envelope.House, error) {
	glass := envelope.SingleGlass()
	plan, err1 := covered(envelope.DefaultForm(), glass)
	screened, err2 := envelope.WithScreen(glass, envelope.AluminisedScreen())
	if err := errors.Join(err1, err2); err != nil {
		return nil, err
	}
	plan.Screened = map[envelope.FacetKind]envelope.Cover{envelope.Roof: screened}
	plan.Radiant, plan.FrameAllowance = envelope.RadiantEnclosure, frame
	return envelope.NewHouse(plan)
}

func realHouseAtNight() Figure {
	return Figure{
		Name: "glass-night", Title: "One cold night, heated four ways", Subject: "the whole house", Package: "ventilation", Example: "Example_realHouseAtNight",
		Question: "A glass house is held on a clear winter night by warm air, with pipes that radiate, with lamps lit, or under a screen. What must the heater give, and how warm are the leaves?",
		Sketch:   "The leaves see a cold roof and are colder than the air. Pipes and lamps warm them first; a screen hides the roof.",
		Given: []Given{
			{"t_i", "inside air held at", "°C", 15, 8, 22},
			{"t_o", "outside", "°C", -5, -20, 6},
			{"t_s", "sky", "°C", -19, -45, 6},
			{"U", "wind", "m/s", 3, 0, 12},
			{"Q_r", "pipes radiate", "kW", 4.5, 0, 10},
		},
		Assumes: []string{"An invented house of single glass on its real covers, each with its own temperature and drip; a crop of LAI 2, clay soil, leaks of an ordinary house, 85 % outside, sea level. The lamps give 1.5 kW as light, 0.3 kW as heat radiation and 1.2 kW to the air. A heater that fails in such a night lets the house freeze: have an alarm and a second source."},
		Change:  []string{"A sky as warm as the air, as under cloud: the heater gives 1 kW less; the leaves stay cold, for it is the glass that they see.", "Calm: the heater gives less, since glass and leaks both hang on the wind."},
		Code:    "solveRealHouseAtNight",
		Solve:   solveRealHouseAtNight,
	}
}

func solveRealHouseAtNight(v []float64) (r Result, err error) {
	if v[2] > v[1]+10 {
		return r, errors.New("sky: more than 10 K warmer than the air outside")
	}
	house, err := glassHouse(0.04)
	if err != nil {
		return r, err
	}
	shape := house.Shape()
	climate, err1 := ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: shape.FloorArea, Volume: shape.Volume,
		Real: ventilation.DefaultRealCover(house), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(2),
	})
	out, err2 := psychro.FromRelativeHumidity(v[1], 0.85, 101325)
	if err := errors.Join(err1, err2); err != nil {
		return r, err
	}
	w := ventilation.Weather{Air: out, Wind: v[3], Sky: v[2], Ground: 9}
	var rows []bar
	for _, c := range []struct {
		name string
		s    ventilation.Setting
	}{
		{"air", ventilation.Setting{}},
		{"air and pipes", ventilation.Setting{Radiant: 1000 * v[4]}},
		{"air, lamps lit", ventilation.Setting{Lamps: ventilation.LampHeat{Light: 1500, Radiant: 300, Air: 1200}}},
		{"air, screen drawn", ventilation.Setting{Screen: true}},
	} {
		x, err := climate.HeatFor(w, c.s, v[0])
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("%-18s heater %5.1f kW  leaves %4.1f °C  humidity %2.0f %%  through the covers %4.1f kW  drips %.1f L/h",
			c.name, x.Heat/1000, x.CanopyTemperature, 100*x.RelativeHumidity, x.CoverLoss/1000, 3600*x.Condensed))
		rows = append(rows, bar{c.name + ", heater", x.Heat / 1000}, bar{"through the covers", x.CoverLoss / 1000})
		r.Steps = append(r.Steps, Step{Says: "Heated by " + c.name + ": covers, leaks and ground, less what pipes and lamps give and liquid water brings.", Formula: "Q = Q_c + Q_a + Q_g - Q_x",
			Values: numbers{"Q_c": x.CoverLoss, "Q_a": x.AirSensible + x.AirLatent, "Q_g": x.Ground, "Q_x": x.Radiant + x.LampAir + x.SunCanopy + x.SunFloor + x.Liquid}, Value: x.Heat, Unit: "W", Within: 1e-5, Why: "the balance of heat closes to its own tolerance"},
			Step{Says: "Its leaves.", Symbol: "t_l", Value: x.CanopyTemperature, Unit: "°C"})
	}
	r.Picture = bars("Heater and covers, four ways", "Pairs of bars: what the heater gives and what passes the covers, by air, with pipes, with lamps and under the screen.", "%.1f kW", "Pipes take load off the air heater, but more passes the covers: only the screen lowers the loss.", rows...)
	return r, nil
}
