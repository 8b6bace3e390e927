package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func morning(t testing.TB) ventilation.Purge {
	return ventilation.Purge{
		Start: moist(t, 14, 0.97), Outside: moist(t, -4, 0.9), Volume: 270,
		Warm: 18, Exchange: 0.5, Release: 0.2, Structure: 4e5,
	}
}

func TestPurgeClosesWaterAndHeat(t *testing.T) {
	p := morning(t)
	c, err := p.Rounds(4)
	require.NoError(t, err)
	require.Len(t, c.Rounds, 4)
	w0, wEnd := p.Start.HumidityRatio(), c.End.HumidityRatio()
	require.InEpsilon(t, 4*p.Release, c.Removed+c.Mass*(wEnd-w0), 1e-9)
	require.Equal(t, p.Warm, c.End.Temperature())
	warm, err := psychro.FromHumidityRatio(18, w0, hill)
	require.NoError(t, err)
	require.InEpsilon(t, 270/warm.SpecificVolume(), c.Mass, 1e-12)

	// Heat: what the air carries out, the structure, and what stays in the air;
	// the released vapour brings its own.
	kept := math.Exp(-p.Exchange)
	heat := p.Structure*4 + c.Mass*(c.End.Enthalpy()-p.Start.Enthalpy())
	sum := c.Reheat
	for i, r := range c.Rounds {
		heat += c.Mass * (1 - kept) * (r.Heated.Enthalpy() - p.Outside.Enthalpy())
		before := warm
		if i > 0 {
			w := c.Rounds[i-1].Vented.HumidityRatio() + c.Rounds[i-1].Fog/c.Mass
			before, err = psychro.FromHumidityRatio(18, w, hill)
			require.NoError(t, err)
		}
		heat -= c.Mass * (r.Heated.Enthalpy() - before.Enthalpy())
		require.InEpsilon(t, before.HumidityRatio()+p.Release/c.Mass, r.Heated.HumidityRatio(), 1e-9)
		sum += r.Heat
	}
	require.InEpsilon(t, heat, c.Heat, 1e-9)
	require.InEpsilon(t, sum, c.Heat, 1e-12)
	// Share of the air left: exp(-n).
	r := c.Rounds[0]
	left := p.Outside.HumidityRatio() + kept*(r.Heated.HumidityRatio()-p.Outside.HumidityRatio())
	require.InEpsilon(t, left, r.Vented.HumidityRatio()+r.Fog/c.Mass, 1e-9)
}

func TestPurgeFogsAndTakesItUpAgain(t *testing.T) {
	p := morning(t)
	p.Start, p.Warm, p.Outside, p.Exchange = moist(t, 18, 1), 18, moist(t, -10, 1), 1
	p.Release = 0
	c, err := p.Rounds(1)
	require.NoError(t, err)
	require.Positive(t, c.Rounds[0].Fog)
	require.InDelta(t, 1, c.Rounds[0].Vented.RelativeHumidity(), 1e-9)
	require.InEpsilon(t, c.Mass*(p.Start.HumidityRatio()-c.End.HumidityRatio()), c.Removed, 1e-9)
	require.InEpsilon(t, c.Mass*(1-math.Exp(-1))*(p.Start.Enthalpy()-p.Outside.Enthalpy())+c.Mass*(c.End.Enthalpy()-p.Start.Enthalpy()), c.Heat, 1e-9)
	require.Zero(t, c.Rounds[0].Heat)
}

func TestPurgeLeadsToItsLimit(t *testing.T) {
	p := morning(t)
	c, err := p.Rounds(40)
	require.NoError(t, err)
	require.InEpsilon(t, c.Limit, c.End.HumidityRatio(), 1e-6)
	last := p.Start.HumidityRatio() + 1
	for _, r := range c.Rounds[:20] {
		require.Less(t, r.Vented.HumidityRatio(), last)
		last = r.Vented.HumidityRatio()
	}
	p.Release = 0
	dry, err := p.Rounds(60)
	require.NoError(t, err)
	require.InEpsilon(t, p.Outside.HumidityRatio(), dry.Limit, 1e-12)
	require.InEpsilon(t, dry.Limit, dry.End.HumidityRatio(), 1e-6)
}

func TestRoundsForTheWantedHumidity(t *testing.T) {
	p := morning(t)
	c, err := p.RoundsFor(0.55)
	require.NoError(t, err)
	n := len(c.Rounds)
	require.LessOrEqual(t, c.End.RelativeHumidity(), 0.55)
	require.Greater(t, n, 1)
	before, err := p.Rounds(n - 1)
	require.NoError(t, err)
	require.Greater(t, before.End.RelativeHumidity(), 0.55)
	// Warmer air needs fewer rounds, or as many.
	p.Warm = 22
	warm, err := p.RoundsFor(0.55)
	require.NoError(t, err)
	require.Less(t, len(warm.Rounds), n)
	require.NotEmpty(t, warm.Rounds)
	none, err := p.RoundsFor(0.7) // 97 % at 14 °C is 58 % at 22 °C
	require.NoError(t, err)
	require.Empty(t, none.Rounds)
	require.Zero(t, none.Removed)
	require.InEpsilon(t, none.Mass*(none.End.Enthalpy()-p.Start.Enthalpy())+p.Structure*8, none.Heat, 1e-12)
	_, err = p.RoundsFor(0.1)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	require.ErrorContains(t, err, "0.0035471") // kg/kg, the limit
	p.Release = 20
	_, err = p.RoundsFor(0.5)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	_, err = p.Rounds(3)
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
}

func TestPurgeFaults(t *testing.T) {
	p := morning(t)
	p.Volume, p.Warm, p.Exchange, p.Release, p.Structure = 0, 300, 0, -1, -1
	_, err := p.Rounds(0)
	requireFields(t, err, "Volume", "Warm", "Exchange", "Release", "Structure", "count")
	_, err = p.RoundsFor(55)
	requireFields(t, err, "Volume", "Warm", "Exchange", "Release", "Structure", "rh")
	p = morning(t)
	p.Warm = 10
	requireFields(t, p.Check(), "Warm")
	p.Outside = psychro.State{}
	require.ErrorContains(t, p.Check(), "Outside")
}
