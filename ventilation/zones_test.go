package ventilation_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/ventilation"
)

func zones(t testing.TB, count int, links ...ventilation.Link) *ventilation.Zones {
	t.Helper()
	z, err := ventilation.NewZones(count, links)
	require.NoError(t, err)
	return z
}

func TestOneZoneIsANetwork(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 2))
	for range 40 {
		o := twelve()[:2+rnd.IntN(10)]
		for i := range o {
			if rnd.IntN(2) == 0 {
				o[i].Vertical = 0.8
			}
		}
		leak := ventilation.Leak{Height: 1, Flow: 0.02, Exponent: 0.65, PressureCoefficient: -0.2}
		fan := ventilation.FixedFan{Height: 2, Flow: -0.4, Slope: 0.005}
		n, err := ventilation.NewNetwork(o, []ventilation.Leak{leak}, []ventilation.FixedFan{fan})
		require.NoError(t, err)
		links := []ventilation.Link{}
		for i := range o {
			links = append(links, ventilation.Link{A: ventilation.OutsideZone, B: 0, Element: o[i]})
		}
		links = append(links, ventilation.Link{A: ventilation.OutsideZone, B: 0, Element: leak}, ventilation.Link{A: ventilation.OutsideZone, B: 0, Element: fan})
		c := dry(t, -5+50*rnd.Float64(), 20, 4*rnd.Float64())
		want := solveNet(t, n, c)
		got, err := zones(t, 1, links...).Solve(ventilation.ZoneConditions{ZoneDensities: []float64{c.InsideDensity}, OutsideDensity: c.OutsideDensity, Wind: c.Wind})
		require.NoError(t, err)
		require.InDelta(t, want.Pressure, got.Pressure[0], 1e-10)
		for i := range got.Links {
			require.InDelta(t, want.Paths[i].Net(), got.Links[i].Net(), 1e-8)
		}
	}
}

// Rooms one after the other under 100 Pa of wind pressure: orifices in series.
func TestZonesInSeries(t *testing.T) {
	const rho = 1.2
	u := math.Sqrt(2 * 100 / rho)
	o := point(0, 1e-4, 0)
	face := point(0, 1e-4, 1)
	z := zones(t, 2,
		ventilation.Link{A: ventilation.OutsideZone, B: 0, Element: face},
		ventilation.Link{A: 0, B: 1, Element: o},
		ventilation.Link{A: 1, B: ventilation.OutsideZone, Element: o})
	b, err := z.Solve(ventilation.ZoneConditions{ZoneDensities: []float64{rho, rho}, OutsideDensity: rho, Wind: u})
	require.NoError(t, err)
	want := ventilation.OrificeFlow(0.6, ventilation.SeriesArea(1e-4, 1e-4, 1e-4), rho, 100)
	for i := range b.Links {
		require.InEpsilon(t, want, b.Links[i].In, 1e-9)
	}
	require.InDelta(t, 200.0/3, b.Pressure[0], 1e-7)
	require.InDelta(t, 100.0/3, b.Pressure[1], 1e-7)
}

func TestLobbyPlantRoomAndHouseBalance(t *testing.T) {
	rnd := rand.New(rand.NewPCG(9, 2))
	door := ventilation.Opening{Height: 1, Vertical: 2, Area: 1.8, Discharge: 0.6}
	for range 60 {
		outer := door
		outer.PressureCoefficient = rnd.Float64() - 0.5
		z := zones(t, 3,
			ventilation.Link{A: ventilation.OutsideZone, B: 0, Element: outer},
			ventilation.Link{A: 0, B: 2, Element: door},
			ventilation.Link{A: 1, B: 2, Element: ventilation.Leak{Height: 1.5, Flow: 0.01, Exponent: 0.6}},
			ventilation.Link{A: ventilation.OutsideZone, B: 1, Element: point(0.3, 0.05, 0.2)},
			ventilation.Link{A: 1, B: 2, Element: ventilation.FixedFan{Height: 2, Flow: 0.3, Slope: 0.002}},
			ventilation.Link{A: 2, B: ventilation.OutsideZone, Element: point(3, 0.1+rnd.Float64(), -0.5)})
		c := ventilation.ZoneConditions{ZoneDensities: []float64{1.15 + 0.2*rnd.Float64(), 1.2, 1.1 + 0.2*rnd.Float64()}, OutsideDensity: 1.1 + 0.3*rnd.Float64(), Wind: 5 * rnd.Float64()}
		b, err := z.Solve(c)
		require.NoError(t, err)
		for _, r := range b.Residual {
			require.InDelta(t, 0, r, 1e-10)
		}
	}
}

