package figures

import (
	"fmt"
	"time"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func carbonDioxide() Figure {
	return Figure{
		Name: "carbon-dioxide", Title: "Carbon dioxide with the vents ajar", Subject: "moisture and crop", Package: "ventilation", Example: "Example_carbonDioxide",
		Question: "A crop draws the carbon dioxide down at noon. What is left, what does a dose take, and how much of it is blown out?",
		Sketch:   "A house with its vents ajar: air comes in with what is outside, the canopy takes its share, a supply adds.",
		Given: []Given{
			{"F", "air exchanged, dry", "kg/s", 0.2, 0.01, 5},
			{"C_d", "level to be held", "µmol/mol", 900, 450, 1500},
			{"LAI", "leaf area over floor area", "", 3, 0.5, 8},
			{"C_o", "outside", "µmol/mol", 420, 350, 500},
		},
		Assumes: []string{"95 m² and 275 m³, 24 °C and 70 %, 800 µmol/(m² s) of light, leaves of 23 °C; uptake by a model fitted to tomato. High levels harm people: watch them and follow local rules."},
		Change:  []string{"Open the vents to 1 kg/s: the air alone then holds nearly the level outside, and a dose is wasted."},
		Code:    "solveCarbonDioxide",
		Solve:   solveCarbonDioxide,
	}
}

func solveCarbonDioxide(v []float64) (r Result, err error) {
	air, err := psychro.FromRelativeHumidity(24, 0.7, 101325)
	if err != nil {
		return r, err
	}
	house := ventilation.CO2Case{
		FloorArea: 95, Volume: 275, Crop: ventilation.DefaultCanopy(v[2]), Air: air, Leaf: 23, PAR: 800,
		Exchange: v[0], Outside: v[3], Respiration: 95 * 0.5e-3 / 3600,
	}
	bare, err := house.Steady()
	if err != nil {
		return r, err
	}
	dose, err := house.Dose(v[1])
	if err != nil {
		return r, err
	}
	house.Supply = dose
	rich, err := house.Steady()
	if err != nil {
		return r, err
	}
	house.Supply = 0
	after, err := house.Over(rich.Concentration, 10*time.Minute)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("1 µmol/mol is %.3f mg/m³ at 24 °C", 1e6*ventilation.CO2Density(1, 24, 101325)),
		fmt.Sprintf("a canopy of LAI %g takes %.2f g/(m² h) at 400 and %.2f at %g µmol/mol", v[2],
			3.6e6*house.Crop.Uptake(800, 400, 23), 3.6e6*house.Crop.Uptake(800, v[1], 23), v[1]),
		fmt.Sprintf("without a supply %.0f µmol/mol, uptake %.2f kg/h", bare.Concentration, 3600*bare.Uptake),
		fmt.Sprintf("for %g µmol/mol %.2f kg/h, of which %.2f kg/h are taken and %.2f kg/h blown out", v[1], 3600*dose, 3600*rich.Uptake, 3600*rich.Carried),
		fmt.Sprintf("ten minutes after dosing stops %.0f µmol/mol", after.End),
	}
	r.Steps = []Step{
		{Says: "Without a supply the level falls until uptake equals what air and breathing bring.", Symbol: "C", Value: bare.Concentration, Unit: "µmol/mol"},
		{Says: "What the canopy takes of the level to be held.", Symbol: "P", Source: "Vanthoor11b eqs. 10 to 23", Value: 3600 * rich.Uptake, Unit: "kg/h"},
		{Says: "The dose: what is taken and blown out, less what crop and soil breathe.", Formula: "S = P + B - R", Values: numbers{"P": 3600 * rich.Uptake, "B": 3600 * rich.Carried, "R": 3600 * house.Respiration}, Value: 3600 * dose, Unit: "kg/h", Within: 1e-6, Why: "the level is found by search"},
		{Says: "Ten minutes after dosing stops.", Symbol: "C_{10}", Value: after.End, Unit: "µmol/mol"},
	}
	r.Picture, err = chart{title: "Uptake against the level", says: "A curve that rises steeply at first and then ever less.", x: "µmol/mol", y: "uptake, g/(m² h)", zero: true, curves: []curve{
		{"", along(100, 1500, 70, func(c float64) float64 { return 3.6e6 * house.Crop.Uptake(800, c, 23) })},
	}, marks: []mark{
		{"without a supply", bare.Concentration, 3.6e6 * house.Crop.Uptake(800, bare.Concentration, 23)},
		{"with it", v[1], 3.6e6 * house.Crop.Uptake(800, v[1], 23)},
	}}.picture("The first hundred µmol/mol are worth the most.")
	return r, err
}
