package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/examples/internal/weather"
	"cloche.example/internal/constant"
	"cloche.example/ventilation"
)

// readWeather reads the named file, or the real year where there is no name.
// A file that does not tell its site has that of the plan.
func readWeather(name string, fill bool, in io.Reader, p *plan.Plan) (*weather.Series, error) {
	if name == "" {
		return weather.Greensboro()
	}
	return fromplan.Weather(p, name, fill, in)
}

// fillSky gives hours without a reading the sky's heat radiation from cloud
// and humidity.
func fillSky(p *plan.Plan, s *weather.Series) error {
	var fault error
	ahead := time.Duration((s.Site.Longitude/15 - s.Site.Zone) * float64(time.Hour))
	s.FillSky(func(h weather.SkyHour) float64 {
		out, err := fromplan.Air(p, h.Temperature, min(1, h.RelativeHumidity))
		at := h.Time.Add(ahead + 30*time.Minute)
		solar := time.Duration(at.Hour())*time.Hour + time.Duration(at.Minute())*time.Minute
		air := envelope.HouseAir{Inside: out, Outside: out, Hour: solar}
		if h.Cloud == h.Cloud {
			air.Cloud = h.Cloud
		}
		k, _, bad := fromplan.Conditions(p, air, 1, false)
		if err = errors.Join(err, bad); err != nil {
			fault = fmt.Errorf("sky of %s: %w", h.Time.Format(stamp), err)
			return 0
		}
		t := h.Temperature - k.SkyDrop + 273.15
		return constant.StefanBoltzmann * t * t * t * t
	})
	return fault
}

const stamp = "2006-01-02 15:04"

// skies are the radiant temperatures of the sky, °C.
func skies(p *plan.Plan, s *weather.Series) []float64 {
	out := make([]float64, len(s.Sky))
	for i, l := range s.Sky {
		out[i] = math.Sqrt(math.Sqrt(l/constant.StefanBoltzmann)) - 273.15
		if p.Assumptions.SkyAsColdAsAir {
			out[i] = s.Temperature[i]
		}
	}
	return out
}

// windAtHouse carries the wind of the mast over open country to the height of
// the eaves, to which the pressure coefficients refer; still air without a mast.
func windAtHouse(p *plan.Plan, s *weather.Series) ([]float64, error) {
	out := make([]float64, s.Hours())
	if s.Wind == nil {
		return out, nil
	}
	open, _ := ventilation.FindTerrain("open")
	here, _ := ventilation.FindTerrain(p.Site.Terrain)
	one, err := ventilation.PowerWind{Measured: 1, Station: p.Site.WindMastHeight, StationTerrain: open, Height: max(1, p.House.EaveHeight), Terrain: here}.Speed()
	for i, v := range s.Wind {
		out[i] = min(v*one, 40)
	}
	return out, err
}
