package answers

import (
	"fmt"
	"time"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/ventilation"
)

// Door is what passages through a door take in the mean of the heated months.
type Door struct {
	Name  string  `json:"name"`
	Each  float64 `json:"heat_per_passage_wh"`
	Daily float64 `json:"heat_per_day_kwh"`
	Lobby bool    `json:"has_lobby"`
	Saved float64 `json:"lobby_saves_fraction"` // one door open at a time
}

// Doors takes the house as closed but for the door. A lobby is as long as its
// annex and passed with one door open at a time.
func (h *House) Doors(air envelope.HouseAir) ([]Door, error) {
	var list []Door
	p := h.Plan
	for i, d := range p.House.Doors {
		c := ventilation.DoorCase{
			Door: fromplan.Doorway(p, d), Inside: air.Inside, Outside: air.Outside, Wind: p.Site.HeatingSeason.Wind,
			Volume: h.Shape.Volume, Times: int(d.OpeningsPerDay + 0.5), Duration: time.Duration(d.Open * float64(time.Second)),
		}
		r := Door{Name: d.Name}
		if c.Duration > 0 {
			lost, err := c.Loss()
			if err != nil {
				return nil, fmt.Errorf("house.doors[%d]: %w", i, err)
			}
			r.Each, r.Daily = lost.Each/3600, lost.Each*d.OpeningsPerDay/joulesPerKWh
			if volume := h.LobbyVolume(d); volume > 0 {
				r.Lobby = true
				through, err := c.WithLobby(ventilation.Lobby{Volume: volume, Outer: c.Door})
				if err == nil {
					r.Saved = through.Saved
					r.Each, r.Daily = through.Passage/3600, through.Passage*d.OpeningsPerDay/joulesPerKWh
				}
			}
		}
		list = append(list, r)
	}
	return list, nil
}

// LobbyVolume is that of the annex through which the door is passed, m³; 0 for none.
func (h *House) LobbyVolume(d plan.Door) float64 {
	if a := annex(h.Plan, d.Lobby); a >= 0 {
		return h.Shape.Annexes[a].Volume
	}
	return 0
}

// annex is the place of the annex of that name, -1 for none.
func annex(p *plan.Plan, name string) int {
	for i, a := range p.House.Annexes {
		if a.Name == name {
			return i
		}
	}
	return -1
}
