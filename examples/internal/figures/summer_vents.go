package figures

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// smallHouse is the invented house of several figures: 95 m² and 275 m³ under a
// single film of 186 m², with vents at the sides and the ridge and a crop.
func smallHouse() (*ventilation.Climate, error) {
	vents, err := ventilation.NewNetwork([]ventilation.Opening{
		{Name: "side", Height: 0.7, Area: 3.8, Discharge: 0.62},
		{Name: "ridge", Height: 2.9, Area: 2.8, Discharge: 0.60},
	}, []ventilation.Leak{{Height: 1.5, Flow: 0.02, Exponent: 0.65}}, nil)
	if err != nil {
		return nil, err
	}
	return ventilation.NewClimate(ventilation.ClimateHouse{
		FloorArea: 95, Volume: 275, Cover: ventilation.DefaultSimpleCover(186), Floor: ventilation.DefaultFloorSurface(), Crop: ventilation.DefaultCanopy(2.5), Air: vents,
	})
}

func heatAndVents() Figure {
	return Figure{
		Name: "heat-and-vents", Title: "What a controller asks: heat at dawn, vents at noon", Subject: "summer", Package: "ventilation", Example: "Example_heatAndVents",
		Question: "A spring day. How much heat holds the house before sunrise, how far must the vents open at noon, and what does dry air for the crop ask instead?",
		Sketch:   "One house, two hours: cold and dark with its vents shut, then sunny with the vents as far open as the target asks.",
		Given: []Given{
			{"t_1", "outside before sunrise", "°C", 4, -15, 12},
			{"t_h", "to be held then", "°C", 18, 13, 25},
			{"t_2", "outside at noon", "°C", 17, 0, 28},
			{"I", "sun at noon", "W/m²", 600, 150, 1000},
			{"t_v", "to be kept at noon", "°C", 24, 18, 35},
			{"D_1", "deficit wanted, at least", "Pa", 800, 100, 3000},
			{"D_2", "deficit wanted, at most", "Pa", 1000, 100, 5000},
		},
		Assumes: []string{"95 m² and 275 m³ under a single film of 186 m², side vents of 3.8 m² and ridge vents of 2.8 m², small leaks, a crop of LAI 2.5, bare moist soil, 1 m/s of wind, 97,300 Pa; 85 % outside at dawn and 50 % at noon."},
		Change:  []string{"Ask for a deficit of 500 to 700 Pa: two openings have it, one nearly shut and one nearly wide; the least is taken."},
		Code:    "solveHeatAndVents",
		Solve:   solveHeatAndVents,
	}
}

func solveHeatAndVents(v []float64) (r Result, err error) {
	if v[5] > v[6] {
		return r, errors.New("deficit wanted, at least: more than the deficit wanted, at most")
	}
	house, err1 := smallHouse()
	dawn, err2 := psychro.FromRelativeHumidity(v[0], 0.85, 97300)
	noon, err3 := psychro.FromRelativeHumidity(v[2], 0.50, 97300)
	if err := errors.Join(err1, err2, err3); err != nil {
		return r, err
	}
	early := ventilation.Weather{Air: dawn, Wind: 1, Sky: -8, Ground: 11}
	late := ventilation.Weather{Air: noon, Sun: v[3], Wind: 1, Sky: 2, Ground: 12}
	warm, err1 := house.HeatFor(early, ventilation.Setting{}, v[1])
	open, err2 := house.OpeningForTemperature(late, ventilation.Setting{}, v[4])
	dry, err3 := house.OpeningForDeficit(late, ventilation.Setting{}, v[5], v[6])
	if err := errors.Join(err1, err2, err3); err != nil {
		return r, err
	}
	paths, err := house.PathsTo(nil, late, ventilation.Setting{Opening: open.Opening}, open.State)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("before sunrise   %.1f kW hold %g °C; %.1f kg/h condense on the cover", warm.Heat/1000, v[1], 3600*warm.Condensed),
		fmt.Sprintf("water            %.2f kg/h become vapour, %.2f kg/h leave the air", 3600*warm.WaterIn, 3600*warm.WaterOut),
		fmt.Sprintf("%g °C at noon    vents open %.0f %%: %.1f °C, %.0f air changes an hour", v[4], 100*open.Opening, open.State.Temperature, open.State.AirChanges),
		fmt.Sprintf("                 in by the side %.2f kg/s, out by the ridge %.2f kg/s", paths[0].In, paths[1].Out),
		fmt.Sprintf("%g to %g Pa   met %v with the vents open %.0f %%: %.0f Pa at %.1f °C", v[5], v[6], dry.Met, 100*dry.Opening, dry.State.Deficit, dry.State.Temperature),
	}
	s := open.State
	r.Steps = []Step{
		{Says: "Before sunrise: through the cover, with the leaks and into the ground, less what liquid water brings.", Formula: "Q = Q_c + Q_s + Q_l + Q_g - Q_w", Values: numbers{"Q_c": warm.CoverLoss, "Q_s": warm.AirSensible, "Q_l": warm.AirLatent, "Q_g": warm.Ground, "Q_w": warm.Liquid}, Value: warm.Heat, Unit: "W", Within: 1e-6, Why: "the balance of heat closes to its own tolerance"},
		{Says: "Noon: least opening that keeps the temperature, found by search.", Symbol: "u", Value: open.Opening},
		{Says: "Warmth that the air carries there.", Formula: "Q_a = m (1006 + 1860 W_o) (t - t_2)", Source: "HoF17 ch. 1 eq. 30", Values: numbers{"m": s.DryAir, "W_o": noon.HumidityRatio(), "t": s.Temperature, "t_2": v[2]}, Value: s.AirSensible, Unit: "W"},
		{Says: "Air changes.", Formula: "N = 3600 V/275", Values: numbers{"V": s.Volume}, Value: s.AirChanges, Unit: "1/h"},
		{Says: "Least opening within the deficit wanted.", Symbol: "u_D", Value: dry.Opening},
	}
	var warmth, deficit []float64
	var at []float64
	for i := 0; i <= 50; i++ {
		u := math.Pow(float64(i)/50, 1.5) // nearer together near shut
		x, err := house.Solve(late, ventilation.Setting{Opening: u})
		if err != nil {
			return r, err
		}
		at, warmth, deficit = append(at, 100*u), append(warmth, x.Temperature), append(deficit, x.Deficit)
	}
	r.Picture, err = charts("House at noon against the vents", "Two charts over the opening of the vents: temperature falls steeply at first and then ever less; the deficit falls too, and rises again where dry air from outside prevails.", "The first tenth of the opening does most of the work.",
		chart{title: "temperature", x: "vents open, %", y: "inside, °C", curves: []curve{{"", points(at, warmth)}}, marks: []mark{{fmt.Sprintf("%g °C wanted", v[4]), 100 * open.Opening, s.Temperature}}, high: 210},
		chart{title: "deficit", x: "vents open, %", y: "deficit, Pa", curves: []curve{{"", points(at, deficit)}}, marks: []mark{{"deficit wanted", 100 * dry.Opening, dry.State.Deficit}}, high: 210})
	return r, err
}
