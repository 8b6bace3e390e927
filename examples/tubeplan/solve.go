package main

import (
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"cloche.example/airheat"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/input"
	"cloche.example/examples/internal/plan"
)

// longestTable is the size of a fan's table in bytes.
const longestTable = 1 << 16

// withFan puts the table of a file into the plan.
func withFan(p plan.Filled, file string, in io.Reader) (plan.Filled, error) {
	if file == "" {
		return p, nil
	}
	text, err := input.Text(file, in, longestTable)
	if err != nil {
		return p, err
	}
	var flow, pressure []float64
	for i, line := range strings.Split(string(text), "\n") {
		words := strings.FieldsFunc(line, func(r rune) bool { return r == ' ' || r == '\t' || r == ',' || r == ';' })
		if len(words) == 0 || strings.HasPrefix(words[0], "#") {
			continue
		}
		if len(words) != 2 {
			return p, fmt.Errorf("%s: line %d holds %d numbers; a flow and a pressure are wanted", input.Name(file), i+1, len(words))
		}
		q, e1 := strconv.ParseFloat(words[0], 64)
		dp, e2 := strconv.ParseFloat(words[1], 64)
		if err := errors.Join(e1, e2); err != nil {
			return p, fmt.Errorf("%s: line %d: %q is no pair of numbers", input.Name(file), i+1, strings.TrimSpace(line))
		}
		flow, pressure = append(flow, q), append(pressure, dp)
	}
	if len(p.Ducts) == 0 {
		return p, errors.New("-fan-table: the plan has no ducts that the fan could blow into")
	}
	return p.With(plan.Figure{Path: "heater_fan.known_from", Value: "table"}, plan.Figure{Path: "heater_fan.flow_m3_s", Value: flow}, plan.Figure{Path: "heater_fan.pressure_pa", Value: pressure})
}

// tube is the planned tube.
type tube struct {
	plan    *plan.Plan
	assumed bool           // the plan has no tube: one of the defaults stands for it
	agreed  bool           // fan, ducts and tube are solved together
	wanted  float64        // m³/s, that the plan states, of warm air for one tube
	blown   fromplan.Blown // where they agree, or the tube alone at the stated flow
}

// solve finds where fan, ducts and tube agree; without a fan, or without a duct
// that ends in a tube, the tube is solved alone at the heater's stated flow.
func solve(p plan.Filled) (tube, error) {
	t := tube{plan: &p.Plan}
	if p.PerforatedTube == nil {
		t.assumed = true
		var err error
		if p, err = p.With(plan.Figure{Path: "perforated_tube.pitch_m", Value: 0.4}); err != nil {
			return t, err
		}
		t.plan = &p.Plan
	}
	inside := p.SetPoints.WinterNight
	ends := 0
	for _, d := range p.Ducts {
		if d.EndsIn == "perforated tube" {
			ends++
		}
	}
	air, err := fromplan.Air(t.plan, inside.Temperature, inside.RelativeHumidity)
	if err != nil {
		return t, err
	}
	duty, err := airheat.RiseFor(air, fromplan.HeaterFlow(t.plan), p.Heater.Power)
	if err != nil {
		return t, fmt.Errorf("heater.power_w of %g W into heater.flow_m3_s of %g m³/s is too much for air: it would leave hotter than some 200 °C, where the formulas end", p.Heater.Power, p.Heater.Flow)
	}
	t.wanted = duty.OutletFlow / float64(max(1, ends))
	if p.HeaterFan != nil && ends > 0 {
		t.agreed = true
		if t.blown, err = fromplan.Blow(t.plan, p.Heater.Power, inside.Temperature); err != nil {
			return t, err
		}
		return t, t.checkJet()
	}
	supply := airheat.TubeSupply{Flow: t.wanted, Temperature: duty.Outlet, House: inside.Temperature, Properties: airheat.DryAir(duty.Outlet, fromplan.Pressure(t.plan))}
	sized, flow, err := fromplan.Tube(t.plan, supply)
	if err != nil {
		return t, fmt.Errorf("perforated_tube: %w", err)
	}
	t.blown = fromplan.Blown{Tube: &sized, TubeFlow: flow, Supply: duty.Outlet, Outlet: t.wanted, Tubes: 1}
	return t, t.checkJet()
}

// checkJet says by the plan's keys why a hole's jet cannot be computed.
func (t tube) checkJet() error {
	j := t.jet()
	if err := j.Check(); err != nil && j.Excess > 100 {
		return fmt.Errorf("heater.power_w of %g W leaves the air in the tube %.0f K warmer than the house: too much for the formulas of a jet", t.plan.Heater.Power, j.Excess)
	} else if err != nil {
		return fmt.Errorf("perforated_tube, the jet of a hole: %w", err)
	}
	return nil
}

func (t tube) jet() airheat.Jet {
	return fromplan.HoleJet(t.blown, t.plan.SetPoints.WinterNight.Temperature)
}

// near is how far from the wanted evenness still counts as even: the holes are
// sized for the stated flow, and the flow found differs from it.
const near = 2e-3

// even tells whether the tube is as even as wanted.
func (t tube) even() bool {
	return t.blown.TubeFlow.Evenness >= t.plan.PerforatedTube.Evenness-near
}

func (t tube) warnings() []string {
	judged := *t.blown.Tube
	judged.LargestSpread -= near
	all := judged.Warnings(t.blown.TubeFlow)
	if t.blown.Rising {
		all = append(all, "The fan's pressure rises with the flow at the operating point: it may hunt.")
	}
	if t.blown.Crossing > 1 {
		all = append(all, fmt.Sprintf("Fan and ducts agree at %d flows; the greatest is taken.", t.blown.Crossing))
	}
	for _, s := range airheat.DefaultSupplyLimits().Warnings(t.blown.Supply) {
		all = append(all, s+"; a jet is cooler further on.")
	}
	return all
}
