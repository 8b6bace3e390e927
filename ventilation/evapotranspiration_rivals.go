package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// ASCEReference is the reference surface of the standardized hourly equation
// [Asce05].
type ASCEReference uint8

// The surfaces.
const (
	ShortReference ASCEReference = iota // clipped grass of 0.12 m
	TallReference                       // lucerne of 0.50 m
)

var asceReferenceNames = []string{"short", "tall"}

// String names the surface.
func (r ASCEReference) String() string {
	return enumName("ASCEReference", asceReferenceNames, uint8(r))
}

// asce holds Cn, Cd and the share of net radiation that goes into the ground, by
// day and by night: [Asce05] table 1 and eq. 65, 66.
var asce = [2]struct{ cn, cdDay, cdNight, soilDay, soilNight float64 }{
	{37, 0.24, 0.96, 0.1, 0.5},
	{66, 0.25, 1.7, 0.04, 0.2},
}

// Hour returns the reference evapotranspiration of an hour, mm/h:
//
//	ET = (0.408 D (Rn - G) + gamma Cn u2 (es - ea)/(T + 273))/(D + gamma (1 + Cd u2))
//
// [Asce05] eq. 1, with Cd and the heat into the ground G of the day where the net
// radiation is positive and else of the night; Soil of g is not used. The slope
// D is that of [FAO56], 2e-5 above eq. 5 with its 2503. It is an outdoor surface:
// inside, the wind at 2 m is next to none and SunAndDeficit or Canopy.Solve serve
// better. The error joins the faults of g.
func (r ASCEReference) Hour(g Grass) (ReferenceEvapotranspiration, error) {
	g.Soil = 0
	if err := errors.Join(g.check(), enumFault("ASCEReference", "ASCEReference", asceReferenceNames, uint8(r))); err != nil {
		return ReferenceEvapotranspiration{}, err
	}
	c := asce[r]
	cd, soil := c.cdNight, c.soilNight
	if g.Net > 0 {
		cd, soil = c.cdDay, c.soilDay
	}
	e := ReferenceEvapotranspiration{
		Slope:   psychro.FAO56Slope(g.Temperature),
		Psychro: psychro.FAO56PsychrometricConstant(g.Pressure),
		Factor:  1 + cd*g.Wind,
	}
	under := e.Slope + e.Psychro*e.Factor
	e.Radiation = faoWater * e.Slope * g.Net * (1 - soil) / under
	e.Dryness = e.Psychro * c.cn / (g.Temperature + faoCelsius) * g.Wind * (g.Saturation - g.Vapour) / 1000 / under
	e.ETo = e.Radiation + e.Dryness // eq. 1
	return e, nil
}

var alphaRange = domain.Range{Min: 0.5, Max: 2, Source: "published fits are 0.7 to 1.74"}

// PriestleyTaylor returns the evaporation of a wet or well-watered surface in the
// period of g, mm, from its available radiation alone:
//
//	E = alpha D/(D + gamma) (Net - Soil)/lambda, 1/lambda = 0.408e-6 kg/J
//
// [PriestleyT72], alpha dimensionless, 0.5 to 2: 1.26 in the source, 1.32 over rough
// vegetation and 1.74 in dry country; 0.7 to 1.3 was fitted inside houses (from
// memory). Wind and dryness of g are not used. The error joins the faults of g and
// alpha.
func (g Grass) PriestleyTaylor(alpha float64) (float64, error) {
	if err := errors.Join(g.check(), alphaRange.Check("alpha", alpha)); err != nil {
		return math.NaN(), err
	}
	slope, gamma := psychro.FAO56Slope(g.Temperature), psychro.FAO56PsychrometricConstant(g.Pressure)
	return alpha * slope / (slope + gamma) * faoWater * (g.Net - g.Soil), nil
}

// Ranges of the simple transpiration.
var (
	sunShareRange     = domain.Range{Min: 0, Max: 1.5, Source: "published fits are 0.12 to 0.67"}
	deficitShareRange = domain.Range{Min: 0, Max: 0.2, Unit: "W/(m² Pa)", Source: "published fits are 0.014 to 0.037; a value for kPa falls outside"}
	insideSunRange    = domain.Range{Min: 0, Max: 1500, Unit: "W/m²", Source: "sun on a horizontal plane"}
)

// SunAndDeficit is the simple transpiration of crops inside by sun and deficit, in
// the form of [Baille94]. A and B are fitted by crop and climate: none ships,
// since the table of the source could not be read.
type SunAndDeficit struct {
	A          float64 // dimensionless, 0 to 1.5, share of the sun taken that evaporates; 0.12 to 0.67 for nine ornamentals
	B          float64 // W/(m² Pa), 0 to 0.2, per leaf area, by deficit; the source has W/(m² kPa), 14 to 37; by night about half (from memory)
	Extinction float64 // dimensionless, 0.1 to 1.2, of the sun per unit of LAI
	LAI        float64 // m²/m², 0 to 12, leaf area over floor area
}

// SunAndDeficitFlow is the simple transpiration with its two terms.
type SunAndDeficitFlow struct {
	BySun      float64 // W/m², latent heat by the sun
	ByDeficit  float64 // W/m², by the air's deficit
	Latent     float64 // W/m², the sum
	Transpired float64 // kg/(m² s), with 2.45 MJ/kg
}

// faoLatent is the latent heat that goes with faoWater, J/kg [FAO56] eq. 20.
const faoLatent = 2.45e6

// Solve returns the transpiration with the sun above the crop inside, W/m², 0 to
// 1500, and the deficit of the air, Pa, 0 to 20000:
//
//	lambda E = A (1 - exp(-k L)) G + B L D
//
// [Baille94]. The second term has no ceiling: above 2 kPa stomata close and it says
// too much. By night the first is nothing, heat of pipes included. The error joins the
// faults by field.
func (c SunAndDeficit) Solve(sun, deficit float64) (SunAndDeficitFlow, error) {
	if err := errors.Join(
		sunShareRange.Check("A", c.A),
		deficitShareRange.Check("B", c.B),
		extinctionRange.Check("Extinction", c.Extinction),
		leafAreaRange.Check("LAI", c.LAI),
		insideSunRange.Check("sun", sun),
		faoVapourRange.Check("deficit", deficit),
	); err != nil {
		return SunAndDeficitFlow{}, err
	}
	f := SunAndDeficitFlow{BySun: c.A * interception(c.LAI, c.Extinction) * sun, ByDeficit: c.B * c.LAI * deficit}
	f.Latent = f.BySun + f.ByDeficit
	f.Transpired = f.Latent / faoLatent
	return f, nil
}
