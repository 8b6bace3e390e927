package ventilation

import (
	"errors"
	"fmt"

	"cloche.example/internal/constant"
	"cloche.example/internal/solve"
	"cloche.example/psychro"
)

// CanopyState is a canopy whose energy balance closes, per m² of floor.
type CanopyState struct {
	Temperature float64   // °C, of the leaves
	Sun         CanopySun // W/m², what becomes of the sun
	Heat        float64   // W/m², sensible, to the air
	Latent      float64   // W/m², to vapour
	Longwave    float64   // W/m², heat radiation to the surroundings, up and down
	Residual    float64   // W/m², what the terms fail to balance
	Transpired  float64   // kg/(m² s); negative is dew
	Deficit     float64   // Pa, leaf to air
	Boundary    float64   // s/m, of the leaves' boundary layer on 2 LAI
	Stomata     Response  // s/m, stomatal resistance on 2 LAI, with its factors; all zero under dew
}

// Solve returns the leaves' temperature and transpiration in the given air
// with sun, W/m², 0 to 1500, of floor above them and surroundings that radiate
// as at radiant, °C, -100 to 80, to both faces of the canopy with the effective
// emissivity, fraction, 0 to 1:
//
//	sun = 2 LAI rho cp (Tc - Ta)/re + lambda E + 2 f e sigma (Tc⁴ - Tr⁴)
//	E   = 2 LAI (e*(Tc) - e)/(Rv T (re + ri)), f = 1 - exp(-k LAI)
//
// the leaf-layer form of [Stanghellini87] (from memory), solved as it stands:
// it closes to 1e-9. The error joins the inputs outside their ranges and asks
// for LAI above zero.
func (c Canopy) Solve(air psychro.State, sun, radiant, emissivity float64) (CanopyState, error) {
	leaves := error(nil)
	if c.LAI == 0 {
		leaves = openLeafAreaRange.Check("LAI", 0)
	}
	if err := errors.Join(c.check(""), leaves,
		temperatureRange.Check("air.Temperature", air.Temperature()),
		pressureRange.Check("air.Pressure", air.Pressure()),
		sunRange.Check("sun", sun),
		skyRange.Check("radiant", radiant),
		shareRange.Check("emissivity", emissivity),
	); err != nil {
		return CanopyState{}, err
	}
	s := CanopyState{Sun: c.sun(sun)}
	still := c.Stomata.still(s.Sun, c.CO2)
	balance := func(t float64) float64 { c.canopyAt(&s, &still, air, radiant, emissivity, t); return s.Residual }
	t, err := solve.Root(balance, climateLow, climateHigh, temperatureFound)
	if err != nil {
		return CanopyState{}, fmt.Errorf("canopy: %w", err)
	}
	balance(t)
	return s, nil
}

// canopyAt fills s with the terms at the leaf temperature t, °C.
func (c Canopy) canopyAt(s *CanopyState, still *Response, air psychro.State, radiant, emissivity, t float64) {
	ta, p, w := air.Temperature(), air.Pressure(), air.HumidityRatio()
	e := p * w / (vapourRatio + w)
	tk := ta + kelvin
	leaf := 2 * c.LAI
	rhoCp := (p - e) / (gasConstantDryAir * tk) * (heatCapacityAir + vapourHeat*w)
	s.Temperature = t
	s.Boundary = leafBoundary(c.LeafSize, t-ta, c.AirSpeed)
	s.Heat = leaf * rhoCp * (t - ta) / s.Boundary
	es, _ := saturation(t)
	s.Deficit = es - e
	s.Stomata = Response{}
	source := ta // the temperature of the vapour that passes: of the air for dew
	if s.Deficit > 0 {
		s.Stomata, source = still.at(c.Stomata, t, s.Deficit), t
	}
	s.Transpired = leaf * s.Deficit / (gasConstantDryAir / vapourRatio * tk * (s.Boundary + s.Stomata.Resistance))
	s.Latent = s.Transpired * (vapourEnthalpy(source) - liquidHeat*t)
	tc, tr := t+kelvin, radiant+kelvin
	s.Longwave = 2 * interception(c.LAI, c.LongwaveExtinction) * emissivity * constant.StefanBoltzmann * (tc*tc*tc*tc - tr*tr*tr*tr)
	s.Residual = s.Sun.Canopy - s.Heat - s.Latent - s.Longwave
}
