package envelope

import (
	"errors"
	"fmt"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// InnerFace says how the inner face of a cover is treated.
type InnerFace uint8

// Dry, wet, or decided by the dew point.
const (
	InnerDry  InnerFace = iota // no film of water, whatever the humidity
	InnerWet                   // a film of water: opaque to long-wave but for open area, emittance 0.95, latent heat both ways
	InnerAuto                  // wet when the dry face lies below the dew point of the inside air
)

// Conditions are what a cover stands in. DefaultConditions gives a complete
// set to change.
type Conditions struct {
	Inside             float64            // °C, inside air
	InsideRadiant      float64            // °C, of the black enclosure that the inner face sees
	InsideHumidity     float64            // fraction, relative humidity of the inside air over water above 0 °C, over ice below
	Outside            float64            // °C, outside air
	Sky                float64            // °C, effective black-body temperature of the sky
	Ground             float64            // °C, of the black ground that a tilted facet sees
	Wind               float64            // m/s, at the cover
	Pressure           float64            // Pa
	Tilt               float64            // degree, 0 a flat roof, 90 a wall, beyond 90 leaning outward
	Height             float64            // m, length of the facet along the slope
	OutsideConvection  OutsideConvection  // correlation outside
	OutsideCoefficient float64            // W/(m² K), read with OutsideGiven alone
	InsideConvection   InsideConvection   // correlation inside
	InsideCoefficient  float64            // W/(m² K), read with InsideGiven alone
	InnerFace          InnerFace          // dry, wet, or decided by the dew point
	AbsorbedSun        [MaxLayers]float64 // W/m², sun absorbed in each layer from outside, half at each face
}

// DefaultConditions returns a roof slope of 30 degree and 4 m on a still,
// overcast winter night: 15 °C and 80 % inside, 0 °C air, sky and ground
// outside, dry inner face, standard pressure, ISO 6946 outside and ISO 15099
// inside.
func DefaultConditions() Conditions {
	return Conditions{
		Inside: 15, InsideRadiant: 15, InsideHumidity: 0.8,
		Tilt: 30, Height: 4, Pressure: constant.StandardPressure,
		OutsideConvection: OutsideISO6946, InsideConvection: InsideISO15099,
	}
}

// Ranges of the conditions.
var (
	stackTemperatureRange  = domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "domain of the solver"}
	radiantRange           = domain.Range{Min: -60, Max: 100, Unit: "°C", Source: "chosen: soil and pipes"}
	skyTemperatureRange    = domain.Range{Min: -110, Max: 70, Unit: "°C", Source: "chosen"}
	groundTemperatureRange = domain.Range{Min: -70, Max: 90, Unit: "°C", Source: "chosen"}
	facetHeightRange       = domain.Range{Min: 0.01, Max: 100, Unit: "m", Source: "chosen"}
	coefficientRange       = domain.Range{Min: 0, Max: 500, Unit: "W/(m² K)", Source: "chosen"}
	absorbedSunRange       = domain.Range{Min: 0, Max: 1500, Unit: "W/m²", Source: "above the solar constant"}
	outsideModels          = domain.Range{Min: 0, Max: float64(OutsideGiven), Unit: "number of a correlation", Source: "constants of OutsideConvection"}
	insideModels           = domain.Range{Min: 0, Max: float64(InsideGiven), Unit: "number of a correlation", Source: "constants of InsideConvection"}
	innerFaces             = domain.Range{Min: 0, Max: float64(InnerAuto), Unit: "number of a choice", Source: "constants of InnerFace"}
)

// SkyAboveAir is how far in K the sky may be warmer than the outside air: fog
// or low cloud in an inversion (from memory). Radiation from a sky warmer than
// that is a slip.
const SkyAboveAir = 10.0

// Check returns nil, or the join of a *RangeError for each field out of range,
// for a cover of n layers.
func (k *Conditions) check(n int) error {
	if k.valid(n) {
		return nil
	}
	var faults []error
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	check(stackTemperatureRange, "Inside", k.Inside)
	check(radiantRange, "InsideRadiant", k.InsideRadiant)
	check(fractionRange, "InsideHumidity", k.InsideHumidity)
	check(stackTemperatureRange, "Outside", k.Outside)
	check(k.skyRange(), "Sky", k.Sky)
	check(groundTemperatureRange, "Ground", k.Ground)
	check(localWindRange, "Wind", k.Wind)
	check(pressureRange, "Pressure", k.Pressure)
	check(gapTiltRange, "Tilt", k.Tilt)
	check(facetHeightRange, "Height", k.Height)
	check(outsideModels, "OutsideConvection", float64(k.OutsideConvection))
	check(insideModels, "InsideConvection", float64(k.InsideConvection))
	if k.OutsideConvection == OutsideGiven {
		check(coefficientRange, "OutsideCoefficient", k.OutsideCoefficient)
	}
	if k.InsideConvection == InsideGiven {
		check(coefficientRange, "InsideCoefficient", k.InsideCoefficient)
	}
	check(innerFaces, "InnerFace", float64(k.InnerFace))
	for i, s := range k.AbsorbedSun {
		r := absorbedSunRange
		if i >= n {
			r = domain.Range{Min: 0, Max: 0, Unit: "W/m²", Source: fmt.Sprintf("the cover has %d layers", n)}
		}
		check(r, fmt.Sprintf("AbsorbedSun[%d]", i), s)
	}
	return errors.Join(faults...)
}

// skyRange allows no sky warmer than the outside air by more than SkyAboveAir.
func (k *Conditions) skyRange() domain.Range {
	r := skyTemperatureRange
	if stackTemperatureRange.Contains(k.Outside) {
		r.Max = k.Outside + SkyAboveAir
		r.Source = "at most 10 K above the outside air"
	}
	return r
}

// valid is the fast path of check.
func (k *Conditions) valid(n int) bool {
	ok := stackTemperatureRange.Contains(k.Inside) && radiantRange.Contains(k.InsideRadiant) &&
		fractionRange.Contains(k.InsideHumidity) && stackTemperatureRange.Contains(k.Outside) &&
		k.Sky >= skyTemperatureRange.Min && k.Sky <= k.Outside+SkyAboveAir && groundTemperatureRange.Contains(k.Ground) &&
		localWindRange.Contains(k.Wind) && pressureRange.Contains(k.Pressure) && gapTiltRange.Contains(k.Tilt) &&
		facetHeightRange.Contains(k.Height) && k.OutsideConvection <= OutsideGiven &&
		k.InsideConvection <= InsideGiven && k.InnerFace <= InnerAuto
	if k.OutsideConvection == OutsideGiven {
		ok = ok && coefficientRange.Contains(k.OutsideCoefficient)
	}
	if k.InsideConvection == InsideGiven {
		ok = ok && coefficientRange.Contains(k.InsideCoefficient)
	}
	for i, s := range k.AbsorbedSun {
		ok = ok && s >= 0 && s <= absorbedSunRange.Max && (i < n || s == 0)
	}
	return ok
}
