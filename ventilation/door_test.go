package ventilation_test

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/psychro"
	"cloche.example/ventilation"
)

func doorway() ventilation.Doorway {
	return ventilation.Doorway{Width: 0.9, Height: 2, Sill: -0.1, Discharge: 0.6, PressureCoefficient: 0.4}
}

func visits(t testing.TB) ventilation.DoorCase {
	return ventilation.DoorCase{
		Door: doorway(), Inside: moist(t, 16, 0.8), Outside: moist(t, -5, 0.9),
		Volume: 240, Times: 20, Duration: 15 * time.Second,
	}
}

func loss(t testing.TB, d ventilation.DoorCase) ventilation.DoorLoss {
	t.Helper()
	r, err := d.Loss()
	require.NoError(t, err)
	return r
}

func TestDoorOfATightHouse(t *testing.T) {
	d := visits(t)
	r := loss(t, d)
	require.Equal(t, ventilation.Opening{Name: "door", Height: 0.9, Vertical: 2, Area: 1.8, Discharge: 0.6, PressureCoefficient: 0.4}, d.Door.Opening())
	two, err := ventilation.SingleOpening(ventilation.TallVent{Width: 0.9, Top: 2, Discharge: 0.6}, ventilation.FlowConditions{InsideDensity: d.Inside.Density(), OutsideDensity: d.Outside.Density()})
	require.NoError(t, err)
	require.InEpsilon(t, two.Flow, r.In, 1e-9)
	require.InEpsilon(t, r.In, r.Out, 1e-9)
	require.InEpsilon(t, r.In, r.Extra, 1e-9)
	require.Zero(t, r.Shut)
	require.Zero(t, r.Gusts)
	// The infiltration of cold-store doors as engineering tables print it,
	// 0.4 B [2 g r_R r_A (r_R - r_A) (r_R^(1/3) + r_A^(1/3))^-3 H^3]^(1/2):
	// two thirds of a discharge coefficient of 0.6.
	a, b := d.Inside.Density(), d.Outside.Density()
	printed := 0.4 * 0.9 * math.Sqrt(2*9.80665*a*b*(b-a)*math.Pow(math.Cbrt(a)+math.Cbrt(b), -3)*8)
	require.InEpsilon(t, printed, r.In, 1e-9)

	moistOut := 1 + d.Outside.HumidityRatio()
	require.InEpsilon(t, r.Extra*(d.Inside.Enthalpy()-d.Outside.Enthalpy())/moistOut, r.Sensible+r.Latent, 1e-12)
	require.InEpsilon(t, r.Extra*(d.Inside.HumidityRatio()-d.Outside.HumidityRatio())/moistOut, r.Vapour, 1e-12)
	require.InEpsilon(t, r.Vapour*(2501e3+1860*16), r.Latent, 1e-3)
	require.InEpsilon(t, r.Extra*1009*21, r.Sensible, 3e-3)
	require.InEpsilon(t, 15*(r.Sensible+r.Latent), r.Each, 1e-12)
	require.InEpsilon(t, 20*r.Each, r.Energy, 1e-12)
	require.InEpsilon(t, 300*r.Vapour, r.Water, 1e-12)
	require.InEpsilon(t, 15*r.Extra/(240*a), r.Exchanged, 1e-12)
}

// Let against small steps of a flow that goes as the root of the excess.
func TestDoorLetOpenCools(t *testing.T) {
	d := visits(t)
	d.Duration = 4 * time.Minute
	r := loss(t, d)
	mass := 240 * d.Inside.Density()
	x, const0 := 1.0, r.Extra/mass
	const steps = 240000
	for range steps {
		half := x - 0.5*240.0/steps*const0*x*math.Sqrt(x)
		x -= 240.0 / steps * const0 * half * math.Sqrt(half)
	}
	require.InEpsilon(t, r.Each/r.Exchanged*(1-x), r.Let, 1e-7)
	require.Less(t, r.Let, r.Each)
	d.Duration = time.Second
	r = loss(t, d)
	require.InEpsilon(t, r.Each, r.Let, 0.01)
	d.Wind, d.Duration = 12, 4*time.Minute
	r = loss(t, d)
	require.InEpsilon(t, r.Each/r.Exchanged*(1-math.Exp(-r.Exchanged)), r.Let, 1e-9)
}

