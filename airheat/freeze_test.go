package airheat

import (
	"math"
	"testing"
	"time"

	"cloche.example/envelope"
	"cloche.example/psychro"
	"github.com/stretchr/testify/require"
)

func openHouse(hours int) FreezeOut {
	n := testNodes()
	n.Leakage = 2500
	f := FreezeOut{Nodes: n, Soil: DefaultSoilColumn(90), WetAir: 250, Deep: 7, Start: 6, SkyDrop: 0, AirLimit: -4, SoilLimit: -2, Outside: make([]float64, hours)}
	for i := range f.Outside {
		f.Outside[i] = -10
	}
	return f
}

func TestFreezeOutClosesItsBalance(t *testing.T) {
	f := openHouse(96)
	f.Nodes.CoverSky, f.SkyDrop, f.Heat = 120, 15, 500
	c, err := f.Solve()
	require.NoError(t, err)
	require.Less(t, math.Abs(c.Residual)/c.Released, 1e-9)
	require.Greater(t, c.FrostDepth, 0.02)
	require.Less(t, c.FrostDepth, 0.6)
	require.Greater(t, c.AirBelow, 80*time.Hour)
	require.Less(t, c.SurfaceBelow, c.AirBelow)
	require.Greater(t, c.SurfaceBelow, time.Duration(0))
	require.LessOrEqual(t, c.SurfaceSpell, c.SurfaceBelow)
}

// Without water the march must agree with the exact solution of a like
// three-node house: two thin layers can be made one node.
func TestFreezeMarchWithoutLatentHeatIsLinear(t *testing.T) {
	f := openHouse(48)
	f.WetAir, f.Soil.Water, f.Soil.Frozen = 0, 0, f.Soil.Thawed
	a, err := f.Solve()
	require.NoError(t, err)
	g := f
	g.Outside = make([]float64, 48)
	for i := range g.Outside {
		g.Outside[i] = f.Outside[i] + 5
	}
	g.Deep, g.Start = f.Deep+5, f.Start+5
	b, err := g.Solve()
	require.NoError(t, err)
	for i := range a.Air { // shifting all temperatures shifts the course
		require.InDelta(t, a.Air[i]+5, b.Air[i], 1e-9)
		require.InDelta(t, a.Surface[i]+5, b.Surface[i], 1e-9)
	}
	// Air and structure alone, the soil nearly cut off, against the exact house.
	f.Soil.Area, f.Soil.Surface = 0.1, 0.1
	c, err := f.Solve()
	require.NoError(t, err)
	n := f.Nodes
	n.AirSoil, n.SoilCapacity, n.SoilDeep = 0, 1e6, 1
	h := house(t, n)
	want := h.After(Temperatures{6, 6, 6}, envelope.Drive{Outside: -10, Deep: 7}, 3*time.Hour)
	require.InDelta(t, want.Air, c.Air[2], 1e-3)
	e, err := h.reachFrom(Temperatures{6, 6, 6}, envelope.Drive{Outside: -10, Deep: 7}, airNode, [2]string{"level", "limit"}, f.AirLimit, false, 48*time.Hour)
	require.NoError(t, err)
	require.True(t, e.Reached)
	require.InDelta(t, e.Time.Seconds(), c.AirFirst.Seconds(), 2*c.Step.Seconds())
	require.Equal(t, Forever, b.SurfaceFirst)
}

// TestFrostDepthAgainstStefan: soil at 0 °C under air of −10 °C freezes to the
// depth x of ½ x²/k + x/h = 10 t/(L w + ½ 10 C), Stefan's balance with a film h
// and half of the frozen layer's heat content, exact for little content.
func TestFrostDepthAgainstStefan(t *testing.T) {
	f := openHouse(10 * 24)
	f.WetAir, f.Start, f.Deep = 0, 0, 0
	f.Nodes.Leakage, f.Nodes.AirStructure, f.Nodes.StructureOutside = 1e6, 1, 1
	f.Nodes.AirCapacity, f.Nodes.StructureCapacity = 1e9, 1e6
	s := &f.Soil
	s.Area, s.Depth, s.Layers, s.Water, s.Dry, s.Surface, s.FreezingSpan, s.Thawed = 1, 1.0, 14, 400, 1e6, 20, 0.05, s.Frozen
	c, err := f.Solve()
	require.NoError(t, err)
	heat := fusionHeat*400 + 5*(1e6+iceCapacity*400)
	k := s.Frozen
	x := -k/20 + math.Sqrt(k*k/400+2*k*10*10*86400/heat)
	require.InEpsilon(t, x, c.FrostDepth, 0.03)
}

