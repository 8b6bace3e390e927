package main

import (
	"context"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/ventilation"
)

// year is the house in every hour of the weather.
type year struct {
	house    *house
	State    []ventilation.ClimateState // every term of the hour's balance; zero where there is none
	Failed   []bool                     // hours without a state that closes
	Why      error                      // of the first of them
	Opening  []float64                  // fraction
	Soil     []float64                  // °C, mean of the hour
	Mass     []float64                  // °C, of the structure
	Deep     []float64                  // °C, of the deep ground
	CO2      []float64                  // µmol/mol, mean of the hour
	Given    []float64                  // kg/s of CO2, by the doser
	TakenUp  []float64                  // kg/s of CO2, by the crop
	Daylight []float64                  // µmol/(m² s) on the trays, unshaded
	Burn     []float64                  // fraction of the hour that the lamps burn
	Wind     []float64                  // m/s at the house
	Sky      []float64                  // °C
	Pressure float64                    // Pa
	tubes    *tubes                     // nil without
}

// solve runs the hours through the climate of the house. One hour more than there
// are is solved, so that the rule is told of the last one.
func (h *house) solve(ctx context.Context) (*year, error) {
	s, n := h.weather, h.weather.Hours()
	y := &year{house: h, Failed: make([]bool, n), Daylight: make([]float64, n), Burn: make([]float64, n)}
	if err := h.lighting(y); err != nil {
		return nil, err
	}
	var err error
	if y.Wind, err = windAtHouse(h.plan, s); err != nil {
		return nil, err
	}
	y.Sky, y.Deep = skies(h.plan, s), h.deep()
	for _, p := range s.Pressure {
		y.Pressure += p / float64(n)
	}
	if y.tubes, err = newTubes(h.plan, y.Pressure, h.climate.House().Floor.Conductance*h.steady.House.Shape.FloorArea); err != nil {
		return nil, fmt.Errorf("soil_store: %w", err)
	}
	y.State = make([]ventilation.ClimateState, n)
	var gain envelope.SolarGain
	keeps := &rule{house: h, ctx: ctx, year: y}
	hours := ventilation.Hours{
		Temperature: more(s.Temperature), RelativeHumidity: more(s.RelativeHumidity), Sun: more(s.Global), Wind: more(y.Wind), Sky: more(y.Sky),
		Pressure: y.Pressure, Settings: h.settings(y), Soil: h.soil, Structure: h.mass,
		Deep: y.Deep, CO2: h.carbon(), Rule: keeps,
		Gain: func(i int) (*envelope.SolarGain, error) {
			err := h.glazing.GainTo(&gain, h.sunlight(min(i, n-1)))
			return &gain, err
		},
	}
	all, err := h.climate.YearTo(nil, hours)
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if all == nil {
		return nil, err
	}
	keeps.refused(n)
	y.Why = err
	y.Opening, y.Soil, y.Mass = all.Opening[:n], all.SoilTemperature[:n], all.StructureTemperature[:n]
	y.Deep, y.CO2, y.Given, y.TakenUp = y.Deep[:n], all.CO2[:n], all.Dosed[:n], all.Photosynthesis[:n]
	for i := range n {
		x := &y.State[i]
		if math.IsNaN(all.Temperature[i]) {
			y.Failed[i], *x = true, ventilation.ClimateState{}
		} else if y.Failed[i] = !(x.NodeResidual < asked) || x.Temperature != all.Temperature[i]; y.Failed[i] && y.Why == nil {
			y.Why = fmt.Errorf("the balances of %s do not close", s.Time[i].Format(stamp))
		}
	}
	return y, y.tooMany()
}

// tooMany refuses a year of which more than a quarter has no state.
func (y *year) tooMany() error {
	failed := 0
	for _, f := range y.Failed {
		if f {
			failed++
		}
	}
	if 4*failed > len(y.Failed) {
		return fmt.Errorf("the weather and the house do not fit: %w", y.Why)
	}
	return nil
}

// more repeats the last value.
func more(v []float64) []float64 { return append(v[:len(v):len(v)], v[len(v)-1]) }

// settings are what lamps do in each hour, and once more the last.
func (h *house) settings(y *year) []ventilation.Setting {
	out := make([]ventilation.Setting, len(y.Burn)+1)
	for i, on := range y.Burn {
		out[i].Lamps = h.lamps.heat(on)
	}
	out[len(y.Burn)] = out[len(y.Burn)-1]
	return out
}