func TestDoorWithWindAndLeaks(t *testing.T) {
	d := visits(t)
	d.Wind = 12
	r := loss(t, d)
	require.InEpsilon(t, 0.025*1.8*12*d.Outside.Density(), r.Gusts, 1e-9)
	require.Equal(t, math.Max(r.In, r.Gusts), r.Extra)
	require.Equal(t, r.Gusts, r.Extra)
	// With a vent on the lee side the wind blows through.
	d.Openings = []ventilation.Opening{{Height: 2.9, Area: 0.3, Discharge: 0.6, PressureCoefficient: -0.4}}
	d.Leaks = []ventilation.Leak{{Height: 1, Flow: 0.02, Exponent: 0.65}}
	through := loss(t, d)
	require.Greater(t, through.In, 2*r.In)
	require.Greater(t, through.In, through.Out)
	require.Positive(t, through.Shut)
	n, err := ventilation.NewNetwork(append(d.Openings, d.Door.Opening()), d.Leaks, nil)
	require.NoError(t, err)
	b := solveNet(t, pressures(t, n), ventilation.FlowConditions{InsideDensity: d.Inside.Density(), OutsideDensity: d.Outside.Density(), Wind: 12})
	require.InEpsilon(t, b.Flow-through.Shut, through.Extra, 1e-9)
	last := 0.0
	for _, u := range []float64{0, 2, 5, 12} {
		d.Wind = u
		e := loss(t, d).Energy
		require.Greater(t, e, last)
		last = e
	}
}

func TestDoorLimits(t *testing.T) {
	d := visits(t)
	d.Outside = d.Inside
	r := loss(t, d)
	require.Zero(t, r.Extra)
	require.Zero(t, r.Energy)
	d.Outside = moist(t, 32, 0.3) // warmer outside: a gain
	r = loss(t, d)
	require.Negative(t, r.Sensible)
	require.Positive(t, r.Extra)
	d = visits(t)
	d.Times = 0
	require.Zero(t, loss(t, d).Energy)
	d.Inside, d.Outside = moist(t, 16, 0), moist(t, -5, 0)
	r = loss(t, d)
	require.Zero(t, r.Latent)
	require.Zero(t, r.Water)
	d.Inside, d.Outside = moist(t, 16, 0), moist(t, -5, 0.9)
	r = loss(t, d)
	require.Negative(t, r.Latent)
	require.InEpsilon(t, r.Extra*1006*21, r.Sensible, 3e-3)
}

func TestLobbySaves(t *testing.T) {
	d := visits(t)
	l := ventilation.Lobby{Volume: 4, Outer: doorway()}
	r, err := d.WithLobby(l)
	require.NoError(t, err)
	require.Equal(t, loss(t, d), r.Bare)
	// The lobby's water and heat balance: what a passage takes.
	m := 4 * d.Inside.Density()
	require.InEpsilon(t, m*(r.Before-r.Filled)*r.Bare.Each/(15*r.Bare.Extra), r.Passage, 1e-9)
	require.InEpsilon(t, r.Passage/r.Bare.Each*15*r.Bare.Vapour, r.Water, 1e-9)
	require.InEpsilon(t, 1-r.Passage/r.Bare.Each, r.Saved, 1e-12)
	require.Less(t, r.Passage, r.Most)
	// Its course by small steps, from a lobby of house air through many passages.
	x := 1.0
	pull := r.Bare.In / m
	step := func(difference float64) float64 {
		const steps = 20000
		for range steps {
			half := difference - 0.5*15.0/steps*pull*difference*math.Sqrt(difference)
			difference -= 15.0 / steps * pull * half * math.Sqrt(half)
		}
		return difference
	}
	for range 30 {
		require.GreaterOrEqual(t, x, r.Before-1e-9)
		filled := step(x)
		x = 1 - step(1-filled)
		require.GreaterOrEqual(t, filled, r.Filled-1e-6)
	}
	require.InDelta(t, r.Before, x, 1e-6)

	// A bigger lobby saves less of a short passage; a long passage empties it.
	big := l
	big.Volume = 12
	b, err := d.WithLobby(big)
	require.NoError(t, err)
	require.Less(t, b.Saved, r.Saved)
	d.Duration = 2 * time.Hour
	long, err := d.WithLobby(l)
	require.NoError(t, err)
	require.InEpsilon(t, long.Most, long.Passage, 1e-2)
	require.Greater(t, long.Saved, 0.99)
	// Very short ones: two equal openings one after the other, 1 - 2^(-3/2).
	d.Duration = time.Millisecond
	short, err := d.WithLobby(l)
	require.NoError(t, err)
	require.InEpsilon(t, 1-math.Pow(2, -1.5), short.Saved, 2e-3)
	require.InDelta(t, 0.5, short.Before, 1e-3)
}

