package airheat_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/airheat"
	"cloche.example/internal/check"
)

func ready(t *testing.T, name string) airheat.Fuel {
	f, ok := airheat.FindFuel(name)
	require.True(t, ok, name)
	return f
}

func TestFuelsCellByCell(t *testing.T) {
	var table []check.Line
	for _, name := range []string{"light oil", "wood", "wood pellets", "straw", "hard coal"} {
		f := ready(t, name)
		c := f.Composition
		table = append(table, check.Line{Name: f.Name, Cells: []float64{
			c.Carbon, c.Hydrogen, c.Oxygen, c.Nitrogen, c.Sulphur, c.Water, c.Ash, f.Lower, f.Emission}})
	}
	check.Table(t, "fuels.csv", table)
}

func TestGasesCellByCell(t *testing.T) {
	var table []check.Line
	for _, g := range []struct {
		name     string
		shares   airheat.GasShares
		emission float64
	}{
		{"methane", airheat.GasShares{Methane: 1}, ready(t, "natural gas").Emission},
		{"ethane", airheat.GasShares{Ethane: 1}, math.NaN()},
		{"propane", airheat.GasShares{Propane: 1}, ready(t, "propane").Emission},
		{"butane", airheat.GasShares{Butane: 1}, math.NaN()},
		{"hydrogen", airheat.GasShares{Hydrogen: 1}, math.NaN()},
		{"carbon monoxide", airheat.GasShares{CarbonMonoxide: 1}, math.NaN()},
	} {
		f, err := airheat.NewGasFuel(g.name, g.shares)
		require.NoError(t, err)
		table = append(table, check.Line{Name: g.name, Cells: []float64{f.Higher * f.MolarMass / 1000, g.emission}})
	}
	check.Table(t, "gases.csv", table)
}
