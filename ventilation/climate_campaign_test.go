package ventilation_test

import (
	"errors"
	"flag"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/psychro"
	"cloche.example/ventilation"
)

// campaign is the number of random houses that TestCampaignOfHouses solves:
// go test -run Campaign -campaign 1000000 ./ventilation.
var campaign = flag.Int("campaign", 4000, "random houses of the campaign")

// randomHouse is any house, from a frame to a hectare, with any crop and vents.
func randomHouse(rnd *rand.Rand) (ventilation.ClimateHouse, error) {
	area := math.Pow(10, 0.5+3*rnd.Float64())
	height := 1 + 4*rnd.Float64()
	var openings []ventilation.Opening
	for range rnd.IntN(4) {
		o := ventilation.Opening{Height: height * rnd.Float64(), Area: area * 0.1 * rnd.Float64(), Discharge: 0.4 + 0.4*rnd.Float64(), PressureCoefficient: 1.4*rnd.Float64() - 0.8}
		if rnd.IntN(2) == 0 {
			o.Vertical = min(2*o.Height, 0.1+rnd.Float64())
		}
		openings = append(openings, o)
	}
	leaks := []ventilation.Leak{{Height: height * rnd.Float64(), Flow: area * 1e-4 * (0.2 + 4*rnd.Float64()), Exponent: 0.6 + 0.1*rnd.Float64(), PressureCoefficient: rnd.Float64() - 0.5},
		{Height: height * rnd.Float64(), Flow: area * 1e-4 * (0.2 + 4*rnd.Float64()), Exponent: 0.65, PressureCoefficient: rnd.Float64() - 0.5}}
	n, err := ventilation.NewNetwork(openings, leaks, nil)
	h := ventilation.ClimateHouse{FloorArea: area, Volume: area * height, Cover: ventilation.DefaultSimpleCover(area * (1.2 + rnd.Float64())), Floor: ventilation.DefaultFloorSurface(), Air: n}
	h.Floor.Wet = rnd.Float64() * float64(rnd.IntN(2))
	h.Cover.U = 0.5 + 5.3*rnd.Float64()
	if rnd.IntN(3) > 0 {
		h.Crop = ventilation.DefaultCanopy(0.3 + 4*rnd.Float64())
	}
	return h, err
}

// randomHour is any hour, and what is done to the house.
func randomHour(rnd *rand.Rand) (ventilation.Weather, ventilation.Setting, error) {
	outside := -20 + 55*rnd.Float64()
	out, err := psychro.FromRelativeHumidity(outside, 0.1+0.88*rnd.Float64(), 101325)
	w := ventilation.Weather{Air: out, Sun: max(0, 1500*rnd.Float64()-600), Wind: 8 * rnd.Float64() * float64(rnd.IntN(3)) / 2, Sky: outside - 25*rnd.Float64(), Ground: 5 + 15*rnd.Float64()}
	s := ventilation.Setting{Opening: max(0, 1.5*rnd.Float64()-0.5)}
	return w, s, err
}

// The heat that holds a temperature is never heat that Solve shows unneeded, and
// Solve misses no stable state with a stronger flow: with the heat of HeatFor it
// finds that state, or one with a stronger flow.
func TestCampaignOfHouses(t *testing.T) {
	rnd := rand.New(rand.NewPCG(2024, 7))
	held, refused, open, missed, needless := 0, 0, 0, 0, 0
	for range *campaign {
		h, err := randomHouse(rnd)
		require.NoError(t, err)
		w, s, err := randomHour(rnd)
		require.NoError(t, err)
		c := climate(t, h)
		want := w.Air.Temperature() - 3 + 28*rnd.Float64()
		x, err := c.HeatFor(w, s, want)
		if err != nil {
			refused++
			continue
		}
		if !x.Stable {
			continue // held by the heater's control alone
		}
		held++
		o, m := findsAgain(t, h, w, s, x)
		open, missed = open+o, missed+m
		s.Heat = 0
		if y, err := c.Solve(w, s); err == nil && x.Heat > 1e-6*h.FloorArea && y.Temperature > want+1e-6 && y.DryAir >= x.DryAir {
			needless++
			t.Logf("needless: %.6g W for %.6f °C, %.6f °C without", x.Heat, want, y.Temperature)
		}
	}
	t.Logf("%d houses: %d held and stable, %d refused, %d without an answer, %d stronger states missed, %d times needless heat", *campaign, held, refused, open, missed, needless)
	// What doc_accuracy.go records of 1,000,000 houses: none without an answer, 17 missed.
	require.LessOrEqual(t, open, *campaign/1000000)
	require.LessOrEqual(t, missed, *campaign/50000)
	require.Zero(t, needless)
}

