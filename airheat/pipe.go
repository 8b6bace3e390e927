package airheat

import (
	"errors"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
)

// Ranges of heating pipes.
var (
	pipeDiameterRange = domain.Range{Min: 0.005, Max: 0.3, Unit: "m", Source: "heating pipes of houses"}
	pipeSurfaceRange  = domain.Range{Min: 0, Max: 150, Unit: "°C", Source: "hot water"}
	pipeAirRange      = domain.Range{Min: -40, Max: 80, Unit: "°C", Source: "air of houses"}
	pipeShareRange    = domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition"}
)

// HeatPipe is a level pipe of hot water in a house.
type HeatPipe struct {
	Diameter           float64 // m, 0.005 to 0.3, outside
	Emissivity         float64 // fraction, 0 to 1; 0.88 of painted steel [Vanthoor11], about 0.4 of bare copper, half with aluminium paint
	View               float64 // fraction, 0 to 1, of what it radiates that reaches surroundings of another temperature; 0.98 for one pipe [Vanthoor11], less where rows shade each other
	SurfaceTemperature float64 // °C, 0 to 150, of its outside: for steel almost the water's own, for plastic less
	AirTemperature     float64 // °C, -40 to 80
	RadiantTemperature float64 // °C, -40 to 80, radiant temperature of crop, floor and cover about it
}

// PipeHeat is the heat of a metre of pipe.
type PipeHeat struct {
	Convection         float64 // W/m, to the air: 1.28 pi d^0.75 dT^1.25
	Radiation          float64 // W/m, to the surroundings
	Total              float64 // W/m, both
	Radiant            float64 // fraction of Total that is radiation; 0 where there is no heat
	VanthoorConvection float64 // W/m, another published form of Convection, for pipes of 51 mm: 1.99 pi d dT^1.32
}

// Coefficients of the convection of level pipes.
const (
	pipeFree      = 1.28 // W/(m^1.75 K^1.25) [Righini20]
	pipeFreePower = 0.25 // of dT, over 1
	pipe51        = 1.99 // W/(m² K^1.32) [Vanthoor11] appendix table 4
	pipe51Power   = 0.32 // of dT, over 1
)

// DefaultHeatPipe returns a painted steel pipe of 51 mm, emissivity 0.88 and view
// 0.98, at surface, °C, 0 to 150, in air and surroundings of air, °C, -40 to 80.
func DefaultHeatPipe(surface, air float64) HeatPipe {
	return HeatPipe{Diameter: 0.051, Emissivity: 0.88, View: 0.98, SurfaceTemperature: surface, AirTemperature: air, RadiantTemperature: air}
}

// Heat returns the heat of a metre of p, negative where it is colder:
//
//	Convection = 1.28 pi d^0.75 dT^1.25                [Righini20]
//	Radiation  = pi d eps F sigma (Tp⁴ - Ts⁴)          [Vanthoor11]
//
// Of a pipe of 51 mm, 20 to 60 K over the air, the convection lies 2 to 10 %
// above that of Churchill and Chu, of one of 28 mm 24 %; VanthoorConvection, which
// has no law of diameter, lies 2 to 9 % below it at 51 mm. A published 74.6 W/m
// of bare copper at 82 °C, 41 mm, is reproduced by it with an emissivity of
// 0.40; the form used here exceeds it by 6 %. The error lists every fault.
func (p HeatPipe) Heat() (PipeHeat, error) {
	if err := errors.Join(
		pipeDiameterRange.Check("Diameter", p.Diameter),
		pipeShareRange.Check("Emissivity", p.Emissivity),
		pipeShareRange.Check("View", p.View),
		pipeSurfaceRange.Check("SurfaceTemperature", p.SurfaceTemperature),
		pipeAirRange.Check("AirTemperature", p.AirTemperature),
		pipeAirRange.Check("RadiantTemperature", p.RadiantTemperature),
	); err != nil {
		return PipeHeat{}, err
	}
	d := p.SurfaceTemperature - p.AirTemperature
	size := math.Abs(d)
	tp, ts := p.SurfaceTemperature+constant.ZeroCelsius, p.RadiantTemperature+constant.ZeroCelsius
	h := PipeHeat{
		Convection:         pipeFree * math.Pi * math.Sqrt(p.Diameter*math.Sqrt(p.Diameter)) * d * math.Pow(size, pipeFreePower),
		VanthoorConvection: pipe51 * math.Pi * p.Diameter * d * math.Pow(size, pipe51Power),
		Radiation:          math.Pi * p.Diameter * p.Emissivity * p.View * constant.StefanBoltzmann * (tp*tp*tp*tp - ts*ts*ts*ts),
	}
	h.Total = h.Convection + h.Radiation
	if h.Total != 0 {
		h.Radiant = h.Radiation / h.Total
	}
	return h, nil
}
