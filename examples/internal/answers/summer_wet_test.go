package answers_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
)

// Fog cools the noon and no more than its water allows; in damp air less of it
// evaporates, and the house stays short of fog.
func TestFogAtNoon(t *testing.T) {
	plain := of(t, `{"vents":[{"name":"a","place":"left side"},{"name":"b","place":"ridge"}]}`).Summer
	require.Nil(t, plain.Fog)
	dry := of(t, `{"fog":{"spray_g_m2_h":200,"evaporated_fraction":0.8},"vents":[{"name":"a","place":"left side"},{"name":"b","place":"ridge"}]}`)
	require.Less(t, dry.Summer.Fog.Noon.Rise, plain.Calm.Rise-1)
	require.Less(t, dry.Summer.FogWindy.Noon.Rise, plain.Windy.Rise)
	require.InDelta(t, 0.2*dry.Shape.Floor, dry.Summer.Fog.Water, 1e-9)
	require.InDelta(t, 0.8*dry.Summer.Fog.Water, dry.Summer.Fog.Evaporated, 1e-9)
	damp := of(t, `{"site":{"summer_noon":{"relative_humidity":0.9}},"fog":{"spray_g_m2_h":1000,"evaporated_fraction":1},"vents":[{"name":"a","place":"left side"},{"name":"b","place":"ridge"}]}`).Summer.Fog
	require.Less(t, damp.Evaporated, damp.Water)
	require.LessOrEqual(t, damp.Humidity, 0.98)
	require.Nil(t, of(t, `{"fog":{"above_sun_w_m2":1200},"vents":[{"name":"a","place":"ridge"}]}`).Summer.Fog)
}

// With pads the heat of the sun that does not evaporate water leaves with the
// fans' air and through the cover.
func TestPadsAtNoon(t *testing.T) {
	r := of(t, `{"pads":{"area_m2":3},"vent_fans":[{"name":"fan","flow_m3_s":4}]}`)
	q := r.Summer.Pads
	require.NotNil(t, q)
	require.Less(t, q.Supply, r.Summer.Outside-3)
	load, err := r.House.NoonLoad(r.Sun, r.House.Plan.Site.SummerNoon.Sun)
	require.NoError(t, err)
	// 4 m³/s of outside air at 29 °C and 340 m, 1.11 kg/m³ of dry air, 1030 J/(kg K) behind wet pads.
	carried := 4 * 1.11 * 1030 * (q.Inside - q.Supply)
	require.InEpsilon(t, load.Solar*(1-load.Transpired), carried+load.Loss*(q.Inside-r.Summer.Outside), 0.02)
	_, err = plan.Demo().Change([]byte(`{"pads":{"area_m2":3}}`))
	require.ErrorContains(t, err, "fans that blow out must draw air through the pads at 0.1 to 3 m/s")
}

// The least ventilation carries off what the crop sets free, and brings what its
// leaves take.
func TestLeastVentilation(t *testing.T) {
	r := of(t, `{"crop":{"vapour_kg_h":40}}`)
	f, h := r.Fresh, r.House
	require.True(t, f.OutsideDry)
	require.Greater(t, f.Damp, f.Leakage)
	require.InDelta(t, f.Damp-f.Leakage, f.Vent, 1e-12)
	require.InEpsilon(t, 0.0102*r.Shape.Floor*1.0412*8.33/29, f.Rule, 0.01)
	// 85 % of 420 µmol/mol: the air brings 63 µmol of each mole, 44.01 g each.
	mole := h.Pressure / 8.314462618 / (h.Plan.SetPoints.Day.Temperature + 273.15)
	require.InEpsilon(t, 2e-3/3600*r.Shape.Floor, f.Carbon*mole*63e-6*0.04401, 0.5, "about 2 g/(m² h), as houses in such light take")
	dark := of(t, `{"crop":{"leaf_area_ratio":0}}`).Fresh
	require.Zero(t, dark.Carbon)
}

// A heater that draws from the ridge must give less on the design night and over
// the year, by what the comparison says that it saves.
func TestRidgeReturnInDutyAndYear(t *testing.T) {
	low, high := of(t, `{}`), of(t, `{"heater":{"takes_air_from":"the ridge"}}`)
	require.Zero(t, low.Heater.Ridge)
	require.InDelta(t, low.Heater.Needed, high.Heater.Needed+high.Heater.Ridge, 1e-6)
	require.Positive(t, high.Heater.Ridge)
	require.Greater(t, high.Heater.InletAir, low.Heater.InletAir)
	require.Greater(t, high.Heater.Supply, low.Heater.Supply)
	require.InDelta(t, low.Year.Loss*(1-high.Year.Ridge), high.Year.Loss, 1e-9)
	require.Positive(t, high.Year.Ridge)
	require.Less(t, high.Year.Heat, low.Year.Heat)
}
