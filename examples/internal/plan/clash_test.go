package plan_test

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// layers of own covers, for the table below.
const (
	clear = `{"emittance_outward_fraction": 0.3, "emittance_inward_fraction": 0.3, "long_wave_transmittance_fraction": 0.6}`
	shut  = `{"emittance_outward_fraction": 0.6, "emittance_inward_fraction": 0.6, "gap_collapsed_fraction": 0.1}`
)

// clashes are plans that contradict themselves, by what the report says.
var clashes = []struct{ plan, says string }{
	{`{"pads": {}}`, "fans that blow out must draw air through the pads at 0.1 to 3 m/s: give vent_fans or another area, or leave the pads out: pads.area_m2 is 4 m² by default, vent_fans is a list of 0"},
	{`{"pads": {"area_m2": 1}, "vent_fans": [{"name": "a", "flow_m3_s": 4}]}`, "fans that blow out must draw air through the pads"},
	{`{"pads": {}, "vent_fans": [{"name": "a", "flow_m3_s": 4, "blows": "in"}]}`, "fans that blow out must draw air through the pads"},
	{`{"house": {"eave_height_m": 3, "ridge_height_m": 2.9}}`, "the ridge must stand 0.05 m and more above the eave: house.ridge_height_m is 2.9 m, house.eave_height_m is 3 m"},
	{`{"house": {"shape": "round arch", "ridge_height_m": 5}}`, "a round arch rises above its eave by no more than half its span: house.ridge_height_m is 5 m, house.eave_height_m is 1.3 m by default, house.span_m is 6.4 m by default"},
	{`{"house": {"shape": "pointed arch", "ridge_slope_deg": 60}}`, "no circular arcs lead from this eave to this ridge"},
	{`{"house": {"shape": "pointed arch", "ridge_height_m": 8}}`, "no circular arcs lead from this eave to this ridge"},
	{`{"house": {"shape": "uneven gable", "ridge_offset_m": 7}}`, "the ridge must stand within the span, 2 % from its ends and more"},
	{`{"house": {"span_m": 2, "depth_m": 2.5}}`, "a house is dug in no deeper than it is wide"},
	{`{"house": {"length_m": 400, "bays_count": 200}}`, "a house has at most 100000 m² of floor, and this one 512000: house.span_m is 6.4 m by default, house.length_m is 400 m"},
	{`{"house": {"length_m": 400, "span_m": 30, "bays_count": 8, "eave_height_m": 9, "ridge_height_m": 12}}`, "a house holds at most 1000000 m³, floor times height of the ridge above it, and this one 1152000: house.ridge_height_m is 12 m"},
	{`{"house": {"annexes": [{"name": "a", "width_m": 6.4, "high_m": 3}]}}`, "annexes must not cover more than their wall"},
	{`{"house": {"shape": "lean-to", "bays_count": 2}}`, "a lean-to has one bay"},
	{`{"house": {"dwarf_wall": {"height_m": 1.5}}}`, "the dwarf wall must end at the eave or below"},
	{`{"house": {"span_m": 1, "gutter_width_m": 1, "bays_count": 2}, "lights": {"bed_width_m": 4}}`, "the bed must find room in the house: lights.bed_width_m is 4 m, house.span_m is 1 m"},
	{`{"house": {"annexes": [{"name": "a"}, {"name": "a"}]}}`, `house.annexes[1].name is "a", a name that is taken already`},
	{`{"house": {"annexes": [{"name": "none"}]}}`, `house.annexes[0].name is "none", a name that is taken already`},
	{`{"house": {"annexes": [{"name": "a", "width_m": 7}]}}`, "annexes must find room at their wall"},
	{`{"house": {"annexes": [{"name": "a", "place": "left side", "high_m": 2}]}}`, "an annex must not stand above its wall: house.annexes[0].high_m is 2 m"},
	{`{"house": {"annexes": [{"name": "a", "high_m": 2, "low_m": 2.2}]}}`, "an annex's roof falls away from the house"},
	{`{"house": {"annexes": [{"name": "a", "depth_m": 0.5}]}}`, "an annex must not be dug deeper than the house"},
	{`{"house": {"doors": [{"width_m": 7}]}}`, "a door must be narrower than its wall"},
	{`{"house": {"doors": [{"place": "left side", "height_m": 2}]}}`, "a door must end below the top of its wall"},
	{`{"house": {"doors": [{"sill_m": -1}]}}`, "a door's sill lies at the floor or above"},
	{`{"house": {"doors": [{"openings_per_d": 2000, "open_s": 60}]}}`, "a door cannot stand open longer than a day has"},
	{`{"house": {"annexes": [{"name": "a", "place": "far end"}], "doors": [{"lobby": "a"}]}}`, "a door and its lobby must be at the same wall"},
	{`{"site": {"time_zone_h": 9}}`, "standard time lies within 4 hours of the sun's"},
	{`{"site": {"winter_night": {"temperature_c": 3}}}`, "the design night must be colder than the mean of the coldest month: site.winter_night.temperature_c is 3 °C, site.months.temperature_c is -1.5, -0.2, 3.9, 8.6, 13.6, 16.7, 18.5, 18.1, 13.9, 8.9, 3.6, 0.1 °C by default"},
	{`{"site": {"winter_night": {"month": 7, "temperature_c": -22}}}`, "the design night must lie within 40 K of its month's mean: site.winter_night.temperature_c is -22 °C, site.winter_night.month is 7, site.months.temperature_c is -1.5,"},
	{`{"site": {"summer_noon": {"temperature_c": 15}}}`, "the design noon must be warmer than the mean of the warmest month"},
	{`{"site": {"summer_day": {"dew_point_c": 25}}}`, "a dew point lies at the air's temperature or below"},
	{`{"site": {"winter_night": {"temperature_c": -5}}, "set_points": {"winter_night": {"temperature_c": 1}}, "assumptions": {"dry_cover": 0}}`, "assumptions.dry_cover is 0, wanted true or false"},
	{`{"site": {"winter_night": {"temperature_c": 10}, "months": {"temperature_c": [12,12,12,12,12,12,12,12,12,12,12,12]}}, "set_points": {"winter_night": {"temperature_c": 9}}}`, "there is nothing to heat"},
	{`{"site": {"winter_morning": {"temperature_c": 20}}}`, "the winter morning must be colder than the house"},
	{`{"set_points": {"day": {"temperature_c": 24}}}`, "heater and vents would work against each other: by day the heater must stop before the vents open: set_points.day.temperature_c is 24 °C, set_points.day.vent_temperature_c is 22 °C by default"},
	{`{"set_points": {"night": {"temperature_c": 21}}}`, "heater and vents would work against each other: by night"},
	{`{"set_points": {"day_from_h": 19}}`, "the day must begin before it ends"},
	{`{"set_points": {"limits": {"hot_c": 21}}}`, "air counts as too hot only above the temperature at which the vents open"},
	{`{"set_points": {"limits": {"chill_c": 16}}}`, "air that chills the crop must be colder than the house by day"},
	{`{"set_points": {"limits": {"frost_c": 10}, "night": {"temperature_c": 9}}}`, "air that counts as frost must be colder than what is held"},
	{`{"cover": {"own": [{"name": "double film", "layers": [` + clear + `]}]}}`, `cover.own[0].name is "double film", a name that is taken already`},
	{`{"cover": {"own": [{"name": "x", "layers": [{"emittance_outward_fraction": 0.5, "emittance_inward_fraction": 0.3, "long_wave_transmittance_fraction": 0.6}]}]}}`, "emittance and transmittance must not exceed 1 together: cover.own[0].layers[0].emittance_outward_fraction is 0.5 (fraction)"},
	{`{"cover": {"own": [{"name": "x", "layers": [{"emittance_outward_fraction": 0.3, "emittance_inward_fraction": 0.5, "long_wave_transmittance_fraction": 0.6}]}]}}`, "layers[0].emittance_inward_fraction is 0.5"},
	{`{"cover": {"own": [{"name": "x", "layers": [{"emittance_outward_fraction": 0.3, "emittance_inward_fraction": 0.5, "air_leakage_m3_s_m2": 0.01}]}]}}`, "the outermost layer leaks no air of its own"},
	{`{"cover": {"own": [{"name": "x", "layers": [` + shut + `, ` + shut + `, ` + clear + `]}]}}`, "one gap of a cover may have closed in part"},
	{`{"screen": {"name": "own"}}`, "an own screen has its name and its figures: screen.name is \"own\", screen.own is not given"},
	{`{"screen": {"own": ` + clear + `}}`, "an own screen has its name and its figures: screen.name is \"aluminised screen\" by default, screen.own is given"},
	{`{"screen": {"name": "own", "own": {"emittance_outward_fraction": 0.9, "emittance_inward_fraction": 0.3, "long_wave_transmittance_fraction": 0.6}}}`, "screen.own.emittance_outward_fraction is 0.9"},
	{`{"ground": {"soil": "own", "soil_conductivity_w_m_k": 1}}`, "own soil has its two figures"},
	{`{"ground": {"edge_insulation": {"lies": "flat"}}, "house": {"depth_m": 1}}`, "edge insulation is that of a floor at ground level"},
	{`{"crop": {"name": "own"}}`, "an own crop has the light that it wants"},
	{`{"crop": {"least_light_mol_m2_d": 20, "wanted_light_mol_m2_d": 12}}`, "a crop wants at least what it needs"},
	{`{"crop": {"most_light_mol_m2_d": 11, "wanted_light_mol_m2_d": 12}}`, "a crop wants no more than it can use"},
	{`{"crop": {"most_light_mol_m2_d": 11, "least_light_mol_m2_d": 12}}`, "a crop needs no more than it can use"},
	{`{"crop": {"height_m": 4}}`, "the crop must stay below the ridge"},
	{`{"co2": {"level_umol_mol": 350}}`, "carbon dioxide is given to raise it above that outside"},
	{`{"heater": {"power_w": 60000, "flow_m3_s": 0.3}}`, "so little air cannot take up so much heat: it would be warmed by more than 120 K"},
	{`{"heater": {"fuel": {"price_per_kg": 1, "price_per_kwh": 1}}}`, "fuel has one price"},
	{`{"heater": {"fuel": {"price_per_m3": 1}}}`, "a price by volume wants the heating value by volume"},
	{`{"heater": {"fuel": {"price_per_l": 1}}}`, "a price by the litre wants the heating value by the litre"},
	{`{"heater": {"fuel": {"name": "own"}}}`, "own fuel has its heating value by mass"},
	{`{"heater": {"fuel": {"name": "propane", "water_fraction": 0.1}}}`, "only wood and straw have a moisture"},
	{`{"heater": {"fuel": {"heating_value_mj_kg": 15, "water_fraction": 0.1}}}`, "a fuel has its moisture or its heating value"},
	{`{"air_circuit": {"return_c": 50}}`, "air must come back cooler than it left"},
	{`{"water_circuit": {"return_c": 60}}`, "water must come back cooler than it left"},
	{`{"soil_store": {"spacing_m": 0.1, "diameter_m": 0.2}}`, "tubes must lie beside each other"},
	{`{"soil_store": {"tubes_count": 100}}`, "the tubes must find room under the house, in two layers at most"},
	{`{"ducts": [{"name": "fan", "diameter_m": 0.3, "length_m": 1}]}`, `ducts[0].name is "fan", a name that is taken already`},
	{`{"ducts": [{"name": "a", "diameter_m": 0.3, "length_m": 1}, {"name": "b", "diameter_m": 0.3, "length_m": 1}]}`, "one branch starts at the fan; the others start from a branch"},
	{`{"ducts": [{"name": "a", "length_m": 1}]}`, "a duct has a diameter, or a width and a height: ducts[0].diameter_m is not given"},
	{`{"ducts": [{"name": "a", "length_m": 1, "diameter_m": 0.3, "width_m": 0.3}]}`, "a duct has a diameter, or a width and a height"},
	{`{"ducts": [{"name": "a", "length_m": 1, "width_m": 0.3}]}`, "a duct has a diameter, or a width and a height"},
	{`{"perforated_tube": {}, "ducts": [{"name": "a", "length_m": 1, "diameter_m": 0.3, "ends_in": "perforated tube"}, {"name": "b", "from": "a", "length_m": 1, "diameter_m": 0.3}]}`, "a branch that others start from does not end"},
	{`{"ducts": [{"name": "a", "length_m": 1, "diameter_m": 0.3, "ends_in": "perforated tube"}]}`, "the plan has no perforated tube"},
	{`{"ducts": [{"name": "a", "length_m": 1, "diameter_m": 0.3, "ends_in": "soil store"}]}`, "the plan has no soil store"},
	{`{"heater_fan": {}}`, "a fan's table has two points or more, as many flows as pressures"},
	{`{"heater_fan": {"flow_m3_s": [0, 1, 2], "pressure_pa": [300, 200]}}`, "a fan's table has two points or more, as many flows as pressures"},
	{`{"heater_fan": {"flow_m3_s": [0, 2, 1], "pressure_pa": [300, 200, 0]}}`, "heater_fan.flow_m3_s must rise: entry 3 is 1, after 2"},
	{`{"heater_fan": {"known_from": "polynomial"}}`, "the polynomial has its coefficients"},
	{`{"heater_fan": {"known_from": "polynomial", "coefficients_pa": [3], "first_flow_m3_s": 3}}`, "the least flow lies below the greatest"},
	{`{"perforated_tube": {"rows_count": 60}}`, "the tube must find room in the house"},
	{`{"perforated_tube": {"hole_diameter_m": 0.2, "holes_per_row_count": 7}}`, "the holes of a row must find room on the tube"},
	{`{"perforated_tube": {"hole_diameter_m": 0.2, "pitch_m": 0.2, "holes_per_row_count": 1}}`, "rows must lie further apart than a hole is wide"},
	{`{"lights": {"bed_length_m": 20}}`, "the bed must find room in the house: lights.bed_length_m is 20 m, house.length_m is 14.8 m by default"},
	{`{"lights": {"height_above_trays_m": 3}}`, "the lamps would hang above the roof: lights.height_above_trays_m is 3 m"},
	{`{"lights": {"tiers_count": 4, "height_above_trays_m": 0.5}}`, "the lamps would hang above the roof"},
	{`{"lights": {"ppf_umol_s": 900}}`, "a lamp cannot give more photons than all of its power as light would"},
	{`{"lights": {"idle_w": 200}}`, "a driver draws no more idle than at full output"},
	{`{"lights": {"photons_per_lumen_umol_s_lm": 0.015, "spectrum_file": "s.csv"}}`, "photons follow from a spectrum or from photons per lumen, not both"},
	{`{"lights": {"groups": [{"name": "a", "rows": [1]}, {"name": "a", "rows": [2]}]}}`, `lights.groups[1].name is "a", a name that is taken already`},
	{`{"lights": {"groups": [{"name": "a", "rows": [4]}]}}`, "groups are made of rows that there are"},
	{`{"lights": {"groups": [{"name": "a", "rows": [1.5]}]}}`, "groups are made of rows that there are"},
	{`{"lights": {"groups": [{"name": "a", "rows": [1, 2]}, {"name": "b", "rows": [2]}]}}`, "a row stands in one group"},
	{`{"vents": [{"name": "a", "place": "left side", "length_m": 300}]}`, `a vent must be no longer than its wall, roof or ridge: vents[0].length_m is 300 m, vents[0].place is "left side", house.length_m is 14.8 m by default`},
	{`{"vents": [{"name": "a", "place": "left side", "height_m": 1.4}]}`, "a vent must end below the top of its wall"},
	{`{"vents": [{"name": "a", "place": "near end", "centre_above_ground_m": -0.2, "length_m": 1}]}`, "a vent lies above the floor"},
	{`{"vents": [{"name": "a", "place": "left side", "height_m": 0.7}, {"name": "b", "place": "left side", "height_m": 1.1}]}`, "the vents of a wall must find room in it"},
	{`{"house": {"depth_m": 1}, "vents": [{"name": "a", "place": "left side", "centre_above_ground_m": -0.4}]}`, "a vent below the ground outside has a well: vents[0].centre_above_ground_m is -0.4 m, vents[0].well_area_m2 is not given"},
	{`{"vents": [{"name": "a"}, {"name": "a"}]}`, `vents[1].name is "a", a name that is taken already`},
	{`{"vents": [{"name": "a", "kind": "roll-up"}]}`, "a roll-up vent is in a wall or a roof"},
	{`{"vent_control": {"least_fraction": 0.5, "most_fraction": 0.4}}`, "vents are never shut further than their most"},
	{`{"vent_control": {"wind_low_m_s": 20}}`, "vents are lowered before they are nearly shut"},
	{`{"vent_control": {"hand_from_h": 20}}`, "vents are opened before they are shut"},
	{`{"vent_fans": [{"name": "a", "flow_m3_s": 1, "centre_above_ground_m": 5}]}`, "a fan must be below the ridge"},
	{`{"vent_fans": [{"name": "a", "flow_m3_s": 1, "centre_above_ground_m": -1}]}`, "a fan must be above the floor"},
	{`{"vent_fans": [{"name": "a", "flow_m3_s": 1}, {"name": "a", "flow_m3_s": 1}]}`, `vent_fans[1].name is "a", a name that is taken already`},
	{`{"shade": {"transmittance_fraction": 0.8}}`, "a shade must not let through and turn back more than there is"},
}

