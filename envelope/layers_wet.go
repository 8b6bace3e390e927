package envelope

import (
	"math"

	"cloche.example/internal/constant"
)

// Saturation pressure of [IsoMoist12] Annex E, used by the condensation check
// of covers: p = 610.5 exp(a t/(b + t)) Pa.
const (
	moistScale               = 610.5         // Pa
	moistWaterA, moistWaterB = 17.269, 237.3 // °C, at 0 °C and above, eq. E.7
	moistIceA, moistIceB     = 21.875, 265.5 // °C, below 0 °C, eq. E.8
)

// moistSaturation returns the saturation pressure in Pa at t in °C, over water
// at and above 0 °C and over ice below, and its slope in Pa/K: [IsoMoist12] eq.
// E.7 and E.8.
func moistSaturation(t float64) (p, slope float64) {
	a, b := moistWaterA, moistWaterB
	if t < 0 {
		a, b = moistIceA, moistIceB
	}
	p = moistScale * math.Exp(a*t/(b+t))
	return p, p * a * b / ((b + t) * (b + t))
}

// coverDewPoint returns the dew point, below 0 °C the frost point, in °C of
// air at t in °C with the relative humidity rh as a fraction, by [IsoMoist12]
// eq. E.9 and E.10. Dry air has none: -Inf. Package psychro has the better
// equations; this one is what the condensation standard prescribes.
func coverDewPoint(t, rh float64) float64 {
	if rh == 0 {
		return math.Inf(-1)
	}
	p, _ := moistSaturation(t)
	x := math.Log(rh * p / moistScale)
	if x >= 0 {
		return moistWaterB * x / (moistWaterA - x)
	}
	return moistIceB * x / (moistIceA - x)
}

// Constants of the latent exchange of a wet face.
const (
	vapourGas    = 461.5               // J/(kg K), gas constant of water vapour [AshHoF17] ch. 1
	lewisNumber  = 0.87                // dimensionless, thermal over vapour diffusivity of air near 10 °C (from memory)
	vapourHeat0  = constant.LatentZero // J/kg, heat of vaporisation at 0 °C [AshHoF17] ch. 1
	vapourHeat1  = -2361.0             // J/(kg K), slope of it (from memory)
	freezingHeat = 3.335e5             // J/kg, heat of fusion at 0 °C [AshHoF17] ch. 1
)

// stillVapour is the least coefficient in W/(m² K) with which vapour reaches a
// wet face (chosen). Correlations of free convection fall to zero with an
// infinite slope where face and air are equally warm, which vapour does not:
// its own difference of density stirs the air.
const stillVapour = 0.5

// freezingSpan is the span in K below 0 °C over which the deposit turns from
// water to frost. A jump at 0 °C would leave some balances without a root.
const freezingSpan = 0.2

// latentHeat returns the heat in J/kg that a kilogram of vapour gives up on a
// face at t in °C, condensing above 0 °C and turning to frost below, and its
// derivative over t. A film that dries is taken as water at any temperature:
// frost that took more heat away than water would leave balances with three
// roots around 0 °C.
func latentHeat(t float64, dries bool) (l, slope float64) {
	l, slope = vapourHeat0+vapourHeat1*t, vapourHeat1
	switch {
	case dries:
	case t < -freezingSpan:
		l += freezingHeat
	case t < 0:
		l -= freezingHeat * t / freezingSpan
		slope -= freezingHeat / freezingSpan
	}
	return l, slope
}

// wetFace computes the vapour flux to a wet face by the Lewis relation.
type wetFace struct {
	vapour float64 // kg/m³, of the inside air
	perH   float64 // m³ K/J, 1/(rho cp Le^(2/3)) of the inside air
}

func newWetFace(k *CoverConditions, air airProperties) wetFace {
	p, _ := moistSaturation(k.Inside)
	return wetFace{
		vapour: k.InsideHumidity * p / (vapourGas * (k.Inside + constant.ZeroCelsius)),
		perH:   1 / (air.Density * air.HeatCapacity * math.Pow(lewisNumber, 2.0/3)),
	}
}

// condensate returns the vapour flux in kg/(s m²) to a face at t in °C with
// the convection coefficient h in W/(m² K), and its derivative over t at
// constant h.
func (w *wetFace) condensate(t, h float64) (g, slope float64) {
	p, dp := moistSaturation(t)
	kelvin := t + constant.ZeroCelsius
	rho := p / (vapourGas * kelvin)
	beta := h * w.perH // m/s
	return beta * (w.vapour - rho), -beta * (dp/(vapourGas*kelvin) - rho/kelvin)
}
