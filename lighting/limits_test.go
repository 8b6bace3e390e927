package lighting

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestEachLimitIsEnforced takes the limits as documented: the value itself is
// accepted, half a per cent beyond is not.
func TestEachLimitIsEnforced(t *testing.T) {
	light := cosine(t, 100, 1)
	fixture := Fixture{Light: light, At: Point{1, 1, 1}}
	bed := Bed{Length: 2, Width: 2}
	room := Room{Length: 3, Width: 3, Height: 3}
	grid, err := bed.Grid(1, 1)
	require.NoError(t, err)
	lights := func(change func(f *Fixture)) error {
		f := fixture
		change(&f)
		_, err := NewLights(f)
		return err
	}
	refine := func(change func(n *Need)) error {
		n := need(t)
		change(&n)
		return n.check()
	}
	use := func(change func(in *EnergyInput)) error {
		in := EnergyInput{Power: 1e9, PPF: 1, PerJoule: 5, Level: 1, Run: time.Hour}
		change(&in)
		_, err := in.Solve()
		return err
	}
	for _, c := range []struct {
		name     string
		min, max float64
		try      func(v float64) error
	}{
		{"PPF", 0, 1e5, func(v float64) error { _, err := NewCosinePower(v, 1); return err }},
		{"exponent", 0, 20000, func(v float64) error { _, err := NewCosinePower(1, v); return err }},
		{"beam angle", 2, 178, func(v float64) error { _, err := FromBeamAngle(1, v); return err }},
		{"field angle", 2, 178, func(v float64) error { _, err := FromFieldAngle(1, v); return err }},
		{"x", -1e4, 1e4, func(v float64) error { return lights(func(f *Fixture) { f.At.X = v }) }},
		{"y", -1e4, 1e4, func(v float64) error { return lights(func(f *Fixture) { f.At.Y = v }) }},
		{"z", -1e4, 1e4, func(v float64) error { return lights(func(f *Fixture) { f.At.Z = v }) }},
		{"bar length", 0, 100, func(v float64) error { return lights(func(f *Fixture) { f.Length = v }) }},
		{"power", 0, 20000, func(v float64) error { return lights(func(f *Fixture) { f.Power = v }) }},
		{"bed length", 0.001, 2000, func(v float64) error { return Bed{Length: v, Width: 1}.check() }},
		{"bed width", 0.001, 2000, func(v float64) error { return Bed{Length: 1, Width: v}.check() }},
		{"room height", 0.001, 2000, func(v float64) error { return Room{Length: 1, Width: 1, Height: v}.Check() }},
		{"height", 0.01, 100, func(v float64) error { _, err := Rows(fixture, bed, v, 1, 1); return err }},
		{"reflectance", 0, 0.98, func(v float64) error { r := room; r.WallY1 = v; return r.Check() }},
		{"level", 0, 1, func(v float64) error {
			_, err := DimmedTo(nil, []GroupMap{{PPFD: []float64{1}}}, []float64{v})
			return err
		}},
		{"rise", 0.1, 10, func(v float64) error { _, err := Tiers(Layout{fixture}, 1, v); return err }},
		{"tolerance of a split", 1e-9, 0.1, func(v float64) error { _, err := fixture.SplitWithin(grid, v); return err }},
		{"tolerance of reflections", 1e-5, 0.1, func(v float64) error { _, err := room.ReflectWithin(Layout{fixture}, grid, v); return err }},
		{"maintenance", 0.1, 1, func(v float64) error { return Maintenance{1, v, 1, 1}.check() }},
		{"wanted PPFD", 1, 3000, func(v float64) error { return refine(func(n *Need) { n.PPFD = v }) }},
		{"wanted U0", 0, 0.99, func(v float64) error { return refine(func(n *Need) { n.U0 = v }) }},
		{"photons per joule", 3, 7, func(v float64) error { return use(func(in *EnergyInput) { in.PerJoule = v }) }},
		{"power of all", 1, 1e9, func(v float64) error { return use(func(in *EnergyInput) { in.Power = v; in.PPF = 5 }) }},
		{"PPF of all", 0, 1e9, func(v float64) error { return use(func(in *EnergyInput) { in.PPF = v }) }},
		{"share that leaves", 0, 1, func(v float64) error { return use(func(in *EnergyInput) { in.Leaves = v }) }},
		{"hours", 0, 10000, func(v float64) error {
			return use(func(in *EnergyInput) { in.Run = time.Duration(v * float64(time.Hour)) })
		}},
		{"price", 0, 1000, func(v float64) error { return use(func(in *EnergyInput) { in.Price = v }) }},
		{"target", 0, 1e5, func(v float64) error {
			_, err := Dim([]GroupMap{{PPFD: []float64{1}}}, []float64{v}, []float64{0}, []float64{1})
			return err
		}},
		{"intensity", 0, 1e12, func(v float64) error {
			_, err := NewTable(Web{Vertical: []float64{0, 90}, Horizontal: []float64{0}, Intensity: [][]float64{{v, 0}}})
			return err
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			for side, v := range map[float64]float64{-1: c.min, 1: c.max} {
				require.NoError(t, c.try(v), "%g", v)
				beyond := v + side*(1e-12+0.005*math.Abs(v))
				require.ErrorIs(t, c.try(beyond), ErrRange, fmt.Sprint(beyond))
			}
		})
	}
	// The counts.
	for _, patches := range []int{0, 49} {
		_, err := room.Reflect(Layout{fixture}, patches)
		require.ErrorIs(t, err, ErrRange)
	}
	require.ErrorIs(t, refine(func(n *Need) { n.MaxCount = 10001 }), ErrRange)
	require.NoError(t, refine(func(n *Need) { n.MaxCount = 10000 }))
}

// TestLimitsOfCautions: half a per cent to either side of what is usual.
func TestLimitsOfCautions(t *testing.T) {
	warns := func(beam, ppf, height float64) int {
		d, err := FromBeamAngle(ppf, beam)
		require.NoError(t, err)
		return len(Cautions(Layout{{Light: d, At: Point{0, 0, height}}}, Bed{Length: 1, Width: 1})) - len(StandingCautions())
	}
	for _, c := range []struct {
		beam, ppf, height float64
		want              int
	}{
		{80, 1, 1, 0}, {79.6, 1, 1, 1}, {160, 1, 1, 0}, {160.8, 1, 1, 1}, {120, 1, 0.3, 0}, {120, 1, 0.2985, 1},
		{120, 995 * math.Pi, 1, 0}, {120, 1005 * math.Pi, 1, 1},
	} {
		require.Equal(t, c.want, warns(c.beam, c.ppf, c.height), "%+v", c)
	}
}
