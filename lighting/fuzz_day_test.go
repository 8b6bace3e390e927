package lighting

import (
	"bytes"
	"errors"
	"math"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// FuzzLM63 reads any bytes: an error with its place, or a file whose table is
// finite and whose written form reads back; and no more numbers than the bytes
// can hold.
func FuzzLM63(f *testing.F) {
	e := lm63Samples(f)
	for name := range e.Valid {
		f.Add(lm63File(f, name))
	}
	for name := range e.Malformed {
		f.Add(lm63File(f, name))
	}
	f.Add(lm63File(f, "own_typeA_2019.ies"))
	f.Add([]byte(lm63Text("IESNA91", lm63Plain)))
	f.Add([]byte("TILT=INCLUDE\n1 1 0 1 " + lm63Plain))
	for _, labels := range unusualLabels {
		f.Add([]byte(labels + "TILT=NONE\n" + lm63Plain))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := ReadLM63(bytes.NewReader(data), nil)
		if err != nil {
			var e *LM63Error
			if !errors.As(err, &e) || e.Line < 1 || e.Reason == "" {
				t.Fatalf("error without a place: %v", err)
			}
			return
		}
		w := file.Web
		if n := len(w.Vertical) * (len(w.Horizontal) - 1); n > len(data) {
			t.Fatalf("%d numbers from %d bytes", n, len(data))
		}
		table, err := file.Table()
		if err != nil {
			t.Fatalf("read but no table: %v", err)
		}
		if v := table.Lumens(); !(v >= 0) || math.IsInf(v, 0) {
			t.Fatalf("flux %v", v)
		}
		var b bytes.Buffer
		if err := file.Write(&b); err != nil {
			t.Fatalf("read but not written: %v\n%s", err, data)
		}
		again, err := ReadLM63(bytes.NewReader(b.Bytes()), nil)
		if err != nil {
			t.Fatalf("written but not read: %v\n%s", err, b.Bytes())
		}
		file.Multiplier, file.BallastFactor = 1, 1
		if file.Edition.factor12() {
			file.Field12 = 1
		}
		if d := cmp.Diff(file, again, cmpopts.EquateEmpty(), cmpopts.IgnoreFields(LM63{}, "Warnings")); d != "" {
			t.Fatalf("not the same when read back: %s", d)
		}
	})
}

// FuzzSpectrum makes spectra of any bytes: an error, or integrals that are
// finite, not negative, and add up.
func FuzzSpectrum(f *testing.F) {
	f.Add([]byte{10, 0, 20, 255, 30, 7, 200, 0})
	f.Add([]byte{1, 1, 1, 1})
	f.Fuzz(func(t *testing.T, data []byte) {
		var nm, power []float64
		at := 250.0
		for i := 0; i+1 < len(data); i += 2 {
			at += float64(data[i])
			nm, power = append(nm, at), append(power, float64(data[i+1])-1)
		}
		s, err := NewSpectrum(nm, power)
		if err != nil {
			if !errors.Is(err, ErrRange) {
				t.Fatal(err)
			}
			return
		}
		sum := s.Photons(band("blue")) + s.Photons(band("green")) + s.Photons(band("red"))
		if ppf := s.PPF(); !(ppf >= 0) || math.IsInf(ppf, 0) || math.Abs(ppf-sum) > 1e-9*(1+ppf) {
			t.Fatalf("PPF %v, sum of its parts %v", ppf, sum)
		}
		if l, p := s.Luminous(), s.Power(400, 700); !(l >= 0 && p >= 0) || l > 683.002*s.Power(360, 830)*(1+1e-9) {
			t.Fatalf("%v lm of %v W", l, s.Power(360, 830))
		}
		if r := s.PARPhotonsPerJoule(); s.Power(400, 700) > 1e-6 && !(r > 3.34 && r < 5.86) {
			t.Fatalf("%v µmol/J", r)
		}
	})
}

// FuzzSunAndSky splits any hour's radiation and puts it on any plane: NaN, or
// parts that are not negative and make up the hour on level ground.
func FuzzSunAndSky(f *testing.F) {
	f.Add(50.6, 14.1, int64(1741694400), 300.0, 0.2, 30.0, 180.0)
	f.Add(80.0, 0.0, int64(1750464000), 20.0, 0.7, 90.0, -90.0)
	f.Add(-90.0, 180.0, int64(-600000000), 1500.0, 1.0, 180.0, 360.0)
	f.Add(0.0, 0.0, int64(1741737600), -1.0, 0.2, 0.0, 0.0)
	f.Fuzz(func(t *testing.T, latitude, longitude float64, start int64, global, reflectance, tilt, azimuth float64) {
		site, err := NewSite(latitude, longitude, 0)
		if err != nil {
			return
		}
		h := site.SunHour(time.Unix(start%(1<<32), 0).UTC())
		if math.IsNaN(h.Sine) {
			return
		}
		s := h.Split(global, reflectance)
		if !(global >= 0) {
			if !math.IsNaN(s.Direct) || !math.IsNaN(s.Diffuse) {
				t.Fatalf("%+v of %g W/m²", s, global)
			}
			return
		}
		if !(s.Direct >= 0 && s.Direct <= h.Extraterrestrial && s.Diffuse >= -1e-9) && !math.IsInf(global, 0) {
			t.Fatalf("%+v of %g W/m²", s, global)
		}
		on := s.OnPlane(tilt, azimuth)
		if math.IsNaN(on.Beam) {
			return
		}
		if v := min(on.Beam, on.Circumsolar, on.Isotropic, on.Reflected); v < 0 || math.IsNaN(on.Total()) {
			t.Fatalf("%+v", on)
		}
	})
}
