package lighting

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

func need(t testing.TB) Need {
	return Need{PPFD: 120, U0: 0.7, Maintenance: Maintenance{0.9, 1, 0.95, 1}, MaxCount: 60, MinHeight: 0.4, MaxHeight: 2,
		Fixture: Fixture{Light: cosine(t, 90, 1.25), Power: 36}, Bed: Bed{Length: 6, Width: 1.6, Z: 0.8}}
}

func TestAPlanReachesItsNeed(t *testing.T) {
	n := need(t)
	p, err := n.Solve()
	require.NoError(t, err)
	require.GreaterOrEqual(t, p.Harvest.Mean, n.PPFD)
	require.GreaterOrEqual(t, p.Harvest.U0, n.U0)
	require.InEpsilon(t, p.FirstDay.Mean*0.9*0.95, p.Harvest.Mean, 1e-12)
	require.Len(t, p.Layout, p.Columns*p.Rows)
	require.InDelta(t, 36*float64(len(p.Layout)), p.Power, 1e-9)
	require.InEpsilon(t, p.Power/n.Bed.Area(), p.PowerDensity, 1e-12)
	require.True(t, p.Height >= n.MinHeight && p.Height <= n.MaxHeight)
	// The share on the bed agrees with the exact flux through it.
	flux := 0.0
	for _, f := range p.Layout {
		flux += CosineFlux(f, Point{0, 0, 0.8}, Point{6, 0, 0.8}, Point{6, 1.6, 0.8}, Point{0, 1.6, 0.8})
	}
	require.InEpsilon(t, flux/p.Layout.PPF(), p.Utilisation, 0.01)
	// No fewer fixtures could: the photons that fall beside the bed count.
	least := UtilisationMethod{n.PPFD, n.Bed.Area(), 90, 1, 0.9 * 0.95}.Fixtures()
	require.GreaterOrEqual(t, float64(len(p.Layout)), least)
}

// Plans of random needs hold the mean and the evenness on a grid far finer than
// theirs, whose cells reach closer to the edges.
func TestPlansHoldOnAFinerGrid(t *testing.T) {
	rng := rand.New(rand.NewSource(5))
	solved := 0
	for range 16 {
		n := need(t)
		n.Fixture.Light = CosinePower{100 + rng.Float64()*500, 1 + rng.Float64()*3}
		n.PPFD, n.U0 = 50+rng.Float64()*300, 0.3+0.5*rng.Float64()
		n.Bed.Length, n.Bed.Width = 2+10*rng.Float64(), 1+4*rng.Float64()
		n.MinHeight = 0.5 + 0.5*rng.Float64()
		n.MaxHeight = n.MinHeight + 2*rng.Float64()
		p, err := n.Solve()
		if err != nil {
			require.ErrorIs(t, err, ErrNoSolution)
			continue
		}
		solved++
		fine, err := n.Bed.Grid(200, 100)
		require.NoError(t, err)
		lights, err := NewLights(p.Layout...)
		require.NoError(t, err)
		ppfd, err := lights.MapTo(nil, fine)
		require.NoError(t, err)
		s, err := Evenness(ppfd)
		require.NoError(t, err)
		require.Greater(t, s.U0, n.U0-0.01, "%+v", n)
		require.InEpsilon(t, s.Mean*n.Maintenance.Factor(), p.Harvest.Mean, 0.01)
		require.InEpsilon(t, s.Mean*s.U0*n.Maintenance.Factor(), p.Least, 0.1)
	}
	require.Greater(t, solved, 8)
}

// A bed lit the same in each quarter has the mean and least of a quarter.
func TestAQuarterOfTheBedShowsAll(t *testing.T) {
	n := need(t)
	n.Fixture.Length = 1.2
	for _, c := range [][2]int{{5, 2}, {4, 3}, {1, 1}} {
		p, err := n.place(c[0], c[1], []float64{0.3, -0.2, 0.4})
		require.NoError(t, err)
		require.True(t, n.symmetric())
		mean, least, err := n.sample(&p, 0.2, &tables{})
		require.NoError(t, err)
		turned := n
		turned.Fixture.Aim = Aim(AimAngles{Yaw: 180})
		require.False(t, turned.symmetric())
		all, lowest, err := turned.sample(&p, 0.2, &tables{})
		require.NoError(t, err)
		require.InEpsilon(t, all, mean, 1e-9)
		require.InEpsilon(t, lowest, least, 1e-9)
	}
}

