package fromplan_test

import (
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/envelope"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/plan"
	"cloche.example/lighting"
)

// demo returns the demo plan with changes.
func demo(t testing.TB, change string) *plan.Plan {
	t.Helper()
	f, err := plan.Demo().Change([]byte(change))
	require.NoError(t, err)
	return &f.Plan
}

// all are the demo plan and those of the folder.
func all(t *testing.T) map[string]*plan.Plan {
	files, err := filepath.Glob("../../plans/*.json")
	require.NoError(t, err)
	require.Len(t, files, 3)
	list := map[string]*plan.Plan{"demo": demo(t, `{}`)}
	for _, name := range files {
		f, err := plan.Open(name, os.Stdin)
		require.NoError(t, err)
		list[filepath.Base(name)] = &f.Plan
	}
	return list
}

// choices of a key.
func choices(t *testing.T, path string) []string {
	for _, k := range plan.Keys() {
		if k.Path == path {
			require.NotEmpty(t, k.Choices, path)
			return k.Choices
		}
	}
	t.Fatal(path)
	return nil
}

func TestEveryNameOfAPlanIsKnown(t *testing.T) {
	p := demo(t, `{}`)
	for _, name := range choices(t, "cover.roof") {
		_, err := fromplan.Cover(p, name)
		require.NoError(t, err, name)
		_, err = fromplan.Light(p, name)
		require.NoError(t, err, name)
	}
	for _, name := range choices(t, "screen.name") {
		if name != "own" {
			_, found := envelope.FindLayer(name)
			require.True(t, found, name)
		}
	}
	for _, name := range choices(t, "ground.soil") {
		if name != "own" {
			p.Ground.Soil = name
			require.NotEqual(t, "own soil", fromplan.Soil(p).Name, name)
			require.Positive(t, fromplan.Soil(p).HeatCapacity, name)
		}
	}
	for _, name := range choices(t, "crop.name") {
		if name != "own" {
			_, found := lighting.FindCropLight(name)
			require.True(t, found, name)
		}
	}
	for _, name := range choices(t, "heater.fuel.name") {
		if name == "own" {
			continue
		}
		p.Heater.Fuel.Name = name
		f, err := fromplan.Fuel(p)
		require.NoError(t, err, name)
		require.Equal(t, name, f.Name)
	}
}

// TestChoicesLeadToDifferentThings finds a choice that a look-up of this package
// does not know: it would come out as the first.
func TestChoicesLeadToDifferentThings(t *testing.T) {
	seen := map[any]string{}
	once := func(kind string, v any, name string) {
		key := [2]any{kind, v}
		require.Empty(t, seen[key], "%s: %s and %s are one", kind, name, seen[key])
		seen[key] = name
	}
	for _, name := range choices(t, "house.shape") {
		p := demo(t, `{}`)
		p.House.Shape = name
		once("section", fromplan.Form(p).Section, name)
	}
	for _, name := range choices(t, "house.annexes[].place") {
		p := demo(t, `{}`)
		p.House.Annexes = []plan.Annex{{Place: name}}
		once("place", fromplan.Form(p).Annexes[0].Place, name)
	}
	for _, name := range choices(t, "ground.edge_insulation.lies") {
		p := demo(t, `{}`)
		p.Ground.EdgeInsulation.Lies = name
		once("edge", fromplan.Ground(p).Edge, name)
	}
	for _, name := range choices(t, "heater.flow_basis") {
		p := demo(t, `{}`)
		p.Heater.FlowBasis = name
		once("basis", fromplan.HeaterFlow(p).Basis, name)
	}
	for _, name := range choices(t, "site.exposure") {
		p := demo(t, `{}`)
		p.Site.Exposure = name
		once("exposure", fromplan.PressureCoefficient(p, "left side"), name)
	}
	for _, name := range choices(t, "crop.stomata") {
		p := demo(t, `{}`)
		p.Crop.Stomata = name
		once("stomata", fromplan.Canopy(p).Stomata, name)
	}
	for _, name := range choices(t, "ducts[].junction") {
		p := demo(t, `{}`)
		p.Ducts[0].Junction = name
		once("junction", fromplan.Branches(p)[0].Junction, name)
	}
}

func TestEveryPlanBecomesAHouse(t *testing.T) {
	for name, p := range all(t) {
		t.Run(name, func(t *testing.T) {
			air, err := fromplan.WinterNight(p)
			require.NoError(t, err)
			h, err := fromplan.House(p, p.SetPoints.WinterNight.Temperature)
			require.NoError(t, err)
			k, _, err := fromplan.Conditions(p, air, float64(p.Site.WinterNight.Month), true)
			require.NoError(t, err)
			r, err := h.Loss(k)
			require.NoError(t, err)
			require.Positive(t, r.Total)
			_, err = fromplan.Glazing(p, h.Shape())
			require.NoError(t, err)
			_, err = fromplan.HeatSource(p)
			require.NoError(t, err)
			o, err := fromplan.Openings(p, 1)
			require.NoError(t, err)
			require.NotEmpty(t, o)
			if p.Lights != nil {
				l, err := fromplan.Lamps(p)
				require.NoError(t, err)
				require.Len(t, l, p.Lights.Rows*p.Lights.PerRow)
			}
			if p.HeaterFan != nil && len(p.Ducts) > 0 {
				b, err := fromplan.Blow(p, p.Heater.Power, p.SetPoints.WinterNight.Temperature)
				require.NoError(t, err)
				require.Positive(t, b.Inlet)
				require.Less(t, b.Rounds, 12)
				require.InDelta(t, b.Pressure, b.Ducts.Pressure, 1e-4*b.Pressure)
				if b.Tube != nil {
					require.InDelta(t, b.TubeFlow.FanTotal, b.Ducts.Pressure-b.Ducts.Branches[len(p.Ducts)-1].Loss+b.TubeFlow.FanTotal, 1)
				}
			}
		})
	}
}

