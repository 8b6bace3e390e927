package main

// colder is how much colder than the house is kept by day the outside air may be on a
// day on which vents are opened by hand, K (chosen).
const colder = 10

// hand finds the days on which vents are opened by hand: those on which the shut house
// would in the mean of the hours of opening be warmer than its vents allow, and on
// which it is not cold outside.
func (h *house) hand() {
	c, q, s := h.plan.VentControl, h.plan.SetPoints, h.weather
	if c.By != "hand" {
		return
	}
	rise := 0.0 // K for each W/m² of sun
	if loss := h.steady.Year.Loss; loss > 0 {
		rise = h.steady.Sun.Gain * (1 - h.plan.Crop.TranspiredSun) * h.steady.House.Shape.FloorArea / loss
	}
	var out, sun, n [367]float64
	for i, at := range s.Time {
		if clock := float64(at.Hour()); clock >= c.HandFrom && clock < c.HandUntil {
			d := at.YearDay()
			out[d], sun[d], n[d] = out[d]+s.Temperature[i], sun[d]+s.Global[i], n[d]+1
		}
	}
	for d := range n {
		if n[d] > 0 {
			mean := out[d] / n[d]
			h.handDays[d] = mean > q.Day.Temperature-colder && mean+rise*sun[d]/n[d] > q.Day.VentTemperature
		}
	}
}