func TestAPlanCountsReflectedLight(t *testing.T) {
	n := need(t)
	n.Bed.X, n.Bed.Y = 0.2, 0.3
	n.PPFD = 70
	alone, err := n.Solve()
	require.NoError(t, err)
	require.Zero(t, alone.Reflected)
	n.Room = &Room{6.4, 2.2, 3.2, 0.3, 0.7, 0.7, 0.7, 0.7, 0.7}
	p, err := n.Solve()
	require.NoError(t, err)
	require.Less(t, len(p.Layout), len(alone.Layout), "the walls save fixtures")
	require.GreaterOrEqual(t, p.Harvest.Mean, n.PPFD)
	require.GreaterOrEqual(t, p.Harvest.U0, n.U0)
	require.Greater(t, p.Reflected, 0.1)
	// The same by hand.
	l, err := NewLights(p.Layout...)
	require.NoError(t, err)
	points, err := n.Bed.GridFor(p.Height)
	require.NoError(t, err)
	direct, err := l.MapTo(nil, points)
	require.NoError(t, err)
	s, err := n.Room.Reflect(p.Layout, 16)
	require.NoError(t, err)
	reflected, err := s.Map(points)
	require.NoError(t, err)
	d, err := Evenness(direct)
	require.NoError(t, err)
	r, err := Evenness(reflected)
	require.NoError(t, err)
	require.InEpsilon(t, (d.Mean+r.Mean)*0.9*0.95, p.Harvest.Mean, 1e-12)
	require.InEpsilon(t, r.Mean/(d.Mean+r.Mean), p.Reflected, 1e-12)
	require.InEpsilon(t, d.Mean*n.Bed.Area()/l.ppf, p.Utilisation, 1e-12)
	// Black surfaces change nothing.
	n.PPFD, n.U0, n.Room = 10, 0.3, &Room{Length: 6.4, Width: 2.2, Height: 3.2}
	p, err = n.Solve()
	require.NoError(t, err)
	require.Zero(t, p.Reflected)
	n.Room = &Room{Length: 5, Width: 2, Height: 2}
	_, err = n.Solve()
	for _, want := range []string{"bed.Length", "MaxHeight"} {
		require.ErrorContains(t, err, want)
	}
}

func TestAPlanThatCannotBe(t *testing.T) {
	n := need(t)
	n.MaxCount = 3
	_, err := n.Solve()
	require.ErrorIs(t, err, ErrNoSolution)
	n = need(t)
	n.U0, n.MaxCount = 0.99, 16
	_, err = n.Solve()
	require.ErrorIs(t, err, ErrNoSolution)
	n = Need{PPFD: -1, U0: 2, MinHeight: 3, MaxHeight: 1}
	_, err = n.Solve()
	for _, want := range []string{"PPFD", "U0", "Maintenance.Flux", "Fixture: Light is missing", "Bed.Length", "MinHeight", "MaxCount", "Fixture.PPF"} {
		require.ErrorContains(t, err, want)
	}
}

func inGroup(l Layout, name string) Layout {
	for i := range l {
		l[i].Group = name
	}
	return l
}

