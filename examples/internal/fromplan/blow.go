package fromplan

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/airheat"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/solve"
)

// Blown is the heater's air where fan, ducts and tube agree. The fan draws air
// of the house; ducts and tube carry it as warm as the heater leaves it.
type Blown struct {
	Inlet    float64                 // m³/s, through the fan, of house air
	Outlet   float64                 // m³/s, in the ducts, of warm air
	Supply   float64                 // °C, leaving the heater
	Pressure float64                 // Pa, that the fan gives
	Crossing int                     // count of flows at which fan and ducts agree; the greatest is taken
	Rising   bool                    // the fan's pressure rises with the flow there: it may hunt
	Electric float64                 // W, that the fan draws
	Warming  float64                 // W, of it into the air
	Ducts    airheat.TreeFlow        // flows and losses of the branches
	Tube     *airheat.PerforatedTube // with its holes; nil without one
	TubeFlow airheat.TubeFlow        // along one tube
	Tubes    int                     // count of branches that end in such a tube
	Rounds   int                     // count of times that ducts and tube were solved in turn
}

// Blow solves fan, ducts and tube together, with the heater giving power, W, to
// air of the house at t, °C. The plan must have a fan and ducts. Holes that the
// plan does not give are sized for the flow that it states for the heater,
// shared evenly by the tubes.
func Blow(p *plan.Plan, power, t float64) (Blown, error) {
	var b Blown
	fan, drive, err := Fan(p)
	if err != nil {
		return b, err
	}
	house := airheat.DryAir(t, Pressure(p))
	least, greatest := FanFlows(p)
	b.Inlet = min(max(p.Heater.Flow, least), greatest)
	if err := b.size(p, house, t, power); err != nil {
		return b, err
	}
	k := make([]float64, len(p.Ducts)) // loss factors of what branches end in
	for b.Rounds = 1; b.Rounds <= 12; b.Rounds++ {
		branches := Branches(p)
		for i := range branches {
			branches[i].Segments[0].Fittings += k[i]
		}
		tree, err := airheat.NewTree(branches...)
		if err != nil {
			return b, err
		}
		needs := func(q float64) float64 {
			warm, flow := heated(p, house, t, power, q)
			f, err := tree.Solve(flow, warm)
			if err != nil {
				return math.NaN()
			}
			return f.Pressure
		}
		before := b.Inlet
		if err := b.cross(func(q float64) float64 { return fan.Pressure(q, drive.Speed, house.Density) - needs(q) }, least, greatest); err != nil {
			return b, err
		}
		warm, flow := heated(p, house, t, power, b.Inlet)
		b.Outlet, b.Supply = flow, temperature(house, t, power, b.Inlet)
		if b.Ducts, err = tree.Solve(flow, warm); err != nil {
			return b, err
		}
		settled := b.Rounds > 1 && math.Abs(b.Inlet-before) <= 1e-6*b.Inlet
		if settled {
			break
		}
		if err := b.ends(p, k, warm, t); err != nil {
			return b, err
		}
	}
	b.Pressure = fan.Pressure(b.Inlet, drive.Speed, house.Density)
	b.Rising = fan.Pressure(min(1.01*b.Inlet, greatest), drive.Speed, house.Density) > b.Pressure
	shaft := b.Inlet * b.Pressure / drive.FanEfficiency
	b.Electric, b.Warming = shaft/drive.MotorEfficiency, shaft
	if drive.MotorInStream {
		b.Warming = b.Electric
	}
	return b, nil
}

// heated is the warm air, and its flow, of q m³/s of house air.
func heated(p *plan.Plan, house airheat.AirProperties, t, power, q float64) (airheat.AirProperties, float64) {
	warm := airheat.DryAir(temperature(house, t, power, q), Pressure(p))
	return warm, q * house.Density / warm.Density
}

// hottest is as warm as air is taken to leave a heater, °C; a fan that gives
// less flow meets the heater's own limit first.
const hottest = 150

func temperature(house airheat.AirProperties, t, power, q float64) float64 {
	return min(t+power/(q*house.Density*house.HeatCapacity), hottest)
}

// cross finds the greatest flow at which the fan gives what is needed.
func (b *Blown) cross(spare func(q float64) float64, least, greatest float64) error {
	const steps = 24
	low := max(least, 1e-3*greatest)
	q := func(i int) float64 { return low + (greatest-low)*float64(i)/steps }
	right := spare(q(steps))
	if right > 0 {
		return fmt.Errorf("heater_fan: at its greatest flow of %.3g m³/s it still gives %.0f Pa more than the ducts take; its table must go on to greater flows", greatest, right)
	}
	b.Crossing = 0
	var at float64
	for i := steps - 1; i >= 0; i-- {
		left := spare(q(i))
		if (left > 0) != (right > 0) {
			if b.Crossing++; b.Crossing == 1 {
				root, err := solve.Root(spare, q(i), q(i+1), 1e-9*greatest)
				if err != nil {
					return err
				}
				at = root
			}
		}
		right = left
	}
	if b.Crossing == 0 {
		return errors.New("heater_fan: it cannot move air through these ducts: at no flow does it give the pressure that they take")
	}
	b.Inlet = at
	return nil
}

// size fixes the holes of the tubes.
func (b *Blown) size(p *plan.Plan, house airheat.AirProperties, t, power float64) error {
	for _, d := range p.Ducts {
		if d.EndsIn == "perforated tube" {
			b.Tubes++
		}
	}
	if b.Tubes == 0 {
		return nil
	}
	warm, flow := heated(p, house, t, power, b.Inlet)
	tube, _, err := Tube(p, airheat.TubeSupply{Flow: flow / float64(b.Tubes), Temperature: temperature(house, t, power, b.Inlet), House: t, Properties: warm})
	if err != nil {
		return fmt.Errorf("perforated_tube: %w", err)
	}
	b.Tube = &tube
	return nil
}

// ends sets the loss factors of what the branches end in, at the flows that they
// carry.
func (b *Blown) ends(p *plan.Plan, k []float64, warm airheat.AirProperties, house float64) error {
	for i, d := range p.Ducts {
		flow := b.Ducts.Branches[i].Flow
		section := Branches(p)[i].Segments[0].Section
		head := warm.Density * math.Pow(flow/section.Area(), 2) / 2
		switch {
		case flow <= 0:
		case d.EndsIn == "perforated tube":
			along, err := b.Tube.Solve(airheat.TubeSupply{Flow: flow, Temperature: b.Supply, House: house, Properties: warm})
			if err != nil {
				return fmt.Errorf("perforated_tube: %w", err)
			}
			b.TubeFlow, k[i] = along, along.FanTotal/head
		case d.EndsIn == "soil store":
			s := SoilStore(p)
			loss := airheat.Segment{Section: airheat.Round(s.Diameter), Length: s.Length, Roughness: s.Roughness, Fittings: s.Fittings}.Loss(flow/float64(s.Tubes), warm)
			k[i] = loss.Total / head
		}
	}
	return nil
}

// HoleJet is the jet of a tube's last hole, level, at house air of t, °C, as
// warm as the first row's air: strongest and warmest together.
func HoleJet(b Blown, t float64) airheat.Jet {
	rows := b.TubeFlow.Positions
	j := airheat.DefaultJet(airheat.RoundJet)
	j.Size = b.Tube.HoleDiameter * math.Sqrt(math.Pi/4*b.Tube.Discharge) // where it is narrowest
	j.Speed, j.Excess, j.House = rows[len(rows)-1].JetSpeed, rows[0].Temperature-t, t
	return j
}
