package figures

import (
	"fmt"

	"cloche.example/examples/internal/page"
	"cloche.example/psychro"
)

func recirculation() Figure {
	return Figure{
		Name: "recirculation", Title: "Fresh air made mild with room air", Subject: "moist air", Package: "psychro", Example: "Example_recirculation",
		Question: "Cold fresh air is mixed with room air before it enters. What are the supply and the room then?",
		Sketch:   "Fresh air and a share of the room's air meet in front of the room; the rest of the room's air leaves.",
		Given: []Given{
			{"V", "fresh air, volume flow", "m³/s", 0.6, 0.05, 10},
			{"t", "its temperature", "°C", 2, -15, 15},
			{"φ", "its relative humidity", "fraction", 0.85, 0.1, 1},
			{"m_r", "room air led back, dry", "kg/s", 1.4, 0, 20},
			{"q", "heat gained in the room", "W", 15e3, 0, 30e3},
			{"m_w", "vapour from the crop", "kg/h", 4, 0, 8},
		},
		Assumes: []string{"A steady state; one temperature and humidity in the room."},
		Change:  []string{"Lead more air back: the supply comes near to the room, the room itself does not change."},
		Code:    "solveRecirculation",
		Solve:   solveRecirculation,
	}
}

func solveRecirculation(v []float64) (r Result, err error) {
	const p = 101325.0
	fresh, err := psychro.FromRelativeHumidity(v[1], v[2], p)
	if err != nil {
		return r, err
	}
	f, err := psychro.RecirculatedRoom{
		Fresh:         psychro.Stream{State: fresh, DryAir: v[0] / fresh.SpecificVolume()},
		Recirculated:  v[3],
		Heat:          v[4],
		Water:         v[5] / 3600,
		WaterEnthalpy: psychro.SteamEnthalpy(20),
	}.Solve()
	if err != nil {
		return r, err
	}
	show := func(name string, s psychro.Stream) {
		r.Lines = append(r.Lines, fmt.Sprintf("%-7s %.3f kg/s  %5.2f °C  %2.0f %%  %.2f g/kg", name, s.DryAir, s.State.Temperature(), 100*s.State.RelativeHumidity(), 1000*s.State.HumidityRatio()))
	}
	show("supply", f.Supply.Air)
	show("room", f.Room)
	m := v[0] / fresh.SpecificVolume()
	room := f.Room.State
	r.Steps = []Step{
		{Says: "Dry fresh air.", Formula: "m = V/v", Values: numbers{"V": v[0], "v": fresh.SpecificVolume()}, Value: m, Unit: "kg/s"},
		{Says: "Water of the room's air: what enters and what the crop gives.", Formula: "W_r = W + m_w/(3600 m)", Source: "balance of water", Values: numbers{"W": fresh.HumidityRatio(), "m_w": v[5], "m": m}, Value: room.HumidityRatio(), Unit: "kg/kg"},
		{Says: "Enthalpy of the room's air.", Formula: "h_r = h + (q + m_w h_g/3600)/m", Source: "balance of enthalpy", Values: numbers{"h": fresh.Enthalpy(), "q": v[4], "m_w": v[5], "h_g": psychro.SteamEnthalpy(20), "m": m}, Value: room.Enthalpy(), Unit: "J/kg", Figures: 5},
		{Says: "Temperature of the room.", Symbol: "t_r", Source: "from enthalpy and humidity", Value: room.Temperature(), Unit: "°C"},
		{Says: "Temperature of the supply, fresh and returned air mixed.", Formula: "t_s = (m t + m_r t_r)/(m + m_r)", Values: numbers{"m": m, "m_r": v[3], "t": v[1], "t_r": room.Temperature()}, Value: f.Supply.Air.State.Temperature(), Unit: "°C", Within: 0.03, Why: "the heat capacities of the two airs differ a little"},
	}
	d := page.NewDrawing(0, 0, 420, 170, 420)
	d.Polygon(page.Stroke{Width: 1.5}, 220, 30, 370, 30, 370, 130, 220, 130)
	d.Line(page.Stroke{Arrow: true, Width: 2, Color: css(page.PenOf(0).Color)}, 10, 80, 90, 80)
	d.Line(page.Stroke{Arrow: true, Width: 2, Color: css(page.PenOf(2).Color)}, 110, 80, 220, 80)
	d.Line(page.Stroke{Arrow: true, Width: 2, Color: css(page.PenOf(1).Color)}, 290, 30, 290, 12, 100, 12, 100, 68)
	d.Line(page.Stroke{Arrow: true, Width: 2, Color: css(page.PenOf(1).Color)}, 370, 80, 415, 80)
	d.Circle(page.Stroke{}, 100, 80, 10)
	d.Text(page.Start, 4, 90, fmt.Sprintf("fresh %.1f °C", v[1]))
	d.Text(page.Start, 118, 90, fmt.Sprintf("supply %.1f °C", f.Supply.Air.State.Temperature()))
	d.Text(page.Start, 118, 64, fmt.Sprintf("%.2f kg/s", f.Supply.Air.DryAir))
	d.Text(page.Start, 4, 64, fmt.Sprintf("%.2f kg/s", m))
	d.Text(page.Middle, 195, 18, fmt.Sprintf("led back %.2f kg/s", v[3]))
	d.Text(page.Middle, 295, 92, "room")
	d.Text(page.Middle, 295, 76, fmt.Sprintf("%.1f °C, %.0f %%", room.Temperature(), 100*room.RelativeHumidity()))
	d.Text(page.Middle, 295, 50, fmt.Sprintf("+ %.1f kW, + %.1f kg/h", v[4]/1000, v[5]))
	r.Picture = drawn(d, "Flows of the room", "Fresh air and air led back mix before the room; the room gains heat and vapour and lets the rest out.", "Only the supply changes with the air led back: the room's state follows from fresh air and gains.")
	return r, nil
}
