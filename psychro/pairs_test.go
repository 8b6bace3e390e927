package psychro_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
)

// pair makes a state again from what another one says of itself.
type pair struct {
	name string
	make func(m psychro.Model, s psychro.State) (psychro.State, error)
	// loss is how much an error of one unit in the last place of the inputs
	// grows on its way into the humidity ratio, in air of 0 to 40 °C.
	loss float64
}

var pairs = []pair{
	{"t rh", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromRelativeHumidity(s.Temperature(), s.RelativeHumidity(), s.Pressure())
	}, 1},
	{"t w", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromHumidityRatio(s.Temperature(), s.HumidityRatio(), s.Pressure())
	}, 1},
	{"t td", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromDewPoint(s.Temperature(), s.DewPoint(), s.Pressure())
	}, 1},
	{"t tw", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		tw := s.WetBulb()
		return m.FromWetBulbOver(psychro.SurfaceAt(tw), s.Temperature(), tw, s.Pressure())
	}, 10},
	{"t e", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromVapourPressure(s.Temperature(), s.VapourPressure(), s.Pressure())
	}, 1},
	{"t vpd", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromVapourPressureDeficit(s.Temperature(), s.VapourPressureDeficit(), s.Pressure())
	}, 20},
	{"t h", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromEnthalpy(s.Temperature(), s.Enthalpy(), s.Pressure())
	}, 100},
	{"t v", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromSpecificVolume(s.Temperature(), s.SpecificVolume(), s.Pressure())
	}, 1000},
	{"t mu", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromDegreeOfSaturation(s.Temperature(), s.DegreeOfSaturation(), s.Pressure())
	}, 1},
	{"t d", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromAbsoluteHumidity(s.Temperature(), s.AbsoluteHumidity(), s.Pressure())
	}, 1},
	{"h rh", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromEnthalpyAndRelativeHumidity(s.Enthalpy(), s.RelativeHumidity(), s.Pressure())
	}, 10},
	{"h w", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromEnthalpyAndHumidityRatio(s.Enthalpy(), s.HumidityRatio(), s.Pressure())
	}, 1},
	{"v w", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromSpecificVolumeAndHumidityRatio(s.SpecificVolume(), s.HumidityRatio(), s.Pressure())
	}, 1},
	{"tw w", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromWetBulbAndHumidityRatio(s.WetBulb(), s.HumidityRatio(), s.Pressure())
	}, 1},
	{"tw rh", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromWetBulbAndRelativeHumidity(s.WetBulb(), s.RelativeHumidity(), s.Pressure())
	}, 10},
	{"w rh", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromHumidityRatioAndRelativeHumidity(s.HumidityRatio(), s.RelativeHumidity(), s.Pressure())
	}, 1},
	{"td rh", func(m psychro.Model, s psychro.State) (psychro.State, error) {
		return m.FromDewPointAndRelativeHumidity(s.DewPoint(), s.RelativeHumidity(), s.Pressure())
	}, 1},
}

// TestEveryPairTurnsRoundThroughEveryOther makes a state from each pair, that
// one again from each other, and wants the first back: to 1e-9 where the pairs
// are well conditioned. Where they are not, the room is that of a part in 1e13
// of what was given.
func TestEveryPairTurnsRoundThroughEveryOther(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		for _, at := range []float64{-37.7, -18.3, -2.9, 4.1, 11.9, 24.6, 38.2, 55.5, 71.3} {
			for _, rh := range []float64{0.07, 0.31, 0.64, 0.93, 1} {
				for _, p := range []float64{70e3, 88250, 101325} {
					s, err := m.FromRelativeHumidity(at, rh, p)
					require.NoError(t, err)
					for _, a := range pairs {
						one, err := a.make(m, s)
						require.NoError(t, err, "%v %s %g %g %g", m, a.name, at, rh, p)
						for _, b := range pairs {
							two, err := b.make(m, one)
							where := fmt.Sprintf("%v, %s then %s: %g °C, %g, %g Pa", m, a.name, b.name, at, rh, p)
							require.NoError(t, err, where)
							// J/kg or m³/kg are the same at any humidity: the
							// colder the air, the less of them is vapour's.
							room := 1e-9 + 1e-14*(a.loss+b.loss)/s.HumidityRatio()
							require.InDelta(t, s.Temperature(), two.Temperature(), max(1e-9, 100*room-1e-7), where)
							require.InEpsilon(t, s.HumidityRatio(), two.HumidityRatio(), room, where)
						}
					}
				}
			}
		}
	}
}

// Volume hardly tells the vapour of very cold air; its last places must not
// make fog of saturated air.
func TestSaturatedAirFromItsVolume(t *testing.T) {
	for at := -99.5; at < 0; at += 0.37 {
		for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
			s, err := m.FromRelativeHumidity(at, 1, 75e3)
			require.NoError(t, err)
			_, err = m.FromSpecificVolume(at, s.SpecificVolume(), 75e3)
			require.NoError(t, err, "%v %g", m, at)
			dry, err := m.FromHumidityRatio(at, 0, 75e3)
			require.NoError(t, err)
			_, err = m.FromEnthalpy(at, dry.Enthalpy(), 75e3)
			require.NoError(t, err, "%v %g", m, at)
		}
	}
}

