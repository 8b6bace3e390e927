package plan_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
)

// TestDerivedDefaults works the defaults out by hand, for a house of 6.4 by
// 14.8 m unless the plan says otherwise.
func TestDerivedDefaults(t *testing.T) {
	for _, c := range []struct {
		plan, path string
		want       any
	}{
		{`{"site": {"longitude_deg": -100}}`, "site.time_zone_h", -7.0},
		{`{}`, "house.ridge_height_m", 3.09},                                    // 1.3 + 0.28 × 6.4
		{`{"house": {"shape": "round arch"}}`, "house.ridge_height_m", 3.7},     // 1.3 + 0.375 × 6.4
		{`{"house": {"shape": "pointed arch"}}`, "house.ridge_height_m", 3.99},  // 1.3 + 0.42 × 6.4
		{`{"house": {"shape": "lean-to"}}`, "house.ridge_height_m", 3.86},       // 1.3 + 0.4 × 6.4
		{`{"house": {"shape": "uneven gable"}}`, "house.ridge_height_m", 2.9},   // 1.3 + 0.25 × 6.4
		{`{"house": {"span_m": 1}}`, "house.ridge_height_m", 1.6},               // 1.3 + 0.3
		{`{}`, "house.ridge_offset_m", 2.13},                                    // 6.4 / 3
		{`{}`, "house.doors[0].height_m", 2.0},                                  // below 0.9 × 3.09
		{`{"house": {"ridge_height_m": 1.5}}`, "house.doors[0].height_m", 1.35}, // 0.9 × 1.5
		{`{"house": {"annexes": [{"name": "a"}]}}`, "house.annexes[0].width_m", 2.0},
		{`{"house": {"span_m": 3, "annexes": [{"name": "a"}]}}`, "house.annexes[0].width_m", 1.5},
		{`{"house": {"annexes": [{"name": "a"}]}}`, "house.annexes[0].high_m", 2.2},
		{`{"house": {"annexes": [{"name": "a"}]}}`, "house.annexes[0].low_m", 2.09},                        // 0.95 × 2.2
		{`{"house": {"annexes": [{"name": "a", "place": "left side"}]}}`, "house.annexes[0].high_m", 1.29}, // 0.99 × 1.3
		{`{}`, "crop.vapour_kg_h", 1.89},                                                                   // 0.02 × 94.72
		{`{}`, "winter_drying.vapour_kg_h", 7.01},                                                          // 0.074 × 94.72
		{`{}`, "crop.height_m", 1.0},                                                                       // below 0.6 × 3.09
		{`{"house": {"ridge_height_m": 1.5}}`, "crop.height_m", 0.9},
		{`{}`, "heater.power_w", 34100.0},                                                  // 360 × 94.72
		{`{"house": {"bays_count": 2, "gutter_width_m": 0.2}}`, "heater.power_w", 69300.0}, // 360 × 14.8 × 13
		{`{"heater": {"power_w": 20000}}`, "heater.flow_m3_s", 0.44},
		{`{"heater": {"flow_m3_s": 0.9}}`, "heater.ridge_return.mixing_m3_s", 0.36},
		{`{"heater": {"flow_m3_s": 0.9}}`, "heater.mixing_fans.flow_m3_s", 0.9},
		{`{}`, "heat_storage.structure_kj_k", 11400.0}, // 120 × 94.72
		{`{"heat_storage": {"water": [{"volume_m3": 8}]}}`, "heat_storage.water[0].surface_m2", 24.0},
		{`{"soil_store": {}}`, "soil_store.length_m", 14.8},
		{`{"soil_store": {}}`, "soil_store.tubes_count", 14.0},          // 0.9 × 6.4 / 0.4
		{`{"perforated_tube": {}}`, "perforated_tube.rows_count", 33.0}, // 1 + (0.97 × 14.8 - 1.2) / 0.4
		{`{"lights": {}}`, "lights.per_row_count", 8.0},                 // 11.1 / 1.4
		{`{"lights": {}}`, "lights.bed_length_m", 11.1},
		{`{"lights": {}}`, "lights.bed_width_m", 3.52},
		{`{"lights": {}}`, "lights.trays_above_floor_m", 0.773}, // 0.25 × 3.09
		{`{"lights": {}, "house": {"depth_m": 1}}`, "lights.trays_above_floor_m", 0.8},
		{`{"lights": {}}`, "lights.height_above_trays_m", 1.15},
		{`{"lights": {}, "house": {"ridge_height_m": 1.6}}`, "lights.height_above_trays_m", 0.96}, // 0.8 × (1.6 - 0.4)
		{`{"vents": [{"name": "a"}]}`, "vents[0].length_m", 11.8},
		{`{"vents": [{"name": "a", "place": "near end"}]}`, "vents[0].length_m", 5.12},
		{`{"vents": [{"name": "a"}]}`, "vents[0].centre_above_ground_m", 3.09},
		{`{"vents": [{"name": "a", "place": "left side"}]}`, "vents[0].centre_above_ground_m", 1.0}, // 1.3 - 0.25 - 0.05
		{`{"vents": [{"name": "a", "place": "near end"}]}`, "vents[0].centre_above_ground_m", 1.3},
		{`{"house": {"eave_height_m": 0.5}, "vents": [{"name": "a", "place": "left side"}]}`, "vents[0].height_m", 0.4},
		{`{"vent_fans": [{"name": "a", "flow_m3_s": 1}]}`, "vent_fans[0].centre_above_ground_m", 0.65},
	} {
		found := false
		for _, d := range parsed(t, c.plan).Defaults {
			if d.Path == c.path {
				require.InDelta(t, c.want, d.Value, 1e-9, "%s of %s", c.path, c.plan)
				found = true
			}
		}
		require.True(t, found, "%s of %s", c.path, c.plan)
	}
	derived := 0
	for _, k := range plan.Keys() {
		if k.Derived != "" {
			derived++
		}
	}
	require.Equal(t, 31, derived, "a new rule wants a row above")
}

