package envelope_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
	"cloche.example/internal/check"
)

// Macey's formula against the table of solid floors with four exposed edges,
// IHVE Guide 1977 section A3, as an open handbook of passive solar heating
// prints it, and against one calculation print-out.
func TestMaceyFloor(t *testing.T) {
	infinity := math.Inf(1)
	const why = "the table is older than the formula and rounded to 0.01; the two differ by up to 4 %"
	check.Run(t, []check.Row{
		{Where: "CibseA06.print-out/20x10", In: []float64{10, 20}, Printed: "0.482"},
		{Where: "Ihve77.A3/infx30", In: []float64{30, infinity}, Printed: "0.16", Tol: 0.015, Why: why},
		{Where: "Ihve77.A3/infx15", In: []float64{15, infinity}, Printed: "0.28", Tol: 0.015, Why: why},
		{Where: "Ihve77.A3/infx7.5", In: []float64{7.5, infinity}, Printed: "0.48", Tol: 0.0192, Why: why},
		{Where: "Ihve77.A3/150x60", In: []float64{60, 150}, Printed: "0.11", Tol: 0.015, Why: why},
		{Where: "Ihve77.A3/150x30", In: []float64{30, 150}, Printed: "0.18", Tol: 0.015, Why: why},
		{Where: "Ihve77.A3/60x60", In: []float64{60, 60}, Printed: "0.15", Tol: 0.015, Why: why},
		{Where: "Ihve77.A3/60x30", In: []float64{30, 60}, Printed: "0.21", Tol: 0.015, Why: why},
		{Where: "Ihve77.A3/60x15", In: []float64{15, 60}, Printed: "0.32", Tol: 0.015, Why: why},
		{Where: "Ihve77.A3/30x30", In: []float64{30, 30}, Printed: "0.26", Tol: 0.015, Why: why},
		{Where: "Ihve77.A3/30x15", In: []float64{15, 30}, Printed: "0.36", Tol: 0.015, Why: why},
		{Where: "Ihve77.A3/30x7.5", In: []float64{7.5, 30}, Printed: "0.55", Tol: 0.022, Why: why},
		{Where: "Ihve77.A3/15x15", In: []float64{15, 15}, Printed: "0.45", Tol: 0.018, Why: why},
		{Where: "Ihve77.A3/15x7.5", In: []float64{7.5, 15}, Printed: "0.62", Tol: 0.0248, Why: why},
		{Where: "Ihve77.A3/7.5x7.5", In: []float64{7.5, 7.5}, Printed: "0.76", Tol: 0.0304, Why: why},
		{Where: "Ihve77.A3/3x3", In: []float64{3, 3}, Printed: "1.47", Tol: 0.0588, Why: why},
	}, func(in ...float64) float64 {
		return MaceyFloor(BareFloor{Width: in[0], Length: in[1], Wall: 0.3, Conductivity: 1.4})
	})
}

func TestAndersonFloor(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "Anderson91.fit/0.1", In: []float64{0.1}, Printed: "0.209"},
	}, func(in ...float64) float64 { return AndersonFloor(in[0]) })
	require.InDelta(t, 0.05+1.65-0.6, AndersonFloor(1), 1e-12) // the fit as quoted
	require.InDelta(t, 0.05+0.5*1.65-0.25*0.6, AndersonFloor(0.5), 1e-12)
}

func TestEquivalentThickness(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "IsoGround17.eq3/10cm-insulation", In: []float64{2.0, 0.10 / 0.04}, Printed: "5.0"},
	}, func(in ...float64) float64 { return EquivalentThickness(0, in[0], 0, in[1], 0) })
}

// Table H.1 as open implementations quote it.
func TestPenetrationDepth(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "IsoGround17.TableH1/clay", In: []float64{ClaySoil().Conductivity, ClaySoil().HeatCapacity}, Printed: "2.2"},
		{Where: "IsoGround17.TableH1/sand", In: []float64{SandSoil().Conductivity, SandSoil().HeatCapacity}, Printed: "3.2"},
		{Where: "IsoGround17.TableH1/rock", In: []float64{RockSoil().Conductivity, RockSoil().HeatCapacity}, Printed: "4.2"},
	}, func(in ...float64) float64 { return PenetrationDepth(in[0], in[1]) })
}

// Conductivity and heat capacity of the soils as their sources print them.
func TestSoilTable(t *testing.T) {
	printed := []struct{ conductivity, capacity float64 }{
		{1.5, 3e6}, {2, 2e6}, {3.5, 2e6}, // IsoGround17 Table 7, as open implementations quote it
		{0.864, 1510 * 1260}, {0.264, 1650 * 795}, {0.251, 1250 * 837}, {1.51, 1500 * 2930}, // open slab tests
	}
	require.Len(t, Soils(), len(printed))
	for i, s := range Soils() {
		require.InEpsilon(t, printed[i].conductivity, s.Conductivity, 1e-12, s.Name)
		require.InEpsilon(t, printed[i].capacity, s.HeatCapacity, 1e-12, s.Name)
	}
}

