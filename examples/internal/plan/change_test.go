package plan_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
)

func changed(t *testing.T, base plan.Filled, change string) plan.Filled {
	t.Helper()
	f, err := base.Change([]byte(change))
	require.NoError(t, err)
	return f
}

func TestAChangeHoldsOnlyWhatDiffers(t *testing.T) {
	demo := plan.Demo()
	require.Empty(t, cmp.Diff(demo.Plan, changed(t, demo, `{}`).Plan))
	want := demo.Plan
	want.House.Length = 20
	require.Empty(t, cmp.Diff(want, changed(t, demo, `{"house": {"length_m": 20}}`).Plan))
	require.Empty(t, changed(t, demo, `{"vents": []}`).Vents, "a list takes the place of the list")
	require.Len(t, changed(t, demo, `{"vents": [{"name": "one"}]}`).Vents, 1)
	require.Nil(t, changed(t, demo, `{"lights": null}`).Lights, "null takes a section away")
	require.Len(t, changed(t, demo, `{"vents": null}`).Vents, 0)
	require.Equal(t, 0.0, changed(t, demo, `{"house": {"depth_m": null}}`).House.Depth, "null brings the default back")
	require.NotNil(t, changed(t, demo, `{"screen": {}}`).Screen)
	require.Equal(t, 4, changed(t, demo, `{"lights": {"rows_count": 4}}`).Lights.Rows)
	require.Equal(t, 8, changed(t, demo, `{"lights": {"rows_count": 4}}`).Lights.PerRow, "other keys of the section stay")
}

func TestDerivedDefaultsFollowAChange(t *testing.T) {
	short, err := plan.Parse([]byte(`{"house": {"length_m": 10}}`))
	require.NoError(t, err)
	long := changed(t, short, `{"house": {"length_m": 20}}`)
	require.InDelta(t, 2*short.Heater.Power, long.Heater.Power, 200)
	require.InDelta(t, 2*short.Crop.Vapour, long.Crop.Vapour, 0.1)
}

func TestAChangeIsCheckedAsAPlanIs(t *testing.T) {
	for change, want := range map[string]string{
		`{"house": {"span_m": 100}}`:                       "house.span_m is 100, allowed 1 to 60 m",
		`{"house": {"span_m": 3}}`:                         "the bed must find room in the house: lights.bed_width_m is 3.6 m, house.span_m is 3 m",
		`{"hose": {"span_m": 3}}`:                          "hose is not a key of a plan (its value is an object in braces); perhaps house",
		`{"house": {"depth_m": 0.3, "depth_m": 0.4}}`:      "house.depth_m stands twice",
		`{"house": 3}`:                                     "house is 3, wanted an object in braces",
		`{"lights": {"height_above_trays_m": 3.1}}`:        "the lamps would hang above the roof",
		`{"site": {"winter_night": {"temperature_c": 5}}}`: "the design night must be colder than the mean of the coldest month",
	} {
		_, err := plan.Demo().Change([]byte(change))
		require.ErrorContains(t, err, want, change)
	}
}

func TestChangesFollowEachOther(t *testing.T) {
	f := changed(t, changed(t, plan.Demo(), `{"house": {"length_m": 20}}`), `{"house": {"depth_m": 0.2}}`)
	require.Equal(t, 20.0, f.House.Length)
	require.Equal(t, 0.2, f.House.Depth)
}

func TestFiguresOfFlags(t *testing.T) {
	f, err := plan.Demo().With(plan.Figure{Path: "house.length_m", Value: 5.0}, plan.Figure{Path: "lights", Value: nil}, plan.Figure{Path: "vents", Value: nil},
		plan.Figure{Path: "perforated_tube.rows_count", Value: 3}, plan.Figure{Path: "cover.roof", Value: "single glass"}, plan.Figure{Path: "heater_fan.motor_in_air", Value: false},
		plan.Figure{Path: "heater_fan.pressure_pa", Value: []float64{320, 300, 290, 250, 150, 0}})
	require.NoError(t, err, "checked together: the bed goes with the short house")
	require.Equal(t, 5.0, f.House.Length)
	require.Equal(t, 3, f.PerforatedTube.Rows)
	require.Equal(t, "single glass", f.Cover.Roof)
	require.False(t, f.HeaterFan.MotorInAir)
	require.Equal(t, 320.0, f.HeaterFan.Pressure[0])
	require.Nil(t, f.Lights)
	for path, v := range map[string]any{"house.length_m": 5000.0, "house.shape": 3, "house.lenght_m": 3.0, "name": "\x1b[2J", "house.span_m": struct{}{}, "site.altitude_m": math.NaN(), "site": "here"} {
		_, err := plan.Demo().With(plan.Figure{Path: path, Value: v})
		require.ErrorContains(t, err, path)
	}
}
