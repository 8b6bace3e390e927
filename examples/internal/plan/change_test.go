package plan_test

import (
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

func TestReckonedDefaultsFollowAChange(t *testing.T) {
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
