package envelope_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/integrate/quad"

	. "cloche.example/envelope"
)

// The strip's flow is the superposition of steps of surface temperature at all
// places of the ramp; a step at s beyond the floor's rim draws
// (2k/pi) ln((c+s)/s) from the floor. The box tends to the strip with length.
func TestExactFlows(t *testing.T) {
	const c, w, k = 3.2, 0.25, 1.7
	sum := quad.Fixed(func(u float64) float64 {
		s := w * u * u * u
		return 3 * u * u * math.Log((c+s)/s)
	}, 0, 1, 200, nil, 0)
	require.InEpsilon(t, 2*k/math.Pi*sum*11, StripFlow(BareFloor{Width: c, Wall: w, Conductivity: k}, 11), 1e-9)
	long := BoxFlow(BareFloor{Length: 2000, Width: c, Wall: w, Conductivity: k}, 11) - BoxFlow(BareFloor{Length: 1000, Width: c, Wall: w, Conductivity: k}, 11)
	require.InEpsilon(t, StripFlow(BareFloor{Width: c, Wall: w, Conductivity: k}, 11), long/1000, 1e-4)
	require.InEpsilon(t, BoxFlow(BareFloor{Length: 4, Width: 7, Wall: w, Conductivity: k}, 5), BoxFlow(BareFloor{Length: 7, Width: 4, Wall: w, Conductivity: k}, 5), 1e-12)
	for _, bad := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		require.True(t, math.IsNaN(StripFlow(BareFloor{Width: bad, Wall: 1, Conductivity: 1}, 1)) && math.IsNaN(StripFlow(BareFloor{Width: 1, Wall: bad, Conductivity: 1}, 1)) && math.IsNaN(StripFlow(BareFloor{Width: 1, Wall: 1, Conductivity: bad}, 1)))
		require.True(t, math.IsNaN(BoxFlow(BareFloor{Length: bad, Width: 1, Wall: 1, Conductivity: 1}, 1)) && math.IsNaN(BoxFlow(BareFloor{Length: 1, Width: bad, Wall: 1, Conductivity: 1}, 1)) && math.IsNaN(BoxFlow(BareFloor{Length: 1, Width: 1, Wall: bad, Conductivity: 1}, 1)))
		require.True(t, math.IsNaN(MaceyFloor(BareFloor{Width: bad, Length: 1, Wall: 1, Conductivity: 1})) && math.IsNaN(MaceyFloor(BareFloor{Width: 1, Length: 1, Wall: bad, Conductivity: 1})))
		require.True(t, math.IsNaN(AndersonFloor(bad)))
		require.True(t, math.IsNaN(PenetrationDepth(bad, 2e6)) && math.IsNaN(PenetrationDepth(1, bad)))
	}
	require.True(t, math.IsNaN(EquivalentThickness(-1, 1, 1, 1, 1)))
}

// The slab of the standard follows exact conduction: a floor as long as it
// likes, surface resistances that vanish, a ramp across the wall.
func TestSlabAgainstExactStrip(t *testing.T) {
	for _, c := range []float64{2.0, 5, 10, 20} {
		g := DefaultGround(ClaySoil())
		g.WallThickness, g.FloorSurface, g.OutsideSurface = 0.3, 0.001, 0.001
		g.Area, g.Perimeter = c*1e4, 2e4
		r := solved(t, g)
		exact := StripFlow(BareFloor{Width: c, Wall: 0.3, Conductivity: 1.5}, 1)
		require.InEpsilon(t, exact, r.UFloor*c, 0.1, "width %g m", c)
	}
}

func TestSlabBranchesMeet(t *testing.T) {
	// Equivalent thickness just below and above the characteristic width: the
	// standard's two formulas for it differ by 0.014 % there.
	at := func(resistance float64) float64 {
		g := slab(0.5, resistance)
		return solved(t, g).UFloor
	}
	r := (4-0.3)/1.5 - 0.21
	below, above := at(r-1e-9), at(r+1e-9)
	require.InDelta(t, 1, above/below, 2e-4)
	require.NotEqual(t, 1.0, above/below)
}

func TestGroundLaws(t *testing.T) {
	g := DefaultGround(ClaySoil())
	g.Area, g.Perimeter = 94.7, 42.4
	flat := solved(t, g)
	require.Equal(t, flat.UFloor, flat.UFloorWithEdge)
	require.InEpsilon(t, flat.Total, g.Area*flat.UFloor, 1e-12)

	g.Depth = 1e-7
	require.InDelta(t, flat.Total, solved(t, g).Total, 1e-3, "a basement of no depth is a slab")
	before := solved(t, g)
	for _, z := range []float64{0.3, 0.6, 1, 1.5, 2} {
		g.Depth = z
		r := solved(t, g)
		require.Less(t, r.UFloor, before.UFloor)
		require.InEpsilon(t, r.FloorPart+r.WallPart, r.Total, 1e-12)
		require.InEpsilon(t, r.Total, r.UEffective*(g.Area+z*g.Perimeter), 1e-12)
		before = r
	}
	g.WallResistance = 1.5
	insulated := solved(t, g)
	require.Less(t, insulated.Total, before.Total)
	require.Less(t, insulated.Outside, before.Outside)

	g = DefaultGround(ClaySoil())
	g.Area, g.Perimeter = 94.7, 42.4
	g.Edge, g.EdgeWidth, g.EdgeThickness = EdgeHorizontal, 0.8, 0.06
	flatEdge := solved(t, g)
	require.Negative(t, flatEdge.EdgePsi)
	require.InEpsilon(t, flatEdge.Total, g.Area*flatEdge.UFloorWithEdge, 1e-12)
	g.Edge = EdgeVertical
	deep := solved(t, g)
	g.Edge, g.EdgeWidth = EdgeHorizontal, 1.6
	wide := solved(t, g)
	require.InEpsilon(t, wide.EdgePsi, deep.EdgePsi, 1e-12, "vertical counts twice its depth")
	require.InEpsilon(t, wide.Outside, deep.Outside, 1e-12)
	require.Less(t, deep.Outside, flatEdge.Outside)
	require.Less(t, flatEdge.Outside, flat.Outside)
}

