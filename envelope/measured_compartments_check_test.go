package envelope_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
	"cloche.example/internal/check"
)

// Nights of glass compartments of 96 m² with cucumber [Hemming19], averaged here
// from the data of the house, read in full: heat of the pipes over the difference of
// air temperatures, W/(m² K) of floor, with the standard deviation of the hours.
// Vents shut, lamps off, air steady. Which walls look outside is not told.
type night struct {
	drawn           string // which screens
	hours           int
	inside, outside float64 // °C
	wind            float64 // m/s, 0 in light air, which the anemometer does not feel
	net             float64 // W/m², long-wave, from the sky below the air
	humid, humidOut float64 // fraction
	printed, spread string  // W/(m² K)
}

var nights = []night{
	{"none", 39, 20.67, 11.84, 0.12, 64, 0.79, 0.84, "9.02", "1.40"},
	{"none", 9, 20.82, 13.55, 3.20, 60, 0.83, 0.73, "9.64", "1.05"},
	{"none", 6, 21.05, 10.82, 0.53, 28, 0.78, 0.78, "9.07", "0.61"},
	{"none", 6, 20.43, 12.83, 3.37, 33, 0.81, 0.74, "9.13", "0.69"},
	{"energy", 8, 19.58, 10.38, 0.01, 62, 0.83, 0.83, "5.60", "0.54"},
	{"energy", 30, 18.90, 10.61, 0.40, 29, 0.82, 0.87, "5.58", "0.67"},
	{"energy", 9, 19.06, 10.31, 0.93, 5, 0.85, 0.88, "4.57", "1.76"},
	{"energy", 15, 18.93, 10.61, 3.04, 4, 0.85, 0.89, "4.43", "0.71"},
	{"blackout", 5, 19.87, 13.24, 0.00, 60, 0.86, 0.88, "6.27", "0.46"},
	{"both", 30, 18.92, 6.62, 0.27, 65, 0.85, 0.84, "4.08", "0.48"},
	{"both", 8, 17.69, 3.66, 2.59, 70, 0.85, 0.82, "3.96", "0.45"},
	{"both", 3, 17.46, 2.75, 5.69, 67, 0.83, 0.77, "4.23", "0.20"},
	{"both", 4, 19.23, 5.41, 0.39, 31, 0.86, 0.82, "3.99", "0.32"},
	{"both", 3, 17.54, 2.82, 5.40, 37, 0.83, 0.81, "4.02", "0.30"},
	{"both", 3, 19.64, 8.50, 4.14, 11, 0.87, 0.80, "3.83", "0.53"},
	{"both, the blackout to 85 %", 17, 18.43, 6.94, 0.40, 64, 0.86, 0.87, "3.78", "0.58"},
	{"both, the blackout to 85 %", 7, 17.44, 4.16, 2.76, 82, 0.85, 0.80, "3.47", "0.34"},
	{"both, the blackout to 85 %", 5, 17.75, 5.93, 0.60, 31, 0.86, 0.89, "3.44", "0.26"},
	{"both, the blackout to 85 %", 3, 18.33, 4.73, 3.92, 32, 0.86, 0.83, "3.60", "0.28"},
	{"both, the blackout to 85 %", 5, 17.73, 7.34, 8.91, 10, 0.88, 0.85, "3.10", "0.56"},
}

// What the data do not tell: here the walls look into other compartments, and floor
// and crop give back heat of the day, 10 W/m² by 10 either way (for a house at night
// Piscia and others 2012, abstract, took 10 to 100). The cloths are not named: the energy
// screen is the clear or the aluminised one, the blackout opaque and dull.
const givenBack = 10.0 // W/m²

