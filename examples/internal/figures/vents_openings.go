package figures

import (
	"fmt"
	"math"

	"cloche.example/examples/internal/page"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func hingedVent() Figure {
	return Figure{
		Name: "flap", Title: "What a flap lets through", Subject: "vents and wind", Package: "ventilation", Example: "Example_hingedVent",
		Question: "A ridge flap opens by an angle. What is its free area, and what do three published models make of it?",
		Sketch:   "A flap hinged at its top. Air passes below its front edge and through the two triangles at its sides, then through the frame.",
		Given: []Given{
			{"l", "along the hinge", "m", 1.2, 0.2, 30},
			{"d", "depth", "m", 0.8, 0.1, 3},
			{"α", "opened by", "degree", 30, 1, 90},
		},
		Assumes: []string{"Both sides free; 0.6 for the sharp edge. The last line is another vent, 30 m long, with both sides blocked."},
		Change:  []string{"Open it wide: beyond 60 degree the frame rules and little is gained."},
		Code:    "solveHingedVent",
		Solve:   solveHingedVent,
	}
}

func solveHingedVent(v []float64) (r Result, err error) {
	h := ventilation.Hinged{Hinge: ventilation.TopHinged, Along: v[0], Depth: v[1], Angle: v[2]}
	a, err := h.Area()
	if err != nil {
		return r, err
	}
	stroke := ventilation.FlapStroke(h.Angle, h.Depth)
	r.Lines = []string{
		fmt.Sprintf("stroke 2 d sin(a/2)      %.4f m", stroke),
		fmt.Sprintf("front s l                %.4f m²", a.Front),
		fmt.Sprintf("two side triangles       %.4f m²", a.Sides),
		fmt.Sprintf("in series with the frame %.4f m² of %.4f m²", a.Free, a.Frame),
	}
	var curves []curve
	for m, name := range []string{"aspect-class exponential", "EN 16798 polynomial", "geometry"} {
		cd, err := ventilation.HingedModel(m).Discharge(h, 0.6)
		if err != nil {
			return r, err
		}
		r.Lines = append(r.Lines, fmt.Sprintf("Cd on the frame, %-24s %.3f", name, cd))
		curves = append(curves, curve{name, along(1, 90, 89, func(angle float64) float64 {
			at := h
			at.Angle = angle
			cd, err := ventilation.HingedModel(m).Discharge(at, 0.6)
			if err != nil {
				return math.NaN()
			}
			return cd
		})})
	}
	long := ventilation.Hinged{Along: 30, Depth: 0.8, Angle: 20, Blocked: 2}
	byDefault, err1 := ventilation.DefaultHingedModel().Discharge(long, 0.6)
	byAspect, err2 := ventilation.AspectExponential.Discharge(long, 0.6)
	r.Lines = append(r.Lines, fmt.Sprintf("a long ridge vent at 20 degrees: %.3f by %v, %.3f by %v %v %v", byDefault, ventilation.DefaultHingedModel(), byAspect, ventilation.AspectExponential, err1, err2))
	r.Steps = []Step{
		{Says: "How far the front edge moves.", Formula: "s = 2 d sin(α/2)", Values: numbers{"d": v[1], "α": v[2]}, Value: stroke, Unit: "m"},
		{Says: "Gap below the front edge.", Formula: "A_f = s l", Values: numbers{"s": stroke, "l": v[0]}, Value: a.Front, Unit: "m²"},
		{Says: "The two triangles at the sides.", Formula: "A_s = d^2 sin(α)", Values: numbers{"d": v[1], "α": v[2]}, Value: a.Sides, Unit: "m²"},
		{Says: "One after the other, gap and frame.", Formula: "A = 1/sqrt(1/(A_f + A_s)^2 + 1/A_0^2)", Values: numbers{"A_f": a.Front, "A_s": a.Sides, "A_0": a.Frame}, Value: a.Free, Unit: "m²"},
	}
	r.Picture, err = chart{title: "Discharge against the angle, three models", says: "Three curves of the discharge coefficient on the frame that rise with the angle of the flap and part at middle angles.", x: "opened by, degree", y: "Cd on the frame", zero: true, curves: curves}.picture("Three published models of the same flap.")
	return r, err
}

func pads() Figure {
	return Figure{
		Name: "pad-wall", Title: "A wall of wet pads", Subject: "summer", Package: "ventilation", Example: "Example_evaporativePads",
		Question: "Hot dry air is drawn through wet pads. How cool does it come in, and how much water does that take?",
		Source:   "Hundy16, example 22.1",
		Sketch:   "Outside air, a wall of pads, fans behind. The air goes a part of the way to its wet bulb.",
		Given: []Given{
			{"t_0", "outside", "°C", 37, 15, 50},
			{"t_w", "its wet bulb", "°C", 21.5, 2, 35},
			{"η", "efficiency of the pads", "fraction", 0.75, 0.1, 0.98},
			{"A", "area of the pads", "m²", 6, 1, 100},
			{"V", "flow", "m³/s", 7.2, 0.5, 200},
		},
		Assumes: []string{"Air at sea level; pads made for 1.2 m/s, water bled so that salts stay below four times those of the supply. The source gives air and efficiency; area and flow are ours."},
		Change:  []string{"Raise the wet bulb to 30 °C: on a damp day pads do little."},
		Code:    "solvePads",
		Solve:   solvePads,
	}
}

func solvePads(v []float64) (r Result, err error) {
	outside, err := psychro.FromWetBulb(v[0], v[1], 101325)
	if err != nil {
		return r, err
	}
	if u := v[4] / v[3]; u < 0.1 || u > 3 {
		return r, fmt.Errorf("flow over area of the pads: %.3g m/s at their face, where 0.1 to 3 m/s will do", u)
	}
	wall := ventilation.PadWall{Area: v[3], Efficiency: v[2], Speed: 1.2, Cycles: 4}
	c, err := wall.Cool(outside, v[4])
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("face speed           V/A                    %.2f m/s", c.Speed),
		fmt.Sprintf("depression           t0 - twb               %.2f K", v[0]-c.WetBulb),
		fmt.Sprintf("behind the pads      t0 - eta (t0 - twb)    %.3f °C (printed 25.4 °C)", c.Supply.Temperature()),
		fmt.Sprintf("relative humidity    from %.2f to            %.2f", outside.RelativeHumidity(), c.Supply.RelativeHumidity()),
		fmt.Sprintf("dry air              V/v                    %.3f kg/s", c.DryAir),
		fmt.Sprintf("sensible cooling     m c (t0 - t)           %.1f kW", c.Cooling/1000),
		fmt.Sprintf("water evaporated     m (W - W0)             %.1f kg/h", 3600*c.Evaporated),
		fmt.Sprintf("bleed                E/(cycles - 1)         %.1f kg/h", 3600*c.Bled),
	}
	r.Printed = "25.4 °C behind the pads."
	r.Steps = []Step{
		{Says: "Speed at the face of the pads.", Formula: "u = V/A", Values: numbers{"V": v[4], "A": v[3]}, Value: c.Speed, Unit: "m/s"},
		{Says: "Behind the pads.", Formula: "t = t_0 - η (t_0 - t_w)", Source: "Hundy16 ex. 22.1", Values: numbers{"t_0": v[0], "t_w": v[1], "η": v[2]}, Value: c.Supply.Temperature(), Unit: "°C", Within: 1e-6, Why: "the wet bulb is found again from the state"},
		{Says: "Dry air that passes.", Formula: "m = V/v_0", Values: numbers{"V": v[4], "v_0": outside.SpecificVolume()}, Value: c.DryAir, Unit: "kg/s"},
		{Says: "Water that evaporates.", Formula: "E = 3600 m (W - W_0)", Values: numbers{"m": c.DryAir, "W": c.Supply.HumidityRatio(), "W_0": outside.HumidityRatio()}, Value: 3600 * c.Evaporated, Unit: "kg/h"},
		{Says: "Water bled to keep salts down.", Formula: "B = E/(4 - 1)", Values: numbers{"E": 3600 * c.Evaporated}, Value: 3600 * c.Bled, Unit: "kg/h"},
	}
	r.Picture, err = airChart("Path through the pads", "On the moist-air chart the air goes along its wet bulb towards saturation.", "The longer the way to the saturation line, the more the pads can do.", 101325, airOf("outside", outside), airOf("behind the pads", c.Supply))
	return r, err
}

