package airheat

import (
	"math"
	"testing"
)

func FuzzOperatingPoint(f *testing.F) {
	f.Add(0.3, 10.0, 0.1e-3, 3.0, 200.0, 240.0, 0.0, 1.0, 20.0)
	f.Add(0.1, 100.0, 0.005, 0.0, 0.0, 0.0, 0.0, 2.0, -50.0)
	f.Add(5.0, 0.0, 0.0, 1e6, 1e5, -1e5, 1e5, 0.05, 199.0)
	f.Fuzz(func(t *testing.T, d, l, rough, k, p0, p1, p2, n, temp float64) {
		s, err := NewSystem(Segment{Section: Round(d), Length: l, Roughness: rough, Fittings: k})
		if err != nil {
			return
		}
		fan, err := NewFanTable([]float64{0, 0.4, 1}, []float64{p0, p1, p2})
		if err != nil {
			return
		}
		drive := DefaultFanDrive()
		drive.Speed = n
		air := DryAir(temp, 101325)
		p, err := s.OperatingPoint(fan, drive, air)
		if err != nil {
			return
		}
		gap := s.Loss(p.Flow, air) - fan.Pressure(p.Flow, n, air.Density)
		if !(p.Flow > 0) || !(math.Abs(gap) <= 1e-8*(math.Abs(p.Pressure)+1e-9)+1e-7*n*n) || p.Count < 1 || math.IsNaN(p.Rise) {
			t.Errorf("%+v, gap %g", p, gap)
		}
	})
}

func FuzzTube(f *testing.F) {
	f.Add(0.4, 1e-5, 1.0, 0.3, 30, 2, 0.03, 0.65, 1.0, 6.0, 0.5, 45.0, 15.0)
	f.Add(0.05, 0.004, 0.0, 5.0, 300, 3, 0.03, 1.0, 0.0, 50.0, 900.0, -50.0, 100.0)
	f.Add(0.3, 0.0, 0.5, 0.1, 20, 10, 0.09, 0.65, 1.0, 0.0, 1e-6, 45.0, 15.0)
	f.Fuzz(func(t *testing.T, d, rough, lead, pitch float64, n, holes int, hole, cd, regain, u, flow, temp, house float64) {
		if n > 2000 {
			return
		}
		tube := PerforatedTube{Diameter: d, Roughness: rough, LeadIn: lead, Pitch: pitch, Positions: n, HolesPerRow: holes, HoleDiameter: hole, Discharge: cd, Regain: regain, HeatTransfer: u}
		r, err := tube.Solve(TubeSupply{Flow: flow, Temperature: temp, House: house, Properties: DryAir(temp, 101325)})
		if err != nil {
			return
		}
		if !(math.Abs(r.Residual) <= 1e-9*flow) || math.IsNaN(r.FanPressure) || math.IsNaN(r.HolesHeat) || math.IsNaN(r.Evenness) {
			t.Errorf("%+v gives %+v", tube, r)
		}
	})
}
