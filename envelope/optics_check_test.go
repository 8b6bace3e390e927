package envelope

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

func TestFresnelValues(t *testing.T) {
	mean := func(in ...float64) float64 {
		s, p := Fresnel(in[0], in[1])
		return (s + p) / 2
	}
	check.Run(t, []check.Row{
		{Where: "DufBec13 from memory/ex 5.1.1 normal", In: []float64{1.526, 0}, Printed: "0.0434"},
		{Where: "DufBec13 from memory/ex 5.1.1 60", In: []float64{1.526, 60}, Printed: "0.093"},
	}, mean)
	// Snell's law, as the ray in the sheet: Bouguer's path in the same example.
	check.Run(t, []check.Row{{Where: "DufBec13 from memory/ex 5.1.1 refraction", Printed: "34.58"}},
		func(...float64) float64 {
			return math.Acos(-1/math.Log(Sheet{1.526, 1, 1}.Bouguer(60))) * 180 / math.Pi
		})
	check.Run(t, []check.Row{{Where: "AST1CAL equation file SCIFREFL/1.61 75", In: []float64{1.61, 75}, Printed: "27.1"}},
		func(in ...float64) float64 { return 100 * mean(in...) })
	require.True(t, math.IsNaN(mean(1.5, 91)))
	require.InDelta(t, 1, mean(1.5, 90), 1e-15)
}

// pvlib-python tests/test_iam.py test_physical (De Soto 2006): first surface
// and Bouguer, over the value at normal incidence; n 1.526, K 4/m, 2 mm.
func TestIncidenceModifier(t *testing.T) {
	s := Sheet{1.526, 4, 0.002}
	once := func(a float64) float64 {
		p, q := Fresnel(s.Index, a)
		return (1 - (p+q)/2) * s.Bouguer(a)
	}
	check.Run(t, []check.Row{
		{Where: "pvlib.test_physical/67.5", In: []float64{67.5}, Printed: "0.8893998"},
		{Where: "pvlib.test_physical/45", In: []float64{45}, Printed: "0.98797788"},
		{Where: "pvlib.test_physical/22.5", In: []float64{22.5}, Printed: "0.99926198"},
	}, func(in ...float64) float64 { return once(in[0]) / once(0) })
}

func lightOf(t testing.TB, sheets ...Sheet) LightLayers {
	t.Helper()
	s, err := NewLightLayers(sheets...)
	require.NoError(t, err)
	return s
}

func TestSheetValues(t *testing.T) {
	two := lightOf(t, Sheet{1.526, 0, 0.002}, Sheet{1.526, 0, 0.002})
	check.Run(t, []check.Row{
		{Where: "DufBec13 from memory/ex 5.1.2 normal", In: []float64{0}, Printed: "0.85"},
		{Where: "DufBec13 from memory/ex 5.1.2 60", In: []float64{60}, Printed: "0.76"},
	}, func(in ...float64) float64 { return two.At(in[0]).Transmittance })
	one := lightOf(t, Sheet{1.526, 32, 0.0023})
	check.Run(t, []check.Row{{Where: "DufBec13 from memory/ex 5.3.1", Printed: "0.768"}},
		func(...float64) float64 { return one.At(60).Transmittance })
	polarised := func(index int) float64 {
		p, q := Fresnel(1.526, 60)
		r, a := [2]float64{p, q}[index], Sheet{1.526, 32, 0.0023}.Bouguer(60)
		return a * (1 - r) * (1 - r) / (1 - r*r*a*a)
	}
	const why = "the book works with rounded reflectances"
	check.Run(t, []check.Row{
		{Where: "DufBec13 from memory/ex 5.3.1 perpendicular", In: []float64{0}, Printed: "0.624", Tol: 0.001, Why: why},
		{Where: "DufBec13 from memory/ex 5.3.1 parallel", In: []float64{1}, Printed: "0.912", Tol: 0.001, Why: why},
	}, func(in ...float64) float64 { return polarised(int(in[0])) })
	require.InDelta(t, (polarised(0)+polarised(1))/2, one.At(60).Transmittance, 1e-12)
	check.Run(t, []check.Row{{Where: "DufBec13 from memory/ex 5.3.1 absorption", Printed: "0.914"}},
		func(...float64) float64 { return Sheet{1.526, 32, 0.0023}.Bouguer(60) })
}