func TestDimmingFindsTheLevelsItWasMadeOf(t *testing.T) {
	bed := Bed{Length: 4, Width: 1.5}
	f := Fixture{Light: cosine(t, 100, 1.3), Power: 40}
	middle, err := Rows(f, bed, 1, 4, 2)
	require.NoError(t, err)
	edge, err := Perimeter(f, bed, 0.8, 0.1, 10)
	require.NoError(t, err)
	p, err := bed.Grid(20, 8)
	require.NoError(t, err)
	layout := append(inGroup(middle, "middle"), inGroup(edge, "edge")...)
	maps, err := GroupMaps(layout, p)
	require.NoError(t, err)
	require.Equal(t, []string{"middle", "edge"}, layout.groups())
	want, err := DimmedTo(nil, maps, []float64{0.35, 0.8})
	require.NoError(t, err)
	d, err := Dim(maps, want, []float64{0, 0}, []float64{1, 1})
	require.NoError(t, err)
	require.InDelta(t, 0.35, d.Levels[0], 1e-9)
	require.InDelta(t, 0.8, d.Levels[1], 1e-9)
	require.Less(t, d.Residual, 1e-7)
	require.InDelta(t, 0.35*8*40+0.8*10*40, d.Power, 1e-6)
	// Bounded: the level at its bound, the gradient pointing outwards, the
	// free level best for it.
	d, err = Dim(maps, want, []float64{0.1, 0}, []float64{1, 0.5})
	require.NoError(t, err)
	require.Equal(t, 0.5, d.Levels[1])
	for _, g := range []struct {
		group int
		free  bool
	}{{0, true}, {1, false}} {
		slope := 0.0
		for i, v := range maps[g.group].PPFD {
			slope += v * (want[i] - d.PPFD[i])
		}
		if g.free {
			require.InDelta(t, 0, slope, 1e-6)
		} else {
			require.Positive(t, slope)
		}
	}
	_, err = Dim(maps, want, []float64{0.6, -1}, []float64{0.5, 2})
	require.ErrorContains(t, err, "highest[0] is 0.5, allowed 0.6 to 1")
	require.ErrorContains(t, err, "lowest[1] is -1")
	_, err = Dim(maps, want[:3], []float64{0, 0}, []float64{1, 1})
	require.ErrorIs(t, err, ErrRange)
	_, err = Dim(maps, want, nil, nil)
	require.ErrorIs(t, err, ErrRange)
	want[3] = math.NaN()
	_, err = Dim(maps, want, []float64{0, 0}, []float64{1, 1})
	require.ErrorContains(t, err, "target[3] is NaN")
	_, err = DimmedTo(nil, maps, []float64{60, 1})
	require.ErrorIs(t, err, ErrRange)
	_, err = DimmedTo(nil, maps, []float64{1})
	require.ErrorIs(t, err, ErrRange)
	_, err = GroupMaps(nil, p)
	require.ErrorIs(t, err, ErrRange)
}

func TestNumbersOfFixturesOutsideTheirRange(t *testing.T) {
	for _, v := range []float64{UtilisationMethod{-1, 1, 1, 1, 1}.Fixtures(), UtilisationMethod{1, 0, 1, 1, 1}.Fixtures(), UtilisationMethod{1, 1, 0, 1, 1}.Fixtures(), UtilisationMethod{1, 1, 1, 80, 1}.Fixtures(), UtilisationMethod{1, 1, 1, 1, 90}.Fixtures(),
		PowerDensity(-1, 1, 1), PowerDensity(1, 0, 1), PowerDensity(1, 1, 2), LightShare(-1, 5), LightShare(1, 54)} {
		require.True(t, math.IsNaN(v))
	}
}

// Narrow beams hung low dip midway between four fixtures, where a grid of cells
// need have no point: the least light is looked for there, too.
func TestAPlanSeesTheDipBetweenFixtures(t *testing.T) {
	n := Need{PPFD: 272.8212641693839, U0: 0.7164667554154381, MaxCount: 23, MinHeight: 0.389254186400973, MaxHeight: 0.5235108960052601,
		Maintenance: Maintenance{0.8198661757810892, 1, 0.9972797755489752, 0.9513738528295356},
		Fixture:     Fixture{Light: CosinePower{223.4595789404623, 3.5640899654655978}, Power: 100},
		Bed:         Bed{X: 0.6712254469601475, Y: 0.011610166065733427, Z: 0.7608245658450206, Length: 5.427045957680059, Width: 0.9974631438145594}}
	p, err := n.Solve()
	require.NoError(t, err)
	mean, u0 := held(t, n, p)
	require.GreaterOrEqual(t, mean, n.PPFD)
	require.GreaterOrEqual(t, u0, n.U0-0.002)
}
