package psychro_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"cloche.example/psychro"
)

// FuzzConstructors gives all constructors the same three numbers, and asks all
// properties of every state that comes out: an error, or finite and in range.
func FuzzConstructors(f *testing.F) {
	for _, s := range [][3]float64{
		{20, 0.5, 101325}, {0, 1, 101325}, {0.01, 1e-300, 70e3}, {-100, 0, 200e3}, {99.9, 1, 101325}, {110, 1, 200e3}, {25, 12, 95e3},
		{-0.5, -0.6, 101325}, {5e4, 0.9, 85e3}, {0.84, 0.008, 101325}, {math.NaN(), math.Inf(1), 0}, {20, 60, 101.325}, {293.15, 0.5, 101325},
		{-99.99, 1e-12, 30e3}, {30, 1000, 1e5}, {20, 2338, 1e5}, {0.009, 0.009, 101325}, {0.0099, 0.0045, 85e3}, {0.0099, 0.00377, 101325}, {150, 0.02, 101325}, {199, 900, 101325}, {89.9, 0.9, 70e3}, {1e5, 0.03, 101325},
	} {
		f.Add(s[0], s[1], s[2])
	}
	f.Fuzz(func(t *testing.T, a, b, p float64) {
		for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
			for _, c := range all {
				s, err := c.of(m, a, b, p)
				if err != nil {
					if err.Error() == "" || s != (psychro.State{}) {
						t.Fatalf("%v %s(%v, %v, %v): error %q with state %v", m, c.name, a, b, p, err, s)
					}
					if strings.Contains(err.Error(), "allowed NaN") || strings.Contains(err.Error(), "to NaN") {
						t.Fatalf("%v %s(%v, %v, %v): error %q names no limit", m, c.name, a, b, p, err)
					}
					continue
				}
				sound(t, s, c.name, a, b, p)
			}
		}
	})
}

func sound(t *testing.T, s psychro.State, name string, in ...float64) {
	t.Helper()
	fail := func(what string, v float64) {
		t.Fatalf("%v %s%v: %s is %v", s.Model(), name, in, what, v)
	}
	q := s.Properties()
	r := reflect.ValueOf(q)
	for i := range r.NumField() {
		v := r.Field(i).Float()
		field := r.Type().Field(i).Name
		switch {
		case field == "DewPoint" && q.MoleFraction < 1e-40,
			field == "DegreeOfSaturation" && q.SaturationVapourPressure >= q.Pressure,
			(field == "LatentHeat" || field == "PsychrometricConstant") && q.Temperature > 110:
			continue // none
		}
		if math.IsNaN(v) || math.IsInf(v, 0) {
			fail(field, v)
		}
	}
	const slack = 1e-9
	for _, c := range []struct {
		what      string
		v, lo, hi float64
	}{
		{"temperature", q.Temperature, -100, 200},
		{"relative humidity", q.RelativeHumidity, 0, 1},
		{"humidity ratio", q.HumidityRatio, 0, 1000 * (1 + slack)},
		{"vapour pressure", q.VapourPressure, 0, min(q.Pressure, q.SaturationVapourPressure)},
		{"deficit", q.VapourPressureDeficit, 0, q.SaturationVapourPressure},
		{"saturation vapour pressure", q.SaturationVapourPressure, 0, 1.6e6},
		{"wet bulb", q.WetBulb, -101, q.Temperature + slack},
		{"specific volume", q.SpecificVolume, 0.1, math.MaxFloat64},
		{"density", q.Density, 0.1, 10},
		{"heat capacity", q.HeatCapacity, 1000, math.MaxFloat64},
		{"viscosity", q.Viscosity, 1e-6, 1e-4},
		{"conductivity", q.Conductivity, 0.005, 0.05},
	} {
		if !(c.v >= c.lo && c.v <= c.hi) {
			fail(c.what, c.v)
		}
	}
	if v := q.DegreeOfSaturation; !(v >= 0 && v <= 1 || math.IsNaN(v)) {
		fail("degree of saturation", v)
	}
	if v := q.LatentHeat; !(v >= 2.2e6 && v <= 2.9e6 || math.IsNaN(v)) {
		fail("latent heat", v)
	}
	if q.MoleFraction >= 1e-40 && !(q.DewPoint <= q.Temperature) {
		fail("dew point", q.DewPoint)
	}
	for _, surface := range []psychro.Surface{psychro.Liquid, psychro.Ice} {
		if v := s.WetBulbOver(surface); v > q.Temperature+slack || math.IsInf(v, 0) {
			fail("wet bulb over "+surface.String(), v)
		}
		if v := s.DewPointOver(surface); math.IsInf(v, 0) {
			fail("dew point over "+surface.String(), v)
		}
	}
}