// N sheets without absorption pass the mean of (1-r)/(1+(2N-1)r) over the
// polarisations, [DufBec13] eq. 5.1.7: 1e-12.
func TestClearSheetsByTheClosedForm(t *testing.T) {
	clear := Sheet{1.526, 0, 0.002}
	for n, s := range map[float64]LightLayers{1: lightOf(t, clear), 2: lightOf(t, clear, clear), 3: lightOf(t, clear, clear, clear)} {
		for a := 0.0; a < 90; a += 7 {
			p, q := Fresnel(1.526, a)
			want := 0.5 * ((1-p)/(1+(2*n-1)*p) + (1-q)/(1+(2*n-1)*q))
			require.InDelta(t, want, s.At(a).Transmittance, 1e-12)
		}
	}
}

// Parts make 1, at any angle and diffuse; the layers pass the same light
// either way; the diffuse value stands against a fine sum and near the value
// at 59 to 60 degree.
func TestLightLaws(t *testing.T) {
	a, b := Sheet{1.515, 200, 0.00015}, Sheet{1.526, 12, 0.004}
	s := lightOf(t, a, b, a)
	back := lightOf(t, b, a, a)
	forward := lightOf(t, a, a, b)
	for x := 0.0; x <= 90; x += 3 {
		l := s.At(x)
		require.InDelta(t, 1, l.Transmittance+l.Reflectance+l.Absorptance[0]+l.Absorptance[1]+l.Absorptance[2], 1e-12)
		require.InDelta(t, forward.At(x).Transmittance, back.At(x).Transmittance, 1e-12)
	}
	d := s.Diffuse()
	require.InDelta(t, 1, d.Transmittance+d.Reflectance+d.Absorptance[0]+d.Absorptance[1]+d.Absorptance[2], 1e-9)
	sum, n := 0.0, 200000
	for i := range n {
		u := (float64(i) + 0.5) / float64(n)
		sum += 2 * u * s.at(math.Sqrt(1-u*u), u).Transmittance / float64(n)
	}
	require.InDelta(t, sum, d.Transmittance, 1e-9)
	one := lightOf(t, Sheet{1.526, 0, 0.002})
	require.InDelta(t, one.At(59.5).Transmittance, one.Diffuse().Transmittance, 0.006)
	level, _ := DiffuseAngles(0)
	require.InDelta(t, 59.7, level, 1e-12)
	sky, ground := DiffuseAngles(40)
	require.InDelta(t, 59.7-0.1388*40+0.001497*1600, sky, 1e-9)
	require.InDelta(t, 90-0.5788*40+0.002693*1600, ground, 1e-9)
}

func TestExtinctionInverts(t *testing.T) {
	k := ExtinctionOf(1.515, 0.00015, 0.88)
	s := lightOf(t, Sheet{1.515, k, 0.00015})
	require.InDelta(t, 0.88, s.At(0).Transmittance, 1e-12)
	require.True(t, math.IsNaN(ExtinctionOf(1.515, 0.00015, 0.95)))
}

func TestLightFactorsAndFaults(t *testing.T) {
	require.InDelta(t, 0.9*0.95*0.88, LightFactors{0.9, 0.95, 0.88}.Total(), 1e-15)
	require.True(t, math.IsNaN(LightFactors{90, 1, 1}.Total()))
	require.Equal(t, 1.0, DefaultLightFactors().Total())
	_, err := NewLightLayers(Sheet{0.5, -1, 0})
	for _, f := range []string{"sheets[0].Index", "sheets[0].Extinction", "sheets[0].Thickness"} {
		require.ErrorContains(t, err, f)
	}
	_, err = NewLightLayers()
	require.ErrorIs(t, err, ErrRange)
	s := lightOf(t, Sheet{1.5, 1, 0.001})
	require.True(t, math.IsNaN(s.At(-1).Transmittance))
	require.Zero(t, testing.AllocsPerRun(50, func() { s.At(40); s.Diffuse() }))
}