// compartments are the house by what is drawn, at either end of what the cloths may be.
func compartments(t *testing.T) map[string][]*House {
	t.Helper()
	clear, found := FindLayer("clear screen")
	require.True(t, found)
	black := Layer{Name: "blackout", EmittanceOut: 0.9, EmittanceIn: 0.9, Thickness: 0.3e-3, Conductivity: 0.2, Leakage: 0.5e-3}
	inner, err := NewCover([]Layer{{Name: "inner wall", EmittanceOut: 0.9, EmittanceIn: 0.9, Thickness: 1, Conductivity: 0.02}}, nil)
	require.NoError(t, err)
	f := DefaultForm()
	f.Span, f.Length, f.Eave, f.Ridge, f.Bays = 4, 12, 5, 5.8, 2
	s, err := NewShape(f)
	require.NoError(t, err)
	require.InDelta(t, 96, s.FloorArea, 1e-9)
	leaks := DefaultLeakage()
	leaks.AirChanges = 0.5
	of := func(screens ...Layer) *House {
		c := SingleGlass()
		for _, l := range screens {
			c, err = WithScreen(c, l)
			require.NoError(t, err)
		}
		return built(t, HousePlan{Shape: s, Covers: map[FacetKind]Cover{Roof: c, Gutter: c, SideWall: inner, EndWall: inner},
			Ground: DefaultGround(ClaySoil()), Climate: DefaultGroundClimate(), Leakage: leaks, FrameAllowance: 0.05})
	}
	part := black
	part.Openness = 0.15
	return map[string][]*House{
		"none": {of()}, "energy": {of(AluminisedScreen()), of(clear)}, "blackout": {of(AluminisedScreen()), of(black)},
		"both": {of(AluminisedScreen(), black), of(clear, black)}, "both, the blackout to 85 %": {of(AluminisedScreen(), part), of(clear, part)},
	}
}

func (n night) conditions() HouseConditions {
	k := DefaultHouseConditions()
	k.Inside, k.Outside, k.Wind, k.InsideHumidity, k.OutsideHumidity = n.inside, n.outside, n.wind, n.humid, n.humidOut
	k.SkyDrop = n.net / (4 * 5.67e-8 * math.Pow(n.outside+273.15-5, 3)) // about the mean of air and sky
	return k
}

// Every state of screens, sky and wind comes out as measured, by one house: within the
// spread of its hours and what the unknown heat may be; with 10 W/m² given back within
// the spread alone in all but three of the twenty, and right in the mean. In the bare house
// sky and wind count for more here than in the measured nights, whose floor was warm
// from late summer.
func TestCompartmentsAsMeasured(t *testing.T) {
	houses := compartments(t)
	per := func(h *House, n night) float64 {
		l, err := h.Loss(n.conditions())
		require.NoError(t, err)
		return ((l.Total-l.Ground.Total)/h.Shape().FloorArea - givenBack) / (n.inside - n.outside)
	}
	within, ratio := 0, 0.0
	for _, n := range nights {
		all := houses[n.drawn]
		least, most := per(all[0], n), per(all[len(all)-1], n)
		require.LessOrEqual(t, least, most)
		var measured, spread float64
		_, err := fmt.Sscan(n.printed+" "+n.spread, &measured, &spread)
		require.NoError(t, err)
		unknown := givenBack / (n.inside - n.outside)
		where := fmt.Sprintf("Hemming19, nights of 2018/%s, %g W/m² to the sky, %g m/s", n.drawn, n.net, n.wind)
		check.Verify(t, []check.Got{{Row: check.Row{Where: where, In: []float64{n.inside, n.outside}, Printed: n.printed, Tol: spread + unknown + (most-least)/2,
			Why: "the spread of the hours, what floor and crop give back, and half of what two cloths differ"}, Value: (least + most) / 2}})
		if least-spread <= measured && measured <= most+spread {
			within++
		}
		ratio += (least + most) / 2 / measured / float64(len(nights))
	}
	t.Logf("%d of %d within the spread of their hours, ours over measured %.2f", within, len(nights), ratio)
	require.GreaterOrEqual(t, within, 17)
	require.InDelta(t, 1, ratio, 0.06)
	// Two screens add as resistances: 1/(1/9.02 + 2 (1/5.60 - 1/9.02)) is 4.06 against 4.08
	// measured. Ours nearly do.
	n := nights[9]
	bare := per(houses["none"][0], n)
	energy, blackout := per(houses["energy"][0], n), per(houses["blackout"][1], n)
	added := 1 / (1/energy + 1/blackout - 1/bare)
	t.Logf("ours: bare %.2f, energy %.2f, blackout %.2f; both %.2f, as resistances %.2f", bare, energy, blackout, per(houses["both"][0], n), added)
	require.InDelta(t, added, per(houses["both"][0], n), 0.15*added)
}

