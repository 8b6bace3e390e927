package figures

import (
	"fmt"

	"cloche.example/envelope"
)

func filmHouse() Figure {
	return Figure{
		Name: "film-house", Title: "A dug-in film house, with and without a screen", Subject: "the whole house", Package: "envelope", Example: "Example_filmHouseAtNight",
		Question: "Where does the heat of a whole house go on a clear winter night, and what does a screen under the roof save?",
		Sketch:   "A gable house under a double film of infrared quality, dug in by 0.7 m; an aluminised screen can be drawn under its roof.",
		Given: []Given{
			{"t_i", "inside air", "°C", 15, 5, 25},
			{"φ", "relative humidity inside", "fraction", 0.8, 0.3, 1},
			{"t_o", "outside air", "°C", -14, -25, 4},
			{"ΔT_s", "sky below the outside air", "K", 18, 0, 35},
			{"v", "wind", "m/s", 3.5, 0, 12},
		},
		Assumes: []string{"6.4 by 14.8 m, eave 1.3 m, ridge 3.1 m, bars take 4 % on top of the covers; bare buried walls in clay, in January."},
		Change:  []string{"An overcast sky: the house loses less, and the screen has less to save."},
		Code:    "solveFilmHouse",
		Solve:   solveFilmHouse,
	}
}

func solveFilmHouse(v []float64) (r Result, err error) {
	form := envelope.DefaultForm()
	form.Span, form.Length, form.Eave, form.Ridge, form.Depth, form.Azimuth = 6.4, 14.8, 1.3, 3.1, 0.7, 90
	film := envelope.DoubleInfraredFilm()
	plan, err := covered(form, film)
	if err != nil {
		return r, err
	}
	shape := plan.Shape
	screened, err := envelope.WithScreen(film, envelope.AluminisedScreen())
	if err != nil {
		return r, err
	}
	plan.Screened, plan.FrameAllowance = map[envelope.FacetKind]envelope.Cover{envelope.Roof: screened}, 0.04
	house, err := envelope.NewHouse(plan)
	if err != nil {
		return r, err
	}
	k := envelope.DefaultHouseConditions()
	k.Inside, k.InsideHumidity, k.Outside, k.SkyDrop, k.Wind = v[0], v[1], v[2], v[3], v[4]
	r.Lines = []string{fmt.Sprintf("%.1f m² of cover over %.1f m² of floor, %.0f m³; %g °C and %.0f %% inside, %g °C outside, sky %g °C",
		shape.CoverArea, shape.FloorArea, shape.Volume, v[0], 100*v[1], v[2], v[2]-v[3])}
	var open, drawnLoss envelope.HouseLoss
	for _, drawn := range []bool{false, true} {
		k.ScreenDrawn = drawn
		l, err := house.Loss(k)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("screen drawn: %v", drawn))
		for _, f := range l.Facets {
			r.Lines = append(r.Lines, fmt.Sprintf("  %-17s %5.1f m²  U %.2f  without sky %.2f W/(m² K)  face %4.1f °C  drips above %2.0f %%  %.1f L/h",
				f.Name, f.Area, f.U, f.UOvercast, f.InnerTemperature, 100*f.DripHumidity, 3600*f.Condensate))
		}
		for _, x := range l.Terms() {
			if x.Loss != 0 {
				r.Lines = append(r.Lines, fmt.Sprintf("    %-24s %6.0f W  %4.1f %%", x.Name, x.Loss, 100*x.Share))
			}
		}
		r.Lines = append(r.Lines, fmt.Sprintf("  total %.0f W, %.0f W/K, %.0f W/m² of floor; sky-driven %.0f W, latent %.0f W",
			l.Total, l.Coefficient, l.PerFloor, l.CoverSky, l.Latent))
		if drawn {
			drawnLoss = l
		} else {
			open = l
		}
	}
	f := open.Facets[0]
	r.Steps = []Step{
		{Says: "One slope of the roof, by its own U-value under this sky.", Formula: "Q_1 = A U (t_i - t_o)", Values: numbers{"A": f.Area, "U": f.U, "t_i": v[0], "t_o": v[2]}, Value: f.Loss, Unit: "W"},
		{Says: "Bars and profiles, on the air- and sky-driven part of the covers.", Formula: "Q_f = 0.04 (Q_a + Q_s)", Values: numbers{"Q_a": open.CoverAir, "Q_s": open.CoverSky}, Value: open.Frame, Unit: "W"},
		{Says: "The house, term by term.", Formula: "Q = Q_c + Q_f + Q_g + Q_l", Values: numbers{"Q_c": open.Cover, "Q_f": open.Frame, "Q_g": open.Ground.Total, "Q_l": open.Leakage.Total}, Value: open.Total, Unit: "W"},
		{Says: "What the screen saves.", Formula: "s = (Q - Q_d)/Q", Values: numbers{"Q": open.Total, "Q_d": drawnLoss.Total}, Value: 1 - drawnLoss.Total/open.Total},
	}
	roof, walls := 0.0, 0.0
	for _, f := range open.Facets {
		if f.Kind == envelope.Roof {
			roof += f.Loss
		} else {
			walls += f.Loss
		}
	}
	r.Picture = section("Loss without the screen", "A section of the dug-in house with its losses by roof, walls, leaks and ground.", fmt.Sprintf("Without the screen; drawn, it takes %.1f kW off.", (open.Total-drawnLoss.Total)/1000),
		form, kilowatts(roof), kilowatts(walls), kilowatts(open.Leakage.Total), kilowatts(open.Ground.Total))
	return r, nil
}
