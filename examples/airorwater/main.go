// Command airorwater sets two ways of heating the demo house side by side: air
// in ducts and water in pipes, for the same load.
//
//	go run ./examples/airorwater
//	go run ./examples/airorwater -load 20000 -air-pressure 150 -outside -20
package main

import (
	"errors"
	"io"
	"math"
	"os"
	"strings"
	"time"

	"cloche.example/airheat"
	"cloche.example/internal/demo"
	"cloche.example/internal/program"
	"cloche.example/internal/report"
)

func main() { os.Exit(run(os.Args[1:], os.Stdout, os.Stderr)) }

// run is main with its streams; the result is the exit status.
func run(args []string, out, problems io.Writer) int {
	a := airheat.AirOrWater{
		Load: demo.HeaterPower, House: demo.Inside, Outside: demo.OutsideDesign,
		Air: airheat.DefaultAirCarrier(), Water: airheat.DefaultWaterCarrier(),
	}
	a.Air.Volume, a.Air.Metal, a.Air.WallLoss = 4, 60e3, 6
	a.Water.Volume, a.Water.Metal, a.Water.WallLoss, a.Water.Frost = 0.22, 150e3, 3, 45
	f := program.New("airorwater", "airorwater compares air and water as carriers of the demo house's heat.")
	f.Float64Var(&a.Load, "load", a.Load, "heat wanted in the house, `W`")
	f.Float64Var(&a.House, "house", a.House, "house air, `°C`")
	f.Float64Var(&a.Outside, "outside", a.Outside, "outside air, `°C`")
	for _, c := range []struct {
		name string
		of   *airheat.Carrier
	}{{"air", &a.Air}, {"water", &a.Water}} {
		f.Float64Var(&c.of.Supply, c.name+"-supply", c.of.Supply, c.name+" leaving the heater, `°C`")
		f.Float64Var(&c.of.Return, c.name+"-return", c.of.Return, c.name+" coming back, `°C`")
		f.Float64Var(&c.of.Pressure, c.name+"-pressure", c.of.Pressure, c.name+" circuit's pressure loss, `Pa`")
		f.Float64Var(&c.of.Efficiency, c.name+"-efficiency", c.of.Efficiency, "from electricity to "+c.name+" power, `fraction`")
		f.Float64Var(&c.of.Volume, c.name+"-volume", c.of.Volume, c.name+" in the circuit, `m³`")
		f.Float64Var(&c.of.WallLoss, c.name+"-loss", c.of.WallLoss, c.name+" circuit's loss outdoors, `W/K`")
	}
	f.Float64Var(&a.Water.Frost, "water-frost", a.Water.Frost, "stopped pipes to the cold, `W/K`")
	return f.Run(args, out, problems, func() (io.WriterTo, error) {
		air, water, err := a.Solve()
		if err != nil {
			return nil, errors.New(asFlags.Replace(err.Error()))
		}
		return write(a, air, water), nil
	})
}

// asFlags puts an error in one line and in the words of the flags.
var asFlags = strings.NewReplacer("\n", "; ", "Air.", "air-", "Water.", "water-",
	"Load", "load", "House", "house", "Outside", "outside", "Supply", "supply", "Return", "return",
	"Pressure", "pressure", "Efficiency", "efficiency", "Volume", "volume", "WallLoss", "loss", "Frost", "frost")

// write sets the two results side by side.
func write(a airheat.AirOrWater, air, water airheat.CarrierResult) *report.Report {
	r := new(report.Report)
	r.Title("Air or water for %.1f kW at %.0f °C outside", a.Load/1000, a.Outside)
	r.Section("Side by side")
	row := func(label string, decimals int, unit string, x, y float64) []string {
		return []string{label, report.Number(x, decimals), report.Number(y, decimals), unit}
	}
	r.Table([]string{"", "air", "water", ""}, [][]string{
		row("supply", 1, "°C", a.Air.Supply, a.Water.Supply),
		row("return", 1, "°C", a.Air.Return, a.Water.Return),
		row("heat per kilogram and kelvin", 0, "J/(kg K)", a.Air.HeatCapacity, a.Water.HeatCapacity),
		row("lost on the way", 0, "W", air.Loss, water.Loss),
		row("heat from the heater", 0, "W", air.Heat, water.Heat),
		row("mass flow", 3, "kg/s", air.MassFlow, water.MassFlow),
		row("volume flow", 2, "L/s", 1000*air.VolumeFlow, 1000*water.VolumeFlow),
		row("pressure", 0, "Pa", a.Air.Pressure, a.Water.Pressure),
		row("electricity for transport", 1, "W", air.Transport, water.Transport),
		row("its share of the load", 3, "%", 100*air.TransportShare, 100*water.TransportShare),
		row("fluid in the circuit", 1, "kg", air.Content, water.Content),
		row("heat capacity of the circuit", 1, "kJ/K", air.Inertia/1000, water.Inertia/1000),
		row("heat held above the house", 2, "kWh", air.Stored/3.6e6, water.Stored/3.6e6),
		row("fluid passes once in", 1, "s", air.Transit.Seconds(), water.Transit.Seconds()),
		row("warm after a cold start in", 1, "min", air.Response.Minutes(), water.Response.Minutes()),
		row("stopped, at 0 °C after", 2, "h", hours(air.CoolToFreezing), hours(water.CoolToFreezing)),
		row("and frozen through after another", 2, "h", hours(air.FreezeThrough), hours(water.FreezeThrough)),
	})
	r.Section("Notes")
	r.Note("%s Circuit sizes are guesses for it.", demo.Note)
	r.Note("A fan's electricity ends as heat in the house, a pump's nearly so; it is paid as electricity.")
	r.Note("Pipes freeze first where they are thin and in a draught, long before the mean does; a split pipe floods electrical parts. Drain, or use glycol and its own figures.")
	r.Note("Air gathers at the ridge, water pipes warm from below: what either loses through the roof is another account. A heater with a flue needs its own air and a carbon monoxide alarm; local codes and licensed practice decide.")
	for _, w := range airheat.DefaultSupplyLimits().Warnings(a.Air.Supply) {
		r.Note("Warning: %s.", w)
	}
	r.Note("%s", airheat.SupplyCaution)
	return r
}

// hours of a span, +Inf for never.
func hours(d time.Duration) float64 {
	if d == airheat.Forever {
		return math.Inf(1)
	}
	return d.Hours()
}
