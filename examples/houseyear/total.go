package main

import "math"

// account is the year in sums, with what closes them.
type account struct {
	Months  []sums  `json:"months"`
	Whole   sums    `json:"whole"`
	Peak    peak    `json:"peak"`
	Coldest moment  `json:"coldest"`
	Hottest moment  `json:"hottest"`
	Closure closure `json:"closure"`
}

// peak is the hour that asks most of the heater.
type peak struct {
	At   moment  `json:"at"`
	Heat float64 `json:"heat_w"`
	Wind float64 `json:"wind_m_s"`
	Sky  float64 `json:"sky_c"`
	Vent float64 `json:"through_vents_w"` // with the vapour
}

// moment is one hour.
type moment struct {
	Time    string  `json:"time"`
	Inside  float64 `json:"inside_c"`
	Outside float64 `json:"outside_c"`
	Sun     float64 `json:"sun_w_m2"`
	hour    int
}

// closure tells how well the sums close.
type closure struct {
	HourHeat  float64 `json:"worst_hour_heat_ratio"`  // imbalance of an hour over its heat in or out
	HourWater float64 `json:"worst_hour_water_ratio"` //
	Heat      float64 `json:"whole_heat_ratio"`       // of the whole time, with what soil and structure stored
	Water     float64 `json:"whole_water_ratio"`      //
	Stored    float64 `json:"stored_kwh"`             // in soil and structure, from the first hour to the last
	Deep      float64 `json:"into_deep_ground_kwh"`
}

// full is within what two hours count as of one power, W; the colder of them is
// the peak.
const full = 1e-3

func (y *year) account() *account {
	a := &account{Whole: sums{}}
	index := [13]int{}
	low, high := math.Inf(1), math.Inf(-1)
	w := y.house.weather
	for i, at := range w.Time {
		m := int(at.Month())
		if index[m] == 0 {
			a.Months = append(a.Months, sums{Month: m})
			index[m] = len(a.Months)
		}
		a.Months[index[m]-1].add(y, i)
		a.Whole.add(y, i)
		if y.Failed[i] {
			continue
		}
		x := &y.State[i]
		if q := y.heat(i); q > a.Peak.Heat+full || q > a.Peak.Heat-full && q > 0 && w.Temperature[i] < a.Peak.At.Outside {
			a.Peak = peak{y.moment(i), q, y.Wind[i], y.Sky[i], split(x, y.Opening[i]).vent + x.AirLatent*(1-x.Leakage/max(x.DryAir, 1e-12))}
		}
		if d := x.Temperature - y.setPoint(i); d < low {
			low, a.Coldest = d, y.moment(i)
		}
		if x.Temperature > high {
			high, a.Hottest = x.Temperature, y.moment(i)
		}
	}
	y.days(a, index)
	for i := range a.Months {
		a.Months[i].mean()
	}
	a.Whole.mean()
	a.Closure = y.closure()
	return a
}

func (t *sums) mean() {
	t.Outside /= float64(max(1, t.Hours))
	t.Inside /= float64(max(1, t.Hours-t.Failed))
	t.CO2 /= float64(max(1, t.Hours-t.Failed))
}

func (y *year) moment(i int) moment {
	w := y.house.weather
	return moment{w.Time[i].Format(stamp), y.State[i].Temperature, w.Temperature[i], w.Global[i], i}
}

// days counts whole days and those short of the crop's least light.
func (y *year) days(a *account, index [13]int) {
	least := 0.0
	if l := y.house.steady.Light; l != nil && l.Least != nil {
		least = *l.Least
	}
	sum, n := 0.0, 0
	for i, at := range y.house.weather.Time {
		if at.Hour() == 0 {
			sum, n = 0, 0
		}
		sum += (y.lit(i) + y.Burn[i]*y.house.lamps.ppfd) * 0.0036
		if n++; at.Hour() == 23 && n == 24 {
			for _, t := range []*sums{&a.Whole, &a.Months[index[at.Month()]-1]} {
				t.Days++
				count(&t.Dark, sum < least-1e-9)
			}
		}
	}
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
		heat += y.tubesOff()
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