func lobbyZones() Figure {
	return Figure{
		Name: "lobby", Title: "A house and its lobby, both doors ajar", Subject: "vents and wind", Package: "ventilation", Example: "Example_lobbyAsAZone",
		Question: "Wind blows on the lobby's door, and both doors are open. How much air passes through the house?",
		Sketch:   "Outside, lobby, house, one after the other, and a ridge vent; three air spaces of three densities.",
		Given: []Given{
			{"w", "width of each door", "m", 0.9, 0.3, 3},
			{"U", "wind", "m/s", 2, 0, 15},
			{"A", "ridge vent", "m²", 0.5, 0.01, 10},
		},
		Assumes: []string{"Doors 2 m tall; densities of 1.25, 1.22 and 1.19 kg/m³ outside, in the lobby and in the house; pressure coefficients of 0.4 at the door and -0.4 at the ridge."},
		Change:  []string{"Shut the ridge nearly: the doors then exchange air both ways by themselves."},
		Code:    "solveLobbyZones",
		Solve:   solveLobbyZones,
	}
}

func solveLobbyZones(v []float64) (r Result, err error) {
	door := ventilation.Doorway{Width: v[0], Height: 2, Discharge: 0.6, PressureCoefficient: 0.4}
	ridge := ventilation.Opening{Name: "ridge", Height: 3, Area: v[2], Discharge: 0.6, PressureCoefficient: -0.4}
	zones, err := ventilation.NewZones(2, []ventilation.Link{
		{A: ventilation.OutsideZone, B: 0, Element: door.Opening()},
		{A: 0, B: 1, Element: door.Opening()},
		{A: 1, B: ventilation.OutsideZone, Element: ridge},
	})
	if err != nil {
		return r, err
	}
	b, err := zones.Solve(ventilation.ZoneConditions{ZoneDensities: []float64{1.22, 1.19}, OutsideDensity: 1.25, Wind: v[1]})
	if err != nil {
		return r, err
	}
	for i, name := range []string{"outer door", "inner door", "ridge"} {
		r.Lines = append(r.Lines, fmt.Sprintf("%-11s %.3f kg/s in, %.3f kg/s back", name, b.Links[i].In, b.Links[i].Out))
		r.Steps = append(r.Steps, Step{Says: "Net flow through the " + name + ": the same at all three.", Formula: "m = i - o", Values: numbers{"i": b.Links[i].In, "o": b.Links[i].Out}, Value: b.Links[i].In - b.Links[i].Out, Unit: "kg/s"})
	}
	r.Lines = append(r.Lines, fmt.Sprintf("pressure    %.2f Pa in the lobby, %.2f Pa in the house", b.Pressure[0], b.Pressure[1]))
	// dp of the ridge, inside less outside, at its height
	dp := (b.Pressure[1] - 1.19*9.80665*3) - (1.25*v[1]*v[1]/2*-0.4 - 1.25*9.80665*3)
	r.Steps = append(r.Steps, Step{Says: "Pressure across the ridge vent, from the house outward.", Formula: "P_r = P_h + (1.25 - 1.19) 9.80665 · 3 + 0.4 · 1.25 U^2/2", Values: numbers{"P_h": b.Pressure[1], "U": v[1]}, Value: dp, Unit: "Pa"})
	r.Picture = lobbyPicture(b)
	return r, nil
}

