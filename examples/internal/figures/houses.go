package figures

import (
	"errors"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

// covered plans a house of the form under one cover all round: over clay, in
// the ground's year of the library, with the leaks of an ordinary house. A
// figure changes what it tells of.
func covered(form envelope.Form, cover envelope.Cover) (envelope.HousePlan, error) {
	shape, err := envelope.NewShape(form)
	return envelope.HousePlan{
		Shape:   shape,
		Covers:  map[envelope.FacetKind]envelope.Cover{envelope.Roof: cover, envelope.SideWall: cover, envelope.EndWall: cover},
		Ground:  envelope.DefaultGround(envelope.ClaySoil()),
		Climate: envelope.DefaultGroundClimate(),
		Leakage: envelope.DefaultLeakage(),
	}, err
}

// dampAir is a temperature, °C, and a relative humidity, fraction.
type dampAir struct{ t, rh float64 }

// clearNight is a night under the clear sky of the outside air, at p, Pa.
func clearNight(p, wind float64, inside, outside dampAir) (envelope.HouseConditions, error) {
	in, e1 := psychro.FromRelativeHumidity(inside.t, inside.rh, p)
	out, e2 := psychro.FromRelativeHumidity(outside.t, outside.rh, p)
	if err := errors.Join(e1, e2); err != nil {
		return envelope.HouseConditions{}, err
	}
	return envelope.NewHouseConditions(envelope.HouseAir{Inside: in, Outside: out, Wind: wind})
}
