package airheat

import (
	"math"
	"testing"
	"time"

	"cloche.example/envelope"
	"cloche.example/psychro"
)

func finite(v ...float64) bool {
	for _, x := range v {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

func FuzzDuty(f *testing.F) {
	f.Add(20.0, 0.5, 101325.0, 0.55, uint8(1), 60000.0)
	f.Add(-10.0, 1.0, 70000.0, 1e4, uint8(3), 1e9)
	f.Add(0.0, 0.0, 101325.0, 1.0, uint8(0), math.NaN())
	f.Fuzz(func(t *testing.T, c, rh, p, flow float64, basis uint8, power float64) {
		for _, m := range []psychro.Model{psychro.IdealGas, psychro.RealGas} {
			in, err := m.FromRelativeHumidity(c, rh, p)
			if err != nil {
				continue
			}
			d, err := RiseFor(in, Flow{flow, FlowBasis(basis)}, power)
			if err != nil {
				continue
			}
			// The difference of two enthalpies rounds with their size.
			rounding := 1e-14 * (1e5 + math.Abs(in.Enthalpy())) * d.DryAir
			if !finite(d.Power, d.Outlet, d.DryAir, d.OutletFlow) || math.Abs(d.Power-power) > 1e-9*power+1e-9+rounding {
				t.Fatalf("%+v for %g W", d, power)
			}
		}
	})
}

func FuzzReach(f *testing.F) {
	f.Add(4.2e5, 2.6e6, 3.1e7, 640.0, 780.0, 520.0, 60.0, -8.0, 1e-4, 16.0, 2.0)
	f.Add(1.0, 1e13, 1.0, 1e9, 0.0, 1e-9, 1e9, 50.0, -0.1, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, ca, cs, cg, cover, as, ag, deep, outside, ramp, start, level float64) {
		h, err := NewTransient(envelope.Nodes{AirCapacity: ca, StructureCapacity: cs, SoilCapacity: cg, Cover: cover, AirStructure: as, AirSoil: ag, StructureOutside: as / 10, SoilDeep: deep})
		if err != nil {
			return
		}
		e, err := h.reachFrom(Temperatures{start, start, start}, envelope.Drive{Outside: outside, Ramp: ramp, Deep: 8}, airNode, [2]string{"level", "limit"}, level, false, 1000*time.Hour)
		if err != nil {
			return
		}
		if e.Time < 0 || e.Time > 1000*time.Hour || !finite(e.State.Air) {
			t.Fatalf("%+v", e)
		}
	})
}

func FuzzFlueLoss(f *testing.F) {
	f.Add(0.5, 0.06, 0.43, 0.0, 18e6, 1.3, 180.0, 20.0)
	f.Add(0.75, 0.25, 0.0, 0.0, 50e6, 1.0, 30.0, 15.0)
	f.Fuzz(func(t *testing.T, c, h, o, w, lower, ratio, flue, air float64) {
		fuel, err := NewFuel("fuzz", Composition{Carbon: c, Hydrogen: h, Oxygen: o, Water: w, Ash: 1 - c - h - o - w}, lower)
		if err != nil {
			return
		}
		l, err := fuel.FlueLoss(FlueState{Drawn: DefaultCombustionAir(), AirRatio: ratio, AirTemperature: air, FlueTemperature: flue, Pressure: 101325})
		if err != nil {
			return
		}
		dry := l.Gas.H2O/l.Gas.Wet*101325 < psychro.SaturationPressure(-100)
		if !finite(l.Sensible, l.Latent, l.OfLower, l.OfHigher) || finite(l.DewPoint) == dry || l.Condensed < 0 || l.Condensed > l.Water*(1+1e-9)+1e-9 {
			t.Fatalf("%+v", l)
		}
	})
}

// FuzzDew: finite answers, water never negative, and no colder air than what is
// around, in ducts and in a store.
func FuzzDew(f *testing.F) {
	f.Add(24.0, 0.9, 101325.0, 9.0, 4.0, 0.1, 2.0, 15.0)
	f.Add(5.0, 1.0, 60000.0, 50.0, 49.9, 1e-5, -55.0, 1000.0)
	f.Add(60.0, 1.0, 101325.0, 1000.0, 1e-9, 1000.0, 200.0, 0.0)
	f.Fuzz(func(t *testing.T, c, rh, p, film, transfer, mass, around, length float64) {
		in, err := psychro.IdealGas.FromRelativeHumidity(c, rh, p)
		if err != nil {
			return
		}
		r, err := Duct{Section: Round(0.2), Length: length, HeatTransfer: transfer}.Dew(film, mass, in, around)
		if err == nil && (!finite(r.Outlet, r.HumidityRatio, r.Water, r.Loss) || r.Water < -1e-12*mass || r.Outlet < math.Min(c, around)-1e-6 || r.Outlet > math.Max(c, around)+5) {
			t.Fatalf("%+v", r)
		}
		s, err := NewSoilStore(demoSoil(), around)
		if err != nil {
			return
		}
		m, err := s.StepMoist(mass, in, DryAir(20, 101325), time.Hour, false)
		if err == nil && (!finite(m.Outlet, m.HumidityRatio, m.Water, m.Heat) || m.Water < -1e-12*mass) {
			t.Fatalf("%+v", m)
		}
	})
}