// What must evaporate to hold the humidity of measured nights in the same compartments:
// within what plants were found to give at night, from 9 g/(m² h) for roses of 2400 s/m
// to 48 for vegetables of 500 s/m, at three square metres of leaf and 300 Pa
// (resistances of Seginer 1984 and Seginer and others 1990, abstracts), but for one
// night that takes a fifth more. The colder the face inside, the drier the house once it
// condenses there: bare glass dries most.
//
// Not run: houses of which cover and plants are not told, at 98 to 100 % (unheated
// tunnels, Brentarolli and others), 32 to 37 % (pots under lamps, Kurosaki 2021), 59 and 68
// % (Arizona 2013); where it condenses first, cover, end walls, then leaves (Ferreira
// Filho and others 2017, abstract); a curve of condensation whose rates the abstract
// leaves out (Piscia and others 2012).
func TestNightsAsHumidAsMeasured(t *testing.T) {
	houses := compartments(t)
	at := func(inside, outside, humid float64) HouseConditions {
		k := DefaultHouseConditions()
		k.Inside, k.Outside, k.InsideHumidity, k.SkyDrop, k.Wind = inside, outside, humid, 8, 2
		return k
	}
	for _, n := range []struct {
		drawn                  string
		inside, outside, humid float64
	}{
		{"both", 18.4, 3.1, 0.85}, {"both", 18.9, 7.5, 0.87}, {"both", 19.5, 11.4, 0.88},
		{"none", 19.6, 8.6, 0.80}, {"none", 20.0, 12.7, 0.83}, {"none", 20.8, 16.8, 0.86},
		{"both", 22.2, 3.0, 0.84}, // lamps on
	} {
		h := houses[n.drawn][0]
		l, err := h.Loss(at(n.inside, n.outside, n.humid))
		require.NoError(t, err)
		grams := l.Evaporation * 3.6e6 / h.Shape().FloorArea
		t.Logf("%-4s %4.1f inside, %4.1f outside, %.2f: %.0f g/(m² h)", n.drawn, n.inside, n.outside, n.humid, grams)
		require.Greater(t, grams, 9.4)
		require.Less(t, grams, 1.2*48)
	}
	settled := func(h *House, grams float64) float64 {
		b, err := h.SolveVapour(at(19.6, 8.6, 0.8), VapourSources{Released: gramsPerHour(h, grams)})
		require.NoError(t, err)
		return b.Humidity
	}
	for _, grams := range []float64{20, 48} {
		require.Greater(t, settled(houses["both"][0], grams), settled(houses["none"][0], grams)+0.05, "%g g/(m² h)", grams)
	}
}

// Cover over floor: 1.8 to 2.0 for small single spans, 1.2 to 1.5 for large ones of
// many bays (Acta Hort. 107(17), abstract), in houses of our own.
func TestCoverOverFloorAsPrinted(t *testing.T) {
	f := DefaultForm()
	f.Span, f.Length, f.Eave, f.Ridge = 8, 20, 2, 2+4*math.Tan(25*math.Pi/180)
	s, err := NewShape(f)
	require.NoError(t, err)
	require.InDelta(t, 1.90, s.CoverArea/s.FloorArea, 0.005)
	f.Length, f.Bays, f.Eave, f.Ridge = 60, 8, 3, 3+4*math.Tan(25*math.Pi/180)
	s, err = NewShape(f)
	require.NoError(t, err)
	require.Greater(t, s.CoverArea/s.FloorArea, 1.2)
	require.Less(t, s.CoverArea/s.FloorArea, 1.5)
}
