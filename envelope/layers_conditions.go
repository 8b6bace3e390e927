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
	InnerWet                   // a film of water: opaque to long-wave except for open area, emittance 0.95, latent heat both ways
	InnerAuto                  // wet, dry, or wet in part, as the dew point of the inside air has it
)

// CoverConditions are the boundary conditions of a cover. The radiant
// temperatures that it sees are given relative to the air beside them, so that
// a change of the air temperature alone moves sky, ground and room with it.
// NewCoverConditions makes them from the air inside and outside,
// DefaultCoverConditions gives a complete set to change.
type CoverConditions struct {
	Inside             float64            // °C, -60 to 60, inside air
	RadiantRise        float64            // K, -60 to 100, of the black enclosure that the inner face sees above the inside air
	InsideHumidity     float64            // fraction, 0 to 1, relative humidity of the inside air over water above 0 °C, over ice below
	Outside            float64            // °C, -60 to 60, outside air
	SkyDrop            float64            // K, -10 to 100, of the sky's black-body temperature below the outside air; 0 overcast, below 0 fog in an inversion
	Sky                SkyPattern         // even, or near the air's temperature towards the horizon
	GroundRise         float64            // K, -80 to 80, of the black ground that a tilted facet sees above the outside air
	Wind               float64            // m/s, 0 to 40, at the cover
	Pressure           float64            // Pa, 50000 to 110000
	Tilt               float64            // degree, 0 to 180: 0 a flat roof, 90 a wall, beyond 90 leaning outward
	Height             float64            // m, 0.01 to 100, length of the facet along the slope
	OutsideConvection  OutsideConvection  // correlation outside
	OutsideCoefficient float64            // W/(m² K), 0 to 500, read with OutsideGiven alone
	InsideConvection   InsideConvection   // correlation inside
	InsideCoefficient  float64            // W/(m² K), 0 to 500, read with InsideGiven alone
	InnerFace          InnerFace          // dry, wet, or decided by the dew point
	AbsorbedSun        [MaxLayers]float64 // W/m², 0 to 1500, sun absorbed in each layer from outside, half at each face
}

// DefaultCoverConditions returns a roof slope of 30 degree and 4 m on a still,
// overcast winter night: 15 °C and 80 % inside, 0 °C outside with sky and
// ground as warm as the air, a sky weighted to the horizon once it is colder, dry
// inner face, standard pressure, ISO 6946 outside and ISO 15099 inside.
func DefaultCoverConditions() CoverConditions {
	return CoverConditions{
		Inside: 15, InsideHumidity: 0.8, Sky: SkyWeighted,
		Tilt: 30, Height: 4, Pressure: constant.StandardPressure,
		OutsideConvection: OutsideISO6946, InsideConvection: InsideISO15099,
	}
}

// sky and ground return the temperatures in °C that the outer face sees,
// radiant the one that the inner face sees.
func (k *CoverConditions) sky() float64     { return k.Outside - k.SkyDrop }
func (k *CoverConditions) ground() float64  { return k.Outside + k.GroundRise }
func (k *CoverConditions) radiant() float64 { return k.Inside + k.RadiantRise }

// Ranges of the conditions.
var (
	coverTemperatureRange = domain.Range{Min: -60, Max: 60, Unit: "°C", Source: "domain of the solver"}
	radiantRiseRange      = domain.Range{Min: -60, Max: 100, Unit: "K", Source: "chosen: soil and pipes"}
	skyDropRange          = domain.Range{Min: -10, Max: 100, Unit: "K", Source: "chosen; fog or low cloud may be 10 K warmer than the air (from memory)"}
	skyPatterns           = domain.Range{Min: 0, Max: float64(SkyWeighted), Unit: "number", Source: "constants of SkyPattern"}
	groundRiseRange       = domain.Range{Min: -80, Max: 80, Unit: "K", Source: "chosen: snow to dark sand"}
	facetHeightRange      = domain.Range{Min: 0.01, Max: 100, Unit: "m", Source: "chosen"}
	coefficientRange      = domain.Range{Min: 0, Max: 500, Unit: "W/(m² K)", Source: "chosen"}
	absorbedSunRange      = domain.Range{Min: 0, Max: 1500, Unit: "W/m²", Source: "above the solar constant"}
	outsideModels         = domain.Range{Min: 0, Max: float64(OutsideGiven), Unit: "number", Source: "constants of OutsideConvection"}
	insideModels          = domain.Range{Min: 0, Max: float64(InsideGiven), Unit: "number", Source: "constants of InsideConvection"}
	innerFaces            = domain.Range{Min: 0, Max: float64(InnerAuto), Unit: "number", Source: "constants of InnerFace"}
)

// check returns nil, or the join of a *RangeError for each field out of range,
// for a cover of n layers.
func (k *CoverConditions) check(n int) error {
	if k.valid(n) {
		return nil
	}
	var faults []error
	check := func(r domain.Range, field string, v float64) {
		if err := r.Check(field, v); err != nil {
			faults = append(faults, err)
		}
	}
	check(coverTemperatureRange, "Inside", k.Inside)
	check(radiantRiseRange, "RadiantRise", k.RadiantRise)
	check(fractionRange, "InsideHumidity", k.InsideHumidity)
	check(coverTemperatureRange, "Outside", k.Outside)
	check(skyDropRange, "SkyDrop", k.SkyDrop)
	check(skyPatterns, "Sky", float64(k.Sky))
	check(groundRiseRange, "GroundRise", k.GroundRise)
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

// seenRange is what a facet among others may see, °C, as a black body: the others lie
// between the coldest sky and floors under pipes or in the sun.
var seenRange = domain.Range{Min: -200, Max: 300}

// checkFacet is check for a facet of a house. What it sees of the others may differ
// from the inside air by more than any RadiantRise that is asked for.
func (k *CoverConditions) checkFacet(n int) error {
	if k.valid(n) {
		return nil
	}
	if !seenRange.Contains(k.radiant()) {
		return fmt.Errorf("%w: others send it the heat of %g °C", ErrNotConverged, k.radiant())
	}
	one := *k
	one.RadiantRise = max(radiantRiseRange.Min, min(radiantRiseRange.Max, k.RadiantRise))
	return one.check(n)
}

// valid is the fast path of check.
func (k *CoverConditions) valid(n int) bool {
	ok := coverTemperatureRange.Contains(k.Inside) && radiantRiseRange.Contains(k.RadiantRise) &&
		fractionRange.Contains(k.InsideHumidity) && coverTemperatureRange.Contains(k.Outside) &&
		skyDropRange.Contains(k.SkyDrop) && groundRiseRange.Contains(k.GroundRise) &&
		localWindRange.Contains(k.Wind) && pressureRange.Contains(k.Pressure) && gapTiltRange.Contains(k.Tilt) &&
		facetHeightRange.Contains(k.Height) && k.Sky <= SkyWeighted && k.OutsideConvection <= OutsideGiven &&
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