func TestLatentHeatHoldsTheSurface(t *testing.T) {
	wet := openHouse(72)
	dry := openHouse(72)
	dry.Soil.Water = 0
	w, err := wet.Solve()
	require.NoError(t, err)
	d, err := dry.Solve()
	require.NoError(t, err)
	require.Less(t, w.SurfaceBelow, d.SurfaceBelow)
	require.Greater(t, w.Released, d.Released)
	// Vapour that condenses slows the air.
	closed := openHouse(5)
	closed.Nodes.Leakage = 60
	moist, err := closed.Solve()
	require.NoError(t, err)
	closed.WetAir = 0
	plain, err := closed.Solve()
	require.NoError(t, err)
	require.Greater(t, moist.Air[0], plain.Air[0])
}

func TestFreezeStepIsFineEnough(t *testing.T) {
	f := openHouse(30)
	f.Soil.Layers = 6
	c := newColumn(&f)
	once, ten := c.legs(1), c.legs(10)
	coarse, fine := c.march(&once), c.march(&ten)
	for i := range coarse.Air {
		require.InDelta(t, fine.Air[i], coarse.Air[i], 0.01)
		require.InDelta(t, fine.Surface[i], coarse.Surface[i], 0.01)
	}
}

// Layers: the surface comes to rest as they grow finer, and forty of them do a
// month in no time.
func TestFreezeLayersAreFineEnough(t *testing.T) {
	course := func(layers, hours int) FreezeCourse {
		f := openHouse(hours)
		f.Soil.Layers = layers
		c, err := f.Solve()
		require.NoError(t, err)
		return c
	}
	fine := course(40, 96)
	for _, c := range []struct {
		layers int
		within float64
	}{{24, 0.1}, {12, 0.5}} {
		got := course(c.layers, 96)
		for h := range fine.Surface {
			require.InDelta(t, fine.Surface[h], got.Surface[h], c.within, "%d layers, hour %d", c.layers, h)
		}
	}
	begin := time.Now()
	course(40, 720)
	require.Less(t, time.Since(begin), 30*time.Second, "it took minutes once")
}

// Below 0 °C vapour falls as frost and gives the heat of melting too.
func TestFrostGivesTheHeatOfSublimation(t *testing.T) {
	f := openHouse(1)
	w := func(c float64) float64 {
		p := psychro.SaturationPressure(c)
		return 0.621945 * p / (101325 - p)
	}
	warm, _ := f.airHeat(-1)
	cold, slope := f.airHeat(-8)
	require.InEpsilon(t, f.Nodes.AirCapacity*7+250*(2.501e6+333.6e3)*(w(-1)-w(-8)), warm-cold, 1e-5)
	above, _ := f.airHeat(-7.999)
	require.InEpsilon(t, (above-cold)/0.001, slope, 2e-4)
	under, _ := f.airHeat(-1e-9)
	over, _ := f.airHeat(0)
	require.InDelta(t, over, under, 1e-2)
	require.InDelta(t, -3, f.airAt(func() float64 { e, _ := f.airHeat(-3); return e }(), 6), 1e-9)
}

