package weather

import (
	"fmt"
	"math"

	"cloche.example/psychro"
)

// dewSlack is by how much a dew point may lie above the temperature by
// rounding, K.
const dewSlack = 0.101

// dewPoints makes the dew point of every row, from the humidity where that is
// what the file has, and names those above the temperature or that no air reaches.
func (t *table) dewPoints(fill bool, done []bool, a *Account, f *faults) {
	td := t.col[dewPoint]
	for i, rh := range t.col[humidity] {
		if math.IsNaN(td[i]) && !math.IsNaN(rh) {
			td[i] = dewPointOf(t.col[temperature][i], rh, t.col[pressure][i])
			if most := ranges[dewPoint].Max; td[i] > most && t.line[i] != 0 {
				f.addf(t.line[i], "%s makes a dew point of %.1f °C at %g °C, allowed at most %g °C", t.headers[humidity], td[i], t.col[temperature][i], most)
			}
		}
	}
	if t.headers[dewPoint] == "" {
		t.headers[dewPoint] = t.headers[humidity]
	}
	name := t.headers[dewPoint]
	t.fill(dewPoint, fill, done, a, f)
	if t.headers[dewPoint] == "" {
		if f.count == 0 {
			f.file(fmt.Errorf("%s has no value", name))
		}
		return
	}
	for i, v := range td {
		air := t.col[temperature][i]
		if v > air+dewSlack && t.line[i] != 0 {
			f.addf(t.line[i], "%s is %g °C, above the temperature of %g °C", name, v, air)
		}
		td[i] = math.Min(v, air)
	}
}

// supercooled is below which water does not stay liquid, °C.
const supercooled = -40

// driest is the least dew point, °C, that dry air is given; driestVapour, Pa, is
// below its vapour pressure.
const (
	driest       = -100
	driestVapour = 1e-3
)

// surface is over what a weather service's humidity is taken to be stated.
func surface(t float64) psychro.Surface {
	if t < supercooled {
		return psychro.Ice
	}
	return psychro.Liquid
}

// dewPointOf is the dew point, °C, of air at t, °C, and the relative humidity
// rh, fraction over liquid water, at p, Pa, within 0.001 K.
func dewPointOf(t, rh, p float64) float64 {
	e := rh * psychro.SaturationPressureOver(surface(t), t)
	invert := func(e float64) float64 {
		td := psychro.SaturationTemperatureOver(psychro.Liquid, e)
		if math.IsNaN(td) {
			td = math.Min(supercooled, psychro.SaturationTemperatureOver(psychro.Ice, math.Max(e, driestVapour)))
		}
		return math.Max(driest, td)
	}
	td := invert(e)
	return math.Min(t, invert(e*psychro.EnhancementFactor(t, p)/psychro.EnhancementFactor(td, p)))
}

// air fills the relative humidity of package psychro, over ice below freezing.
func (s *Series) air() {
	s.RelativeHumidity = make([]float64, len(s.Time))
	for i, t := range s.Temperature {
		td, p := s.DewPoint[i], s.Pressure[i]
		s.RelativeHumidity[i] = 1
		if td < t || t < 0 {
			rh := psychro.SaturationPressureOver(surface(td), td) * psychro.EnhancementFactor(td, p) /
				(psychro.SaturationPressure(t) * psychro.EnhancementFactor(t, p))
			if rh > 1 {
				s.Account.OverIce++
			}
			s.RelativeHumidity[i] = math.Min(1, rh)
		}
	}
}
