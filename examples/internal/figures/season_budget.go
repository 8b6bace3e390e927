package figures

import (
	"fmt"
	"math"
	"time"

	"cloche.example/airheat"
	"cloche.example/examples/internal/page"
)

func yearBudget() Figure {
	return Figure{
		Name: "year-budget", Title: "A year's budget, month by month", Subject: "season", Package: "airheat",
		Question: "What does a house lose in each month, how much of that does the sun pay, and what is left for the heater and the purse?",
		Sketch:   "Twelve columns: the loss of each month, of which the sun pays the upper part and the heater the lower.",
		Given: []Given{
			{"t_i", "inside, mean of day and night", "°C", 14, 5, 22},
			{"H", "loss of the house, leaks included", "W/K", 440, 50, 3000},
			{"A", "floor whose sun becomes heat", "m²", 40, 0, 200},
			{"τ", "time in which the house gives its heat away", "h", 10, 0, 100},
			{"t_y", "mean of the year outside", "°C", 9, 2, 15},
			{"k", "month to work out, a whole number", "", 3, 1, 12},
		},
		Assumes: []string{"A year of two sine waves; half of the sun on five eighths of that floor becomes vapour; pellets at 88 % of their lower heating value and 0.38 currency a kilogram, no standby loss."},
		Change:  []string{"A time of 100 h: the sun of noon is kept for the night, and spring needs less heat.", "Three kelvin less inside: the budget falls by a third, March and October by more than half."},
		Code:    "solveYearBudget",
		Solve:   solveYearBudget,
	}
}

func solveYearBudget(v []float64) (r Result, err error) {
	k, _, err := counts(v[5], 1)
	if err != nil {
		return r, err
	}
	k--
	house := airheat.MonthlyHouse{SetPoint: v[0], Aperture: v[2], Storage: v[3], Price: 0.38, Plants: airheat.Plants{Area: 0.625 * v[2], Evaporated: 0.5}}
	house.Burner.Rated, house.Burner.Efficiency = 1e6, 0.88
	house.Burner.Fuel, _ = airheat.FindFuel("wood pellets")
	outside, sun := inventedYear(v[4])
	season := airheat.HeatingSeason{Outside: outside, Sun: sun, Loss: v[1], SetPoints: airheat.SetPoints{Day: v[0], Night: v[0], DayStarts: 7, DayEnds: 19}, Burner: house.Burner}
	months, err := season.MonthlyMeans()
	if err != nil {
		return r, err
	}
	year, heat, err := house.Solve(months)
	if err != nil {
		return r, err
	}
	r.Lines = []string{"            outside °C  loss kWh  sun pays  heater  pellets kg  currency"}
	var loss, paid [12]float64
	perKWh := 3.6e6 / (0.88 * house.Burner.Fuel.Lower)
	for i := range 12 {
		loss[i] = math.Max(0, v[1]*(v[0]-months.Outside[i])) * months.Hours[i] / 1000
		own := heat[i] / 3.6e6
		paid[i] = loss[i] - own
		r.Lines = append(r.Lines, fmt.Sprintf("%-11s %10.1f %9.0f %9.0f %7.0f %11.0f %9.0f", time.Month(i+1), months.Outside[i], loss[i], paid[i], own, own*perKWh, 0.38*own*perKWh))
	}
	r.Lines = append(r.Lines, fmt.Sprintf("%-11s %10s %9.0f %9.0f %7.0f %11.0f %9.0f", "the year", "", year.Loss/3.6e6, year.Gains/3.6e6, year.Heat/3.6e6, year.FuelMass, year.Cost))
	r.Steps = budgetSteps(v, k, months, loss[k], heat[k]/3.6e6)
	r.Steps = append(r.Steps, Step{Says: "The year's twelve months together, in money.", Formula: "C = 0.38 · 3.6 Q/(0.88 H_u)", Values: numbers{"Q": year.Heat / 3.6e6, "H_u": house.Burner.Fuel.Lower / 1e6}, Value: year.Cost, Unit: "currency"})
	r.Picture = budgetColumns(loss, paid, k)
	return r, nil
}