func lobbyPicture(b ventilation.ZoneBalance) Picture {
	d := page.NewDrawing(-7.2, -0.5, 7.6, 5, 420)
	d.Line(page.Stroke{Width: 0.8}, -7.2, 0, 7.6, 0)
	d.Line(page.Stroke{Width: 1.6}, -2.4, 2, -2.4, 2.4, 0, 2.4)
	d.Line(page.Stroke{Width: 1.6}, 0, 2, 0, 2.5, 3.2, 3.4)
	d.Line(page.Stroke{Width: 1.6}, 3.6, 3.4, 6.8, 2.5, 6.8, 0)
	for i, x := range []float64{-2.4, 0} {
		d.Line(page.Stroke{Width: 1, Dash: "3 3"}, x, 0, x, 2) // the open door
		in, out := b.Links[i].In, b.Links[i].Out
		if in > 0 {
			d.Line(cool, x-0.9, 0.5, x+0.9, 0.5)
		}
		if out > 0 {
			d.Line(warm, x+0.6, 1.7, x-0.6, 1.7)
		}
		side, anchor := x-1.1, page.End
		if i == 1 {
			side, anchor = x+1.1, page.Start
		}
		d.Text(anchor, side, 0.35, fmt.Sprintf("in %.3f kg/s", in))
		d.Text(anchor, side, 1.55, fmt.Sprintf("back %.3f kg/s", out))
	}
	if b.Links[2].In > 0 {
		d.Line(warm, 3.4, 2.8, 3.4, 4.3)
		d.Text(page.Start, 3.7, 4, fmt.Sprintf("out %.3f kg/s", b.Links[2].In))
	} else {
		d.Line(cool, 3.4, 4.3, 3.4, 2.8)
		d.Text(page.Start, 3.7, 4, fmt.Sprintf("in %.3f kg/s", b.Links[2].Out))
	}
	d.Text(page.Middle, -1.2, 2.6, fmt.Sprintf("lobby %.2f Pa", b.Pressure[0]))
	d.Text(page.Middle, 4.9, 2.2, fmt.Sprintf("house %.2f Pa", b.Pressure[1]))
	return drawn(d, "House and lobby in section", "From the left: outside, lobby and house. Air passes in at both doors, a little comes back above it, the rest leaves at the ridge.", "What goes back at the doors passes above what comes in below.")
}
