package envelope

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/psychro"
)

// stillVapour is the least coefficient in W/(m² K) with which vapour reaches a
// wet face (chosen). Correlations of free convection fall to zero with an
// infinite slope where face and air are equally warm, which vapour does not:
// its own difference of density stirs the air.
const stillVapour = 0.5

// alikeAir is the difference of face and air, K, below which their convection has no
// slope that could be told from rounding.
const alikeAir = 1e-9

// Ends of the formula of a wet face. Beyond them the solver only passes on its
// way: vapour that carries off heat at a mole fraction of 0.95 outweighs every
// heat that reaches a face within the ranges of CoverConditions.
const (
	mostSaturated = 0.95   // fraction, mole fraction of vapour at the face
	surelyBelow   = 60.0   // °C, where the mole fraction is below that at any pressure in range
	coldestFace   = -100.0 // °C, where psychro ends: 1e-8 kg/kg
)

// roomAir is the air that vapour comes from.
type roomAir struct {
	state psychro.State
	ratio float64 // kg/kg dry air
	dew   float64 // °C, dew or frost point; -Inf of dry air
	load  float64 // J/kg, latent heat of evaporation at the air's temperature

	pressure, byPressure float64 // Pa, of vapour, and kg/kg per Pa; for HouseCovers alone
}

// newRoomAir takes conditions that have been checked.
func newRoomAir(k *CoverConditions) roomAir {
	s, _ := psychro.FromRelativeHumidity(k.Inside, k.InsideHumidity, k.Pressure)
	return roomOf(s)
}

// roomOf returns the air of the state.
func roomOf(s psychro.State) roomAir {
	r := roomAir{state: s, ratio: s.HumidityRatio(), dew: s.DewPoint(), load: evaporation(s.Temperature())}
	if !(r.ratio > 0) {
		r.dew = math.Inf(-1)
	}
	return r
}

// evaporation returns the heat in J/kg that evaporates water at t in °C, taken
// at the end of its range below -40 °C.
func evaporation(t float64) float64 {
	return psychro.LatentHeatOver(psychro.Liquid, min(max(t, -40), hottestHeat))
}

// hottestHeat is the end in °C of the formula for the heat of evaporation.
const hottestHeat = 110.0

// latentHeat returns the heat in J/kg that a kilogram of vapour gives up on a
// face at t in °C, as water or as frost; each is continued as it is at 0.01 °C,
// for the solver to find which of the two it is.
func latentHeat(t float64, frost bool) float64 {
	if frost {
		return psychro.LatentHeatOver(psychro.Ice, min(max(t, coldestFace), psychro.TriplePoint))
	}
	return evaporation(max(t, psychro.TriplePoint))
}

// wetAt is what draws vapour to a wet face.
type wetAt struct {
	perH   float64 // K kg/J, coefficient of the flux over that of convection: 1/(cp Le^(2/3))
	ratio  float64 // kg/kg dry air, saturated at the face
	slope  float64 // 1/K, of ratio over the face's temperature
	bends  float64 // 1/K, of perH, by its own size
	drives float64 // fraction of perH, by which the flux grows with the ratio of the air
}

// How what draws vapour to a face changes, for steps towards the balance alone:
// more vapour in the film has more heat capacity and another Lewis number, and
// the pressure of saturated air is higher than that of water alone.
const (
	filmHeat        = constant.HeatDryAir     // J/(kg K), heat capacity of the film without vapour
	byVapour        = constant.HeatVapour / 2 // J/(kg K), half that of vapour: by the humidity ratio at the face and in the air
	byLewis         = 250.0                   // J/(kg K), what the Lewis number makes up for of the latter
	enhancement     = 4.15e-8                 // 1/Pa, of the vapour pressure over the pressure of the air
	evaporationBend = -2365.0                 // J/(kg K), of the heat of evaporation
)

// wetAt returns what draws the air's vapour to a wet face at t in °C, by
// psychro.State.VapourFlux.
func (r *roomAir) wetAt(t float64) wetAt {
	at := min(max(t, coldestFace), r.warmest(t))
	v, err := r.state.VapourFlux(at, 1)
	if err != nil {
		return wetAt{perH: nan, ratio: nan, slope: nan}
	}
	// d ln W/d ln p is 1 + W/MoleRatio, the enhancement factor staying as it is.
	w := wetAt{perH: v.Coefficient, ratio: v.Saturation}
	pressure := w.ratio / (constant.MoleRatio + w.ratio) * r.state.Pressure()
	w.slope = w.ratio * (1 + w.ratio/constant.MoleRatio) * psychro.SaturationSlope(at) / pressure * (1 + enhancement*r.state.Pressure())
	film := 1 / (filmHeat + byVapour*(r.ratio+w.ratio))
	w.bends = -byVapour * film * w.slope
	w.drives = 1 - (byVapour-byLewis)*film*(r.ratio-w.ratio)
	if t > at {
		w.ratio += w.slope * (t - at)
	}
	if t != at {
		w.bends = 0
	}
	return w
}

// warmest is the temperature in °C to which the formula goes, no less than t
// where that is surely below.
func (r *roomAir) warmest(t float64) float64 {
	if t < surelyBelow {
		return t
	}
	return psychro.SaturationTemperature(mostSaturated * r.state.Pressure())
}

// dripHumidity returns the relative humidity of the air, fraction, above which
// a face at t in °C draws condensation.
func (r *roomAir) dripHumidity(t float64) float64 {
	at := min(max(t, coldestFace), r.warmest(t))
	return (r.state.VapourPressureDeficitAt(at) + r.state.VapourPressure()) / r.state.SaturationVapourPressure()
}
