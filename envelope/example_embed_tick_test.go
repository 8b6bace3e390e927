package envelope_test

import (
	"errors"
	"fmt"
	"time"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

// One tick of a controller: from temperature, humidity and pressure inside and
// outside, whether the cover drips, how dry the air is, and whether venting
// dries the house. The readings are invented.
func Example_controllerTick() {
	inside, e1 := psychro.FromRelativeHumidity(16, 0.88, 97800)
	outside, e2 := psychro.FromRelativeHumidity(4, 0.95, 97800)
	night, e3 := envelope.NewCoverConditions(envelope.HouseAir{Inside: inside, Outside: outside, Wind: 2, Hour: 6 * time.Hour, Cloud: 0.5})
	night.InnerFace = envelope.InnerDry // the dry face tells where dripping begins
	film, e4 := envelope.DoubleFilm().Solve(night)
	if err := errors.Join(e1, e2, e3, e4); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("inner face %.1f °C, dew point inside %.1f °C: drips %v\n", film.InnerTemperature, inside.DewPoint(), film.Condenses)
	fmt.Printf("it drips above a relative humidity of %.0f %%\n", 100*film.DripHumidity)
	fmt.Printf("vapour pressure deficit %.0f Pa\n", inside.VapourPressureDeficit())
	fmt.Printf("outside air holds %.1f, inside air %.1f g/kg: venting dries %v\n",
		1000*outside.HumidityRatio(), 1000*inside.HumidityRatio(), outside.HumidityRatio() < inside.HumidityRatio())
	// Output:
	// inner face 10.3 °C, dew point inside 14.0 °C: drips true
	// it drips above a relative humidity of 69 %
	// vapour pressure deficit 219 Pa
	// outside air holds 5.0, inside air 10.4 g/kg: venting dries true
}