func TestAGivenUIsTheLossOfTheWholeFacet(t *testing.T) {
	p := demo(t, `{"assumptions":{"roof_u_w_m2_k":3,"side_walls_u_w_m2_k":4,"end_walls_u_w_m2_k":5,"cover_area_m2":200,"no_frame":true,"sky_as_cold_as_air":true,"dry_cover":true}}`)
	air, err := fromplan.WinterNight(p)
	require.NoError(t, err)
	h, err := fromplan.House(p, 15)
	require.NoError(t, err)
	k, _, err := fromplan.Conditions(p, air, 1, true)
	require.NoError(t, err)
	r, err := h.Loss(k)
	require.NoError(t, err)
	s, err := fromplan.Shape(demo(t, `{}`))
	require.NoError(t, err)
	want := 0.0
	for _, f := range s.Facets {
		want += f.Area * map[envelope.FacetKind]float64{envelope.Roof: 3, envelope.SideWall: 4, envelope.EndWall: 5}[f.Kind]
	}
	require.InEpsilon(t, want*29*200/s.CoverArea, r.Doors, 1e-9)
	require.InDelta(t, 0, r.Cover, 1e-9)
	require.InDelta(t, 0, r.Frame, 1e-9)
}

func TestDrierThanTheSkyIsKnown(t *testing.T) {
	p := demo(t, `{"site":{"winter_night":{"temperature_c":-48},"months":{"temperature_c":[-19,-12,-4,5,12,17,19,17,11,3,-8,-17]}}}`)
	air, err := fromplan.WinterNight(p)
	require.NoError(t, err)
	k, drier, err := fromplan.Conditions(p, air, 1, false)
	require.NoError(t, err)
	require.True(t, drier)
	require.InDelta(t, -48, k.Outside, 1e-9)
	require.InDelta(t, 0.85, k.OutsideHumidity, 1e-6)
	// Berdahl and Martin at a dew point of -40 °C at midnight, times (1 - e^0.25).
	e := 0.711 + 0.56*-0.4 + 0.73*0.16 + 0.013
	e += 0.00012 * (fromplan.Pressure(p)/100 - 1000)
	require.InDelta(t, 225.15*(1-math.Pow(e, 0.25)), k.SkyDrop, 0.05)
	p = demo(t, `{}`)
	air, err = fromplan.WinterNight(p)
	require.NoError(t, err)
	_, drier, err = fromplan.Conditions(p, air, 1, false)
	require.NoError(t, err)
	require.False(t, drier)
}

func TestOwnCoverHasTheLightOfItsDataSheet(t *testing.T) {
	p := demo(t, `{"cover":{"roof":"sheet","own":[{"name":"sheet","light_fraction":0.7,"layers":[
		{"emittance_outward_fraction":0.9,"emittance_inward_fraction":0.9,"thickness_m":0.001,"conductivity_w_m_k":0.2,"gap_m":0.02},
		{"emittance_outward_fraction":0.9,"emittance_inward_fraction":0.9,"thickness_m":0.002,"conductivity_w_m_k":0.2}]}]}}`)
	l, err := fromplan.Light(p, "sheet")
	require.NoError(t, err)
	require.InDelta(t, 0.7, l.At(0).Transmittance, 1e-9)
	*p.Cover.Own[0].Light = 0.95
	_, err = fromplan.Light(p, "sheet")
	require.ErrorContains(t, err, "light_fraction is 0.95, but reflection alone leaves")
}

// TestClimateFindsTheColdestMonth moves one yearly wave through all months,
// half months among them.
func TestClimateFindsTheColdestMonth(t *testing.T) {
	for want := 0.5; want < 12.5; want += 0.25 {
		p := demo(t, `{}`)
		for i := range p.Site.Months.Temperature {
			p.Site.Months.Temperature[i] = 9 - 10*math.Cos(2*math.Pi*(float64(i+1)-want)/12)
		}
		c := fromplan.Climate(p, 15)
		require.InDelta(t, 9, c.OutsideMean, 1e-9)
		require.InDelta(t, 10, c.OutsideSwing, 1e-9)
		require.InDelta(t, 0, math.Remainder(c.Coldest-want, 12), 1e-9)
		require.True(t, c.Coldest >= 0.5-1e-9 && c.Coldest <= 12.5+1e-9)
	}
}

func TestPricesComeToMoneyForEnergy(t *testing.T) {
	price := func(change string) fromplan.Source {
		s, err := fromplan.HeatSource(demo(t, change))
		require.NoError(t, err)
		return s
	}
	s := price(`{"heater":{"fuel":{"name":"propane","price_per_kg":null,"price_per_l":0.94}}}`)
	require.Equal(t, "L", s.Unit)
	require.InEpsilon(t, 0.94/23.5e6, s.Price, 1e-12)
	s = price(`{"heater":{"fuel":{"name":"natural gas","price_per_kg":null,"price_per_kwh":0.09}}}`)
	require.InEpsilon(t, 0.09/3.6e6, s.Price, 1e-12)
	// Heat of 3 J takes 1 J of electricity by a heat pump, and 3/0.88 J of fuel
	// and what stands by in a burner.
	s = price(`{"heater":{"kind":"heat pump","season_performance_ratio":3}}`)
	require.InEpsilon(t, 1e9/3, s.Energy(1e9, 1e6), 1e-9)
	require.InEpsilon(t, 0.31/3.6e6, s.Price, 1e-12)
	s = price(`{"heater":{"standby_fraction":0}}`)
	require.InEpsilon(t, 1e9/0.88, s.Energy(1e9, 1e6), 1e-9)
}