// slab is a floor on clay behind walls of 0.3 m, of perimeter over area ratio
// in 1/m and with the resistance in m² K/W.
func slab(ratio, resistance float64) Ground {
	g := DefaultGround(ClaySoil())
	g.WallThickness, g.FloorResistance = 0.3, resistance
	g.Area, g.Perimeter = 100, 100*ratio
	return g
}

func solved(t *testing.T, g Ground) GroundCoefficients {
	t.Helper()
	r, err := g.Solve()
	require.NoError(t, err)
	return r
}

// Approved Document L1 (2002) Table C1 and CIBSE Guide A, values from memory.
func TestSlabTable(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "CibseA06.slab/R0/0.05 from memory", In: []float64{0.05, 0}, Printed: "0.13"},
		{Where: "CibseA06.slab/R0/0.10 from memory", In: []float64{0.10, 0}, Printed: "0.22"},
		{Where: "CibseA06.slab/R0/0.15 from memory", In: []float64{0.15, 0}, Printed: "0.30"},
		{Where: "CibseA06.slab/R0/0.20 from memory", In: []float64{0.20, 0}, Printed: "0.37"},
		{Where: "CibseA06.slab/R0/0.25 from memory", In: []float64{0.25, 0}, Printed: "0.44"},
		{Where: "CibseA06.slab/R0/0.30 from memory", In: []float64{0.30, 0}, Printed: "0.49"},
		{Where: "CibseA06.slab/R0/0.35 from memory", In: []float64{0.35, 0}, Printed: "0.55"},
		{Where: "CibseA06.slab/R0/0.40 from memory", In: []float64{0.40, 0}, Printed: "0.60"},
		{Where: "CibseA06.slab/R0/0.45 from memory", In: []float64{0.45, 0}, Printed: "0.65"},
		{Where: "CibseA06.slab/R0/0.50 from memory", In: []float64{0.50, 0}, Printed: "0.70"},
		{Where: "CibseA06.slab/R0/0.55 from memory", In: []float64{0.55, 0}, Printed: "0.74"},
		{Where: "CibseA06.slab/R0/0.60 from memory", In: []float64{0.60, 0}, Printed: "0.78"},
		{Where: "CibseA06.slab/R0/0.65 from memory", In: []float64{0.65, 0}, Printed: "0.82"},
		{Where: "CibseA06.slab/R0/0.70 from memory", In: []float64{0.70, 0}, Printed: "0.86"},
		{Where: "CibseA06.slab/R0/0.75 from memory", In: []float64{0.75, 0}, Printed: "0.89"},
		{Where: "CibseA06.slab/R0/0.80 from memory", In: []float64{0.80, 0}, Printed: "0.93"},
		{Where: "CibseA06.slab/R0/0.85 from memory", In: []float64{0.85, 0}, Printed: "0.96"},
		{Where: "CibseA06.slab/R0/0.90 from memory", In: []float64{0.90, 0}, Printed: "0.99"},
		{Where: "CibseA06.slab/R0/0.95 from memory", In: []float64{0.95, 0}, Printed: "1.02"},
		{Where: "CibseA06.slab/R0/1.00 from memory", In: []float64{1.00, 0}, Printed: "1.05"},
		{Where: "CibseA06.slab/R0.5/0.05 from memory", In: []float64{0.05, 0.5}, Printed: "0.11"},
		{Where: "CibseA06.slab/R0.5/0.10 from memory", In: []float64{0.10, 0.5}, Printed: "0.18"},
		{Where: "CibseA06.slab/R0.5/0.15 from memory", In: []float64{0.15, 0.5}, Printed: "0.24"},
		{Where: "CibseA06.slab/R0.5/0.20 from memory", In: []float64{0.20, 0.5}, Printed: "0.29"},
		{Where: "CibseA06.slab/R0.5/0.25 from memory", In: []float64{0.25, 0.5}, Printed: "0.34"},
		{Where: "CibseA06.slab/R0.5/0.30 from memory", In: []float64{0.30, 0.5}, Printed: "0.38"},
		{Where: "CibseA06.slab/R0.5/0.35 from memory", In: []float64{0.35, 0.5}, Printed: "0.41"},
		{Where: "CibseA06.slab/R0.5/0.40 from memory", In: []float64{0.40, 0.5}, Printed: "0.44"},
		{Where: "CibseA06.slab/R0.5/0.45 from memory", In: []float64{0.45, 0.5}, Printed: "0.47"},
		{Where: "CibseA06.slab/R0.5/0.50 from memory", In: []float64{0.50, 0.5}, Printed: "0.50"},
		{Where: "CibseA06.slab/R1.0/0.05 from memory", In: []float64{0.05, 1.0}, Printed: "0.10"},
		{Where: "CibseA06.slab/R1.0/0.10 from memory", In: []float64{0.10, 1.0}, Printed: "0.16"},
		{Where: "CibseA06.slab/R1.0/0.15 from memory", In: []float64{0.15, 1.0}, Printed: "0.21"},
		{Where: "CibseA06.slab/R1.0/0.20 from memory", In: []float64{0.20, 1.0}, Printed: "0.25"},
		{Where: "CibseA06.slab/R1.0/0.25 from memory", In: []float64{0.25, 1.0}, Printed: "0.28"},
		{Where: "CibseA06.slab/R1.0/0.30 from memory", In: []float64{0.30, 1.0}, Printed: "0.31"},
		{Where: "CibseA06.slab/R1.0/0.35 from memory", In: []float64{0.35, 1.0}, Printed: "0.34"},
		{Where: "CibseA06.slab/R1.0/0.40 from memory", In: []float64{0.40, 1.0}, Printed: "0.36"},
		{Where: "CibseA06.slab/R1.0/0.45 from memory", In: []float64{0.45, 1.0}, Printed: "0.38"},
		{Where: "CibseA06.slab/R1.0/0.50 from memory", In: []float64{0.50, 1.0}, Printed: "0.40"},
		{Where: "CibseA06.slab/R2.0/0.10 from memory", In: []float64{0.10, 2.0}, Printed: "0.13"},
		{Where: "CibseA06.slab/R2.0/0.15 from memory", In: []float64{0.15, 2.0}, Printed: "0.17"},
		{Where: "CibseA06.slab/R2.0/0.25 from memory", In: []float64{0.25, 2.0}, Printed: "0.22"},
		{Where: "CibseA06.slab/R2.0/0.35 from memory", In: []float64{0.35, 2.0}, Printed: "0.25"},
	}, func(in ...float64) float64 { return solved(t, slab(in[0], in[1])).UFloor })
}

