package figures

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func doorAndLobby() Figure {
	return Figure{
		Name: "door", Title: "What a door costs and a lobby saves", Subject: "moisture and crop", Package: "ventilation", Example: "Example_doorAndLobby",
		Question: "A door is opened forty times a day in frost. What heat goes with it, and what would a lobby save?",
		Sketch:   "Warm air leaves at the top of the open door, cold air comes in at its foot. A lobby has one door shut while the other is open.",
		Given: []Given{
			{"t_i", "inside", "°C", 15, 5, 30},
			{"t_o", "outside", "°C", -5, -30, 4},
			{"w", "width of the door", "m", 0.9, 0.5, 3},
			{"n", "openings a day", "", 40, 1, 200},
			{"V_l", "volume of the lobby", "m³", 5, 2, 40},
		},
		Assumes: []string{"20 s for each opening; a door 2 m tall, a house of 240 m³ with small leaks, 80 % inside and 90 % outside, calm."},
		Change:  []string{"A lobby twice as large saves little more: what counts is that one door is shut."},
		Code:    "solveDoorAndLobby",
		Solve:   solveDoorAndLobby,
	}
}

func solveDoorAndLobby(v []float64) (r Result, err error) {
	inside, err1 := psychro.FromRelativeHumidity(v[0], 0.80, 97300)
	outside, err2 := psychro.FromRelativeHumidity(v[1], 0.90, 97300)
	if err := errors.Join(err1, err2); err != nil {
		return r, err
	}
	door := ventilation.Doorway{Width: v[2], Height: 2, Discharge: ventilation.ExchangeDischarge(v[0], v[1])}
	house := ventilation.DoorCase{
		Door: door, Inside: inside, Outside: outside, Volume: 240,
		Leaks: []ventilation.Leak{{Height: 0.2, Flow: 0.02, Exponent: 0.65}, {Height: 2.8, Flow: 0.02, Exponent: 0.65}},
		Times: int(math.Round(v[3])), Duration: 20 * time.Second,
	}
	l, err := house.WithLobby(ventilation.Lobby{Volume: v[4], Outer: door})
	if err != nil {
		return r, err
	}
	b := l.Bare
	r.Lines = []string{
		fmt.Sprintf("densities                     %.4f inside, %.4f kg/m³ outside", inside.Density(), outside.Density()),
		fmt.Sprintf("through the open door         %.3f kg/s in, %.3f kg/s out", b.In, b.Out),
		fmt.Sprintf("by leaks while it is shut     %.3f kg/s, the door adds %.3f kg/s", b.Shut, b.Extra),
		fmt.Sprintf("its heat                      %.0f W sensible, %.0f W latent", b.Sensible, b.Latent),
		fmt.Sprintf("one opening                   %.0f kJ; %.1f %% of the air; allowed to cool %.0f kJ", b.Each/1e3, 100*b.Exchanged, b.Let/1e3),
		fmt.Sprintf("a day                         %.1f kWh, %.1f kg of vapour", b.Energy/3.6e6, b.Water),
		fmt.Sprintf("the lobby's air               %.2f of the difference before, %.2f once the outer door has been open", l.Before, l.Filled),
		fmt.Sprintf("one passage with it           %.0f kJ of at most %.0f kJ: it saves %.0f %%", l.Passage/1e3, l.Most/1e3, 100*l.Saved),
		fmt.Sprintf("both doors left open          %.0f W: it saves %.0f %%", l.Both, 100*l.Kept),
	}
	r.Steps = []Step{
		{Says: "Air in at the foot of the open door, by the difference of density over its height.", Symbol: "m", Value: b.In, Unit: "kg/s"},
		{Says: "Heat of one opening.", Formula: "Q = 20 (S + L)/1000", Values: numbers{"S": b.Sensible, "L": b.Latent}, Value: b.Each / 1e3, Unit: "kJ"},
		{Says: "Of a day.", Formula: "E = n Q/3600", Values: numbers{"n": float64(house.Times), "Q": b.Each / 1e3}, Value: b.Energy / 3.6e6, Unit: "kWh"},
		{Says: "Saved by the lobby, of one passage.", Formula: "s = 1 - P/Q", Values: numbers{"P": l.Passage / 1e3, "Q": b.Each / 1e3}, Value: l.Saved},
	}
	r.Picture = bars("Heat of one passage", "Two bars: without a lobby and with one.", "%.0f kJ", "One opening of 20 s, and one passage through the lobby.", bar{"door alone", b.Each / 1e3}, bar{"with a lobby", l.Passage / 1e3})
	return r, nil
}
