package figures

import (
	"fmt"

	"cloche.example/airheat"
	"cloche.example/examples/internal/page"
)

func ridgeReturn() Figure {
	return Figure{
		Name: "ridge-return", Title: "What the coil sees and what the house saves", Subject: "heater and fuel", Package: "airheat",
		Question: "A heater draws its air from the warm ridge instead of the floor. The coil sees warmer air; what does the house save?",
		Sketch:   "Warm air gathers under the ridge. The coil's warmer intake is no saving by itself: the house saves only what the cooler upper layer loses less.",
		Given: []Given{
			{"H_l", "loss of the lower layer", "W/K", 300, 50, 2000},
			{"H_u", "loss of the upper layer", "W/K", 400, 50, 2000},
			{"t_l", "set-point of the lower layer", "°C", 15, 8, 25},
			{"t_o", "outside air", "°C", -10, -25, 5},
			{"φ", "share of the heat that rises past the crop", "fraction", 0.7, 0, 0.9},
			{"M", "exchange between the layers without fans", "m³/s", 0.2, 0.1, 2},
			{"V", "flow through the heater", "m³/s", 0.6, 0.2, 3},
		},
		Assumes: []string{"Two layers, each of one temperature, in a steady state; the heater holds the lower one."},
		Change:  []string{"Let less heat rise: the layers draw together and both savings shrink.", "With no rising heat the ridge is the cooler layer and the ridge return costs heat."},
		Code:    "solveRidgeReturn",
		Solve:   solveRidgeReturn,
	}
}

func solveRidgeReturn(v []float64) (res Result, err error) {
	const capacity = 1230.0 // J/(m³ K), air of 10 °C
	l := airheat.TwoLayers{LowerLoss: v[0], UpperLoss: v[1], Lower: v[2], Outside: v[3], RisingShare: v[4], Mixing: v[5], HeaterFlow: v[6], HeatCapacity: capacity}
	r, err := l.RidgeReturn()
	if err != nil {
		return res, err
	}
	res.Lines = []string{
		fmt.Sprintf("return at the floor  %6.0f W  upper layer %4.1f °C  supply %4.1f °C", r.Floor.Heat, r.Floor.Upper, r.Floor.Supply),
		fmt.Sprintf("return at the ridge  %6.0f W  upper layer %4.1f °C  supply %4.1f °C", r.Ridge.Heat, r.Ridge.Upper, r.Ridge.Supply),
		fmt.Sprintf("both layers alike    %6.0f W", r.MixedHeat),
		fmt.Sprintf("the coil seems to save %.1f %%, the house saves %.1f %% (%.0f W), full mixing %.1f %%", 100*r.CoilView, 100*r.Saving, r.SavingHeat, 100*r.Bound),
	}
	dl := v[2] - v[3]
	res.Steps = []Step{
		{Says: "Upper layer above outside with the return at the floor: what rises and what is mixed up to it, against what it loses.", Formula: "x = (φ H_l ΔT + c M ΔT)/(H_u (1 - φ) + c M)", Source: "balance of the upper layer", Values: numbers{"φ": v[4], "H_l": v[0], "ΔT": dl, "c": capacity, "M": v[5], "H_u": v[1]}, Value: r.Floor.Upper - v[3], Unit: "K"},
		{Says: "Heat of the house then.", Formula: "Q_f = H_l ΔT + H_u x", Values: numbers{"H_l": v[0], "ΔT": dl, "H_u": v[1], "x": r.Floor.Upper - v[3]}, Value: r.Floor.Heat, Unit: "W"},
		{Says: "With the return at the ridge the heater itself draws the warm air down: its flow joins the exchange.", Formula: "x_r = (φ H_l ΔT + c (M + V) ΔT)/(H_u (1 - φ) + c (M + V))", Values: numbers{"φ": v[4], "H_l": v[0], "ΔT": dl, "c": capacity, "M": v[5], "V": v[6], "H_u": v[1]}, Value: r.Ridge.Upper - v[3], Unit: "K"},
		{Says: "What the house saves.", Formula: "S = H_u (x - x_r)", Values: numbers{"H_u": v[1], "x": r.Floor.Upper - v[3], "x_r": r.Ridge.Upper - v[3]}, Value: r.SavingHeat, Unit: "W", Within: 1e-6, Why: "rounding"},
		{Says: "What the coil seems to save: the warmer intake over its own rise.", Formula: "s_c = (t_u - t_l)/(Q_f/(c V))", Values: numbers{"t_u": r.Floor.Upper, "t_l": v[2], "Q_f": r.Floor.Heat, "c": capacity, "V": v[6]}, Value: r.CoilView, Within: 1e-6, Why: "rounding"},
	}
	d := page.NewDrawing(0, 0, 420, 190, 420)
	for i, x := range []struct {
		name string
		l    airheat.Layered
	}{{"return at the floor", r.Floor}, {"return at the ridge", r.Ridge}} {
		o := 215 * float64(i)
		d.Line(page.Stroke{Width: 1.5}, o+10, 25, o+10, 110, o+100, 165, o+190, 110, o+190, 25, o+10, 25)
		d.Line(page.Stroke{Width: 0.8, Dash: "4 3"}, o+10, 95, o+190, 95)
		d.Text(page.Middle, o+100, 125, fmt.Sprintf("%.1f °C", x.l.Upper))
		d.Text(page.Middle, o+100, 66, fmt.Sprintf("%.1f °C", v[2]))
		d.Polygon(page.Stroke{Fill: "var(--soft)"}, o+20, 30, o+50, 30, o+50, 52, o+20, 52)
		blue := page.Stroke{Color: css(page.PenOf(0).Color), Width: 2, Arrow: true}
		if i == 0 {
			d.Line(blue, o+80, 36, o+52, 36)
		} else {
			d.Line(blue, o+35, 112, o+35, 54)
		}
		d.Line(page.Stroke{Color: css(page.PenOf(1).Color), Width: 2, Arrow: true}, o+50, 46, o+88, 46)
		d.Text(page.Start, o+92, 42, fmt.Sprintf("%.1f °C", x.l.Supply))
		d.Text(page.Middle, o+100, 8, fmt.Sprintf("%s, %.0f W", x.name, x.l.Heat))
	}
	res.Picture = drawn(d, "Two ways to draw the heater's air", "Two sections of the house with the temperatures of both layers, the heater's intake and supply, and the heat.", "The coil's warmer intake is one thing, what the house saves another.")
	return res, nil
}
