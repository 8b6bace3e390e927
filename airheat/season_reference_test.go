package airheat

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/internal/check"
)

// wavyYear is an invented year of n hours, sums of waves.
func wavyYear(n int, lit bool) (outside, sun, drop, lamps []float64) {
	wave := func(x, period float64) float64 { return math.Sin(2 * math.Pi * x / period) }
	around := func(x, period float64) float64 { return math.Cos(2 * math.Pi * x / period) }
	for i := range n {
		t, d, h := float64(i), float64(i)/24, float64(i%24)
		outside = append(outside, 8-11*around(d-20, 365)+4*wave(t, 137.3)+3*around(h-14.5, 24))
		sun = append(sun, math.Max(0, wave(h-6.2, 24))*(420-300*around(d-9, 365))*(0.6+0.4*wave(t, 97.7)))
		drop = append(drop, 9+6*wave(t, 61.9))
		on := 0.0
		if lit && h >= 5 && h < 9 && (d < 100 || d > 280) {
			on = 3500
		}
		lamps = append(lamps, on)
	}
	return outside, sun, drop, lamps
}

// Every method on three years against numbers worked apart from the library.
func TestSeasonsWorkedApart(t *testing.T) {
	rows := check.Numbers(t, "season.csv")
	require.Len(t, rows, 3)
	for k, r := range rows {
		t.Run(fmt.Sprint(k), func(t *testing.T) {
			outside, sun, drop, lamps := wavyYear(int(r[0]), r[11] == 1)
			s := HeatingSeason{Outside: outside, Sun: sun, Lamps: lamps, SetPoints: SetPoints{Day: r[1], Night: r[2], DayStarts: int(r[3]), DayEnds: int(r[4])},
				Loss: r[5], Aperture: r[6], Gain: r[7], Plants: Plants{Area: r[8], LampRadiant: r[9], Evaporated: r[10]},
				Burner: Burner{Rated: r[12], Efficiency: r[13], Standby: r[14], Ready: r[15], Fuel: LightOil()}, Price: r[16]}
			same := func(want []float64, got SeasonHeat) {
				t.Helper()
				values := []float64{got.Heat, got.Unmet, got.Hours, got.Peak, got.Loss, got.Gains, got.Fuel, got.FuelMass, got.Cost, got.Emission}
				for i, v := range values {
					if i == 3 && want[i] == 0 {
						require.True(t, math.IsNaN(v), got.Method)
						continue
					}
					require.InDelta(t, want[i], v, 1e-9*math.Abs(want[i])+1, "%s, value %d", got.Method, i)
				}
			}
			hourly, err := s.Hourly()
			require.NoError(t, err)
			base, err := s.BaseTemperature()
			require.NoError(t, err)
			require.InDelta(t, r[19], base, 1e-9)
			degree, err := s.DegreeHours(base)
			require.NoError(t, err)
			bins, err := s.Bins(r[18])
			require.NoError(t, err)
			m, err := s.MonthlyMeans()
			require.NoError(t, err)
			month := MonthlyHouse{SetPoint: s.SetPoints.mean(), Aperture: s.Aperture, Plants: s.Plants, Gain: s.Gain, Storage: r[17], Burner: s.Burner, Price: s.Price}
			monthly, _, err := month.Solve(m)
			require.NoError(t, err)
			same(r[20:30], hourly)
			same(r[30:40], bins)
			same(r[40:50], degree)
			same(r[50:60], monthly)

			n := SeasonNodes{House: house(t, envelope.Nodes{AirCapacity: 4.2e5, StructureCapacity: 2.6e6, SoilCapacity: 3.1e7, Cover: 0.6 * s.Loss, Leakage: 95, CoverSky: 0.2 * s.Loss, AirStructure: 780, AirSoil: 520, StructureOutside: 35, SoilDeep: 60}),
				Outside: outside, Sun: sun, SkyDrop: drop, Lamps: lamps, SetPoints: s.SetPoints, VentAt: 24, Deep: 9, Plants: s.Plants, Gain: s.Gain,
				ToAir: 0.3 * s.Aperture, ToPlants: math.Max(s.Plants.Area, 0.5*s.Aperture), ToSoil: 0.2 * s.Aperture, Burner: s.Burner, Price: s.Price}
			c, err := n.Solve()
			require.NoError(t, err)
			same(r[60:70], c.SeasonHeat)
			for i, v := range []float64{c.ToGround, c.Vented, c.Stored, c.Lowest, c.Highest, c.LowestSoil, float64(c.BelowHours), float64(c.FrostHours)} {
				require.InDelta(t, r[70+i], v, 1e-8*math.Abs(r[70+i])+1e-7, "value %d of the nodes", i)
			}
		})
	}
}
