package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/golden"
)

// Vents that the plan moves apart are opened apart: the first wide before the others
// move, all of them with as much area in all.
func TestVentsMoveInTheirOrder(t *testing.T) {
	high := map[string]float64{}
	for _, first := range []string{"ridge", "side", "together"} {
		d := decoded(t, golden.Print(t, with(`{"vent_control": {"first": "`+first+`"}, "vents": [
			{"name": "ridge", "place": "ridge", "length_m": 8, "height_m": 0.5}, {"name": "side", "place": "left side", "length_m": 10, "height_m": 0.8}]}`), "-plan", "-", "-json"))
		apart := 0
		for _, s := range d.Ways[automatic].Steps {
			require.InDelta(t, s.Opening*(4+8), s.High*4+s.Low*8, 1e-9)
			switch first {
			case "ridge":
				require.True(t, s.Low == 0 || s.High > 1-1e-12)
			case "side":
				require.True(t, s.High == 0 || s.Low > 1-1e-12)
			default:
				require.InDelta(t, s.High, s.Low, 1e-12)
			}
			if s.High != s.Low {
				apart++
			}
		}
		require.Equal(t, first != "together", apart > 2)
		high[first] = d.Ways[wideOpen].High
	}
	// Wide open they are the same vents.
	require.InDelta(t, high["ridge"], high["side"], 1e-9)
	require.InDelta(t, high["ridge"], high["together"], 1e-9)
}

// Pads are wet while the fans run: cooler than fans alone, and they take water.
func TestPadsAreWet(t *testing.T) {
	fans := `{"vents": [{"name": "side", "place": "left side", "length_m": 6}], "vent_fans": [{"name": "fan", "flow_m3_s": 5}]`
	dry := decoded(t, golden.Print(t, with(fans+`}`), "-plan", "-", "-json"))
	wet := decoded(t, golden.Print(t, with(fans+`, "pads": {}}`), "-plan", "-", "-json"))
	require.Less(t, wet.Ways[wideOpen].High, dry.Ways[wideOpen].High-1)
	require.Zero(t, dry.Ways[wideOpen].Water)
	require.Greater(t, wet.Ways[wideOpen].Water, 20.0)
}

func TestInTurn(t *testing.T) {
	p := demoPlan(t, `{"vent_control": {"first": "side"}, "vents": [{"name": "r", "place": "left roof", "length_m": 4, "height_m": 0.5}, {"name": "e", "place": "far end", "length_m": 2, "height_m": 0.5}]}`)
	for _, c := range [][3]float64{{0, 0, 0}, {0.1, 0, 0.3}, {1.0 / 3, 0, 1}, {0.5, 0.25, 1}, {1, 1, 1}} {
		high, low := fromplan.InTurn(p, c[0])
		require.InDelta(t, c[1], high, 1e-12)
		require.InDelta(t, c[2], low, 1e-12)
	}
}
