package envelope

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// OutsideConvection names a published correlation of the convection between
// a cover and the outside air over the wind at the cover. None of them holds
// radiation.
type OutsideConvection uint8

// The outside correlations.
const (
	OutsideISO6946   OutsideConvection = iota // 4 + 4v, ISO 6946 Annex C and ISO 15099
	OutsideWatmuff                            // 2.8 + 3.0v, Watmuff, Charters and Proctor 1977, collectors
	OutsideBot                                // 2.8 + 1.2v, above 4 m/s 2.5 v^0.8, Bot 1983, greenhouse (from memory)
	OutsidePapadakis                          // 0.95 + 6.76 v^0.49, Papadakis 1992, greenhouse (from memory)
	OutsideGiven                              // the caller's own coefficient
)

// localWindRange is the accepted wind at the cover in m/s.
var localWindRange = domain.Range{Min: 0, Max: 40, Unit: "m/s", Source: "chosen"}

var outsideRange = [...]domain.Range{
	OutsideISO6946:   {Min: 0, Max: 10, Unit: "m/s", Source: "ISO 6946 Annex C tabulates to 10 m/s"},
	OutsideWatmuff:   {Min: 0, Max: 7, Unit: "m/s", Source: "Watmuff et al. 1977"},
	OutsideBot:       {Min: 0, Max: 10, Unit: "m/s", Source: "Bot 1983 (from memory)"},
	OutsidePapadakis: {Min: 0, Max: 6.3, Unit: "m/s", Source: "Papadakis et al. 1992 (from memory)"},
	OutsideGiven:     {Min: 0, Max: 40, Unit: "m/s", Source: "the caller"},
}

// published returns the wind in m/s for which the correlation was published.
// Coefficient goes on to 40 m/s; a cover's Solution says when it
// did.
func (m OutsideConvection) published() domain.Range {
	if int(m) >= len(outsideRange) {
		return domain.Range{Min: 1, Max: 0, Unit: "m/s", Source: "no such correlation"}
	}
	return outsideRange[m]
}

// Coefficients of the outside correlations over the wind in m/s.
const (
	iso6946Still, iso6946Wind      = 4.0, 4.0      // [IsoWall17] eq. C.5
	watmuffStill, watmuffWind      = 2.8, 3.0      // [Watmuff77]
	botStill, botWind, botForced   = 2.8, 1.2, 2.5 // [Bot83]
	botPower, botLimit             = 0.8, 4.0
	papaStill, papaWind, papaPower = 0.95, 6.76, 0.49 // [Papadakis92]
)

// Coefficient returns the convection coefficient in W/(m² K) for the wind v
// at the cover, m/s, 0 to 40; NaN outside and for OutsideGiven.
func (m OutsideConvection) Coefficient(v float64) float64 {
	if !localWindRange.Contains(v) {
		return nan
	}
	switch m {
	case OutsideISO6946:
		return iso6946Still + iso6946Wind*v // [IsoWall17] Annex C
	case OutsideWatmuff:
		return watmuffStill + watmuffWind*v // [Watmuff77]
	case OutsideBot:
		if v < botLimit {
			return botStill + botWind*v // [Bot83]
		}
		return botForced * math.Pow(v, botPower) // [Bot83]
	case OutsidePapadakis:
		return papaStill + papaWind*math.Pow(v, papaPower) // [Papadakis92]
	}
	return nan
}

// InsideConvection names a published correlation of the convection between
// the inside air and the cover. None of them holds radiation.
type InsideConvection uint8

// The inside correlations.
const (
	InsideISO15099  InsideConvection = iota // free convection over tilt and height, ISO 15099 8.3.2.2
	InsideISO6946                           // 5.0 below 60 degree of tilt, else 2.5: ISO 6946, heat leaving the house
	InsidePapadakis                         // 1.95 dT^0.30, Papadakis 1992, greenhouse (from memory)
	InsideBaille                            // 2.2 dT^0.33, Baille and Boulard, greenhouse (from memory)
	InsidePlate                             // upright plate, Churchill and Chu 1975, with the sine of the tilt on a slope
	InsideGiven                             // the caller's own coefficient, as with pipes or fans under the cover
)