// CIBSE Guide A (2006) section 3.5, tables of buried walls and basement floors,
// values from memory.
func TestBuriedWallTable(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "CibseA06.wall/R0.2/0.5m from memory", In: []float64{0.5, 0.2}, Printed: "1.55"},
		{Where: "CibseA06.wall/R0.2/1m from memory", In: []float64{1, 0.2}, Printed: "1.16"},
		{Where: "CibseA06.wall/R0.2/1.5m from memory", In: []float64{1.5, 0.2}, Printed: "0.95"},
		{Where: "CibseA06.wall/R0.2/2m from memory", In: []float64{2, 0.2}, Printed: "0.81"},
		{Where: "CibseA06.wall/R0.2/2.5m from memory", In: []float64{2.5, 0.2}, Printed: "0.71"},
		{Where: "CibseA06.wall/R0.5/0.5m from memory", In: []float64{0.5, 0.5}, Printed: "0.98"},
		{Where: "CibseA06.wall/R0.5/2m from memory", In: []float64{2, 0.5}, Printed: "0.58"},
		{Where: "CibseA06.wall/R0.5/2.5m from memory", In: []float64{2.5, 0.5}, Printed: "0.52"},
		{Where: "CibseA06.wall/R1.0/0.5m from memory", In: []float64{0.5, 1.0}, Printed: "0.61"},
		{Where: "CibseA06.wall/R1.0/1m from memory", In: []float64{1, 1.0}, Printed: "0.51"},
		{Where: "CibseA06.wall/R1.0/1.5m from memory", In: []float64{1.5, 1.0}, Printed: "0.45"},
		{Where: "CibseA06.wall/R1.0/2.5m from memory", In: []float64{2.5, 1.0}, Printed: "0.37"},
		{Where: "CibseA06.wall/R2.0/0.5m from memory", In: []float64{0.5, 2.0}, Printed: "0.35"},
		{Where: "CibseA06.wall/R2.0/1m from memory", In: []float64{1, 2.0}, Printed: "0.30"},
		{Where: "CibseA06.wall/R2.0/1.5m from memory", In: []float64{1.5, 2.0}, Printed: "0.28"},
		{Where: "CibseA06.wall/R2.0/2.5m from memory", In: []float64{2.5, 2.0}, Printed: "0.24"},
		{Where: "CibseA06.wall/R2.5/1m from memory", In: []float64{1, 2.5}, Printed: "0.25"},
		{Where: "CibseA06.wall/R2.5/1.5m from memory", In: []float64{1.5, 2.5}, Printed: "0.23"},
		{Where: "CibseA06.wall/R2.5/2m from memory", In: []float64{2, 2.5}, Printed: "0.22"},
	}, func(in ...float64) float64 {
		g := slab(0.5, 0)
		g.Depth, g.WallResistance = in[0], in[1]
		return solved(t, g).UWall
	})
}

