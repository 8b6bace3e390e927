package lighting

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

// one returns the PPFD that a fixture gives to one receiver.
func one(t testing.TB, f Fixture, at Point, n Vector) float64 {
	l, err := NewLights(f)
	require.NoError(t, err)
	p, err := NewPoints(Receiver{at, n})
	require.NoError(t, err)
	v, err := l.MapTo(nil, p)
	require.NoError(t, err)
	return v[0]
}

func TestInverseSquare(t *testing.T) {
	check.Run(t, []check.Row{
		// An even hemisphere of 1000 µmol/(s sr): distance d, straight at it.
		{Where: "IesDef20.inverse square law/1000 at 2 m", In: []float64{2, 0}, Printed: "250.0000000"},
		{Where: "CIE 17-25-104 photometric distance law/1000 at 2.5 m, cosine 0.8", In: []float64{2, 1.5}, Printed: "128.0000000"},
	}, func(in ...float64) float64 {
		return one(t, Fixture{Light: cosine(t, 2*math.Pi*1000, 0), At: Point{0, 0, in[0]}}, Point{in[1], 0, 0}, up)
	})
}

// lambertian returns n Lambertian points, by the sum of which a disc of the
// given radius around (0, 0, h) emits 1 µmol/(m² s).
func disc(t testing.TB, radius, h float64, rings int) Layout {
	var out Layout
	for i := range rings {
		r := radius * (float64(i) + 0.5) / float64(rings)
		n := 6*i + 3
		for k := range n {
			s, c := math.Sincos(2 * math.Pi * (float64(k) + 0.5) / float64(n))
			area := math.Pi * radius * radius * (2*float64(i) + 1) / float64(rings*rings) / float64(n)
			out = append(out, Fixture{Light: cosine(t, area, 1), At: Point{r * c, r * s, h}})
		}
	}
	return out
}

func TestADiscOfPointsMeetsItsFactor(t *testing.T) {
	l, err := NewLights(disc(t, 1, 1, 60)...)
	require.NoError(t, err)
	p, err := NewPoints(Receiver{Point{}, up})
	require.NoError(t, err)
	v, err := l.MapTo(nil, p)
	require.NoError(t, err)
	require.InDelta(t, DiscFactor(1, 1), v[0], 5e-5)
}

func TestFiveTimesRule(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "IesDef20.inverse square law/a disc as one point at 5 diameters, per cent", In: []float64{0.5, 5}, Printed: "1.0"},
	}, func(in ...float64) float64 {
		point := one(t, Fixture{Light: cosine(t, math.Pi*in[0]*in[0], 1), At: Point{0, 0, in[1]}}, Point{}, up)
		return 100 * (point/DiscFactor(in[0], in[1]) - 1)
	})
	check.Run(t, []check.Row{
		{Where: "identity/a level Lambertian bar as one point at 5 lengths, per cent", In: []float64{1, 5}, Printed: "0.6651"},
	}, func(in ...float64) float64 {
		f := Fixture{Light: cosine(t, 1, 1), At: Point{0, 0, in[1]}, Length: in[0]}
		g := f
		g.Length = 0
		return 100 * (one(t, g, Point{}, up)/one(t, f, Point{}, up) - 1)
	})
}

func TestLevelLambertianBar(t *testing.T) {
	check.Run(t, []check.Row{
		// Under one end, E = (I1/h)(α + sin α cos α)/2: 1 µmol/(s sr m), L = h = 1.
		{Where: "Howell10.line source, aspect factor/under one end", In: []float64{1, 1}, Printed: "0.642699"},
	}, func(in ...float64) float64 {
		f := Fixture{Light: cosine(t, math.Pi*in[0], 1), At: Point{in[0] / 2, 0, in[1]}, Length: in[0]}
		return one(t, f, Point{}, up)
	})
}

func TestCountAndPower(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "lumen method/N = E A (PPF UF MF)^-1", In: []float64{200, 100, 1700, 0.8, 0.9}, Printed: "16.34"},
	}, func(in ...float64) float64 { return UtilisationMethod{in[0], in[1], in[2], in[3], in[4]}.Fixtures() })
	check.Run(t, []check.Row{
		{Where: "reciprocity/share of a Lambertian point on a square of twice its height", In: nil, Printed: "0.5541"},
	}, func(...float64) float64 {
		f := Fixture{Light: cosine(t, 1, 1), At: Point{0, 0, 1}}
		return CosineFlux(f, Point{-1, -1, 0}, Point{1, -1, 0}, Point{1, 1, 0}, Point{-1, 1, 0})
	})
	check.Run(t, []check.Row{
		{Where: "arithmetic/200 µmol, 3.0 µmol per J, UF 0.85", In: []float64{200, 3, 0.85}, Printed: "78.43"},
	}, func(in ...float64) float64 { return PowerDensity(in[0], in[1], in[2]) })
	check.Run(t, []check.Row{
		// 660 nm: 5.517 µmol/J.
		{Where: "arithmetic/light share at 660 nm", In: []float64{3, 660 / 119.6266}, Printed: "0.5438"},
	}, func(in ...float64) float64 { return LightShare(in[0], in[1]) })
	check.Run(t, []check.Row{
		{Where: "common practice, no source/42 fixtures of 50 W, kW", In: []float64{42, 50}, Printed: "2.1"},
	}, func(in ...float64) float64 {
		l, err := Rows(Fixture{Light: cosine(t, 1, 1), Power: in[1]}, Bed{Length: 14, Width: 6}, 1, int(in[0])/3, 3)
		require.NoError(t, err)
		return l.Power() / 1000
	})
}

func TestSpots(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "identity/angle of half the PPFD, Lambertian", In: []float64{1, 0.5}, Printed: "32.765"},
	}, func(in ...float64) float64 { return cosine(t, 1, in[0]).SpotAngle(in[1]) })
	check.Run(t, []check.Row{
		{Where: "identity/diameter over height, Lambertian", In: []float64{1, 1, 0.5}, Printed: "1.2872"},
	}, func(in ...float64) float64 { return cosine(t, 1, in[0]).SpotDiameter(in[1], in[2]) })
	check.Run(t, []check.Row{{Where: "identity/flat pair", In: []float64{1, 1}, Printed: "0.8944271910"}},
		func(in ...float64) float64 { return cosine(t, 1, in[0]).FlatPair(in[1]) })
	check.Run(t, []check.Row{{Where: "identity/flat square", In: []float64{1, 1}, Printed: "1.000000"}},
		func(in ...float64) float64 { return cosine(t, 1, in[0]).FlatSquare(in[1]) })
	check.Run(t, []check.Row{
		// Two sources without the sensor's cosine, √(4/(m'+3)): our m is m'-1 there.
		{Where: "Moreno06.two sources (from memory)/m' = 1", In: []float64{0, 1}, Printed: "1.000000"},
	}, func(in ...float64) float64 { return cosine(t, 1, in[0]).FlatPair(in[1]) })
}
