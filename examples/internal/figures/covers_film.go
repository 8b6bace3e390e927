package figures

import (
	"fmt"

	"cloche.example/envelope"
)

func filmAtNight() Figure {
	return Figure{
		Name: "film-at-night", Title: "One film, two skies", Subject: "covers", Package: "envelope", Example: "Example_filmAtNight",
		Question: "The same film roof on a clear and on an overcast night: how much more does it lose under the stars?",
		Sketch:   "Clear film of 0.15 mm over a house. It lets part of the house's own long-wave radiation through to the sky.",
		Given: []Given{
			{"t_i", "inside air", "°C", 15, 0, 35},
			{"t_o", "outside air", "°C", -5, -25, 14},
			{"t_d", "dew point outside", "°C", -8, -39, 13},
			{"v", "wind at the film", "m/s", 2, 0, 15},
		},
		Assumes: []string{"A roof of 30 degree and a dry inner face until it lies below the dew point; the inside sees walls of its own air's temperature."},
		Change:  []string{"More wind: the film comes nearer to the outside air, and the sky's share falls."},
		Code:    "solveFilmAtNight",
		Solve:   solveFilmAtNight,
	}
}

func solveFilmAtNight(v []float64) (r Result, err error) {
	const p = 101325.0
	inside, outside, dew, wind := v[0], v[1], v[2], v[3]
	if dew > outside {
		return r, fmt.Errorf("dew point outside is %g, which lies above the outside air of %g °C", dew, outside)
	}
	clear := envelope.SkyEmissivity(dew, 0, p)
	overcast := envelope.CloudySky(clear, envelope.Clouds{Cover: 1, Emittance: 1, Base: 500})
	k := envelope.DefaultCoverConditions()
	k.Inside, k.Outside, k.Wind = inside, outside, wind
	r.Lines = []string{fmt.Sprintf("Clear film of 0.15 mm, roof of 30 degree, %g °C inside, %g °C outside, %g m/s", inside, outside, wind)}
	var first envelope.Solution
	var starry envelope.CoverConditions
	for _, sky := range []struct {
		name       string
		emissivity float64
	}{{"clear", clear}, {"overcast", overcast}} {
		temperature := envelope.SkyTemperatureOf(outside, sky.emissivity)
		k.SkyDrop = outside - temperature
		s, err := envelope.SingleFilm().Solve(k)
		if err != nil {
			return r, err
		}
		if sky.name == "clear" {
			first, starry = s, k
		}
		r.Lines = append(r.Lines,
			fmt.Sprintf("%s: sky emissivity %.3f, sky %.1f °C", sky.name, sky.emissivity, temperature),
			fmt.Sprintf("  film                %6.1f °C", s.InnerTemperature),
			fmt.Sprintf("  from the house      %6.1f W/m²   convection %.1f, long-wave %.1f", s.FluxIn, s.InConvective, s.InRadiative),
			fmt.Sprintf("  driven by the air   %6.1f W/m²", s.AirDriven),
			fmt.Sprintf("  driven by the sky   %6.1f W/m²", s.SkyDriven),
			fmt.Sprintf("  U, air to air       %6.2f W/(m² K)   without the sky's part %.2f", s.U, s.UOvercast))
	}
	film := first.Inner[0].Temperature
	r.Steps = []Step{
		{Says: "Emissivity of the clear sky at midnight.", Formula: "ε = 0.711 + 0.56 t_d/100 + 0.73 (t_d/100)^2 + 0.013 + 0.00012 (p/100 - 1000)", Source: "BerMar84", Values: numbers{"t_d": dew, "p": p}, Value: clear},
		{Says: "Temperature of that sky.", Formula: "t_s = (t_o + 273.15) ε^0.25 - 273.15", Values: numbers{"t_o": outside, "ε": clear}, Value: starry.Outside - starry.SkyDrop, Unit: "°C", Within: 1e-6, Why: "rounding"},
		{Says: "Temperature of the film at which all its heat balances.", Symbol: "t_f", Source: "IsoWin03 8.3, solved", Value: film, Unit: "°C"},
		{Says: "Convection from the house's air.", Formula: "q_c = h_i (t_i - t_f)", Source: "IsoWin03 eq. 131-138 for the coefficient", Values: numbers{"h_i": first.InsideCoefficient, "t_i": inside, "t_f": film}, Value: first.InConvective, Unit: "W/m²", Within: 1e-6, Why: "rounding"},
		{Says: "With the long-wave part, all that leaves the house.", Formula: "q = q_c + q_r", Values: numbers{"q_c": first.InConvective, "q_r": first.InRadiative + first.InLatent}, Value: first.FluxIn, Unit: "W/m²"},
		{Says: "As a U-value from air to air, under this sky.", Formula: "U = q/(t_i - t_o)", Values: numbers{"q": first.FluxIn, "t_i": inside, "t_o": outside}, Value: first.U, Unit: "W/(m² K)"},
	}
	r.Picture = throughCover("Temperatures through the film under a clear sky", "The film stands between the house and a sky far colder than the air.", first, starry)
	return r, nil
}
