package envelope_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

// dugIn is a house 1 m deep with a plant room 4 m wide and as deep at its end.
func dugIn(t *testing.T, depth float64) HousePlan {
	p := filmHouse(t)
	f := p.Shape.Form
	f.Depth, f.DwarfWall = 1, 0
	f.Annexes = []Annex{{Name: "plant room", Place: AtNearEnd, Width: 4, Reach: 2, High: 1.8, Low: 1.6, Depth: depth}}
	s, err := NewShape(f)
	require.NoError(t, err)
	sheet := TwinWall6()
	p.Shape, p.Doors = s, nil
	p.Annexes = []AnnexPlan{{Covers: map[FacetKind]Cover{Roof: sheet, SideWall: sheet, EndWall: sheet}, PartitionU: 3, AirChanges: 1, Humidity: 0.7, Ground: DefaultGround(ClaySoil())}}
	return p
}

// The whole shared wall passes heat, above grade and below.
func TestDugInAnnex(t *testing.T) {
	k := winterNight()
	p := dugIn(t, 1)
	r := loss(t, built(t, p), k)
	a := r.Annexes[0]
	require.InDelta(t, 3*4*(1.8+1)*(15-a.Temperature), a.Partition, 1e-9)
	require.InDelta(t, a.Partition, a.Cover+a.Ground+a.Leakage, 1e-5)

	// By ISO 13370 the wall to an unheated room is exposed rim, but that below
	// grade which stands against the room touches no soil: 4 m² of 42.4 m.
	open := dugIn(t, 0)
	plain, dug := built(t, open).Ground(), built(t, p).Ground()
	rim := p.Shape.Perimeter
	require.InDelta(t, 42.4, rim, 1e-9)
	require.InEpsilon(t, plain.WallPart*(rim-4)/rim, dug.WallPart, 1e-12)
	require.InDelta(t, plain.Total-plain.WallPart*4/rim, dug.Total, 1e-9)
	require.Equal(t, plain.FloorPart, dug.FloorPart)
	require.Less(t, dug.Outside, plain.Outside)
	require.Less(t, dug.Inside, plain.Inside)

	// The wall to a heated room is no rim.
	p.Annexes[0].Heated, p.Annexes[0].Temperature = true, 15
	warm := built(t, p).Ground()
	g := p.Ground
	g.Area, g.Perimeter, g.Depth = p.Shape.FloorArea, rim-4, 1
	want, err := g.Solve()
	require.NoError(t, err)
	require.Equal(t, want.Total, warm.Total)
	require.Less(t, warm.Total, dug.Total)
}

// The ground under a room that floats has settled to its year, not to its hour:
// colder by 20 K outside for an hour, the ground gives the same.
func TestAnnexGroundKeepsItsYear(t *testing.T) {
	h := built(t, dugIn(t, 1))
	k := winterNight()
	cold := loss(t, h, k).Annexes[0]
	k.Outside = 6
	mild := loss(t, h, k).Annexes[0]
	require.Greater(t, mild.Temperature, cold.Temperature+5)
	require.Equal(t, mild.Ground, cold.Ground)
	k.Month = 7
	require.Less(t, loss(t, h, k).Annexes[0].Ground, mild.Ground)
}

// Among heated rooms on all sides a twentieth of the rim is left.
func TestRimAmongHeatedRooms(t *testing.T) {
	p := filmHouse(t)
	f := p.Shape.Form
	f.Depth, f.DwarfWall = 0, 0
	f.Annexes = []Annex{
		{Place: AtNearEnd, Width: f.Span, Reach: 2, High: 1.3, Low: 1.2}, {Place: AtFarEnd, Width: f.Span, Reach: 2, High: 1.3, Low: 1.2},
		{Place: AtRightSide, Width: f.Length, Reach: 2, High: 1.3, Low: 1.2}, {Place: AtLeftSide, Width: f.Length, Reach: 2, High: 1.3, Low: 1.2},
	}
	s, err := NewShape(f)
	require.NoError(t, err)
	p.Shape, p.Doors = s, nil
	sheet := TwinWall6()
	for range 4 {
		p.Annexes = append(p.Annexes, AnnexPlan{Covers: map[FacetKind]Cover{Roof: sheet, SideWall: sheet, EndWall: sheet}, Heated: true, Temperature: 15, PartitionU: 3, Ground: DefaultGround(ClaySoil())})
	}
	require.InEpsilon(t, s.FloorArea/(0.05*s.Perimeter/2), built(t, p).Ground().CharacteristicWidth, 1e-12)
}