// findsAgain solves the hour with the heat of the state x that HeatFor held, and counts
// whether there is no answer, and whether it has a weaker flow than x.
func findsAgain(t *testing.T, h ventilation.ClimateHouse, w ventilation.Weather, s ventilation.Setting, x ventilation.ClimateState) (open, missed int) {
	t.Helper()
	s.Heat = x.Heat
	y, err := climate(t, h).Solve(w, s)
	switch {
	case err != nil:
		open++
		t.Logf("%v\n%+v\n%+v\n%+v", err, h, w, s)
	case y.DryAir < x.DryAir*(1-1e-6)-1e-9:
		missed++
		t.Logf("held %.6f °C %.6g kg/s, found %.6f °C %.6g kg/s\n%+v\n%+v\n%+v", x.Temperature, x.DryAir, y.Temperature, y.DryAir, h, w, s)
	}
	return open, missed
}

// In calm and dark a crop cools the air, so that a house held hardly warmer than
// outside may have a weak flow of warm air and a stronger one of cold: with the heat of
// HeatFor Solve finds the state held, or one with a stronger flow. A third of the
// campaign's number.
func TestCampaignOfCalmNights(t *testing.T) {
	rnd := rand.New(rand.NewPCG(3, 12))
	held, open, missed := 0, 0, 0
	for range *campaign / 3 {
		h, err := randomHouse(rnd)
		require.NoError(t, err)
		h.Crop = ventilation.DefaultCanopy(0.3 + 4*rnd.Float64())
		w, s, err := randomHour(rnd)
		require.NoError(t, err)
		w.Wind, w.Sun = 0, 0
		c := climate(t, h)
		x, err := c.HeatFor(w, s, w.Air.Temperature()-3+28*rnd.Float64())
		if err != nil || !x.Stable {
			continue
		}
		held++
		o, m := findsAgain(t, h, w, s, x)
		open, missed = open+o, missed+m
	}
	t.Logf("%d calm nights held: %d without an answer, %d stronger states missed", held, open, missed)
	require.LessOrEqual(t, open, *campaign/1000000)
	require.LessOrEqual(t, missed, *campaign/200000)
}

// Random hours of one house on each ready-made cover, cold: each has an answer
// whose heat is envelope's, a twentieth of the campaign's number.
func TestCampaignOfRealHours(t *testing.T) {
	rnd := rand.New(rand.NewPCG(12, 8))
	covers := envelope.Covers()
	var houses []ventilation.ClimateHouse
	var climates []*ventilation.Climate
	for i, cover := range covers {
		h := realClimate(t, cover.Cover)
		if i%2 == 0 {
			h.Real.House = realHouse(t, cover.Cover, envelope.RadiantGiven)
		}
		houses, climates = append(houses, h), append(climates, climate(t, h))
	}
	open, between, astray, wrong, n := 0, 0, 0, 0, *campaign/20
	for i := range n {
		if i > 0 && i%50000 == 0 {
			t.Logf("%d hours so far: %d without an answer, %d between dry and wet, %d of them at no edge of Loss, %d wrong", i, open, between, astray, wrong)
		}
		w, s, err := randomHour(rnd)
		require.NoError(t, err)
		w.Sky = max(w.Sky, w.Air.Temperature()-25)
		s.Opening = max(s.Opening, 0.1*float64(rnd.IntN(2)))
		s.Heat, s.Radiant, s.Screen = 8000*rnd.Float64(), 4000*rnd.Float64()*float64(rnd.IntN(2)), rnd.IntN(2) == 0
		x, err := climates[i%len(covers)].Solve(w, s)
		switch {
		case err != nil && w.Sun > 0 && errors.Is(err, ventilation.ErrNoSolution):
			// shut in the sun: hotter than covers are known to
		case err != nil:
			open++
			t.Logf("%s: %v\n%+v\n%+v", covers[i%len(covers)].Name, err, w, s)
		case x.CoversBetween:
			between++
			if miss := edgeDiffers(t, houses[i%len(covers)], w, s, x); miss != "" {
				astray++
				t.Logf("%s: %s\n%+v\n%+v", covers[i%len(covers)].Name, miss, w, s)
			}
		case x.NodeResidual > 1e-9:
			wrong++
			t.Logf("%s: open by %g\n%+v\n%+v", covers[i%len(covers)].Name, x.NodeResidual, w, s)
		default:
			if miss := coversDiffer(t, houses[i%len(covers)], w, s, x); miss != "" {
				wrong++
				t.Logf("%s: %s\n%+v\n%+v", covers[i%len(covers)].Name, miss, w, s)
			}
		}
	}
	t.Logf("%d hours: %d without an answer, %d between dry and wet, %d of them at no edge of Loss, %d wrong", n, open, between, astray, wrong)
	// What doc_accuracy.go records: fewer than 1 in 100,000 without an answer, and fewer wrong.
	require.LessOrEqual(t, open, n/100000)
	require.LessOrEqual(t, wrong, n/100000)
	require.LessOrEqual(t, astray, n/20000)
}
