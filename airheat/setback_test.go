package airheat

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/check"
	"github.com/stretchr/testify/require"
)

func TestNightSetBack(t *testing.T) {
	h := house(t, testNodes())
	d := envelope.Drive{Outside: -2, Deep: 9, Heat: 300}
	sp := SetPoints{Day: 16, Night: 10, DayStarts: 7, DayEnds: 18}
	r, err := h.NightSetBack(d, sp, 40000)
	require.NoError(t, err)
	require.InDelta(t, 0, r.Residual/r.HeatPerDay, 1e-6)
	require.InDelta(t, 10, r.Lowest, 1e-6)
	require.InDelta(t, 16, r.WarmestAir, 1e-6)
	require.Greater(t, r.Saving, 0.02)
	// It cannot save more than the mean set-point would.
	q, _ := h.HoldingHeat(d, sp.mean())
	q16, _ := h.HoldingHeat(d, 16)
	require.Less(t, r.Saving, 1-(q-300)/(q16-300)+1e-3)
	require.Less(t, r.Recovery, 3*time.Hour)
	// No set-back: the constant heat.
	same, err := h.NightSetBack(d, SetPoints{Day: 16, Night: 16, DayStarts: 7, DayEnds: 18}, 40000)
	require.NoError(t, err)
	require.InDelta(t, 0, same.Saving, 1e-9)
	require.InDelta(t, (q16-300)*86400, same.ConstantHeat, 1e-3)
	// A heater too small never brings it back.
	small, err := h.NightSetBack(d, sp, 9000)
	require.NoError(t, err)
	require.Equal(t, 24*time.Hour, small.Recovery)
	require.Less(t, small.WarmestAir, 16.0)
	_, err = h.NightSetBack(envelope.Drive{Ramp: 1e-4}, SetPoints{DayStarts: 9, DayEnds: 3}, -1)
	for _, name := range []string{"Ramp", "DayEnds", "rated"} {
		require.ErrorContains(t, err, name)
	}
}

// A house that stores nothing saves what the degree-hours say: 18 °C by day and 15 °C
// for 14 hours, steady weather, no sun, worked by hand. And the mean of two set-points
// over a day, as an extension service prints it.
func TestSetBackByDegreeHours(t *testing.T) {
	sp := SetPoints{Day: 18, Night: 15, DayStarts: 7, DayEnds: 17}
	h := house(t, envelope.Nodes{AirCapacity: 1, StructureCapacity: 1, SoilCapacity: 1, Cover: 1000, AirStructure: 1, AirSoil: 1})
	for _, c := range []struct{ outside, saving float64 }{{0, 0.09722222}, {5, 0.1346154}, {8, 0.175}} {
		r, err := h.NightSetBack(envelope.Drive{Outside: c.outside}, sp, 1e6)
		require.NoError(t, err)
		require.InDelta(t, c.saving, r.Saving, 1e-6)
	}
	check.Run(t, []check.Row{{Where: "extension.org, day and night, °F", In: []float64{75, 60}, Printed: "66.3", Tol: 0.0501, Why: "66.25 rounded"}}, func(in ...float64) float64 {
		s := SetPoints{Day: (in[0] - 32) / 1.8, Night: (in[1] - 32) / 1.8, DayStarts: 7, DayEnds: 17}
		return s.mean()*1.8 + 32
	})
}

// A structure that takes forty years to follow has its repeating day, too.
func TestSetBackOfASlowHouse(t *testing.T) {
	h := house(t, envelope.Nodes{AirCapacity: 4e7, StructureCapacity: 4.6e10, SoilCapacity: 2.4e9, Cover: 2.7e4, Leakage: 325, CoverSky: 3.4e5,
		AirStructure: 35.7, AirSoil: 0.124, StructureOutside: 0.3, SoilDeep: 2700})
	r, err := h.NightSetBack(envelope.Drive{Outside: -6, SkyDrop: 13, Deep: 5}, SetPoints{Day: 16, Night: 10, DayStarts: 7, DayEnds: 18}, 2e7)
	require.NoError(t, err)
	require.InDelta(t, 0, r.Residual/r.HeatPerDay, 1e-9)
	require.InDelta(t, 16, r.WarmestAir, 1e-6)
}

