package ventilation_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func dugIn() ventilation.DugIn {
	return ventilation.DugIn{
		Openings: []ventilation.Opening{{Name: "ridge", Height: 2.9, Area: 1.2, Discharge: 0.6, PressureCoefficient: -0.4}},
		Wells: []ventilation.Well{{
			Vent:    ventilation.Opening{Name: "wall vent", Height: -0.4, Vertical: 0.4, Area: 1, Discharge: 0.6},
			Section: 0.8, Discharge: 0.6,
		}},
	}
}

func states(t testing.TB, d ventilation.DugIn, c ventilation.FlowConditions) []ventilation.DugInState {
	t.Helper()
	s, err := d.States(c)
	require.NoError(t, err)
	return s
}

func TestWellThatLetsAirIn(t *testing.T) {
	d := dugIn()
	c := dry(t, 25, 10, 0)
	s := states(t, d, c)
	require.Len(t, s, 1)
	require.Equal(t, []bool{false}, s[0].Filled)
	// Its vent and section in series, by hand, at the vent's own height.
	cd := 1 / math.Sqrt(1/0.36+1/(0.48*0.48))
	n := build(t, d.Openings[0], ventilation.Opening{Height: -0.4, Vertical: 0.4, Area: 1, Discharge: cd})
	require.InEpsilon(t, solveNet(t, n, c).Flow, s[0].Air.Flow, 1e-12)
	require.Len(t, s[0].Air.Paths, 2)

	// The well lends the stack its depth: more than a vent at grade.
	n = build(t, d.Openings[0], ventilation.Opening{Height: 0, Area: 1, Discharge: cd})
	require.Less(t, solveNet(t, n, c).Flow, s[0].Air.Flow)
	// No well at all is a network.
	d.Wells, d.Openings = nil, append(d.Openings, ventilation.Opening{Height: 0.2, Area: 1, Discharge: cd})
	s = states(t, d, c)
	require.Len(t, s, 1)
	require.Equal(t, solveNet(t, build(t, d.Openings...), c), s[0].Air)
}

// Wind into the ridge drives house air out through the well: filled with it the
// well is no stack, and the vent acts at grade.
func TestWellThatLetsAirOut(t *testing.T) {
	d := dugIn()
	d.Openings[0].PressureCoefficient = 0.5
	d.Fans = []ventilation.FixedFan{{Height: 1, Flow: 0.1}}
	c := dry(t, 25, 10, 6)
	s := states(t, d, c)
	require.Len(t, s, 1)
	require.Equal(t, []bool{true}, s[0].Filled)
	cd := 1 / math.Sqrt(1/0.36+1/(0.48*0.48))
	n, err := ventilation.NewNetwork([]ventilation.Opening{d.Openings[0], {Height: 0, Area: 1, Discharge: cd}}, nil, d.Fans)
	require.NoError(t, err)
	require.InEpsilon(t, solveNet(t, pressures(t, n), c).Flow, s[0].Air.Flow, 1e-9)
	require.Negative(t, s[0].Air.Paths[1].Net())
	require.InEpsilon(t, 0.1*c.OutsideDensity, s[0].Air.Paths[2].In, 1e-9)
}

// Between the wind that just turns a well full of house air and the one that
// turns a well full of outdoor air both states stand.
func TestWellsRememberTheWind(t *testing.T) {
	d := dugIn()
	d.Openings[0].PressureCoefficient = 0.5
	counts := map[int]int{}
	turned := false
	for u := 0.0; u <= 8; u += 0.05 {
		s := states(t, d, dry(t, 25, 10, u))
		counts[len(s)]++
		out := s[len(s)-1].Filled[0]
		require.True(t, out || !turned) // once it lets air out it does so in any more wind
		turned = turned || out
	}
	require.True(t, turned)
	require.Positive(t, counts[2])
	require.Equal(t, 161, counts[1]+counts[2])
	// The band by hand: the drives 0.5 rho U² Cp against 2.9 and 3.3 m of stack.
	c := dry(t, 25, 10, 0)
	stack := (c.OutsideDensity - c.InsideDensity) * 9.80665
	low, high := math.Sqrt(2*2.9*stack/(0.5*c.OutsideDensity)), math.Sqrt(2*3.3*stack/(0.5*c.OutsideDensity))
	require.Len(t, states(t, d, dry(t, 25, 10, low-0.02)), 1)
	require.Len(t, states(t, d, dry(t, 25, 10, 0.5*(low+high))), 2)
}

