package fromplan

import (
	"errors"
	"fmt"

	"cloche.example/airheat"
	"cloche.example/examples/internal/plan"
)

var junctions = map[string]airheat.Junction{"none": airheat.NoTee, "straight": airheat.StraightRun, "side": airheat.SideBranch}

// Branches are the ducts of the plan, without what they blow into. A damper
// stands as its loss factor among the fittings.
func Branches(p *plan.Plan) []airheat.Branch {
	at := map[string]int{"fan": -1}
	var list []airheat.Branch
	for i, d := range p.Ducts {
		s := airheat.Segment{Length: d.Length, Roughness: d.Roughness, Fittings: d.Fittings}
		if d.Diameter != nil {
			s.Section = airheat.Round(*d.Diameter)
		} else {
			s.Section = airheat.Rectangular(*d.Width, *d.Height)
		}
		if d.DamperAngle != nil {
			s.Fittings += airheat.DiscDamper(*d.DamperAngle)
		}
		b := airheat.Branch{Name: d.Name, Parent: at[d.From], Segments: []airheat.Segment{s}, Static: d.EndPressure, Junction: junctions[d.Junction]}
		if b.Junction == airheat.SideBranch {
			b.Angle = d.JunctionAngle
		}
		at[d.Name] = i
		list = append(list, b)
	}
	return list
}

// Fan is the heater's fan and how it is driven.
func Fan(p *plan.Plan) (airheat.Fan, airheat.FanDrive, error) {
	f := p.HeaterFan
	drive := airheat.FanDrive{Speed: f.Speed, FanEfficiency: f.Efficiency, MotorEfficiency: f.MotorEfficiency, MotorInStream: f.MotorInAir}
	if f.KnownFrom == "polynomial" {
		fan, err := airheat.NewFanPolynomial(f.FirstFlow, f.LastFlow, f.Coefficients...)
		if err != nil {
			err = fmt.Errorf("heater_fan.coefficients_pa from heater_fan.first_flow_m3_s to last_flow_m3_s: %w", err)
		}
		return fan, drive, err
	}
	fan, err := airheat.NewFanTable(f.Flow, f.Pressure)
	return fan, drive, err
}

// FanFlows are the least and the greatest flow that the fan is known for, m³/s,
// at the speed at which it runs.
func FanFlows(p *plan.Plan) (least, greatest float64) {
	f := p.HeaterFan
	if f.KnownFrom == "polynomial" {
		return f.FirstFlow * f.Speed, f.LastFlow * f.Speed
	}
	return f.Flow[0] * f.Speed, f.Flow[len(f.Flow)-1] * f.Speed
}

// Tube is the perforated tube of the plan; its holes are sized for the evenness
// wanted, with the given supply, unless the plan gives them.
func Tube(p *plan.Plan, supply airheat.TubeSupply) (airheat.PerforatedTube, airheat.TubeFlow, error) {
	t := airheat.DefaultPerforatedTube()
	q := p.PerforatedTube
	t.Diameter, t.Roughness, t.LeadIn, t.Pitch = q.Diameter, q.Roughness, q.LeadIn, q.Pitch
	t.Positions, t.HolesPerRow, t.Discharge, t.HeatTransfer, t.LargestSpread = q.Rows, q.HolesPerRow, q.Discharge, q.WallU, q.Evenness
	if q.HoleDiameter == nil {
		sized, f, err := t.HolesFor(q.Evenness, supply)
		if errors.Is(err, airheat.ErrNoSolution) {
			err = fmt.Errorf("no size of hole lets %.3g m³/s out of this tube as evenly as %g", supply.Flow, q.Evenness)
		}
		return sized, f, err
	}
	t.HoleDiameter = *q.HoleDiameter
	f, err := t.Solve(supply)
	return t, f, err
}

// SoilStore is the plan's store of air tubes in the soil.
func SoilStore(p *plan.Plan) airheat.SoilStore {
	s := airheat.DefaultSoilStore()
	q, soil := p.SoilStore, Soil(p)
	s.Tubes, s.Diameter, s.Length, s.Spacing, s.Depth = q.Tubes, q.Diameter, q.Length, q.Spacing, q.Depth
	s.Roughness, s.Fittings, s.FanEfficiency = q.Roughness, q.Fittings, q.FanEfficiency
	s.SoilConductivity, s.SoilCapacity = soil.Conductivity, soil.HeatCapacity
	return s
}
