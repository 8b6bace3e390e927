package sun

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestTiltedLaws(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 2000 {
		in := Radiation{
			Direct: 1000 * r.Float64(), Diffuse: 600 * r.Float64(), Extraterrestrial: 1316 + 96*r.Float64(),
			Elevation: 180*r.Float64() - 90, Azimuth: 360 * r.Float64(), Reflectance: r.Float64(),
		}
		sinE := math.Max(0, math.Sin(in.Elevation*radian))
		global := in.Direct*sinE + in.Diffuse

		level := in.HayDavies(0, 123)
		require.InDelta(t, in.Direct*sinE, level.Beam, 1e-9)
		require.InDelta(t, in.Diffuse, level.Circumsolar+level.Isotropic, 1e-9, "level ground gets what was measured on it")
		require.InDelta(t, 0, level.Reflected, 1e-9)

		down := in.HayDavies(180, 0)
		require.InDelta(t, in.Reflectance*global, down.Total(), 1e-9, "a plane that looks down sees the ground alone")

		tilt, azimuth := 180*r.Float64(), 360*r.Float64()
		got := in.HayDavies(tilt, azimuth)
		for _, part := range []float64{got.Beam, got.Circumsolar, got.Isotropic, got.Reflected} {
			require.GreaterOrEqual(t, part, 0.0)
		}
		require.LessOrEqual(t, got.Circumsolar, got.Beam+1e-9, "the ring is never brighter than the disc")
		require.InDelta(t, got.Total(), in.HayDavies(tilt, azimuth-360).Total(), 1e-9)

		facing := in.HayDavies(90-in.Elevation, in.Azimuth)
		if in.Elevation > 0 {
			require.InDelta(t, 1, facing.Incidence, 1e-12)
			require.InDelta(t, in.Direct, facing.Beam, 1e-9)
		} else {
			require.Zero(t, facing.Beam+facing.Circumsolar)
		}
	}
}

// TestNoBeamMeansAnEvenSky: without a disc there is no ring around it.
func TestNoBeamMeansAnEvenSky(t *testing.T) {
	in := Radiation{Diffuse: 200, Extraterrestrial: 1361, Elevation: 20, Azimuth: 90}
	got := in.HayDavies(90, 90)
	require.Zero(t, got.Beam)
	require.Zero(t, got.Circumsolar)
	require.InDelta(t, 100, got.Isotropic, 1e-12, "a wall sees half the sky")
}

func TestTiltedRanges(t *testing.T) {
	good := Radiation{Direct: 500, Diffuse: 100, Extraterrestrial: 1361, Elevation: 30, Azimuth: 180, Reflectance: 0.2}
	require.False(t, math.IsNaN(good.HayDavies(30, 180).Total()))
	for i, spoil := range []func(*Radiation){
		func(r *Radiation) { r.Direct = -1 }, func(r *Radiation) { r.Diffuse = 1501 },
		func(r *Radiation) { r.Extraterrestrial = 999 }, func(r *Radiation) { r.Elevation = 91 },
		func(r *Radiation) { r.Azimuth = 361 }, func(r *Radiation) { r.Reflectance = 1.01 },
	} {
		bad := good
		spoil(&bad)
		require.True(t, math.IsNaN(bad.HayDavies(30, 180).Total()), "case %d", i)
	}
	require.True(t, math.IsNaN(good.HayDavies(181, 0).Total()))
	require.True(t, math.IsNaN(good.HayDavies(10, 400).Isotropic))
	require.Zero(t, testing.AllocsPerRun(100, func() { good.HayDavies(30, 180) }))
}