func TestColdHouseDrainsByItsWell(t *testing.T) {
	d := dugIn()
	s := states(t, d, dry(t, 5, 25, 0))
	require.Len(t, s, 1)
	require.True(t, s[0].Filled[0]) // full to grade
	// Suction on the ridge that holds the air between vent and grade: the drive
	// of the wind between 2.9 and 3.3 m of stack.
	c := dry(t, 5, 25, 0)
	u := math.Sqrt(2 * 3.1 * (c.InsideDensity - c.OutsideDensity) * 9.80665 / (0.4 * c.OutsideDensity))
	_, err := d.States(dry(t, 5, 25, u))
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	require.ErrorContains(t, err, "no steady flow")
	s = states(t, d, dry(t, 5, 25, 1.1*u))
	require.False(t, s[0].Filled[0])
	// No difference of temperature: the well is no matter.
	d.Leaks = []ventilation.Leak{{Height: 1, Flow: 0.02, Exponent: 0.65}}
	s = states(t, d, dry(t, 20, 20, 2))
	require.Len(t, s, 1)
	require.Equal(t, []bool{false}, s[0].Filled)
}

func TestPoolAndUsableStack(t *testing.T) {
	vent := ventilation.Opening{Height: -0.4, Vertical: 0.2, Area: 1, Discharge: 0.6}
	ridge := ventilation.Opening{Height: 3, Area: 1, Discharge: 0.6}
	s, err := ventilation.StackOf([]ventilation.Opening{ridge, vent}, -0.7, 90)
	require.NoError(t, err)
	require.InDelta(t, -0.5, s.Lowest, 1e-12)
	require.InDelta(t, 3, s.Highest, 1e-12)
	require.InDelta(t, 3.4, s.Height, 1e-12)
	require.InDelta(t, 3, s.Usable, 1e-12)
	require.InDelta(t, 0.2, s.Pool, 1e-12)
	require.InDelta(t, 18, s.Volume, 1e-12)
	require.InDelta(t, 0.2/3.7, s.Share, 1e-12)
	vent.Height = -0.9
	_, err = ventilation.StackOf([]ventilation.Opening{vent}, -0.7, 90)
	requireFields(t, err, "openings[0].Height - Vertical/2")
	_, err = ventilation.StackOf(nil, -70, 0)
	requireFields(t, err, "floor", "floorArea", "number of openings")
}

func TestDugInFaults(t *testing.T) {
	d := dugIn()
	d.Wells[0].Vent.Height, d.Wells[0].Section = 0.3, 0
	d.Openings[0].Area = -1
	d.Leaks = []ventilation.Leak{{Flow: 1, Exponent: 3}}
	d.Fans = []ventilation.FixedFan{{Flow: 1000}}
	_, err := d.States(ventilation.FlowConditions{InsideDensity: 1, OutsideDensity: 9, Wind: 1})
	requireFields(t, err, "Vent.Height", "Section", `Openings[0] "ridge".Area`, "Leaks[0].Exponent", "Fans[0].Flow", "OutsideDensity")
	require.ErrorContains(t, err, `Wells[0] "wall vent"`)
	_, err = ventilation.DugIn{}.States(dry(t, 20, 10, 0))
	requireFields(t, err, "number of openings")
	d = dugIn()
	for range 10 {
		d.Wells = append(d.Wells, d.Wells[0])
	}
	requireFields(t, d.Check(), "number of Wells")
}