func TestZoneFaultsComeTogether(t *testing.T) {
	_, err := ventilation.NewZones(2, []ventilation.Link{
		{A: 5, B: 0, Element: point(0, -1, 0)}, {A: 1, B: 1, Element: point(0, 1, 0)}, {A: 0, B: 1}})
	for _, field := range []string{"links[0].A", "links[0].Area", "links[1]: A and B", "links[2]: no element"} {
		require.ErrorContains(t, err, field)
	}
	_, err = ventilation.NewZones(2, []ventilation.Link{
		{A: ventilation.OutsideZone, B: 0, Element: point(0, 1, 0)},
		{A: 0, B: 1, Element: ventilation.FixedFan{Flow: 1}}})
	require.ErrorIs(t, err, ventilation.ErrNoSolution)
	require.ErrorContains(t, err, "zone 1")
	_, err = ventilation.NewZones(0, nil)
	require.ErrorIs(t, err, ventilation.ErrRange)
	_, err = zones(t, 1, ventilation.Link{A: ventilation.OutsideZone, B: 0, Element: point(0, 1, 0)}).Solve(ventilation.ZoneConditions{Wind: -1})
	for _, field := range []string{"OutsideDensity", "Wind", "number of ZoneDensities"} {
		require.ErrorContains(t, err, field)
	}
}

// Chains of up to six zones with gaps and gates of 1e-5 to 100 m², screens,
// leaks and fans, storm or calm, equal densities among them: all are solved.
func TestZonesAlwaysBalance(t *testing.T) {
	rnd := rand.New(rand.NewPCG(11, 7))
	open := 0.0 // m²: a drive of rounding, 1e-16 Pa, passes 1e-8 of the flow at 1 Pa
	element := func(cp float64) ventilation.Element {
		a, z := math.Pow(10, -5+7*rnd.Float64()), -2+8*rnd.Float64()
		open += a
		switch rnd.IntN(4) {
		case 0:
			return ventilation.Opening{Height: z, Vertical: 0.1 + 2*rnd.Float64(), Area: a, Discharge: 0.6, PressureCoefficient: cp}
		case 1:
			return ventilation.Leak{Height: z, Flow: a / 100, Exponent: 0.5 + 0.5*rnd.Float64(), PressureCoefficient: cp}
		case 2:
			return ventilation.Opening{Height: z, Area: a, Discharge: 0.6, Viscous: 10 * rnd.Float64(), PressureCoefficient: cp}
		}
		return ventilation.Opening{Height: z, Area: a, Discharge: 0.6, PressureCoefficient: cp}
	}
	for k := range 400 {
		n := 1 + rnd.IntN(6)
		var links []ventilation.Link
		open = 0
		for i := range n {
			links = append(links, ventilation.Link{A: ventilation.OutsideZone, B: i, Element: element(4*rnd.Float64() - 2)})
			if i > 0 {
				links = append(links, ventilation.Link{A: i - 1, B: i, Element: element(0)})
			}
			if rnd.IntN(3) == 0 {
				links = append(links, ventilation.Link{A: ventilation.OutsideZone, B: i, Element: ventilation.FixedFan{Height: 1, Flow: 2*rnd.Float64() - 1, Slope: 0.01 * float64(rnd.IntN(2))}})
			}
		}
		c := ventilation.ZoneConditions{OutsideDensity: 1 + 0.4*rnd.Float64(), Wind: 40 * rnd.Float64() * float64(rnd.IntN(2))}
		for range n {
			c.ZoneDensities = append(c.ZoneDensities, 1+0.4*rnd.Float64())
			if k%5 == 0 {
				c.ZoneDensities[len(c.ZoneDensities)-1] = c.OutsideDensity
			}
		}
		b, err := zones(t, n, links...).Solve(c)
		require.NoError(t, err, k)
		size := 10 * open
		for _, l := range b.Links {
			size += l.In + l.Out
		}
		for _, r := range b.Residual {
			require.InDelta(t, 0, r, 1e-8*size, k)
		}
		require.Less(t, b.Steps, 200)
	}
}
