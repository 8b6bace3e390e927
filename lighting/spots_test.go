package lighting

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

func TestSpotPPFDIsTheMap(t *testing.T) {
	for _, m := range []float64{0, 1, 4.8188, 30} {
		d := cosine(t, 80, m)
		f := Fixture{Light: d, At: Point{0, 0, 1.3}}
		for _, x := range []float64{0, 0.4, 2} {
			require.InEpsilon(t, one(t, f, Point{x, 0, 0}, up), d.SpotPPFD(1.3, x), 1e-11)
		}
		edge := d.SpotDiameter(1.3, 0.3) / 2
		require.InEpsilon(t, 0.3, d.SpotPPFD(1.3, edge)/d.SpotPPFD(1.3, 0), 1e-12)
		require.InEpsilon(t, 1.3, 2*edge/d.SpotDiameter(1, 0.3), 1e-12, "in proportion to the height")
	}
}

// curvature returns the second difference of f at 0.
func curvature(f func(x float64) float64) float64 {
	const h = 1e-3
	return (f(h) - 2*f(0) + f(-h)) / (h * h)
}

func TestFlatSpacingsHaveNoCurvature(t *testing.T) {
	for _, m := range []float64{0, 0.65, 1, 4.8, 40} {
		const h = 1.4
		light := cosine(t, 1, m)
		spot := func(x, y float64) float64 { return light.SpotPPFD(h, math.Hypot(x, y)) / light.axial() }
		scale := curvature(func(x float64) float64 { return spot(x, 0) })
		d := light.FlatPair(h) / 2
		pair := curvature(func(x float64) float64 { return spot(x-d, 0) + spot(x+d, 0) })
		require.InDelta(t, 0, pair/scale, 1e-4*(1+m))
		d = light.FlatSquare(h) / 2
		square := curvature(func(x float64) float64 { return 2 * (spot(x-d, d) + spot(x+d, d)) })
		require.InDelta(t, 0, square/scale, 1e-4*(1+m))
		r := light.FlatRing(h)
		ring := curvature(func(x float64) float64 {
			sum := 0.0
			for k := range 6 {
				s, c := math.Sincos(float64(k) * math.Pi / 3)
				sum += spot(x-r*c, r*s)
			}
			return sum
		})
		require.InDelta(t, 0, ring/scale, 1e-4*(1+m))
		require.InEpsilon(t, h, light.FlatPair(h)/light.FlatPair(1), 1e-14, "in proportion to the height")
		require.Greater(t, light.Midway(h, light.FlatPair(h)), 1.0)
		require.Less(t, light.Midway(h, 2*h), 1.0)
	}
}

func TestOverlapOfSpots(t *testing.T) {
	require.InDelta(t, math.Pi, SpotOverlap(2, 0), 1e-15)
	require.Zero(t, SpotOverlap(2, 2))
	// By counting: two circles of radius 1 at a distance of 0.8.
	n, hits := 1000, 0
	for i := range n {
		for j := range n {
			x, y := -1+2*(float64(i)+0.5)/float64(n), -1+2*(float64(j)+0.5)/float64(n)
			if x*x+y*y < 1 && (x-0.8)*(x-0.8)+y*y < 1 {
				hits++
			}
		}
	}
	require.InDelta(t, 4*float64(hits)/float64(n*n), SpotOverlap(2, 0.8), 2e-3)
}

func TestSpotsOutsideTheirRange(t *testing.T) {
	d := cosine(t, 1, 1)
	for i, v := range []float64{
		d.SpotPPFD(0, 1), d.SpotPPFD(1, -1), d.SpotAngle(0), d.SpotAngle(50), d.SpotDiameter(0, 0.5), SpotOverlap(-1, 1), SpotOverlap(1, -1),
		d.FlatPair(-1), d.FlatSquare(0), d.FlatRing(math.NaN()), d.Midway(1, 0), d.Midway(0, 1),
	} {
		require.True(t, math.IsNaN(v), "%d: %g", i, v)
	}
}

func TestEnergy(t *testing.T) {
	in := EnergyInput{Power: 912, PPF: 2304, PerJoule: 4.9, Level: 0.5, Idle: 12, Leaves: 0.3, Run: 15 * time.Hour, Price: 0.31}
	e, err := in.Solve()
	require.NoError(t, err)
	require.InDelta(t, 12+0.5*900, e.Power, 1e-12)
	require.InDelta(t, 0.5*2304/4.9, e.Photons, 1e-12)
	require.InDelta(t, 462-0.3*1152/4.9, e.HeatInside, 1e-12)
	require.InDelta(t, 462*15*3600, e.Electricity, 1e-6)
	require.InDelta(t, e.HeatInside*54000, e.Heat, 1e-6)
	require.InDelta(t, 0.462*15*0.31, e.Cost, 1e-12)
	in.Level = 0
	e, err = in.Solve()
	require.NoError(t, err)
	require.Zero(t, e.Power)
	in.PPF = 9000
	_, err = in.Solve()
	require.ErrorContains(t, err, "no more light than power")
	_, err = EnergyInput{Power: math.NaN(), PPF: -1, PerJoule: 54, Level: 60, Idle: -1, Leaves: 2, Run: -time.Hour, Price: -1}.Solve()
	for _, want := range []string{"Power", "PPF", "PerJoule", "Level", "Idle", "Leaves", "Run", "Price"} {
		require.ErrorContains(t, err, want)
	}
}