func TestGroundYear(t *testing.T) {
	g := DefaultGround(ClaySoil())
	g.Area, g.Perimeter, g.Depth = 94.7, 42.4, 0.7
	r := solved(t, g)
	c := DefaultGroundClimate()
	c.InsideSwing, c.InsideLead = 2, 0.5
	sum, most := 0.0, math.Inf(-1)
	for m := 1; m <= 12; m++ {
		f := r.Flow(c, float64(m))
		require.InDelta(t, f.Total, f.Steady+f.InWave+f.OutWave, 1e-9)
		sum += f.Total / 12
		most = math.Max(most, f.Total)
	}
	require.InDelta(t, r.Total*(c.InsideMean-c.OutsideMean), sum, 1e-9, "the waves cancel over the year")
	c.InsideSwing = 0
	worst := r.Worst(c)
	require.Equal(t, 2.0, worst.Month)
	require.InDelta(t, r.Total*7+r.Outside*10, worst.Total, 1e-9) // eq. C.9
	for m := 1; m <= 12; m++ {
		require.LessOrEqual(t, r.Flow(c, float64(m)).Total, worst.Total+1e-9)
	}
	c.Coldest = 12
	require.Equal(t, 1.0, r.Worst(c).Month)

	// A warm house in autumn draws less than in spring: the ground lags.
	c = DefaultGroundClimate()
	require.Less(t, r.Flow(c, 10).Total, r.Flow(c, 4).Total)
	// No difference, no swing: no heat.
	c.InsideMean, c.OutsideMean, c.OutsideSwing = 9, 9, 0
	require.Zero(t, r.Flow(c, 1).Total)
	require.True(t, math.IsNaN(r.Flow(c, 0).Total))
	c.OutsideMean = 400
	require.True(t, math.IsNaN(r.Flow(c, 1).Total))

	var in, out [12]float64
	for i := range in {
		in[i], out[i] = 16, 9-10*math.Cos(math.Pi/6*float64(i))
	}
	flow, err := r.MonthlyFlow(GroundMonths{Inside: in, Outside: out})
	require.NoError(t, err)
	c = DefaultGroundClimate()
	c.OutsideLag = 0
	for i := range flow {
		require.InDelta(t, r.Flow(c, float64(i+1)).Total, flow[i], 15, "eq. C.3 without lags; months differ in length")
	}
	in[3], out[5] = 99, math.NaN()
	_, err = r.MonthlyFlow(GroundMonths{Inside: in, Outside: out})
	requireFields(t, err, "Inside[3]", "Outside[5]")
}

func TestAllFaultsOfGround(t *testing.T) {
	_, err := Ground{Edge: EdgeVertical, Depth: 1, FloorResistance: -1, WallResistance: 21, WallThickness: 3, JunctionPsi: 4}.Solve()
	requireFields(t, err, "Area", "Perimeter", "WallThickness", "FloorResistance", "WallResistance", "Soil.Conductivity", "Soil.HeatCapacity",
		"EdgeWidth", "EdgeThickness", "EdgeConductivity", "Depth with an Edge", "JunctionPsi", "FloorSurface", "WallSurface", "OutsideSurface")
	g := DefaultGround(ClaySoil())
	g.Area, g.Perimeter = 1e4, 5
	_, err = g.Solve()
	requireFields(t, err, "Perimeter")
	g.Perimeter, g.Edge = 400, 7
	_, err = g.Solve()
	require.ErrorContains(t, err, "Edge is 7")
	err = CheckClimate(GroundClimate{InsideMean: 99, InsideSwing: -1, OutsideMean: -99, OutsideSwing: 50, Coldest: 0, InsideLead: -1, OutsideLag: 7})
	requireFields(t, err, "InsideMean", "InsideSwing", "OutsideMean", "OutsideSwing", "Coldest", "InsideLead", "OutsideLag")
}

// The table's rows are soils that Ground accepts, each within its own ends.
func TestSoils(t *testing.T) {
	for _, s := range Soils() {
		require.True(t, SoilConductivity.Contains(s.ConductivityLow) && SoilConductivity.Contains(s.ConductivityHigh), s.Name)
		require.True(t, SoilHeatCapacity.Contains(s.HeatCapacity), s.Name)
		require.LessOrEqual(t, s.ConductivityLow, s.Conductivity, s.Name)
		require.GreaterOrEqual(t, s.ConductivityHigh, s.Conductivity, s.Name)
		require.NotEmpty(t, s.Source)
		g := DefaultGround(ClaySoil())
		g.Area, g.Perimeter, g.Soil = 50, 30, s
		solved(t, g)
	}
}
