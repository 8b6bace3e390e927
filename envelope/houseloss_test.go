package envelope_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
	"cloche.example/psychro"
)

// filmHouse is a gable dug in by 0.7 m under a double film.
func filmHouse(t testing.TB) HousePlan {
	t.Helper()
	f := DefaultForm()
	f.Span, f.Length, f.Eave, f.Ridge, f.Depth, f.DwarfWall, f.Azimuth = 6.4, 14.8, 1.3, 3.1, 0.7, 0.2, 90
	s, err := NewShape(f)
	require.NoError(t, err)
	wall, err := OpaqueWall("brick", 0.3, 0.24)
	require.NoError(t, err)
	film := DoubleInfraredFilm()
	screened, err := WithScreen(film, AluminisedScreen())
	require.NoError(t, err)
	p := HousePlan{
		Shape:          s,
		Covers:         map[FacetKind]Cover{Roof: film, SideWall: film, EndWall: film, DwarfWall: wall},
		Screened:       map[FacetKind]Cover{Roof: screened},
		FrameAllowance: 0.04,
		Doors:          []Door{{Name: "door", Facet: 4, Area: 1.8, U: 3}},
		Bridges:        []Bridge{{Name: "sill", Length: 42.4, Psi: 0.15}},
		Ground:         DefaultGround(ClaySoil()),
		Climate:        DefaultGroundClimate(),
		Leakage:        DefaultLeakage(),
		Radiant:        RadiantAir, // each facet by itself
	}
	return p
}

func winterNight() HouseConditions {
	k := DefaultHouseConditions()
	k.Outside, k.SkyDrop, k.Wind = -14, 18, 3.5
	return k
}

func built(t testing.TB, p HousePlan) *House {
	t.Helper()
	h, err := NewHouse(p)
	require.NoError(t, err)
	return h
}

func loss(t testing.TB, h *House, k HouseConditions) HouseLoss {
	t.Helper()
	r, err := h.Loss(k)
	require.NoError(t, err)
	return r
}

// Every term is the sum of its parts, and each facet is its cover solved alone.
func TestHouseLossIsTheSumOfItsTerms(t *testing.T) {
	p := filmHouse(t)
	h := built(t, p)
	k := winterNight()
	r := loss(t, h, k)
	sum, share := 0.0, 0.0
	for _, x := range r.Terms() {
		sum += x.Loss
		share += x.Share
	}
	require.InDelta(t, r.Total, sum, 1e-7)
	require.InDelta(t, 1, share, 1e-12)
	area, frame, cover := 0.0, 0.0, 0.0
	for _, f := range r.Facets {
		area += f.Area
		cover += f.Loss
		require.InDelta(t, f.Loss, f.AirDriven+f.SkyDriven+f.SunDriven, 1e-7)
		if f.Kind != DwarfWall {
			frame += 0.04 * (f.AirDriven + f.SkyDriven)
		}
		one := k.CoverConditions
		one.Tilt, one.Height = p.Shape.Facets[f.Facet].Tilt, p.Shape.Facets[f.Facet].Height
		c := p.Covers[f.Kind]
		s, err := c.Solve(one)
		require.NoError(t, err)
		require.InDelta(t, f.Area*s.Load, f.Loss, 1e-7)
		require.Equal(t, s.WetShare > 0, f.Drips || f.Frosts)
	}
	require.InDelta(t, p.Shape.CoverArea-1.8, area, 1e-9)
	require.InDelta(t, frame, r.Frame, 1e-9)
	require.InDelta(t, cover, r.Cover, 1e-7)
	door := DoorOf(t, k, 3)
	require.Positive(t, door.Condensate)
	require.InDelta(t, 1.8*door.Load, r.Doors, 1e-9)
	dry := k
	dry.InnerFace = InnerDry
	require.InDelta(t, 1.8*3*29, loss(t, h, dry).Doors, 1e-9)
	require.InDelta(t, 42.4*0.15*29, r.Bridges, 1e-9)
	require.InDelta(t, r.Total/p.Shape.FloorArea, r.PerFloor, 1e-9)
	require.InDelta(t, r.Total/29, r.Coefficient, 1e-9)
	ground := h.Ground()
	require.Equal(t, ground.Flow(h.Climate(), 1), r.Ground)
	require.InDelta(t, r.Total, r.Linear.Loss(k.Inside, k.Outside), 1e-7)
	require.Greater(t, r.Linear.Loss(k.Inside+1, k.Outside), r.Total)
}

// The linear form at the state foresees the loss some kelvins away.
func TestLinearLossForeseesTheNextHour(t *testing.T) {
	p := filmHouse(t)
	p.FrameAllowance = 0
	h := built(t, p)
	k := winterNight()
	k.InnerFace = InnerDry
	r := loss(t, h, k)
	require.InDelta(t, 0, r.Linear.OtherDriven, 1e-6, "dry, radiant as air: nothing remains")
	k.Outside = -11
	there := loss(t, h, k)
	// Vapour lost by leakage and the ground are constants of the linear form.
	require.InEpsilon(t, there.Total, r.Linear.Loss(15, -11), 0.02)
}

