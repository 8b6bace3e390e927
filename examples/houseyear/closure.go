package main

import "math"

// closure tells how well the sums close.
type closure struct {
	HourHeat  float64 `json:"worst_hour_heat_ratio"`  // imbalance of an hour over its heat in or out
	HourWater float64 `json:"worst_hour_water_ratio"` //
	Heat      float64 `json:"whole_heat_ratio"`       // of the whole time, with what soil and structure stored
	Water     float64 `json:"whole_water_ratio"`      //
	Stored    float64 `json:"stored_kwh"`             // in soil and structure, from the first hour to the last
	Deep      float64 `json:"into_deep_ground_kwh"`
}

// closure adds up the balances of hours, and follows both stores twice: by what
// goes into them, and by the temperatures that their own law gives.
func (y *year) closure() closure {
	var c closure
	h := y.house
	area := h.steady.House.Shape.FloorArea
	heat, water, heatSize, waterSize := 0.0, 0.0, 0.0, 0.0
	soil := newStore(h.soil.Capacity, h.soil.Start, 3600*(h.climate.House().Floor.Conductance+h.soil.Deep))
	mass := newStore(h.mass.Capacity, h.mass.Start, 3600*h.mass.Exchange)
	for i := range y.State {
		x := &y.State[i]
		if math.IsNaN(y.Soil[i]) {
			continue // the stores stand still
		}
		deep := h.soil.Deep * area * (y.Soil[i] - y.Deep[i])
		c.Deep += deep / kWh
		soil.add((x.Ground-deep)/area, y.Soil[i])
		mass.add((x.ToStructure+x.SunStructure)/area, y.Mass[i])
		if y.Failed[i] {
			continue
		}
		c.HourHeat = max(c.HourHeat, math.Abs(x.HeatResidual)/max(math.Abs(x.HeatIn), math.Abs(x.HeatOut), 1))
		c.HourWater = max(c.HourWater, math.Abs(x.WaterResidual)/max(math.Abs(x.WaterIn), math.Abs(x.WaterOut), 1e-9))
		heat, heatSize = heat+x.HeatIn-x.HeatOut, heatSize+math.Abs(x.HeatIn)
		water, waterSize = water+x.WaterIn-x.WaterOut, waterSize+math.Abs(x.WaterIn)
	}
	c.Stored = (soil.stored() + mass.stored()) * area / 3.6e6
	if u := y.tubes; u != nil {
		c.Stored += u.store.Stored() / 3.6e6
		offHeat, offWater := y.tubesOff()
		heat, water = heat+offHeat, water+offWater
	}
	off := (soil.off() + mass.off()) * area / 3600 // W over an hour, of the whole time
	c.Heat = (math.Abs(heat) + off) / max(heatSize, 1)
	c.Water = math.Abs(water) / max(waterSize, 1e-9)
	return c
}

// store is a mass of one temperature, followed by its heat and by its law.
type store struct {
	capacity, start   float64 // J/(m² K), °C
	byHeat, byLaw     float64 // °C, now
	decay, meanFactor float64 // fractions of the way left at the end and in the mean of an hour
}

// newStore has the exchange of an hour, J/(m² K).
func newStore(capacity, start, exchange float64) store {
	x := exchange / capacity
	return store{capacity, start, start, start, math.Exp(-x), -math.Expm1(-x) / x}
}

// add ends an hour with the heat that came, W/m², and the mean temperature, °C.
func (s *store) add(heat, mean float64) {
	if !(s.capacity > 0) || s.meanFactor == 1 {
		return
	}
	s.byHeat += heat * 3600 / s.capacity
	goal := (mean - s.byLaw*s.meanFactor) / (1 - s.meanFactor)
	s.byLaw = goal + (s.byLaw-goal)*s.decay
}

func (s *store) stored() float64 { return s.capacity * (s.byHeat - s.start) }
func (s *store) off() float64    { return s.capacity * math.Abs(s.byHeat-s.byLaw) }

// tubesOff is by what heat, W, and water, kg/s, over an hour of the whole time, the
// house gave its tubes in the soil more than these took, and they more heat than
// they keep or sent up.
func (y *year) tubesOff() (heat, water float64) {
	u := y.tubes
	kept := -u.store.Stored() / 3600
	for i, up := range u.up {
		x := &y.State[i]
		heat += math.Abs(x.ToStore + x.StoreLatent - u.took[i])
		water += math.Abs(x.IntoStore - u.water[i])
		kept += u.keeps[i] - up
	}
	return heat + math.Abs(kept), water
}