var insideRange = [...]domain.Range{
	InsideISO15099:  {Min: 0, Max: 180, Unit: "degree", Source: "ISO 15099 8.3.2.2"},
	InsideISO6946:   {Min: 0, Max: 90, Unit: "degree", Source: "ISO 6946 Annex C: roofs and walls"},
	InsidePapadakis: {Min: 0, Max: 90, Unit: "degree", Source: "Papadakis et al. 1992: covers of houses (from memory)"},
	InsideBaille:    {Min: 0, Max: 90, Unit: "degree", Source: "covers of houses (from memory)"},
	InsidePlate:     {Min: 30, Max: 150, Unit: "degree", Source: "within 60 degree of the upright, as handbooks allow (from memory)"},
	InsideGiven:     {Min: 0, Max: 180, Unit: "degree", Source: "the caller"},
}

// published returns the tilt in degree for which the correlation was
// published. Coefficient goes on to any tilt; a cover's Solution
// says when it did.
func (m InsideConvection) published() domain.Range {
	if int(m) >= len(insideRange) {
		return domain.Range{Min: 1, Max: 0, Unit: "degree", Source: "no such correlation"}
	}
	return insideRange[m]
}

// Coefficients of the inside correlations.
const (
	iso6946Up, iso6946Level = 5.0, 2.5 // W/(m² K), [IsoWall17] Annex C
	iso6946Steep            = 60.0     // degree, heat flow within 30 degree of the horizontal
	innerFilm               = 0.25     // [IsoWin03] eq. 132: film temperature
	innerTurbulent          = 0.13     // [IsoWin03] eq. 133
	innerLaminar            = 0.56     // [IsoWin03] eq. 134
	innerCritical           = 2.5e5    // [IsoWin03] eq. 135
	innerCriticalTilt       = 0.72     // [IsoWin03] eq. 135
	innerDown               = 0.58     // [IsoWin03] eq. 138
	papaInside, papaInsideN = 1.95, 0.30
	bailleInside, bailleN   = 2.2, 0.33
)

// InnerSurface is the inner face of a cover in the air of a room.
type InnerSurface struct {
	Air      float64 // °C, -100 to 120, of the room
	Surface  float64 // °C, -100 to 120, of the face
	Tilt     float64 // degree, 0 to 180: 0 a flat roof, 90 a wall
	Height   float64 // m, 0.01 to 100, along the slope
	Pressure float64 // Pa, 50000 to 110000
}

// Coefficient returns the convection coefficient in W/(m² K) between the air
// of the room and the face. NaN for a field out of range and for InsideGiven.
func (m InsideConvection) Coefficient(f InnerSurface) float64 {
	if !airTemperatureRange.Contains(f.Air) || !airTemperatureRange.Contains(f.Surface) ||
		!gapTiltRange.Contains(f.Tilt) || !pressureRange.Contains(f.Pressure) || !facetHeightRange.Contains(f.Height) || m >= InsideGiven {
		return nan
	}
	s := newInnerFace(m, f.Tilt, f.Height, f.Pressure, &standard, nan)
	h, _ := s.coefficient(f.Air, f.Surface)
	return h
}

// innerFilmCalc evaluates an inside correlation at changing face temperature.
type innerFilmCalc struct {
	model    InsideConvection
	c        constants
	p        float64 // Pa
	height   float64 // m
	fixed    float64 // W/(m² K), for models without temperatures
	tilt     float64 // degree, as given
	sine     float64
	critical [2]float64 // critical Rayleigh number, house warmer and face warmer
}

// of reports whether the correlation is evaluated as in the conditions k.
func (s *innerFilmCalc) of(k *CoverConditions) bool {
	return s.p == k.Pressure && s.model == k.InsideConvection && s.model != InsideGiven && s.tilt == k.Tilt && s.height == k.Height
}

func newInnerFace(m InsideConvection, tilt, height, p float64, c *constants, given float64) innerFilmCalc {
	s := innerFilmCalc{model: m, c: *c, p: p, height: height, tilt: tilt, fixed: given}
	switch m {
	case InsideISO6946:
		s.fixed = iso6946Up
		if tilt >= iso6946Steep {
			s.fixed = iso6946Level
		}
	case InsidePlate:
		s.sine = math.Sin(tilt * degree)
	case InsideISO15099:
		s.sine = math.Sin(tilt * degree)
		// Only one of the two directions can be within 15 to 90 degree,
		// but for the upright face, where both are.
		if tilt >= 15 && tilt <= 90 {
			s.critical[0] = innerCriticalRayleigh(tilt, s.sine)
		}
		if tilt >= 90 && tilt <= 165 {
			s.critical[1] = innerCriticalRayleigh(180-tilt, s.sine)
		}
	}
	return s
}

