package envelope_test

import (
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

// The night sky by three models, and by the one call that programs use. They
// differ by some kelvins, and clouds count for more than the choice of a model.
func Example_nightSky() {
	const t, p = -5.0, 101325.0
	air, err := psychro.FromRelativeHumidity(t, 0.80, p)
	if err != nil {
		fmt.Println(err)
		return
	}
	dew := air.DewPoint()
	fmt.Printf("air %.0f °C, dew point %.1f °C, midnight\n", t, dew)
	fmt.Println("clear sky              emissivity    °C")
	show := func(name string, emissivity float64) {
		fmt.Printf("  %-20s %10.3f %5.1f\n", name, emissivity, envelope.SkyTemperatureOf(t, emissivity))
	}
	show("Berdahl and Martin", envelope.SkyEmissivity(dew, 0, p))
	show("Clark and Allen", envelope.ClarkAllen(dew, 0))
	swinbank := envelope.Swinbank(t) // knows no humidity
	show("Swinbank", math.Pow((swinbank+273.15)/(t+273.15), 4))
	fmt.Println("SkyTemperature")
	for _, cloud := range []float64{0, 0.5, 1} {
		midnight, err := envelope.SkyTemperature(air, 0, cloud)
		noon, worse := envelope.SkyTemperature(air, 12*time.Hour, cloud)
		if err != nil || worse != nil {
			fmt.Println(err, worse)
			return
		}
		fmt.Printf("  cloud %.1f: %5.1f °C at midnight, %5.1f °C at noon\n", cloud, midnight, noon)
	}
	// Output:
	// air -5 °C, dew point -7.6 °C, midnight
	// clear sky              emissivity    °C
	//   Berdahl and Martin        0.687 -29.0
	//   Clark and Allen           0.766 -22.3
	//   Swinbank                  0.668 -30.8
	// SkyTemperature
	//   cloud 0.0: -29.0 °C at midnight, -31.3 °C at noon
	//   cloud 0.5: -17.5 °C at midnight, -18.7 °C at noon
	//   cloud 1.0:  -7.4 °C at midnight,  -7.6 °C at noon
}