func TestSoilHeatInverts(t *testing.T) {
	s := DefaultSoilColumn(1)
	for _, v := range []float64{-20, -3, -0.5, -0.3, -0.01, 0, 2, 15} {
		got, ice := s.soilAt(s.soilHeat(v))
		require.InDelta(t, v, got, 1e-12)
		require.InDelta(t, math.Max(0, math.Min(1, -v/0.5)), ice, 1e-12)
	}
	require.InDelta(t, (1.2e6+4200*200)*10, s.soilHeat(10), 1e-6)
	require.InDelta(t, -333.6e3*200-(1.2e6+4200*200)*0.5-(1.2e6+2100*200)*4.5, s.soilHeat(-5), 1e-3)
	f := openHouse(1)
	e, slope := f.airHeat(10)
	up, _ := f.airHeat(10.001)
	require.InDelta(t, slope, (up-e)/0.001, 1e-3*slope)
	require.InDelta(t, 4.2e5*10+250*2.501e6*0.00766, e, 3e4)
	require.InDelta(t, 10, f.airAt(e, -5), 1e-9)
}

func TestFreezeOutRefuses(t *testing.T) {
	_, err := FreezeOut{}.Solve()
	for _, name := range []string{"AirCapacity", "Soil.Area", "Soil.Layers", "Outside"} {
		require.ErrorContains(t, err, name)
	}
	f := openHouse(8000)
	f.Nodes.AirCapacity = 1
	_, err = f.Solve()
	require.ErrorIs(t, err, ErrNotConverged)
}

// The ground's figures a second time, as a guard against slips, and the heat
// contents by their definition.
func TestSoilAndAirHoldTheirHeat(t *testing.T) {
	require.Equal(t, SoilColumn{Area: 90, Depth: 1, Layers: 24, Dry: 1.2e6, Water: 200, Thawed: 1.1, Frozen: 1.7, Surface: 6, FreezingSpan: 0.5}, DefaultSoilColumn(90))
	s := SoilColumn{Dry: 1e6, Water: 300, FreezingSpan: 0.4}
	thawed, frozen := 1e6+300*4200.0, 1e6+300*2100.0
	require.InEpsilon(t, thawed*(5+0.4)+300*333.6e3+frozen*2.6, s.soilHeat(5)-s.soilHeat(-3), 1e-12)
	for _, v := range []float64{5, -0.1, -0.4, -3} {
		back, ice := s.soilAt(s.soilHeat(v))
		require.InDelta(t, v, back, 1e-12)
		require.InDelta(t, math.Max(0, math.Min(1, -v/0.4)), ice, 1e-12)
	}
	// Saturated air: 2.501 MJ/kg on the vapour that it takes up.
	f := openHouse(1)
	warm, slope := f.airHeat(12)
	cold, _ := f.airHeat(2)
	w := func(c float64) float64 { return idealAir(t, c, 1, 101325).HumidityRatio() }
	require.InEpsilon(t, f.Nodes.AirCapacity*10+250*2.501e6*(w(12)-w(2)), warm-cold, 2e-3)
	above, _ := f.airHeat(12.001)
	require.InEpsilon(t, (above-warm)/0.001, slope, 2e-4)
	require.InDelta(t, 12, f.airAt(warm, 3), 1e-9)
	// Layers grow by a fifth as long as the lowest is no more than 20 times the
	// first, and the first step is a tenth of the air's time constant, here a thin
	// air's, but for what makes the hour full.
	f.Soil.Layers = 12
	c := newColumn(&f)
	require.InEpsilon(t, 1.2, c.thick[5]/c.thick[4], 1e-12)
	f.Soil.Layers = 40
	c = newColumn(&f)
	require.InEpsilon(t, 20, c.thick[39]/c.thick[0], 1e-12)
	f.Nodes.AirCapacity = 500
	n := f.Nodes
	tau := 500 / (n.Cover + n.CoverSky + n.Leakage + n.AirStructure + 90*6)
	thin := newColumn(&f)
	l := thin.legs(1)
	require.InEpsilon(t, 0.1*tau, l.step[0], 0.02)
	require.InEpsilon(t, 1.15, l.step[5]/l.step[4], 1e-12)
	require.InEpsilon(t, 60, l.step[len(l.step)-1], 0.02)
	require.InEpsilon(t, psychro.SaturationPressure(0), pressureAtZero, 1e-12)
}
