package figures

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

func controllerTick() Figure {
	return Figure{
		Name: "will-it-drip", Title: "Six readings before sunrise", Subject: "moisture and crop", Package: "envelope", Example: "Example_controllerTick",
		Question: "From temperature and humidity inside and outside: does the cover drip, how dry is the air, and does venting dry the house?",
		Sketch:   "A double film at six in the morning, half the sky under cloud.",
		Given: []Given{
			{"t_i", "inside air", "°C", 16, 3, 35},
			{"φ_i", "relative humidity inside", "fraction", 0.88, 0.2, 1},
			{"t_o", "outside air", "°C", 4, -25, 25},
			{"φ_o", "relative humidity outside", "fraction", 0.95, 0.1, 1},
			{"v", "wind", "m/s", 2, 0, 15},
			{"c", "share of the sky under cloud", "fraction", 0.5, 0, 1},
		},
		Assumes: []string{"A pressure of 97800 Pa; the dry face tells where dripping begins."},
		Change:  []string{"A clear sky: the face cools by about a kelvin, and drips at a lower humidity.", "Cold air holds little water: even saturated, it dries the house."},
		Code:    "solveTick",
		Solve:   solveTick,
	}
}

func solveTick(v []float64) (r Result, err error) {
	inside, e1 := psychro.FromRelativeHumidity(v[0], v[1], 97800)
	outside, e2 := psychro.FromRelativeHumidity(v[2], v[3], 97800)
	if err := errors.Join(e1, e2); err != nil {
		return r, err
	}
	night, err := envelope.NewCoverConditions(envelope.HouseAir{Inside: inside, Outside: outside, Wind: v[4], Hour: 6 * time.Hour, Cloud: v[5]})
	if err != nil {
		return r, err
	}
	night.InnerFace = envelope.InnerDry // the dry face tells where dripping begins
	film, err := envelope.DoubleFilm().Solve(night)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("inner face %.1f °C, dew point inside %.1f °C: drips %v", film.InnerTemperature, inside.DewPoint(), film.Condenses),
		fmt.Sprintf("it drips above a relative humidity of %.0f %%", 100*film.DripHumidity),
		fmt.Sprintf("vapour pressure deficit %.0f Pa", inside.VapourPressureDeficit()),
		fmt.Sprintf("outside air holds %.1f, inside air %.1f g/kg: venting dries %v",
			1000*outside.HumidityRatio(), 1000*inside.HumidityRatio(), outside.HumidityRatio() < inside.HumidityRatio()),
	}
	es := inside.SaturationVapourPressure()
	atFace, at := psychro.SaturationPressure(film.InnerTemperature), psychro.SaturationPressure(v[0])
	r.Steps = []Step{
		{Says: "Sky over the house.", Symbol: "t_s", Source: "BerMar84, clouds at 1000 m", Value: night.Outside - night.SkyDrop, Unit: "°C"},
		{Says: "Inner face of the dry film, where all heat balances.", Symbol: "t_f", Source: "IsoWin03 8.3, solved", Value: film.InnerTemperature, Unit: "°C"},
		{Says: "Dew point of the house's air.", Symbol: "t_d", Value: inside.DewPoint(), Unit: "°C"},
		{Says: "The humidity at which the two meet.", Formula: "φ_d = p_f/p_i", Source: "saturation at the face over that at the air", Values: numbers{"p_f": atFace, "p_i": at}, Value: film.DripHumidity, Within: 1e-3, Why: "the enhancement factor of moist air changes a little from face to air"},
		{Says: "Deficit of the air.", Formula: "D = (1 - φ_i) e_s", Values: numbers{"φ_i": v[1], "e_s": es}, Value: inside.VapourPressureDeficit(), Unit: "Pa", Within: 1e-7, Why: "rounding"},
	}
	face := func(cloud float64) float64 {
		k, err := envelope.NewCoverConditions(envelope.HouseAir{Inside: inside, Outside: outside, Wind: v[4], Hour: 6 * time.Hour, Cloud: cloud / 100})
		if err != nil {
			return math.NaN()
		}
		k.InnerFace = envelope.InnerDry
		s, err := envelope.DoubleFilm().Solve(k)
		if err != nil {
			return math.NaN()
		}
		return s.InnerTemperature
	}
	r.Picture, err = chart{title: "Face and dew point", says: "The inner face warms with the cloud cover; the dew point is a level line. Where the face lies below it, the cover drips.", x: "share of the sky under cloud, %", y: "°C",
		curves: []curve{{"inner face", along(0, 100, 20, face)}, {"dew point inside", straight(0, inside.DewPoint(), 100, inside.DewPoint())}},
		marks:  []mark{{"", 100 * v[5], film.InnerTemperature}}}.picture("The face drips while its line lies below the dew point.")
	return r, err
}
