package fromplan

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/examples/internal/plan"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

var shelters = map[string]ventilation.Shelter{"exposed": ventilation.Exposed, "semi-sheltered": ventilation.SemiSheltered, "sheltered": ventilation.Sheltered}

var hinges = map[string]ventilation.Hinge{"top": ventilation.TopHinged, "bottom": ventilation.BottomHinged, "side": ventilation.SideHinged}

// RoofPitch is the slope from eave to ridge, degree.
func RoofPitch(h plan.House) float64 {
	run := h.Span / 2
	switch h.Shape {
	case "lean-to":
		run = h.Span
	case "uneven gable":
		run = math.Max(h.RidgeOffset, h.Span-h.RidgeOffset)
	}
	return math.Atan2(h.RidgeHeight-h.EaveHeight, run) * 180 / math.Pi
}

func roofFace(h plan.House) ventilation.WindFace {
	switch pitch := RoofPitch(h); {
	case pitch < 10:
		return ventilation.WindFaceLowRoof
	case pitch <= 30:
		return ventilation.WindFaceMidRoof
	}
	return ventilation.WindFaceSteepRoof
}

// Across is the wind across the house from the left, degree: whence it blows.
func Across(p *plan.Plan) float64 { return p.House.RidgeAzimuth - 90 }

// PressureCoefficient is that of the wind at a place of the house, with the
// wind across it from the left; a ridge vent opens to the lee.
func PressureCoefficient(p *plan.Plan, place string) float64 {
	return PressureIn(p, place, Across(p))
}

// PressureIn is PressureCoefficient in a wind that blows from the azimuth from,
// degree.
func PressureIn(p *plan.Plan, place string, from float64) float64 {
	s, along := shelters[p.Site.Exposure], p.House.RidgeAzimuth
	left, right := ventilation.Incidence(from, along-90), ventilation.Incidence(from, along+90)
	switch place {
	case "left side":
		return s.Coefficient(ventilation.WindFaceWall, left)
	case "right side":
		return s.Coefficient(ventilation.WindFaceWall, right)
	case "near end":
		return s.Coefficient(ventilation.WindFaceWall, ventilation.Incidence(from, along+180))
	case "far end":
		return s.Coefficient(ventilation.WindFaceWall, ventilation.Incidence(from, along))
	case "left roof":
		return s.Coefficient(roofFace(p.House), left)
	case "right roof":
		return s.Coefficient(roofFace(p.House), right)
	}
	return s.Coefficient(roofFace(p.House), max(left, right))
}

// FaceArea is the hole of a vent in wall or roof, m².
func FaceArea(v plan.Vent) float64 { return v.Length * v.Height }

// Openings are the plan's vents, opened to the fraction open of their travel, 0
// to 1; the wind blows across the house from the left. Vents in walls and roofs
// are as tall as they are, so that air can pass one both ways; a vent behind an
// insect screen is cut into points one above another. A shut vent is none.
func Openings(p *plan.Plan, open float64) ([]ventilation.Opening, error) {
	return OpeningsIn(p, open, Across(p))
}

// OpeningsIn is Openings in a wind that blows from the azimuth from, degree.
func OpeningsIn(p *plan.Plan, open, from float64) ([]ventilation.Opening, error) {
	var list []ventilation.Opening
	var faults []error
	for i, v := range p.Vents {
		if v.PressureCoefficient == nil {
			cp := PressureIn(p, v.Place, from)
			v.PressureCoefficient = &cp
		}
		o, err := VentOpenings(p, v, open)
		if err != nil {
			faults = append(faults, fmt.Errorf("vents[%d]: %w", i, err))
		}
		list = append(list, o...)
	}
	return list, errors.Join(faults...)
}

// cut is how many points a screened vent is cut into.
const cut = 4