// What stands at a wall must fit under its outline.
func TestImpossibleAnnexes(t *testing.T) {
	f := DefaultForm() // 6 m, eave 1.8, ridge 3.2
	f.Eave, f.Ridge = 1.2, 6
	put := func(a ...Annex) error {
		f.Annexes = a
		_, err := NewShape(f)
		return err
	}
	// At 2.4 m the gable is 6 * 3.6/4.8 = 4.5 m across.
	end := func(width, high float64) Annex {
		return Annex{Place: AtFarEnd, Width: width, Reach: 2, High: high, Low: 1}
	}
	require.ErrorContains(t, put(end(5, 2.4)), "Annexes[0].Width is 5, allowed 0.3 to 4.5 m")
	require.NoError(t, put(end(4.49, 2.4)))
	require.NoError(t, put(end(2, 2.4), end(2.4, 2.4)))
	require.ErrorContains(t, put(end(2.4, 2.4), end(2.4, 2.4)), "Annexes[1].Width and its neighbours is 4.8, allowed 0 to 4.5 m")
	require.NoError(t, put(end(2.4, 2.4), end(2.4, 1.2)))
	require.ErrorContains(t, put(end(4.4, 2.4), end(2.4, 1.2)), "Annexes[1].Width and its neighbours is 6.8, allowed 0 to 6 m")
	require.ErrorContains(t, put(end(2.4, 1.2), end(4.4, 2.4)), "Annexes[1].Width and its neighbours is 6.8, allowed 0 to 6 m")
	f.Bays = 2
	require.ErrorContains(t, put(end(5, 2.4)), "allowed 0.3 to 4.5 m")
	require.NoError(t, put(end(4.4, 2.4), end(4.4, 2.4)))
	// Half a circle of radius 3 over an eave of 1 m, 3 m up: 2 sqrt(9 - 4) across.
	f = DefaultForm()
	f.Section, f.Eave, f.Ridge = RoundArch, 1, 4
	require.NoError(t, put(end(2*math.Sqrt(5)-1e-6, 3)))
	require.ErrorContains(t, put(end(2*math.Sqrt(5)+1e-6, 3)), "Annexes[0].Width")
	// A party wall has a building behind it.
	f = DefaultForm()
	f.Section = LeanTo
	behind := Annex{Place: AtLeftSide, Width: 3, Reach: 2, High: 2, Low: 1.8}
	require.ErrorContains(t, put(behind), "Annexes[0].Place is 3, allowed 0 to 2 (number)")
	f.BackWallOpen = true
	require.NoError(t, put(behind))
	// 6 m of fall from 3.2 to 1.8 m: at 2.5 m half of it is left.
	require.NoError(t, put(end(2.999, 2.5)))
	require.ErrorContains(t, put(end(3.001, 2.5)), "Annexes[0].Width")
}

// In a year without seasons, with 2 m/s and a sky 8 K below the air, the hour is
// the year's mean.
func TestAnnexMeanOfTheYear(t *testing.T) {
	p := dugIn(t, 1)
	p.Climate = GroundClimate{InsideMean: 15, OutsideMean: 3, Coldest: 1}
	h := built(t, p)
	k := DefaultHouseConditions()
	k.Inside, k.Outside, k.Wind, k.SkyDrop = 15, 3, 2, 8
	a := loss(t, h, k).Annexes[0]
	require.InDelta(t, a.Temperature, AnnexMean(h, 0), 1e-7)
	k.Wind = 2.02
	require.Greater(t, math.Abs(loss(t, h, k).Annexes[0].Temperature-a.Temperature), 1e-6)
}