func TestEvenness(t *testing.T) {
	s, err := Evenness([]float64{10, 20, 30, 40})
	require.NoError(t, err)
	require.Equal(t, []float64{10, 25, 40}, []float64{s.Minimum, s.Mean, s.Maximum})
	require.InDelta(t, 0.4, s.U0, 1e-15)
	require.InDelta(t, 0.25, s.Ud, 1e-15)
	require.InDelta(t, math.Sqrt(125)/25, s.CV, 1e-15)
	require.InDelta(t, 1-40.0/100, s.Christiansen, 1e-15)
	require.InDelta(t, 25, s.Percentile(0.5), 1e-15)
	require.InDelta(t, 13, s.Percentile(0.1), 1e-12)
	require.InDelta(t, 40, s.Percentile(1), 1e-15)
	require.True(t, math.IsNaN(s.Percentile(50)))
	require.True(t, math.IsNaN(Statistics{}.Percentile(0.5)))
	s, err = Evenness([]float64{0, 0, 0, 9})
	require.NoError(t, err)
	require.Less(t, s.Christiansen, 0.0, "may be negative")
	_, err = Evenness(nil)
	require.ErrorIs(t, err, ErrRange)
	_, err = Evenness([]float64{1, math.NaN(), -1})
	require.ErrorContains(t, err, "point 1")
	require.ErrorContains(t, err, "point 2")
	// Of a normal distribution, CU = 1 - sqrt(2/π) CV (Hart 1961, from memory).
	var v []float64
	for i := range 20001 {
		v = append(v, 100+10*math.Sqrt2*math.Erfinv(2*(float64(i)+0.5)/20001-1))
	}
	s, err = Evenness(v)
	require.NoError(t, err)
	require.InDelta(t, 1-math.Sqrt(2/math.Pi)*s.CV, s.Christiansen, 1e-5)
	require.NoError(t, check.Row{Where: "from memory, Hart 1961/normal distribution, CV 0.1", Printed: "0.9202"}.Verify(s.Christiansen))
}

func TestCautionsNameWhatIsUnusual(t *testing.T) {
	bed := Bed{Length: 2, Width: 1, Z: 0.8}
	half, err := FromBeamAngle(500, 55)
	require.NoError(t, err)
	usual, err := FromBeamAngle(50, 110)
	require.NoError(t, err)
	require.Equal(t, StandingCautions(), Cautions(Layout{{Light: usual, At: Point{1, 0.5, 1.8}}}, bed))
	got := Cautions(Layout{{Light: half, At: Point{1, 0.5, 1}}, {Light: usual, At: Point{1, 0.5, 0.5}}}, bed)
	require.Len(t, got, 4+len(StandingCautions()))
	for i, want := range []string{"half angle", "at or below the plane", "less than 0.3 m", "scorch"} {
		require.Contains(t, got[i], want)
	}
}

func TestLayouts(t *testing.T) {
	bed := Bed{X: 1, Y: 2, Z: 0.5, Length: 6, Width: 2}
	f := Fixture{Light: cosine(t, 10, 1), Power: 5}
	rows, err := Rows(f, bed, 1, 3, 2)
	require.NoError(t, err)
	require.Equal(t, Point{2, 2.5, 1.5}, rows[0].At)
	require.Equal(t, Point{6, 3.5, 1.5}, rows[5].At)
	require.Equal(t, 60.0, rows.PPF())
	require.Equal(t, 30.0, rows.Power())
	spaced, err := Spaced(f, bed, Spacing{Height: 1, X: 0.5, Y: 0.4, Columns: 3, Rows: 2})
	require.NoError(t, err)
	require.InDelta(t, 3.5, spaced[0].At.X, 1e-15)
	require.InDelta(t, 2.8, spaced[0].At.Y, 1e-15)
	edge, err := Perimeter(f, bed, 1, 0.25, 14)
	require.NoError(t, err)
	for i, g := range edge {
		onX := g.At.X == 1.25 || math.Abs(g.At.X-6.75) < 1e-12
		onY := g.At.Y == 2.25 || math.Abs(g.At.Y-3.75) < 1e-12
		require.True(t, onX || onY, "%d %v", i, g.At)
		next := edge[(i+1)%14].At
		require.InDelta(t, 1, math.Abs(next.X-g.At.X)+math.Abs(next.Y-g.At.Y), 1e-12)
	}
	stagger, err := Staggered(f, bed, 1, 3, 2)
	require.NoError(t, err)
	require.Len(t, stagger, 5)
	require.Equal(t, Point{2, 2.5, 1.5}, stagger[0].At)
	require.InDelta(t, 3, stagger[3].At.X, 1e-12)
	require.InDelta(t, 3.5, stagger[3].At.Y, 1e-12)
	require.InDelta(t, 1.75, edge[0].At.X, 1e-12, "half a step from the corner")
	cells, err := bed.Grid(3, 2)
	require.NoError(t, err)
	require.Equal(t, Point{2, 2.5, 0.5}, cells.At(0))
	require.Equal(t, Point{6, 3.5, 0.5}, cells.At(5))
	tiers, err := Tiers(rows, 2, 0.3)
	require.NoError(t, err)
	require.InDelta(t, 1.8, tiers[1][0].At.Z, 1e-15)
	require.Equal(t, 1.5, rows[0].At.Z)
	for _, err := range []error{
		second(Rows(f, bed, 0, 3, 2)), second(Rows(f, Bed{}, 1, 3, 2)), second(Rows(f, bed, 1, 0, 2)), second(Rows(Fixture{}, bed, 1, 1, 2)), second(Rows(f, bed, 1, 1<<30, 1<<30)),
		second(Staggered(f, bed, 1, 1, 2)), second(Spaced(f, bed, Spacing{Height: 1, X: 0, Y: 1, Columns: 2, Rows: 2})), second(Perimeter(f, bed, 1, 1, 4)), second(Perimeter(f, bed, 1, -1, 4)),
	} {
		require.ErrorIs(t, err, ErrRange)
	}
}

func second(_ Layout, err error) error { return err }