func TestNoDifferenceNoHeat(t *testing.T) {
	p := filmHouse(t)
	p.Climate = GroundClimate{InsideMean: 8, OutsideMean: 8, Coldest: 1, OutsideLag: 1}
	h := built(t, p)
	k := DefaultHouseConditions()
	k.Inside, k.Outside = 8, 8
	k.InsideHumidity, k.OutsideHumidity, k.Wind = 0.6, 0.6, 0
	r := loss(t, h, k)
	require.InDelta(t, 0, r.Total, 1e-6)
	require.True(t, math.IsNaN(r.Coefficient))
	require.Positive(t, r.Linear.CoverAir)
	require.Zero(t, r.Dripping)
	for _, x := range r.Terms() {
		require.InDelta(t, 0, x.Loss, 1e-6, x.Name)
	}
	// A clear sky alone draws heat, all of it sky-driven.
	k.SkyDrop = 20
	r = loss(t, h, k)
	require.Positive(t, r.Total)
	require.InDelta(t, r.CoverSky, r.Cover, 1e-6)
}

func TestHouseLossLaws(t *testing.T) {
	h := built(t, filmHouse(t))
	k := winterNight()
	base := loss(t, h, k)
	k.ScreenDrawn = true
	drawn := loss(t, h, k)
	require.Less(t, drawn.Total, base.Total)
	for i, f := range drawn.Facets {
		if f.Kind == Roof {
			require.Less(t, f.Loss, 0.7*base.Facets[i].Loss)
			require.True(t, f.DripsAbove)
			require.False(t, base.Facets[i].DripsAbove)
		} else {
			require.Equal(t, base.Facets[i].Loss, f.Loss)
		}
	}
	k = winterNight()
	k.Wind = 10
	require.Greater(t, loss(t, h, k).Total, base.Total)
	k = winterNight()
	k.SkyDrop = 0
	cloudy := loss(t, h, k)
	require.Less(t, cloudy.Total, base.Total)
	require.InDelta(t, 0, cloudy.CoverSky, 1e-6)
	// Inside colder than outside: heat comes in, and right answers.
	k.Inside, k.Outside, k.SkyDrop = 5, 25, 7
	k.InsideHumidity, k.OutsideHumidity, k.Month = 0.9, 0.5, 7
	warm := loss(t, h, k)
	require.Negative(t, warm.Cover)
	require.Negative(t, warm.Leakage.Sensible)
	require.Positive(t, warm.Coefficient)
	// Freezing inside.
	k = winterNight()
	k.Inside = -3
	frost := loss(t, h, k)
	require.Positive(t, frost.Total)
	require.Less(t, frost.Total, base.Total)
}

// The humidity from which a dry facet would drip: just below it none, just
// above. One that may be wet drips from there at the latest.
func TestDripHumidityIsTheThreshold(t *testing.T) {
	h := built(t, filmHouse(t))
	k := winterNight()
	r := loss(t, h, k)
	for i, f := range r.Facets {
		k.InnerFace = InnerDry
		k.InsideHumidity = f.DripHumidity * (1 - 1e-9)
		before := loss(t, h, k).Facets[i]
		require.False(t, before.Drips || before.Frosts, f.Name)
		require.Zero(t, before.Condensate)
		k.InsideHumidity = f.DripHumidity * (1 + 1e-9)
		after := loss(t, h, k).Facets[i]
		require.True(t, after.Drips, f.Name)
		require.InDelta(t, f.DripHumidity, after.DripHumidity, 1e-12)
		k.InnerFace = InnerAuto
		require.True(t, loss(t, h, k).Facets[i].Drips, f.Name)
	}
}

// Condensate and its heat are the facets', their frame's and the doors'; with
// what the leakage carries off they are the evaporation that the humidity takes.
func TestEvaporationThatHoldsTheHumidity(t *testing.T) {
	p := filmHouse(t)
	h := built(t, p)
	k := winterNight()
	r := loss(t, h, k)
	require.Positive(t, r.Condensate)
	in, out := airOf(t, k.Inside, k.InsideHumidity, k.Pressure), airOf(t, k.Outside, k.OutsideHumidity, k.Pressure)
	water, latent, frosting := 1.8*DoorOf(t, k, 3).Condensate, r.Leakage.Latent, 0
	heat := psychro.LatentHeat(k.Inside)
	latent += water * heat
	for _, f := range r.Facets {
		frame := 1.04
		if f.Kind == DwarfWall {
			frame = 1
		}
		water += frame * f.Condensate
		latent += frame * f.Latent
		require.InDelta(t, f.Condensate*heat, f.Latent, 1e-6)
		if f.Frosts {
			frosting++
		}
	}
	require.InDelta(t, water, r.Condensate, 1e-15)
	require.InDelta(t, latent, r.Latent, 1e-6)
	require.Equal(t, frosting, r.Frosting)
	require.InEpsilon(t, water+r.Leakage.DryAir*(in.HumidityRatio()-out.HumidityRatio()), r.Evaporation, 1e-12)
	require.InDelta(t, r.Total, r.DryTotal, 1e-6, "one state each")
	k.InsideHumidity, k.Outside = 0.58, 0
	two := loss(t, h, k)
	gain := 0.0
	for _, f := range two.Facets {
		if f.TwoStates {
			require.Greater(t, f.DryLoss, f.Loss)
			gain += 1.04 * (f.DryLoss - f.Loss)
		}
	}
	require.InDelta(t, gain, two.DryTotal-two.Total, 1e-6)
}

