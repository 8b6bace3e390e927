package figures

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/ventilation"
)

func ventsForSummerNoon() Figure {
	return Figure{
		Name: "vent-area", Title: "How much vent for a summer noon?", Subject: "summer", Package: "ventilation", Example: "Example_ventsForSummerNoon",
		Question: "A house of 6 by 15 m may stand a few kelvin above the air outside at noon. How large must its vents be, in calm and in wind?",
		Sketch:   "Openings low in both long walls and a flap along the ridge that opens to the lee; wind from the south.",
		Given: []Given{
			{"I", "sun", "W/m²", 700, 100, 1100},
			{"ΔT", "allowed over the outside air", "K", 4, 0.5, 15},
			{"f", "of the sun inside evaporates water", "fraction", 0.5, 0, 0.9},
			{"α", "ridge flap opened by", "degree", 35, 5, 60},
		},
		Assumes: []string{"70 % of the sun comes in, 6.5 W/(m² K) over 170 m² of cover, 28 °C outside, 101,325 Pa, semi-sheltered. The vents as drawn: 9.6 m² in each wall, 9.6 m² at the ridge. The share that evaporates is given, not found: the figure of the house at noon finds it."},
		Change:  []string{"Allow twice the rise: in calm about a quarter of the area does, for less air must pass and the stack pulls harder.", "A young crop, with f at 0.2: the vents must grow by three quarters."},
		Code:    "solveVentsForSummerNoon",
		Solve:   solveVentsForSummerNoon,
	}
}

func solveVentsForSummerNoon(v []float64) (r Result, err error) {
	const shelter, across = ventilation.SemiSheltered, 180 // the ridge vent opens to the lee
	south, err1 := ventilation.TallVent{Name: "south wall", Bottom: 0.4, Top: 1.2, Width: 12, Discharge: 0.6, PressureCoefficient: shelter.Coefficient(ventilation.WindFaceWall, 0)}.Opening()
	north, err2 := ventilation.TallVent{Name: "north wall", Bottom: 0.4, Top: 1.2, Width: 12, Discharge: 0.6, PressureCoefficient: shelter.Coefficient(ventilation.WindFaceWall, across)}.Opening()
	ridge, err3 := ventilation.RidgeVent{Length: 12, Depth: 0.8, Pitch: 25, Ridge: 3.2, Angle: v[3]}.
		Opening(ventilation.FlapGeometry, 0.6, shelter.Coefficient(ventilation.WindFaceMidRoof, across))
	vents, err4 := ventilation.NewNetwork([]ventilation.Opening{south, north, ridge}, nil, nil)
	if err := errors.Join(err1, err2, err3, err4); err != nil {
		return r, err
	}
	load := ventilation.Load{Solar: 0.70 * v[0] * 6 * 15, Transpired: v[2], Loss: 6.5 * 170}
	at := func(wind float64) (ventilation.RequiredArea, error) {
		return vents.AreaForRise(load, ventilation.Outdoors{Temperature: 28, Pressure: 101325, Wind: wind}, v[1])
	}
	var calm ventilation.RequiredArea
	var marks []mark
	for _, wind := range []float64{0, 1, 3} {
		need, err := at(wind)
		if err != nil {
			return r, err
		}
		if need.Area == 0 {
			return r, errors.New("the cover alone carries that heat: no vent is needed for this rise")
		}
		if wind == 0 {
			calm = need
		}
		marks = append(marks, mark{fmt.Sprintf("%.1f m²", need.Area), wind, need.Area})
		r.Lines = append(r.Lines, fmt.Sprintf("%.0f m/s: %.1f m² of vent, %.2f times these, for %.2f m³/s in and %.2f out", wind, need.Area, need.Factor, need.Volume, need.Air.VolumeOut))
	}
	density := ventilation.DryAirDensity(28, 101325)
	r.Steps = []Step{
		{Says: "Sun that warms the air.", Formula: "Q_s = 0.70 I · 6 · 15 (1 - f)", Values: numbers{"I": v[0], "f": v[2]}, Value: calm.Sensible, Unit: "W"},
		{Says: "Of it through the cover at the allowed rise.", Formula: "Q_c = 6.5 · 170 ΔT", Values: numbers{"ΔT": v[1]}, Value: calm.ByCover, Unit: "W"},
		{Says: "Air that carries the rest.", Formula: "m = (Q_s - Q_c)/(1006 ΔT)", Values: numbers{"Q_s": calm.Sensible, "Q_c": calm.ByCover, "ΔT": v[1]}, Value: calm.Flow, Unit: "kg/s"},
		{Says: "In by volume.", Formula: "V = m/ρ", Values: numbers{"m": calm.Flow, "ρ": density}, Value: calm.Volume, Unit: "m³/s"},
		{Says: "The vents as drawn pass less or more in calm; the flow grows with their size.", Formula: "k = m/m_0", Values: numbers{"m": calm.Flow, "m_0": calm.Flow / calm.Factor}, Value: calm.Factor},
		{Says: "All vents together, in calm.", Formula: "A = k (2 · 0.8 · 12 + 0.8 · 12)", Values: numbers{"k": calm.Factor}, Value: calm.Area, Unit: "m²"},
	}
	r.Picture, err = chart{title: "Area of the vents against wind", says: "A curve of the area needed that falls steeply from calm to a light wind and flattens.", x: "wind, m/s", y: "vents, m²", zero: true, curves: []curve{
		{"needed", along(0, 4, 60, func(wind float64) float64 {
			need, err := at(wind)
			if err != nil {
				return math.NaN()
			}
			return need.Area
		})}, {"as drawn", straight(0, calm.Area/calm.Factor, 4, calm.Area/calm.Factor)},
	}, marks: marks}.picture("Size vents for the calm hour: the wind is not there when it is wanted most.")
	return r, err
}
