// Command airorwater sets two ways of heating a house side by side: air in ducts
// and water in pipes, for the heat that the house needs on its design night.
//
//	go run ./examples/airorwater
//	go run ./examples/airorwater -plan house.json -figure airorwater.svg
//	go run ./examples/airorwater -load 20000 -air-pressure 150 -outside -20
package main

import (
	"context"
	"errors"
	"io"
	"os"
	"strings"

	"cloche.example/airheat"
	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/domain"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	f := frame.New("airorwater", "airorwater compares air and water as carriers of a house's heat.", "electricity, response and store of both")
	load := f.Float64("load", 0, "heat wanted in the house, `W`, 1 to 1e8; without it what the house needs on its design night")
	f.Figure("inside", "set_points.winter_night.temperature_c", "inside air")
	f.Figure("outside", "site.winter_night.temperature_c", "outside air")
	for _, c := range []string{"air", "water"} {
		f.Figure(c+"-supply", c+"_circuit.supply_c", c+" leaving the heater")
		f.Figure(c+"-return", c+"_circuit.return_c", c+" coming back")
		f.Figure(c+"-pressure", c+"_circuit.pressure_pa", c+" circuit's pressure loss")
		f.Figure(c+"-efficiency", c+"_circuit.efficiency_fraction", "from electricity to "+c+" power")
		f.Figure(c+"-volume", c+"_circuit.volume_m3", c+" in the circuit")
		f.Figure(c+"-loss", c+"_circuit.wall_loss_w_k", c+" circuit's loss outdoors")
	}
	f.Figure("water-stopped-loss", "water_circuit.stopped_loss_w_k", "stopped pipes to the outside")
	return f.Run(args, os.Stdin, out, problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		var given *float64
		if f.Given("load") {
			given = load
		}
		c, err := compare(&p.Plan, given)
		if err != nil {
			return frame.Answer{}, err
		}
		return frame.Answer{Text: write(c), Data: data(c), Warnings: c.warnings(), Draw: c.draw}, nil
	})
}

// comparison is both ways for the same load.
type comparison struct {
	plan       *plan.Plan
	asked      airheat.AirOrWater
	given      bool // the load
	air, water airheat.CarrierResult
}

// compare takes the load that was given, or what the house needs on the worse
// of a wet and a dry design night.
func compare(p *plan.Plan, load *float64) (comparison, error) {
	c := comparison{plan: p, given: load != nil}
	if c.given {
		if err := (domain.Range{Min: 1, Max: 1e8, Unit: "W"}).Check("-load", *load); err != nil {
			return c, err
		}
		c.asked.Load = *load
	} else {
		house, err := answers.NewHouse(p)
		if err != nil {
			return c, err
		}
		wet, dry, err := house.Nights()
		if err != nil {
			return c, err
		}
		if c.asked.Load = answers.Worse(wet, dry).Total; !(c.asked.Load >= 1) {
			return c, errors.New("the house needs no heat on its design night; -load gives one")
		}
	}
	c.asked.House, c.asked.Outside = p.SetPoints.WinterNight.Temperature, p.Site.WinterNight.Temperature
	a, w := p.AirCircuit, p.WaterCircuit
	warm := airheat.DryAir(a.Supply, fromplan.Pressure(p))
	c.asked.ByAir = airheat.Carrier{Supply: a.Supply, Return: a.Return, HeatCapacity: warm.HeatCapacity, Density: warm.Density, Pressure: a.Pressure,
		Efficiency: a.Efficiency, WallLoss: a.WallLoss, Volume: a.Volume, Metal: 1000 * a.Metal}
	c.asked.ByWater = airheat.DefaultWaterCarrier()
	q := &c.asked.ByWater
	q.Supply, q.Return, q.Pressure, q.Efficiency, q.WallLoss, q.Volume, q.Metal, q.Frost = w.Supply, w.Return, w.Pressure, w.Efficiency, w.WallLoss, w.Volume, 1000*w.Metal, w.StoppedLoss
	var err error
	if c.air, c.water, err = c.asked.Solve(); err != nil {
		return c, inKeys(err)
	}
	return c, nil
}

// inKeys puts the fields of a comparison's faults in the words of the plan.
func inKeys(err error) error {
	switch e := err.(type) {
	case *domain.RangeError:
		named := *e
		named.Field, named.Source = asKeys.Replace(e.Field), asKeys.Replace(e.Source)
		return &named
	case interface{ Unwrap() []error }:
		var all []error
		for _, one := range e.Unwrap() {
			all = append(all, inKeys(one))
		}
		return errors.Join(all...)
	}
	return err
}

var asKeys = strings.NewReplacer("ByAir.", "air_circuit.", "ByWater.", "water_circuit.", "Supply", "supply_c", "Return", "return_c",
	"House", "set_points.winter_night.temperature_c", "Outside", "site.winter_night.temperature_c",
	"Pressure", "pressure_pa", "Efficiency", "efficiency_fraction", "Volume", "volume_m3", "WallLoss", "wall_loss_w_k", "Frost", "stopped_loss_w_k")

// warnings are those of the supply air and of the frost.
func (c comparison) warnings() (all []string) {
	for _, w := range airheat.DefaultSupplyLimits().Warnings(c.asked.ByAir.Supply) {
		all = append(all, w+".")
	}
	if c.water.CoolToFreezing != airheat.Forever {
		all = append(all, "Stopped, the water reaches 0 °C in "+span(c.water.CoolToFreezing)+".")
	}
	return all
}