// Heavy houses whose days repeat only where the heater stands between full and none
// for a hair's breadth of temperature.
func TestSetBackWhereTheHeaterTurns(t *testing.T) {
	for _, c := range []struct {
		n     envelope.Nodes
		d     envelope.Drive
		sp    SetPoints
		rated float64
	}{
		{envelope.Nodes{AirCapacity: 3.029891246246167e8, StructureCapacity: 2.8185464048036816e10, SoilCapacity: 4.2553633827102294e9, Cover: 0.3551540291213433,
			CoverSky: 0.4063939149139068, Leakage: 0.11608992729521878, AirStructure: 572250.1500669019, AirSoil: 14.36875866542934, StructureOutside: 0.08970701237765802, SoilDeep: 0.09903162130414121},
			envelope.Drive{Outside: 8.15268193889009, SkyDrop: 3.3837493895552018, Deep: 0.9030607263526269},
			SetPoints{Day: 20.479382047800478, Night: 6.3556088218279365, DayStarts: 7, DayEnds: 13}, 105.21045803505402},
		{envelope.Nodes{AirCapacity: 6095.6497995263735, StructureCapacity: 60696.527206240964, SoilCapacity: 9.911776198819655e10, Cover: 1.3205046252789996,
			CoverSky: 0.19076006767642456, Leakage: 0.16971128415025374, AirStructure: 0.27578597337935234, AirSoil: 31360.262732136227, StructureOutside: 0.14128816403788644, SoilDeep: 1.620068447135817},
			envelope.Drive{Outside: 15.230835550953309, SkyDrop: 1.4243127276909107, Deep: 1.2069660113755942},
			SetPoints{Day: 13.558550316834044, Night: 4.178181243281361, DayStarts: 6, DayEnds: 16}, 147.32732163672117},
	} {
		s, err := house(t, c.n).NightSetBack(c.d, c.sp, c.rated)
		require.NoError(t, err)
		require.InDelta(t, c.sp.Day, s.WarmestAir, 1e-3)
		require.LessOrEqual(t, math.Abs(s.Residual), 1e-6*s.HeatPerDay+daysAlike*(c.n.AirCapacity+c.n.StructureCapacity+c.n.SoilCapacity)+1e-3) // J
	}
}

// Repeating days against numbers worked apart from the library.
func TestSetBacksWorkedApart(t *testing.T) {
	rows := check.Numbers(t, "setback.csv")
	require.Len(t, rows, 10)
	for _, r := range rows {
		h := house(t, envelope.Nodes{AirCapacity: r[0], StructureCapacity: r[1], SoilCapacity: r[2], Cover: r[3], Leakage: r[4], CoverSky: r[5],
			AirStructure: r[6], AirSoil: r[7], StructureOutside: r[8], SoilDeep: r[9]})
		d := envelope.Drive{Heat: r[10], StructureHeat: r[11], SoilHeat: r[12], Outside: r[13], Deep: r[14], SkyDrop: r[15]}
		s, err := h.NightSetBack(d, SetPoints{Day: r[16], Night: r[17], DayStarts: int(r[18]), DayEnds: int(r[19])}, r[20])
		require.NoError(t, err)
		require.InEpsilon(t, r[21], s.HeatPerDay, 1e-7)
		require.InEpsilon(t, r[22], s.ConstantHeat, 1e-12)
		require.InDelta(t, 1-r[21]/r[22], s.Saving, 1e-7)
		require.Equal(t, r[23], s.Recovery.Seconds())
		require.InDelta(t, r[24], s.Lowest, 1e-6)
		require.InDelta(t, r[25], s.LowestSoil, 1e-6)
		require.InDelta(t, r[26], s.WarmestAir, 1e-6)
	}
}

// Houses of all weights, whose structure or soil may take centuries to follow and
// whose heater passes from full to less at any hour.
func TestSetBackOfRandomHouses(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	between := func(low, high float64) float64 { return low * math.Pow(high/low, r.Float64()) }
	for i := range 2000 {
		n := envelope.Nodes{AirCapacity: between(1e3, 1e9), StructureCapacity: between(1e3, 1e11), SoilCapacity: between(1e3, 1e11),
			Cover: between(0.1, 1e6), Leakage: between(0.1, 1e6), CoverSky: between(0.1, 1e6), AirStructure: between(0.1, 1e6),
			AirSoil: between(0.1, 1e6), StructureOutside: between(0.01, 1e5), SoilDeep: between(0.01, 1e5)}
		d := envelope.Drive{Outside: -20 + 40*r.Float64(), SkyDrop: 20 * r.Float64(), Deep: 20 * r.Float64()}
		starts := r.IntN(12)
		sp := SetPoints{Day: 12 + 10*r.Float64(), Night: 2 + 10*r.Float64(), DayStarts: starts, DayEnds: starts + 1 + r.IntN(11)}
		s, err := house(t, n).NightSetBack(d, sp, between(1e2, 1e9))
		require.NoError(t, err, i)
		drift := daysAlike * (n.AirCapacity + n.StructureCapacity + n.SoilCapacity)
		require.LessOrEqual(t, math.Abs(s.Residual), 1e-6*s.HeatPerDay+drift+1e-3, i) // J
	}
}