func TestSunReachesTheCover(t *testing.T) {
	p := filmHouse(t)
	h := built(t, p)
	k := winterNight()
	night := loss(t, h, k)
	k.Sun = make([][MaxLayers]float64, len(p.Shape.Facets))
	k.Sun[1][0] = 40 // outer film of the south roof
	day := loss(t, h, k)
	require.Negative(t, day.CoverSun)
	require.Less(t, day.Facets[1].Loss, night.Facets[1].Loss)
	require.Equal(t, night.Facets[0].Loss, day.Facets[0].Loss)
	require.InDelta(t, day.Total, day.Linear.Loss(k.Inside, k.Outside), 1e-7)
}

func TestLossToDoesNotAllocate(t *testing.T) {
	h := built(t, filmHouse(t))
	k := winterNight()
	var r HouseLoss
	require.NoError(t, h.LossTo(&r, &k))
	require.Zero(t, testing.AllocsPerRun(20, func() { _ = h.LossTo(&r, &k) }))
	// What dst held of the hour before shortens the search and moves nothing.
	k.Outside++
	require.NoError(t, h.LossTo(&r, &k))
	again := loss(t, h, k)
	require.InEpsilon(t, again.Total, r.Total, 1e-9)
	require.InEpsilon(t, again.Evaporation, r.Evaporation, 1e-9)
	for i := range r.Facets {
		require.InEpsilon(t, again.Facets[i].Loss, r.Facets[i].Loss, 1e-9)
		require.InEpsilon(t, again.Facets[i].DripHumidity, r.Facets[i].DripHumidity, 1e-9)
	}
}

// A lobby against the end wall floats between the house and the outside; held
// at the house's temperature it draws nothing through the shared wall.
func TestAnnexes(t *testing.T) {
	p := filmHouse(t)
	f := p.Shape.Form
	f.Annexes = []Annex{{Name: "lobby", Place: AtNearEnd, Width: 2, Reach: 1.5, High: 2.1, Low: 2}}
	s, err := NewShape(f)
	require.NoError(t, err)
	covers := map[FacetKind]Cover{Roof: TwinWall6(), SideWall: TwinWall6(), EndWall: TwinWall6()}
	film := DoubleInfraredFilm()
	p.Shape = s
	p.Covers = map[FacetKind]Cover{Roof: film, SideWall: film, EndWall: film, DwarfWall: film}
	p.Screened = nil
	p.Annexes = []AnnexPlan{{Covers: covers, PartitionU: 3, AirChanges: 1, Humidity: 0.7, Ground: DefaultGround(ClaySoil())}}
	h := built(t, p)
	k := winterNight()
	r := loss(t, h, k)
	a := r.Annexes[0]
	require.InDelta(t, a.Partition, a.Cover+a.Ground+a.Leakage, 1e-5)
	require.Greater(t, a.Temperature, -14.0)
	require.Less(t, a.Temperature, 10.0)
	require.InDelta(t, 4.2*3*(15-a.Temperature), r.Partitions, 1e-9)
	require.Zero(t, a.Heating)
	require.InDelta(t, r.Total, r.Linear.Loss(15, -14), 1e-7)
	p.Annexes[0].Heated, p.Annexes[0].Temperature = true, 15
	warm := loss(t, built(t, p), k)
	require.InDelta(t, 0, warm.Partitions, 1e-9)
	require.InDelta(t, warm.Annexes[0].Heating, warm.Annexes[0].Cover+warm.Annexes[0].Ground+warm.Annexes[0].Leakage, 1e-9)
	require.Less(t, warm.Total, r.Total)
	p.Annexes[0] = AnnexPlan{Covers: map[FacetKind]Cover{Roof: TwinWall6()}, PartitionU: -1, AirChanges: 99, Humidity: 2, Heated: true, Temperature: 80, Ground: DefaultGround(ClaySoil())}
	_, err = NewHouse(p)
	requireFields(t, err, "layers of Annexes[0].Covers[side wall]", "layers of Annexes[0].Covers[end wall]", "Annexes[0].PartitionU", "Annexes[0].AirChanges", "Annexes[0].Humidity", "Annexes[0].Temperature")
	p.Annexes = nil
	_, err = NewHouse(p)
	requireFields(t, err, "number of Annexes")
}