func TestContradictionsBeginAtTheirLimits(t *testing.T) {
	for _, c := range []struct{ right, wrong string }{
		{`{"house": {"eave_height_m": 2, "ridge_height_m": 2.0501}}`, `{"house": {"eave_height_m": 2, "ridge_height_m": 2.0499}}`},
		{`{"house": {"shape": "round arch", "ridge_height_m": 4.5}}`, `{"house": {"shape": "round arch", "ridge_height_m": 4.501}}`},
		{`{"heater": {"power_w": 144000, "flow_m3_s": 1}}`, `{"heater": {"power_w": 144100, "flow_m3_s": 1}}`},
		{`{"site": {"time_zone_h": 4.9}}`, `{"site": {"time_zone_h": 5}}`},
		{`{"site": {"winter_night": {"temperature_c": -1.5}}}`, `{"site": {"winter_night": {"temperature_c": -1.4}}}`},
		{`{"vents": [{"name": "a", "place": "left side", "length_m": 14.8}]}`, `{"vents": [{"name": "a", "place": "left side", "length_m": 14.81}]}`},
		{`{"lights": {"ppf_umol_s": 681}}`, `{"lights": {"ppf_umol_s": 682}}`},
		{`{"perforated_tube": {"rows_count": 40}}`, `{"perforated_tube": {"rows_count": 41}}`},
		{`{"soil_store": {"tubes_count": 33}}`, `{"soil_store": {"tubes_count": 34}}`},
		{`{"house": {"doors": [{"openings_per_d": 720, "open_s": 120}]}}`, `{"house": {"doors": [{"openings_per_d": 721, "open_s": 120}]}}`},
		{`{"house": {"shape": "uneven gable", "ridge_offset_m": 6.27}}`, `{"house": {"shape": "uneven gable", "ridge_offset_m": 6.28}}`},
		{`{"house": {"shape": "uneven gable", "ridge_offset_m": 0.13}}`, `{"house": {"shape": "uneven gable", "ridge_offset_m": 0.12}}`},
	} {
		parsed(t, c.right)
		refused(t, c.wrong)
	}
}
