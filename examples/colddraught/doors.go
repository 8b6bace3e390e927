package main

import (
	"fmt"
	"math"
	"time"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/report"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// passage is the cold air that one passage through a door lets in.
type passage struct {
	Door    string  `json:"door"`
	Outside float64 `json:"outside_c"`
	Air     float64 `json:"outside_air_m3"`
	Layer   float64 `json:"layer_on_the_floor_m"` // while it does not mix
	Mixed   float64 `json:"house_air_once_mixed_c"`
	Chill   bool    `json:"below_limit"`
}

// doors are the passages at each outside temperature in the wind asked for.
func (h *house) doors(of *answers.House) (list []passage, err error) {
	p := h.plan
	inside, err := fromplan.Air(p, h.vents.Inside, p.SetPoints.WinterNight.RelativeHumidity)
	if err != nil {
		return nil, err
	}
	for i, d := range p.House.Doors {
		if d.Open == 0 {
			continue
		}
		for _, t := range h.outside {
			outside, err := fromplan.Air(p, t, p.Site.WinterNight.RelativeHumidity)
			if err != nil {
				return nil, err
			}
			share, err := h.let(of, i, inside, outside)
			if err != nil {
				return nil, fmt.Errorf("house.doors[%d]: %w", i, err)
			}
			one := passage{Door: d.Name, Outside: t, Air: share * h.volume, Layer: share * h.volume / of.Shape.FloorArea}
			one.Mixed = h.vents.Inside - (1-math.Exp(-share))*(h.vents.Inside-t)
			one.Chill = one.Mixed < h.vents.Limit
			list = append(list, one)
		}
	}
	return list, nil
}

// let is the share of the house's air that one passage through door i replaces.
func (h *house) let(of *answers.House, i int, inside, outside psychro.State) (float64, error) {
	p := h.plan
	d := p.House.Doors[i]
	c := ventilation.DoorCase{Door: fromplan.Doorway(p, d), Inside: inside, Outside: outside, Wind: h.wind, Volume: h.volume, Times: 1, Duration: time.Duration(d.Open * float64(time.Second))}
	r, err := c.Loss()
	if err != nil {
		return 0, err
	}
	if volume := of.LobbyVolume(d); volume > 0 {
		if through, err := c.WithLobby(ventilation.Lobby{Volume: volume, Outer: c.Door}); err == nil {
			return r.Exchanged * (1 - through.Saved), nil
		}
	}
	return r.Exchanged, nil
}

// doorTable prints what one passage lets in.
func (d *draught) doorTable(r *report.Report) {
	r.Section("Doors, one passage each")
	if len(d.passed) == 0 {
		r.Note("The plan has no door that opens.")
		return
	}
	var rows [][]string
	for _, x := range d.passed {
		mixed := report.Number(x.Mixed, 1)
		if x.Chill {
			mixed += "!"
		}
		rows = append(rows, []string{x.Door, report.Number(x.Outside, 0), report.Number(x.Air, 1), report.Number(100*x.Layer, 0), mixed})
	}
	r.Table([]string{"door", "outside °C", "outside air m³", "layer on the floor cm", "house air once mixed °C"}, rows)
	r.Note("The air runs in along the floor; what stands in that layer meets it unmixed. The heater is not counted.")
}

// shutHouse is the answer for a plan without vents.
func (d *draught) shutHouse() []string {
	all := []string{fmt.Sprintf("The plan has no vents: nothing opens from which cold air could fall on the crop. Cracks let in %s m³/h on the plan's winter night, spent before they reach it.", report.Number(3600*d.leaks, 0))}
	worst := -1
	for i, x := range d.passed {
		if worst < 0 || x.Layer > d.passed[worst].Layer {
			worst = i
		}
	}
	if worst < 0 {
		return append(all, "No door of the plan opens either.")
	}
	x := d.passed[worst]
	return append(all, fmt.Sprintf("A passage through %q at %s °C outside lets in %s m³, a layer of %s cm on the floor: keep young plants off it and the door shut.",
		x.Door, report.Number(x.Outside, 0), report.Number(x.Air, 1), report.Number(100*x.Layer, 0)))
}