func TestContradictionsAreNamed(t *testing.T) {
	for _, c := range clashes {
		got := refused(t, c.plan)
		require.Contains(t, got, c.says, c.plan)
		require.NotContains(t, got, "\n", "one fault, one line: %s", c.plan)
	}
}

// TestEveryContradictionIsTried counts the rules in the code against the table
// above.
func TestEveryContradictionIsTried(t *testing.T) {
	rule := regexp.MustCompile(`f\.clash\("([^"]+)"`)
	names, err := filepath.Glob("clash_*.go")
	require.NoError(t, err)
	count := 0
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		text, err := os.ReadFile(name)
		require.NoError(t, err)
		for _, m := range rule.FindAllStringSubmatch(string(text), -1) {
			count++
			tried := false
			for _, c := range clashes {
				tried = tried || strings.HasPrefix(c.says, m[1]) || strings.HasPrefix(m[1], c.says)
			}
			require.True(t, tried || strings.HasPrefix(m[1], "emittance"), "%s: no plan tries %q", name, m[1])
		}
	}
	require.Greater(t, count, 50)
}

// TestAFaultOfAKeyHidesItsContradictions: what cannot be read says nothing
// about other keys.
func TestAFaultOfAKeyHidesItsContradictions(t *testing.T) {
	require.NotContains(t, refused(t, `{"house": {"ridge_height_m": 100, "eave_height_m": 9}}`), "the ridge must stand")
	require.NotContains(t, refused(t, `{"house": {"lenght_m": 400}, "vents": [{"name": "a", "place": "left side", "length_m": 300}]}`), "no longer than its wall")
	require.NotContains(t, refused(t, `{"site": {"months": {"temperature_c": 3}, "winter_night": {"temperature_c": 10}}}`), "coldest month")
}
