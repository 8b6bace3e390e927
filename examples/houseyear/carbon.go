package main

import (
	"cloche.example/ventilation"
)

// doserMost is what a doser gives at most, kg/(m² s) of floor: 5 g/(m² h) (common
// practice, no source).
const doserMost = 5e-3 / 3600

// light is the sun outside, W/m², in which CO2 is given.
const light = 20

// carbon is how the plan has CO2: without it the crop takes what the air brings.
func (h *house) carbon() *ventilation.CO2Hours {
	c := ventilation.DefaultCO2Hours()
	c.Photons = min(5, h.photons())
	if q := h.plan.CO2; q != nil {
		c.Outside, c.Start = q.Outside, q.Outside
		c.Doser = doserMost * h.steady.House.Shape.FloorArea
		c.Heat, c.Vapour = h.burner.Heat, h.burner.Vapour
	}
	return c
}

// photons are those in the light of the lamps, µmol/J.
func (h *house) photons() float64 {
	if q := h.plan.Lights; q != nil {
		return q.PhotonsOfLamp
	}
	return 0
}

// dose is up to which level CO2 is given in an hour, µmol/mol: by day or under
// lamps, where the vents were shut in the hour before.
func (h *house) dose(m *ventilation.HourMoment) float64 {
	lit := m.Weather.Sun > light || m.Setting.Lamps.Light > 0
	shut := m.Before.DryAir-m.Before.Leakage <= 1e-9
	if q := h.plan.CO2; q != nil && lit && shut {
		return q.Level
	}
	return 0
}

// burnt is the heat of the CO2 burner in the state x, W; its vapour tells.
func (h *house) burnt(x *ventilation.ClimateState) float64 {
	if h.burner.Vapour == 0 {
		return 0
	}
	return x.Moisture / h.burner.Vapour * h.burner.Heat
}

// least is a heat that is none, W: rounding.
const least = 1e-6

// heater is the heat of the heater in the state x, W: what the burner does not give.
func (h *house) heater(x *ventilation.ClimateState) float64 {
	if q := x.Heat - h.burnt(x); q > least {
		return q
	}
	return 0
}

// carbonMoney is what the given CO2 costs.
func (h *house) carbonMoney(kg float64) float64 {
	switch q := h.plan.CO2; {
	case q == nil:
		return 0
	case q.Source == "bottle":
		return kg * q.PricePerKg
	}
	return kg * h.burner.Price
}