func TestBasementFloorTable(t *testing.T) {
	check.Run(t, []check.Row{
		{Where: "CibseA06.floor/0.1/0.5m from memory", In: []float64{0.1, 0.5}, Printed: "0.20"},
		{Where: "CibseA06.floor/0.1/1m from memory", In: []float64{0.1, 1}, Printed: "0.19"},
		{Where: "CibseA06.floor/0.1/1.5m from memory", In: []float64{0.1, 1.5}, Printed: "0.18"},
		{Where: "CibseA06.floor/0.1/2m from memory", In: []float64{0.1, 2}, Printed: "0.17"},
		{Where: "CibseA06.floor/0.1/2.5m from memory", In: []float64{0.1, 2.5}, Printed: "0.16"},
		{Where: "CibseA06.floor/0.2/0.5m from memory", In: []float64{0.2, 0.5}, Printed: "0.34"},
		{Where: "CibseA06.floor/0.2/1m from memory", In: []float64{0.2, 1}, Printed: "0.31"},
		{Where: "CibseA06.floor/0.2/1.5m from memory", In: []float64{0.2, 1.5}, Printed: "0.29"},
		{Where: "CibseA06.floor/0.2/2m from memory", In: []float64{0.2, 2}, Printed: "0.27"},
		{Where: "CibseA06.floor/0.2/2.5m from memory", In: []float64{0.2, 2.5}, Printed: "0.26"},
		{Where: "CibseA06.floor/0.3/0.5m from memory", In: []float64{0.3, 0.5}, Printed: "0.44"},
		{Where: "CibseA06.floor/0.3/1m from memory", In: []float64{0.3, 1}, Printed: "0.41"},
		{Where: "CibseA06.floor/0.3/1.5m from memory", In: []float64{0.3, 1.5}, Printed: "0.38"},
		{Where: "CibseA06.floor/0.3/2m from memory", In: []float64{0.3, 2}, Printed: "0.35"},
		{Where: "CibseA06.floor/0.3/2.5m from memory", In: []float64{0.3, 2.5}, Printed: "0.33"},
		{Where: "CibseA06.floor/0.4/0.5m from memory", In: []float64{0.4, 0.5}, Printed: "0.53"},
		{Where: "CibseA06.floor/0.4/1m from memory", In: []float64{0.4, 1}, Printed: "0.48"},
		{Where: "CibseA06.floor/0.4/1.5m from memory", In: []float64{0.4, 1.5}, Printed: "0.44"},
		{Where: "CibseA06.floor/0.4/2m from memory", In: []float64{0.4, 2}, Printed: "0.41"},
		{Where: "CibseA06.floor/0.4/2.5m from memory", In: []float64{0.4, 2.5}, Printed: "0.38"},
		{Where: "CibseA06.floor/0.5/0.5m from memory", In: []float64{0.5, 0.5}, Printed: "0.61"},
		{Where: "CibseA06.floor/0.5/1m from memory", In: []float64{0.5, 1}, Printed: "0.55"},
		{Where: "CibseA06.floor/0.5/1.5m from memory", In: []float64{0.5, 1.5}, Printed: "0.50"},
		{Where: "CibseA06.floor/0.5/2m from memory", In: []float64{0.5, 2}, Printed: "0.46"},
		{Where: "CibseA06.floor/0.5/2.5m from memory", In: []float64{0.5, 2.5}, Printed: "0.43"},
	}, func(in ...float64) float64 {
		g := slab(in[0], 0)
		g.Depth = in[1]
		return solved(t, g).UFloor
	})
}

// The rule of practice for a floor at grade, 0.8 Btu/(h ft °F) of bare perimeter and 0.4 of
// insulated, from memory, counts the rim alone. Steady soil, clay here, carries more from
// the middle of wider floors: 1.1 to 1.45 times the rule for floors of 5 to 12 m, and 50 mm
// of insulation to 0.6 m down spare two thirds of what the rule lets them.
func TestPerimeterRuleOfPractice(t *testing.T) {
	const bare, insulated = 0.8 * 1.7307, 0.4 * 1.7307 // W/(m K)
	per := func(width float64, edge Edge) float64 {
		g := DefaultGround(ClaySoil())
		g.Area, g.Perimeter = width*2.5*width, 7*width
		g.Edge, g.EdgeWidth, g.EdgeThickness = edge, 0.6, 0.05
		c, err := g.Solve()
		require.NoError(t, err)
		return c.Total / g.Perimeter
	}
	for width, times := range map[float64]float64{5: 1.1, 8: 1.28, 12: 1.43} {
		without := per(width, EdgeBare)
		require.InDelta(t, times, without/bare, 0.02)
		require.InDelta(t, 0.67, (without-per(width, EdgeVertical))/(bare-insulated), 0.03)
	}
}
