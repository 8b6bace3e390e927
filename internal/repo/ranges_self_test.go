package repo

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestUnstatedFindsEachDrift reads a small package whose comments partly give
// other ranges than its checks use.
func TestUnstatedFindsEachDrift(t *testing.T) {
	s, err := load("internal/repo/testdata/ranges")
	require.NoError(t, err)
	said := &comments{map[string]string{}, map[string]string{}}
	said.add(s)
	var got []string
	for _, line := range unstated(s, said) {
		line, _, _ = strings.Cut(line, " (")
		got = append(got, line)
	}
	require.ElementsMatch(t, []string{
		"ranges.Box.Drifted: m², 0.1 to 1e6",
		"ranges.Box.Silent: m², 0.1 to 1e6",
		"ranges.Box.NoUnit: m², 0.1 to 1e6",
		"ranges.Box.Shut: m³/s, more than 0, at most 5",
		"ranges.Box.Least: fraction, more than 0, at most 1",
		"ranges.Part.Share: fraction, 0 to 1",
		"ranges.Speed(area): m², 0.1 to 1e6",
	}, got)
	checked := map[string]bool{}
	for _, in := range inputs(s) {
		checked[in.name] = true
	}
	for _, name := range []string{"Box.Stated", "Box.Open", "Box.Heat", "Box.List", "Box.Minus", "Box.Step", "Speed(flow)"} {
		require.True(t, checked["ranges."+name], name)
	}
	require.False(t, checked["ranges.Box.Kind"])
}

func TestStatementsInWords(t *testing.T) {
	inf := math.Inf(1)
	for text, want := range map[string]span{
		"m², 0.1 to 1e6":                            {low: limit{value: 0.1}, high: limit{value: 1e6}},
		"K, −40 to -3.5 at night":                   {low: limit{value: -40}, high: limit{value: -3.5}},
		"more than 0 to 5 m":                        {low: limit{0, true}, high: limit{value: 5}},
		"m, more than 0, at most 5; of the wall":    {low: limit{0, true}, high: limit{value: 5}},
		"at least 1,000":                            {low: limit{value: 1000}, high: limit{value: inf}},
		"fraction, 0 to less than 1 of what enters": {low: limit{value: 0}, high: limit{1, true}},
		"W, more than 0":                            {low: limit{0, true}, high: limit{value: inf}},
		"°C, at most 5.":                            {low: limit{value: -inf}, high: limit{value: 5}},
	} {
		require.True(t, states(text, want), text)
		want.high.value++
		if !math.IsInf(want.high.value, 1) {
			require.False(t, states(text, want), text)
		}
	}
	doc := "Speed at height z, m, 0 to 10, over roughness r, m, 0.1 to 3."
	require.True(t, statesFor(doc, "z", span{high: limit{value: 10}, unit: "m"}))
	require.False(t, statesFor(doc, "r", span{high: limit{value: 10}, unit: "m"}))
}

func TestUnitOfAnArgument(t *testing.T) {
	doc := "Flow, kg/s, through an area a, m², between temperatures t and u, °C, at the density rho."
	args := []string{"a", "t", "u", "rho"}
	require.Equal(t, "m²", argumentUnit(doc, "a", args))
	require.Equal(t, "°C", argumentUnit(doc, "t", args))
	require.Equal(t, "°C", argumentUnit(doc, "u", args))
	require.Equal(t, "", argumentUnit(doc, "rho", args))
}
