package lighting

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

func TestCosinePower(t *testing.T) {
	check.Run(t, []check.Row{
		// Formula of Moreno06; rows marked so are figures of the trade's optical-wireless texts.
		{Where: "Moreno06.exponent/120deg", In: []float64{120}, Printed: "1.000000000"},
		{Where: "Moreno06.exponent/90deg", In: []float64{90}, Printed: "2.000000000"},
		{Where: "Moreno06.exponent/60deg", In: []float64{60}, Printed: "4.818841679"},
		{Where: "from memory, Kahn and Barry 1997/30deg", In: []float64{30}, Printed: "20"},
		{Where: "from memory, Komine and Nakagawa 2004/140deg", In: []float64{140}, Printed: "0.6461"},
	}, func(in ...float64) float64 { return beamExponent(in[0]) })
	check.Run(t, []check.Row{
		{Where: "identity/Lambertian axis", In: []float64{1000, 1}, Printed: "318.3098862"},
		{Where: "identity/even hemisphere", In: []float64{1000, 0}, Printed: "159.1549431"},
	}, func(in ...float64) float64 { return cosine(t, in[0], in[1]).axial() })
	check.Run(t, []check.Row{
		{Where: "identity/cone of a Lambertian, 45deg", In: []float64{1, 45}, Printed: "0.500000000000"},
		{Where: "identity/cone m 3, 60deg", In: []float64{3, 60}, Printed: "0.937500000000"},
	}, func(in ...float64) float64 { return cosine(t, 1, in[0]).ConeShare(in[1]) })
	check.Run(t, []check.Row{
		// From the axial intensity to the whole: π I0.
		{Where: "identity/flux of a Lambertian", In: []float64{1000}, Printed: "3141.592654"},
	}, func(in ...float64) float64 {
		d := cosine(t, 1, 1)
		return in[0] / d.axial() * d.Flux()
	})
}

func TestZonalConstants(t *testing.T) {
	// Lumens, or photons, in a zone of unit intensity: 2π (cos a - cos b).
	var rows []check.Row
	for i, printed := range []string{"0.095", "0.283", "0.463", "0.628", "0.774", "0.897", "0.993", "1.058", "1.091"} {
		a := 10 * float64(i)
		rows = append(rows, check.Row{Where: fmt.Sprintf("from memory, zonal constants of the IES handbook/%g to %g degree", a, a+10), In: []float64{a, a + 10}, Printed: printed})
	}
	even := cosine(t, 2*math.Pi, 0)
	check.Run(t, rows, func(in ...float64) float64 {
		return even.Flux() * (even.ConeShare(in[1]) - even.ConeShare(in[0]))
	})
}

func TestAnglesOfABeam(t *testing.T) {
	for _, angle := range []float64{2, 12, 60, 119.3, 178} {
		d, err := FromBeamAngle(10, angle)
		require.NoError(t, err)
		require.InDelta(t, angle, d.BeamAngle(), 1e-9)
		require.InEpsilon(t, d.axial()/2, d.Intensity(angle/2, 77), 1e-9)
		f, err := FromFieldAngle(10, angle)
		require.NoError(t, err)
		require.InDelta(t, angle, f.angleAt(tenthIntensity), 1e-9)
		require.InEpsilon(t, f.axial()/10, f.Intensity(angle/2, 0), 1e-9)
		require.Greater(t, f.Exponent(), d.Exponent())
	}
	for _, bad := range []float64{0, -3, 1.9, 180, 360, math.NaN()} {
		require.True(t, math.IsNaN(beamExponent(bad)))
		_, err := FromBeamAngle(-1, bad)
		require.ErrorContains(t, err, "ppf is -1")
		require.ErrorContains(t, err, "beam is")
		_, err = FromFieldAngle(1, bad)
		require.ErrorContains(t, err, "field is")
	}
	require.True(t, math.IsNaN(cosine(t, 1, 0).BeamAngle()))
	require.True(t, math.IsNaN(cosine(t, 1, 1).ConeShare(91)))
	require.Zero(t, cosine(t, 1, 0).Intensity(90, 0))
}