// innerCriticalRayleigh is [IsoWin03] eq. 135, the angle in degree.
func innerCriticalRayleigh(tilt, sine float64) float64 {
	return innerCritical * math.Pow(math.Exp(innerCriticalTilt*tilt)/sine, 0.2)
}

// coefficient returns the coefficient in W/(m² K) and the derivative of
// h (inside - surface) over the surface temperature, in W/(m² K).
func (s *innerFilmCalc) coefficient(inside, surface float64) (h, slope float64) {
	d := inside - surface
	switch s.model {
	case InsidePapadakis:
		h = papaInside * math.Pow(math.Abs(d), papaInsideN) // [Papadakis92]
		return h, -h * (1 + papaInsideN)
	case InsideBaille:
		h = bailleInside * math.Pow(math.Abs(d), bailleN) // [Baille90]
		return h, -h * (1 + bailleN)
	case InsidePlate:
		return s.plate(inside, d)
	case InsideISO15099:
		return s.iso15099(inside, d)
	}
	return s.fixed, -s.fixed
}

// iso15099 is [IsoWin03] 8.3.2.2.
func (s *innerFilmCalc) iso15099(inside, d float64) (h, slope float64) {
	film := inside + constant.ZeroCelsius - innerFilm*d // eq. 132
	air := s.c.air(film, s.p)
	b, rel := s.c.buoyancy(film, air)
	ra := b * math.Abs(d) * s.height * s.height * s.height // eq. 131
	tilt, critical := s.tilt, s.critical[0]
	if d < 0 {
		tilt, critical = 180-s.tilt, s.critical[1]
	}
	var nu, dnu float64 // dnu over ln(ra)
	switch {
	case tilt < 15:
		nu = innerTurbulent * math.Cbrt(ra) // eq. 133
		dnu = nu / 3
	case tilt <= 90 && ra > critical:
		a := innerTurbulent * math.Cbrt(ra)
		nu = a - innerTurbulent*math.Cbrt(critical) + innerLaminar*fourthRoot(critical*s.sine) // eq. 136
		dnu = a / 3
	case tilt <= 179:
		nu = innerLaminar * fourthRoot(ra*s.sine) // eq. 134, 137
		dnu = nu / 4
	default:
		nu = innerDown * math.Pow(ra, 0.2) // eq. 138
		dnu = nu / 5
	}
	h = nu * air.Conductivity / s.height
	// d ln(ra)/d surface = -1/d + 0.25 rel, d k/d surface = 0.25 k1.
	slope = -h - dnu*air.Conductivity/s.height*(1-innerFilm*rel*d) +
		d*innerFilm*nu*airConductivity1/s.height
	return h, slope
}

// rayleigh is the Rayleigh number of iso15099.
func (s *innerFilmCalc) rayleigh(inside, d float64) float64 {
	film := inside + constant.ZeroCelsius - innerFilm*d // eq. 132
	b, _ := s.c.buoyancy(film, s.c.air(film, s.p))
	return b * math.Abs(d) * s.height * s.height * s.height // eq. 131
}

// plate is [ChuChu75] with air at the mean of face and room, gravity taken
// along the slope.
func (s *innerFilmCalc) plate(inside, d float64) (h, slope float64) {
	film := inside + constant.ZeroCelsius - d/2
	air := s.c.air(film, s.p)
	b, rel := s.c.buoyancy(film, air)
	ra := b * math.Abs(d) * s.height * s.height * s.height * s.sine
	nu, dnu := plateNusselt(ra, air.Viscosity*air.HeatCapacity/air.Conductivity)
	h = nu * air.Conductivity / s.height
	// As in iso15099, with half for a quarter; the Prandtl number hardly moves.
	slope = -h - dnu*air.Conductivity/s.height*(1-rel*d/2) + d/2*nu*airConductivity1/s.height
	return h, slope
}

func fourthRoot(x float64) float64 { return math.Sqrt(math.Sqrt(x)) }

func cosDegree(a float64) float64 { return math.Cos(a * degree) }
