package envelope

import (
	"math"
	"testing"
)

// Whatever the numbers, a cover is refused or solved with every balance closed.
func FuzzLayers(f *testing.F) {
	f.Add(0.28, 0.65, 0.00015, 0.1, 15.0, -10.0, -25.0, 3.0, 30.0, 0.8, uint8(3), uint8(1))
	f.Add(0.84, 0.0, 0.004, 0.012, 20.0, 20.0, 20.0, 0.0, 90.0, 0.0, uint8(2), uint8(0))
	f.Add(0.9, 0.0, 0.004, 0.3, -60.0, 60.0, 0.0, 40.0, 180.0, 1.0, uint8(6), uint8(2))
	f.Add(math.NaN(), math.Inf(1), -1.0, 0.0, 298.15, 0.0, 0.0, 0.0, 0.0, 60.0, uint8(0), uint8(9))
	f.Fuzz(func(t *testing.T, e, tau, d, w, in, out, sky, v, tilt, rh float64, n, face uint8) {
		var layers []Layer
		var gaps []Gap
		for i := range int(n % 9) {
			layers = append(layers, Layer{EmittanceOut: e, EmittanceIn: e / 2, Transmittance: tau, Thickness: d, Conductivity: 0.3})
			if i > 0 {
				gaps = append(gaps, Gap{Width: w * float64(i), Bridge: float64(face)})
			}
		}
		c, err := NewCover(layers, gaps)
		if err != nil {
			return
		}
		k := DefaultCoverConditions()
		k.Inside, k.Outside, k.SkyDrop, k.Wind, k.Tilt, k.InsideHumidity = in, out, out-sky, v, tilt, rh
		k.InnerFace = InnerFace(face % 4)
		k.InsideConvection = InsideConvection(face / 4 % 5)
		s, err := c.Solve(k)
		if err != nil {
			if k.valid(c.count()) {
				t.Fatal(err)
			}
			return
		}
		if !(s.Residual <= 1e-9) || math.IsNaN(s.FluxIn) || math.IsNaN(s.UOvercast) || math.Abs(s.FluxIn-s.AirDriven-s.SkyDriven-s.SunDriven) > 1e-6 {
			t.Fatalf("%+v", s)
		}
	})
}