// Two equal doors open together in calm: each passes at half the difference, so
// the heat is 2^(-3/2) of one door's, but for densities.
func TestBothDoorsOpen(t *testing.T) {
	d := visits(t)
	r, err := d.WithLobby(ventilation.Lobby{Volume: 4, Outer: doorway()})
	require.NoError(t, err)
	require.InDelta(t, 0.5, r.Middle, 5e-3)
	require.InEpsilon(t, math.Pow(2, -1.5)*(r.Bare.Sensible+r.Bare.Latent), r.Both, 5e-3)
	require.InEpsilon(t, 1-r.Both/(r.Bare.Sensible+r.Bare.Latent), r.Kept, 1e-12)
	require.InEpsilon(t, r.Both/(r.Bare.Sensible+r.Bare.Latent)*r.Bare.Extra, r.Air*(1-r.Middle), 1e-9)

	d.Openings = []ventilation.Opening{{Height: 2.9, Area: 0.3, Discharge: 0.6, PressureCoefficient: -0.4}}
	d.Leaks = []ventilation.Leak{{Height: 1, Flow: 0.02, Exponent: 0.65}}
	d.Wind = 8 // wind blows through both doors: the lobby fills with outdoor air
	windy, err := d.WithLobby(ventilation.Lobby{Volume: 4, Outer: doorway()})
	require.NoError(t, err)
	require.Less(t, windy.Middle, 0.02)
	require.Less(t, windy.Kept, 0.2)
	require.Positive(t, windy.Bare.Extra-windy.Bare.Gusts)
	for i := range d.Openings {
		d.Openings[i].PressureCoefficient = 0.9 // out by the doors: the lobby fills with house air
	}
	out, err := d.WithLobby(ventilation.Lobby{Volume: 4, Outer: doorway()})
	require.NoError(t, err)
	require.Greater(t, out.Middle, 0.9)
}

func TestLobbyWithNoDifference(t *testing.T) {
	d := visits(t)
	d.Outside = d.Inside
	r, err := d.WithLobby(ventilation.Lobby{Volume: 4, Outer: doorway()})
	require.NoError(t, err)
	require.Zero(t, r.Passage)
	require.Zero(t, r.Saved)
	require.Zero(t, r.Both)
	require.Zero(t, r.Kept)
}

func TestDoorFaults(t *testing.T) {
	d := visits(t)
	d.Door = ventilation.Doorway{Width: 0, Height: 30, Sill: 60, Discharge: 1.2, PressureCoefficient: 9}
	d.Wind, d.Volume, d.Times, d.Duration = -1, 0, -1, -time.Second
	d.Openings = []ventilation.Opening{{Name: "vent", Area: -1, Discharge: 0.6}}
	d.Leaks = []ventilation.Leak{{Exponent: 2, Flow: 1}}
	fields := []string{
		"Door.Width", "Door.Height", "Door.Sill", "Door.Sill + Height/2", "Door.Discharge", "Door.PressureCoefficient", "Wind", "Volume", "Times", "Duration",
		`Openings[0] "vent".Area`, "Leaks[0].Exponent",
	}
	_, err := d.Loss()
	requireFields(t, err, fields...)
	_, err = d.WithLobby(ventilation.Lobby{})
	requireFields(t, err, append([]string{"Lobby.Volume", "Lobby.Outer.Width", "Lobby.Outer.Height", "Lobby.Outer.Discharge"}, fields...)...)
	d = visits(t)
	d.Door.Height, d.Door.Sill = 20, 40 // the middle at the top of HeightRange
	require.NoError(t, d.Check())
	d.Door.Sill = 40.1
	requireFields(t, d.Check(), "Door.Sill + Height/2")
	d = visits(t)
	d.Outside, _ = psychro.FromRelativeHumidity(-5, 0.9, 101325)
	requireFields(t, d.Check(), "Outside.Pressure")
	d.Inside = psychro.State{}
	require.ErrorContains(t, d.Check(), "Inside")
}

// A drive of a ten-thousandth of a pascal over a hectare: its flow is uncertain
// by the rounding of the pressure, and the solver ends there.
func TestHugeOpeningBesideATinyOne(t *testing.T) {
	slit := ventilation.Opening{Height: 20, Vertical: 20, Area: 2e-5, Discharge: 1, PressureCoefficient: -0.42857}
	z := zones(t, 2,
		ventilation.Link{A: ventilation.OutsideZone, B: 0, Element: slit},
		ventilation.Link{A: 0, B: 1, Element: slit},
		ventilation.Link{A: ventilation.OutsideZone, B: 1, Element: ventilation.Opening{Height: 6, Area: 99964, Discharge: 0.6, PressureCoefficient: -0.3}},
		ventilation.Link{A: ventilation.OutsideZone, B: 1, Element: ventilation.Leak{Height: 1, Flow: 15.2, Exponent: 0.65}})
	for k := range 201 {
		lobby := 1.2739 + float64(k)/200*(1.0113-1.2739)
		b, err := z.Solve(ventilation.ZoneConditions{ZoneDensities: []float64{lobby, 1.0113}, OutsideDensity: 1.2739, Wind: 45})
		require.NoError(t, err)
		require.InDelta(t, 0, b.Residual[0], 1e-12)
		require.InDelta(t, 0, b.Residual[1], 1e-6) // of 950 kg/s
	}
}