// The inverses of the surface that is not the default one.
func TestOtherSurfaces(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		for at := -28.0; at <= -1; at += 1.7 {
			s, err := m.FromRelativeHumidity(at, 0.55, 95e3)
			require.NoError(t, err)
			supercooled := s.WetBulbOver(psychro.Liquid)
			require.NotEqual(t, supercooled, s.WetBulb())
			back, err := m.FromWetBulbOver(psychro.Liquid, at, supercooled, 95e3)
			require.NoError(t, err)
			require.InEpsilon(t, s.HumidityRatio(), back.HumidityRatio(), 1e-9)
			td := s.DewPointOver(psychro.Liquid)
			require.Less(t, td, s.DewPoint())
			back, err = m.FromDewPointOver(psychro.Liquid, at, td, 95e3)
			require.NoError(t, err)
			require.InEpsilon(t, s.HumidityRatio(), back.HumidityRatio(), 1e-9)
			back, err = m.FromRelativeHumidityOver(psychro.Liquid, at, s.RelativeHumidityOver(psychro.Liquid), 95e3)
			require.NoError(t, err)
			require.InEpsilon(t, s.HumidityRatio(), back.HumidityRatio(), 1e-12)
			require.Equal(t, s.DewPoint(), s.DewPointOver(psychro.Ice))
		}
	}
	warm, err := psychro.FromRelativeHumidity(20, 0.5, 101325)
	require.NoError(t, err)
	require.True(t, math.IsNaN(warm.DewPointOver(psychro.Ice)))
	require.True(t, math.IsNaN(warm.WetBulbOver(psychro.Ice)))
	require.True(t, math.IsNaN(warm.RelativeHumidityOver(psychro.Ice)))
}

func TestSaturatedAtEnthalpy(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		for _, h := range []float64{-80e3, -10e3, 0, 9e3, 50e3, 300e3} {
			s, err := m.FromEnthalpyAndRelativeHumidity(h, 1, 101325)
			require.NoError(t, err)
			require.InDelta(t, h, s.Enthalpy(), 1e-6)
			require.InDelta(t, 1, s.RelativeHumidity(), 1e-12)
		}
	}
}

// TestTwoBulbsNearFreezing: air in which a liquid and an iced bulb are both in
// equilibrium.
func TestTwoBulbsNearFreezing(t *testing.T) {
	found := 0
	for at := 0.5; at < 9; at += 0.1 {
		for rh := 0.1; rh < 1; rh += 0.02 {
			s, err := psychro.FromRelativeHumidity(at, rh, 101325)
			require.NoError(t, err)
			ice, liquid := s.WetBulbOver(psychro.Ice), s.WetBulbOver(psychro.Liquid)
			switch {
			case liquid < psychro.TriplePoint:
				require.Equal(t, ice, s.WetBulb())
			default:
				require.Equal(t, liquid, s.WetBulb())
			}
			if !math.IsNaN(ice) && liquid >= psychro.TriplePoint {
				found++
				require.Less(t, ice, liquid)
				for _, tw := range []float64{ice, liquid} {
					back, err := psychro.FromWetBulb(at, tw, 101325)
					require.NoError(t, err)
					require.InEpsilon(t, s.HumidityRatio(), back.HumidityRatio(), 1e-8)
				}
			}
		}
	}
	require.Greater(t, found, 100)
}

// Next to 0.01 °C saturated air steps from ice to liquid, by 6e-5 of its vapour:
// no state may refuse what it says of itself. Pairs without the dry bulb may
// find the other of two states, within 0.002 K.
func TestPairsNextToTheTriplePoint(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		for at := 0.0085; at < 0.0125; at += 0.000037 {
			for _, rh := range []float64{0.13, 0.55, 0.99998, 1} {
				for _, p := range []float64{34e3, 88e3, 126e3, 199e3} {
					s, err := m.FromRelativeHumidity(at, rh, p)
					require.NoError(t, err)
					require.LessOrEqual(t, s.DewPoint(), at)
					require.LessOrEqual(t, s.WetBulb(), at)
					for _, a := range pairs {
						where := fmt.Sprintf("%v, %s: %.12g °C, %g, %g Pa", m, a.name, at, rh, p)
						back, err := a.make(m, s)
						require.NoError(t, err, where)
						require.InDelta(t, at, back.Temperature(), 0.002, where)
						require.InEpsilon(t, s.HumidityRatio(), back.HumidityRatio(), 2e-4, where)
						if a.name[0] == 't' && a.name[1] == ' ' {
							require.InEpsilon(t, s.HumidityRatio(), back.HumidityRatio(), 1e-9, where)
						}
					}
				}
			}
		}
	}
}

// Hot air, to twice the boiling point, goes through all pairs like any other;
// a degree of saturation it has only below boiling.
func TestPairsInHotAir(t *testing.T) {
	for _, m := range []psychro.Model{psychro.RealGas, psychro.IdealGas} {
		for at := 81.0; at < 200; at += 8.3 {
			for _, w := range []float64{0.001, 0.01, 0.1, 0.4, 3} {
				for _, p := range []float64{70e3, 101325, 180e3} {
					s, err := m.FromHumidityRatio(at, w, p)
					if at < 121 && err != nil {
						continue // supersaturated
					}
					require.NoError(t, err)
					require.Less(t, s.DewPoint(), s.WetBulb())
					for _, a := range pairs {
						where := fmt.Sprintf("%v, %s: %g °C, %g kg/kg, %g Pa", m, a.name, at, w, p)
						back, err := a.make(m, s)
						if a.name == "t mu" && math.IsNaN(s.DegreeOfSaturation()) {
							require.Error(t, err, where)
							continue
						}
						require.NoError(t, err, where)
						require.InDelta(t, at, back.Temperature(), 2e-8, where)
						require.InEpsilon(t, w, back.HumidityRatio(), 1e-8, where)
					}
				}
			}
		}
	}
}