// VentOpenings are those of one vent, as Openings has them.
func VentOpenings(p *plan.Plan, v plan.Vent, open float64) ([]ventilation.Opening, error) {
	cp := PressureCoefficient(p, v.Place)
	if v.PressureCoefficient != nil {
		cp = *v.PressureCoefficient
	}
	o := ventilation.Opening{Name: v.Name, Height: v.Centre, Vertical: v.Height, Area: FaceArea(v), Discharge: v.Discharge, PressureCoefficient: cp}
	if v.Place == "ridge" || v.Place == "left roof" || v.Place == "right roof" {
		o.Vertical *= math.Sin(RoofPitch(p.House) * math.Pi / 180) // it lies on the slope
	}
	switch v.Kind {
	case "hinged flap":
		h := ventilation.Hinged{Hinge: hinges[v.Hinge], Along: v.Length, Depth: v.Height, Angle: open * v.Angle}
		model := ventilation.AspectExponential
		if h.Hinge == ventilation.SideHinged {
			h.Along, h.Depth = v.Height, v.Length
			model = ventilation.FlapGeometry
		}
		if v.Place == "ridge" {
			h.Blocked = 2 // a run of flaps end to end
		}
		if h.Angle == 0 {
			return nil, nil
		}
		var err error
		if o.Discharge, err = model.Discharge(h, v.Discharge); err != nil {
			return nil, err
		}
	case "louvre":
		o.Discharge *= ventilation.Louvre{Width: v.Length, Height: v.Height, Slats: v.Slats, Thickness: v.SlatThickness, Angle: open * v.Angle}.FreeArea() / o.Area
	default:
		o.Area *= open
		o.Vertical *= open
	}
	if !(o.Area*o.Discharge > 0) {
		return nil, nil
	}
	if v.WellArea != nil && v.Centre < 0 {
		o.Vertical = 0
		well, err := ventilation.Well{Vent: o, Section: *v.WellArea, Discharge: v.Discharge}.Opening()
		return []ventilation.Opening{well}, err
	}
	if v.InsectScreenPorosity == nil {
		return []ventilation.Opening{o}, nil
	}
	return screened(p, v, o)
}

// screened cuts a vent into points and stretches the screen over each.
func screened(p *plan.Plan, v plan.Vent, o ventilation.Opening) ([]ventilation.Opening, error) {
	s, err := ventilation.MiguelScreens.Screen(*v.InsectScreenPorosity, v.InsectScreenThickness)
	if err != nil {
		return nil, err
	}
	list := []ventilation.Opening{o}
	if o.Vertical > 0 {
		list = o.Points(cut)
	}
	for i := range list {
		if list[i], err = s.Over(list[i], FaceArea(v)/float64(len(list)), psychro.Viscosity(p.Site.SummerNoon.Temperature)); err != nil {
			return nil, err
		}
	}
	return list, nil
}

// VentFans are the plan's fans that blow air in or out.
func VentFans(p *plan.Plan) []ventilation.FixedFan { return VentFansIn(p, Across(p)) }

// VentFansIn is VentFans in a wind that blows from the azimuth from, degree.
func VentFansIn(p *plan.Plan, from float64) (list []ventilation.FixedFan) {
	for _, f := range p.VentFans {
		flow := f.Flow
		if f.Blows == "out" {
			flow = -flow
		}
		list = append(list, ventilation.FixedFan{Name: f.Name, Height: f.Centre, Flow: flow, Slope: f.Slope, PressureCoefficient: PressureIn(p, f.Place, from)})
	}
	return list
}

// VentRule moves the vents by the temperature inside; they begin to open at
// start, °C.
func VentRule(p *plan.Plan, start float64) ventilation.OpeningRule {
	c := p.VentControl
	return ventilation.OpeningRule{Start: start, Band: c.Band, DeadBand: c.DeadBand, Step: c.Step, Least: c.Least, Most: c.Most,
		WindLow: c.WindLow, WindHigh: c.WindHigh, WindMost: c.InWind, RainMost: c.InRain}
}

// Doorway is a door of the plan when it stands open.
func Doorway(p *plan.Plan, d plan.Door) ventilation.Doorway {
	return ventilation.Doorway{Width: d.Width, Height: d.Height, Sill: d.Sill, Discharge: openDoor, PressureCoefficient: PressureCoefficient(p, d.Place)}
}

// openDoor is the discharge coefficient of an open door; common practice, no
// source.
const openDoor = 0.6

// Stores are what holds heat in the house. Water counts to the structure.
func Stores(p *plan.Plan, s envelope.Shape) envelope.NodeStores {
	h := p.HeatStorage
	n := envelope.NodeStores{Structure: 1000 * h.Structure / s.FloorArea, SoilDepth: h.SoilDepth, AirStructure: h.AirToStructure, AirSoil: h.AirToSoil}
	for _, w := range h.Water {
		n.Structure += w.Volume * waterCapacity / s.FloorArea
		n.AirStructure += w.Exchange * w.Surface / s.FloorArea
	}
	return n
}

// waterCapacity is the heat capacity of water, J/(m³ K), at 15 °C: 999.1 kg/m³
// of 4186 J/(kg K); from memory.
const waterCapacity = 4.182e6