// budgetSteps works one month.
func budgetSteps(v []float64, k int, m airheat.Months, loss, heat float64) []Step {
	month, hours := time.Month(k+1).String(), m.Hours[k]
	gain := v[2] * m.Sun[k] * (1 - 0.5*0.625) * hours / 1000
	steps := []Step{
		{Says: month + ": what the house loses in its hours.", Formula: "Q_l = max(0, H (t_i - t_m) h/1000)", Values: numbers{"H": v[1], "t_i": v[0], "t_m": m.Outside[k], "h": hours}, Value: loss, Unit: "kWh"},
		{Says: "What the sun gives as heat, less what the plants turn into vapour.", Formula: "Q_g = A G (1 - 0.5 · 0.625) h/1000", Values: numbers{"A": v[2], "G": m.Sun[k], "h": hours}, Value: gain, Unit: "kWh"},
	}
	ratio := gain / loss
	if loss <= 0 || math.Abs(ratio-1) < 1e-6 || gain == 0 {
		return append(steps, Step{Says: "What is left for the heater.", Symbol: "Q", Value: heat, Unit: "kWh"})
	}
	a := 1 + v[3]/15
	used := (1 - math.Pow(ratio, a)) / (1 - math.Pow(ratio, a+1))
	return append(steps,
		Step{Says: "Gain over loss.", Formula: "γ = Q_g/Q_l", Values: numbers{"Q_g": gain, "Q_l": loss}, Value: ratio},
		Step{Says: "Exponent: a house that keeps its heat long uses more of the sun.", Formula: "a = 1 + τ/15", Source: "IsoEnergy08, constants from memory", Values: numbers{"τ": v[3]}, Value: a},
		Step{Says: "Part of the sun that meets a loss; the rest comes when no heat is wanted.", Formula: "η = (1 - γ^a)/(1 - γ^(a + 1))", Source: "IsoEnergy08", Values: numbers{"γ": ratio, "a": a}, Value: used, Within: 1e-6, Why: "rounding near a ratio of 1"},
		Step{Says: "What is left for the heater.", Formula: "Q = max(0, Q_l - η Q_g)", Values: numbers{"Q_l": loss, "η": used, "Q_g": gain}, Value: heat, Unit: "kWh", Within: 1e-6, Why: "rounding of a small difference"})
}

// inventedYear returns a year of hours of two sine waves, a cold January and a
// cold night: °C outside, its mean over the year given, and the sun, W/m².
func inventedYear(mean float64) (outside, sun []float64) {
	outside, sun = make([]float64, 8760), make([]float64, 8760)
	for h := range outside {
		year, day := 2*math.Pi*float64(h)/8760, 2*math.Pi*float64(h%24)/24
		outside[h] = mean - 10*math.Cos(year) - 4*math.Cos(day)
		sun[h] = math.Max(0, -(180-120*math.Cos(year))*math.Cos(day)*1.8)
	}
	return outside, sun
}

// budgetColumns draws the loss of each month as a column: the heater's part
// below, the sun's above; the month worked out is named in full.
func budgetColumns(loss, paid [12]float64, worked int) Picture {
	most := 1.0
	for _, q := range loss {
		most = math.Max(most, q)
	}
	const wide, high = 33.0, 170.0
	d := page.NewDrawing(0, -26, 420, high+42, 420)
	says := ""
	for i := range 12 {
		x := 12 + wide*float64(i)
		own, all := high*(loss[i]-paid[i])/most, high*loss[i]/most
		d.Box(page.Stroke{Width: 0.6, Fill: css(page.PenOf(0).Color)}, x+3, 0, x+wide-3, own)
		d.Box(page.Stroke{Width: 0.8, Fill: "var(--soft)"}, x+3, own, x+wide-3, all)
		name := time.Month(i + 1).String()[:3]
		d.Text(page.Middle, x+wide/2, -14, name)
		if i == worked {
			d.Line(page.Stroke{Width: 2}, x+5, -18, x+wide-5, -18)
		}
		d.Text(page.Middle, x+wide/2, all+4, fmt.Sprintf("%.0f", loss[i]))
		says += fmt.Sprintf("%s %.0f of %.0f kWh by the heater; ", name, loss[i]-paid[i], loss[i])
	}
	d.Line(page.Stroke{}, 12, 0, 12+12*wide, 0)
	d.Box(page.Stroke{Width: 0.6, Fill: css(page.PenOf(0).Color)}, 14, high+25, 26, high+35)
	d.Text(page.Start, 31, high+26, "heater")
	d.Box(page.Stroke{Width: 0.8, Fill: "var(--soft)"}, 94, high+25, 106, high+35)
	d.Text(page.Start, 111, high+26, "sun")
	return drawn(d, "Loss of each month and who pays it", says, "Loss of each month in kWh, above the column; the month worked out is underlined.")
}