// An annex without heating floats to the same temperature from any hour before.
func TestAnnexFromNear(t *testing.T) {
	p := filmHouse(t)
	f := p.Shape.Form
	f.Annexes = []Annex{{Name: "lobby", Place: AtNearEnd, Width: 3, Reach: 1.5, High: 2.1, Low: 2}, {Name: "store", Place: AtFarEnd, Width: 2, Reach: 2, High: 2, Low: 1.8}}
	s, err := NewShape(f)
	require.NoError(t, err)
	p.Shape, p.Doors = s, nil
	a := AnnexPlan{Covers: p.Covers, PartitionU: 3, AirChanges: 1, Humidity: 0.7, Ground: DefaultGround(ClaySoil())}
	warm := a
	warm.Heated, warm.Temperature = true, 12
	p.Annexes = []AnnexPlan{a, warm}
	h := built(t, p)
	var r HouseLoss
	for i := range 40 {
		k := winterNight()
		k.Outside, k.SkyDrop, k.Wind = -14+0.5*float64(i*i%40), float64(i%7)*4, float64(i%5)
		require.NoError(t, h.LossTo(&r, &k))
		fresh := loss(t, h, k)
		require.InDelta(t, fresh.Annexes[0].Temperature, r.Annexes[0].Temperature, 1e-8)
		require.InDelta(t, 0, r.Annexes[0].Cover+r.Annexes[0].Ground+r.Annexes[0].Leakage-r.Annexes[0].Partition, 1e-6)
		require.InDelta(t, fresh.Annexes[1].Heating, r.Annexes[1].Heating, 1e-6)
		require.InDelta(t, fresh.Partitions, r.Partitions, 1e-6)
	}
	k := winterNight()
	require.NoError(t, h.LossTo(&r, &k))
	require.Zero(t, testing.AllocsPerRun(10, func() { _ = h.LossTo(&r, &k) }))
}

// An annex that the sky and an icy night would leave colder than the range is told by
// its temperature, as near as its line says.
func TestAnnexColderThanTheRange(t *testing.T) {
	p := dugIn(t, 0)
	p.Annexes[0].AirChanges, p.Annexes[0].PartitionU = 0.2, 0.5
	h, err := NewHouse(p)
	require.NoError(t, err)
	k := DefaultHouseConditions()
	k.Inside, k.Outside, k.SkyDrop = -59, -59, 35
	_, err = h.Loss(k)
	require.ErrorIs(t, err, ErrRange)
	require.ErrorContains(t, err, "Annexes[0], temperature without heating: Temperature is -6")
}

// What a room takes of the house has the slope of small steps, also where the house is
// as warm as outside, where it is colder, and where the room is heated; and from the
// second hour on nothing is allocated.
func TestCoversOfAHouseWithAnAnnex(t *testing.T) {
	for _, heated := range []bool{false, true} {
		p := dugIn(t, 1)
		p.Annexes[0].Heated, p.Annexes[0].Temperature, p.Annexes[0].PartitionU = heated, 8, 1e-9
		apart := built(t, p)
		p.Annexes[0].PartitionU = 30
		with := built(t, p)
		k := winterNight()
		k.InnerFace, k.Month = InnerDry, 1
		partition := func(outside, inside float64) (heat, slope float64) {
			k.Outside, k.Inside = outside, inside
			var a, b HouseCovers
			require.NoError(t, with.CoversTo(&a, &k))
			require.NoError(t, apart.CoversTo(&b, &k))
			return a.Air - b.Air, a.Slope[0][0] - b.Slope[0][0]
		}
		for _, outside := range []float64{-14, 14.99, 15, 24} {
			low, _ := partition(outside, 14.95)
			_, slope := partition(outside, 15)
			high, _ := partition(outside, 15.05)
			require.InEpsilon(t, (high-low)/0.1, slope, 0.01, "%v %g", heated, outside)
		}
		k.Outside, k.Inside = -14, 15
		var c HouseCovers
		require.NoError(t, with.CoversTo(&c, &k))
		require.Zero(t, testing.AllocsPerRun(10, func() { _ = with.CoversTo(&c, &k) }))
	}
}
