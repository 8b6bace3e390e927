package weather_test

import (
	"fmt"
	"strings"

	"cloche.example/examples/internal/weather"
)

// A morning of an invented place, with an hour that was not written down. Beam
// and diffuse are worked out from the global radiation.
func Example() {
	const file = `# name: an invented place
# latitude_deg: 50.6
# longitude_deg: 14.1
# zone_h: 1
# altitude_m: 340
time,temperature_c,relative_humidity,global_w_m2
2001-04-05T07:00,3.0,0.95,120
2001-04-05T08:00,4.5,0.90,310
2001-04-05T10:00,8.5,0.70,610
2001-04-05T11:00,9.5,0.65,680
`
	s, err := weather.Read(strings.NewReader(file), weather.Options{Fill: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, t := range s.Time {
		fmt.Printf("%s %4.1f °C  dew %4.1f °C  sun %3.0f = %3.0f x %.2f + %3.0f W/m²\n", t.Format("15:04"),
			s.Temperature[i], s.DewPoint[i], s.Global[i], s.Direct[i], s.Sun[i].Sine, s.Diffuse[i])
	}
	for _, line := range s.Account.Lines() {
		fmt.Println(line)
	}
	_, err = weather.Read(strings.NewReader(strings.Replace(file, "0.70", "70", 1)), weather.Options{})
	fmt.Println(err)
	// Output:
	// 07:00  3.0 °C  dew  2.3 °C  sun 120 =  17 x 0.31 + 115 W/m²
	// 08:00  4.5 °C  dew  3.0 °C  sun 310 = 241 x 0.45 + 201 W/m²
	// 09:00  6.5 °C  dew  3.2 °C  sun 460 = 437 x 0.57 + 210 W/m²
	// 10:00  8.5 °C  dew  3.3 °C  sun 610 = 674 x 0.66 + 167 W/m²
	// 11:00  9.5 °C  dew  3.3 °C  sun 680 = 744 x 0.70 + 156 W/m²
	// 1 hour filled, in a straight line between the hours beside it
	// 5 hours of sun split into beam and diffuse after Erbs
	// 5 hours with the sky's heat radiation from humidity alone, as if clear
	// pressure of the standard atmosphere at the site's altitude
	// line 9: relative_humidity is 70, allowed more than 0, at most 1 (fraction)
	// line 9: 1 hour is missing before it, from 2001-04-05 09:00 on; gaps of at most 3 hours can be filled on request
}
