package ventilation_test

import (
	"errors"
	"math"
	"testing"

	"cloche.example/ventilation"
)

// Any network is refused or balances with finite flows.
func FuzzNetwork(f *testing.F) {
	f.Add(0.5, 1.0, 0.3, 3.0, 2.0, -0.5, 0.0, 30.0, 20.0, 2.0, 0.1)
	f.Add(1.0, 1e-5, 0.0, 1.0, 1e4, 0.0, 2.0, 20.0, 20.0, 0.0, 0.0)
	f.Add(-3.0, 0.2, 1.0, 40.0, 3.0, -3.0, 0.5, -40.0, 35.0, 40.0, -200.0)
	f.Fuzz(func(t *testing.T, z1, a1, c1, z2, a2, c2, tall, ti, to, u, fan float64) {
		n, err := ventilation.NewNetwork([]ventilation.Opening{
			{Height: z1, Area: a1, Discharge: 0.6, PressureCoefficient: c1, Vertical: tall},
			{Height: z2, Area: a2, Discharge: 0.6, PressureCoefficient: c2},
		}, []ventilation.Leak{{Height: 1, Flow: 0.01, Exponent: 0.65}}, []ventilation.FixedFan{{Flow: fan}})
		if err != nil {
			return
		}
		c, err := ventilation.DrySides{Inside: ti, Outside: to, Pressure: 101325, Wind: u}.Conditions()
		if err != nil {
			return
		}
		b, err := n.Solve(c)
		if errors.Is(err, ventilation.ErrNoSolution) && math.Abs(fan) > 1e-6 {
			return // no fan reaches such a pressure
		}
		if err != nil {
			t.Fatal(err)
		}
		if !(math.Abs(b.Residual) <= 1e-6*(b.Flow+a1+a2+1)) || math.IsNaN(b.Pressure) {
			t.Fatalf("%+v", b)
		}
	})
}
