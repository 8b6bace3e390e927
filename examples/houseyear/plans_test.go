package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
)

// Every plan of the examples has its hours, which close, in the cold and in the
// heat.
func TestAllPlans(t *testing.T) {
	names, err := filepath.Glob("../plans/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, names)
	for _, name := range names {
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		p, err := plan.Parse(text)
		require.NoError(t, err, name)
		for _, from := range []string{"02-04", "07-08"} {
			a := solved(t, p, part(t, from, 2))
			c := a.Account.Closure
			for _, v := range []float64{c.HourHeat, c.HourWater, c.Heat, c.Water} {
				require.Less(t, v, asked, name)
			}
			require.Zero(t, a.Account.Whole.Failed, name)
		}
	}
}

// What a plan may have besides: screen, shade, fog, several bays, vents by hand,
// no crop, no heat for it, no ground, a sky as warm as the air.
func TestPartsOfPlans(t *testing.T) {
	for _, change := range []string{
		`{"screen": {"drawn": "always"}, "shade": {}, "fog": {}}`,
		`{"screen": {"drawn": "in the cold"}, "shade": {"place": "inside screen"}}`,
		`{"house": {"bays_count": 2, "depth_m": 0}, "vents": [], "heater": {"kind": "heat pump"}}`,
		`{"vent_control": {"by": "hand"}, "crop": {"leaf_area_ratio": 0}, "lights": null}`,
		`{"assumptions": {"sky_as_cold_as_air": true, "no_ground_loss": true, "dry_cover": true}, "heater": {"power_w": 100}}`,
	} {
		for _, from := range []string{"02-04", "07-08"} {
			a := solved(t, changed(t, change), part(t, from, 1))
			c := a.Account.Closure
			for _, v := range []float64{c.HourHeat, c.HourWater, c.Heat, c.Water} {
				require.Less(t, v, asked, change)
			}
			if w := a.Account.Whole; w.VentHours > 0 || from < "07" {
				require.Zero(t, w.Failed, change)
			} else {
				require.Positive(t, w.Failed, "shut in July it passes 80 °C")
				require.Equal(t, "fails", a.Decisions[1].Verdict)
				require.Contains(t, a.Decisions[1].Answer, "without a state")
			}
			_, err := a.document()
			require.NoError(t, err)
		}
	}
}