func TestConfigurationFactors(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Howell10.opposed rectangles/1 by 1.5 at 0.5", In: []float64{1, 1.5, 0.5}, Printed: "0.4756"},
		{Where: "from memory, unit cube, opposed faces", In: []float64{1, 1, 1}, Printed: "0.1998"},
	}, func(in ...float64) float64 { return OpposedPlatesFactor(Plates{in[0], in[1], in[2]}) })
	check.Run(t, []check.Row{
		{Where: "Howell10.adjacent faces of a cube, the rest of one", In: nil, Printed: "1.000000000000"},
	}, func(...float64) float64 {
		return OpposedPlatesFactor(Plates{2, 2, 2}) + 4*AdjacentPlatesFactor(AdjacentPlates{2, 2, 2})
	})
	check.Run(t, []check.Row{
		{Where: "Howell10.element to parallel rectangle/corner, a=b=c", In: []float64{1, 1, 1}, Printed: "0.1385"},
		{Where: "identity/the same to nine digits", In: []float64{1, 1, 1}, Printed: "0.138531606"},
	}, func(in ...float64) float64 { return CornerFactor(Plates{in[0], in[1], in[2]}) })
	check.Run(t, []check.Row{
		{Where: "definition/quadrature of cos cos (π r²)^-1, corner, a=b=c", In: []float64{1, 1, 1}, Printed: "0.138531606"},
	}, func(in ...float64) float64 {
		sum := 0.0
		for i, x := range gaussX {
			for j, y := range gaussX {
				for _, u := range [2]float64{1 - x, 1 + x} {
					for _, v := range [2]float64{1 - y, 1 + y} {
						r2 := in[0]*in[0]*u*u/4 + in[1]*in[1]*v*v/4 + in[2]*in[2]
						sum += gaussW[i] * gaussW[j] * in[2] * in[2] / (math.Pi * r2 * r2)
					}
				}
			}
		}
		return sum * in[0] * in[1] / 4
	})
	check.Run(t, []check.Row{
		// The share of all directions that the rectangle fills; the light here
		// has half of them.
		{Where: "Howell10.point to rectangle with a corner at its foot/1 by 2 at 0.5", In: []float64{1, 2, 0.5}, Printed: "0.0836"},
	}, func(in ...float64) float64 {
		f := Fixture{Light: cosine(t, 1, 0), At: Point{0, 0, in[2]}}
		return CosineFlux(f, Point{}, Point{in[0], 0, 0}, Point{in[0], in[1], 0}, Point{0, in[1], 0}) / 2
	})
	check.Run(t, []check.Row{
		{Where: "Howell10.element to parallel rectangle, mean along the side of 2/3 by 2 at 0.5", In: []float64{2, 3, 0.5}, Printed: "0.3886"},
	}, func(in ...float64) float64 {
		// The element runs along one side of the rectangle: mean over a.
		sum := 0.0
		const n = 20000
		for i := range n {
			x := in[0] * (float64(i) + 0.5) / n
			sum += CornerFactor(Plates{x, in[1], in[2]}) + CornerFactor(Plates{in[0] - x, in[1], in[2]})
		}
		return sum / n
	})
	check.Run(t, []check.Row{
		{Where: "Howell10.coaxial discs/0.1, 0.2 at 0.5", In: []float64{0.1, 0.2, 0.5}, Printed: "0.1339"},
		{Where: "Howell10.off-axis element to disc, mean over the other disc/0.5, 1 at 2", In: []float64{0.5, 1, 2}, Printed: "0.1922"},
	}, func(in ...float64) float64 { return CoaxialDiscsFactor(CoaxialDiscs{in[0], in[1], in[2]}) })
	check.Run(t, []check.Row{
		{Where: "Howell10.disc on axis/1 at 1", In: []float64{1, 1}, Printed: "0.500000000"},
	}, func(in ...float64) float64 { return DiscFactor(in[0], in[1]) })
	check.Run(t, []check.Row{
		{Where: "Howell10.endless strip/half width 1 at 1", In: []float64{1, 1}, Printed: "0.7071067812"},
	}, func(in ...float64) float64 { return StripFactor(in[0], in[1]) })
	require.InDelta(t, StripFactor(1, 1), 4*CornerFactor(Plates{1e6, 1, 1}), 1e-9)
}

func TestFactorsRefuseWhatHasNoMeaning(t *testing.T) {
	for _, v := range []float64{
		DiscFactor(-1, 1), DiscFactor(1, 0), CornerFactor(Plates{-1, 1, 1}), CornerFactor(Plates{1, 1, 0}), CornerFactor(Plates{1, math.NaN(), 1}), StripFactor(-1, 1), StripFactor(1, 0),
		EnclosureMean(-1, 1, 0.5), EnclosureMean(1, 0, 0.5), EnclosureMean(1, 1, 80), CoaxialDiscsFactor(CoaxialDiscs{0, 1, 1}), CoaxialDiscsFactor(CoaxialDiscs{1, -1, 1}), CoaxialDiscsFactor(CoaxialDiscs{1, 1, 0}), OpposedPlatesFactor(Plates{0, 1, 1}), OpposedPlatesFactor(Plates{1, 0, 1}),
		OpposedPlatesFactor(Plates{1, 1, 0}), AdjacentPlatesFactor(AdjacentPlates{0, 1, 1}), AdjacentPlatesFactor(AdjacentPlates{1, 0, 1}), AdjacentPlatesFactor(AdjacentPlates{1, 1, 0}),
	} {
		require.True(t, math.IsNaN(v))
	}
}
