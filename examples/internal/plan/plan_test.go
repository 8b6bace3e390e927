package plan_test

import (
	"encoding/json"
	"fmt"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
)

// parsed reads a plan that must be right.
func parsed(t testing.TB, text string) plan.Filled {
	t.Helper()
	f, err := plan.Parse([]byte(text))
	require.NoError(t, err)
	return f
}

// refused reads a plan that must be wrong.
func refused(t testing.TB, text string) string {
	t.Helper()
	_, err := plan.Parse([]byte(text))
	require.Error(t, err, text)
	return err.Error()
}

// files are the plans of the repository.
func files(t testing.TB) []string {
	t.Helper()
	names, err := filepath.Glob("../../plans/*.json")
	require.NoError(t, err)
	require.Len(t, names, 3)
	return append(names, "demo.json")
}

func TestItImportsNoneOfThePackages(t *testing.T) {
	names, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		require.NoError(t, err)
		for _, i := range file.Imports {
			path := strings.Trim(i.Path.Value, `"`)
			if strings.Contains(path, ".") {
				require.Contains(t, []string{"cloche.example/internal/domain", "cloche.example/examples/internal/input"}, path, name)
			}
		}
	}
}

func TestTheEmptyPlanIsAHouse(t *testing.T) {
	f := parsed(t, `{}`)
	require.Equal(t, 6.4, f.House.Span)
	require.Nil(t, f.Lights)
	require.Empty(t, f.Vents)
	require.Len(t, f.House.Doors, 1)
	require.Equal(t, 1.0, f.Site.TimeZone)
	require.InDelta(t, f.House.Length*f.House.Span*360, f.Heater.Power, 100)
}

func TestDefaultsAreListedWithTheirValues(t *testing.T) {
	f := parsed(t, `{"site": {"altitude_m": 100}, "house": {"length_m": 20}, "fog": {}}`)
	listed := map[string]plan.Default{}
	var words []string
	for _, d := range f.Defaults {
		_, twice := listed[d.Path]
		require.False(t, twice, d.Path)
		listed[d.Path] = d
		words = append(words, d.String())
	}
	for _, given := range []string{"site.altitude_m", "house.length_m", "fog"} {
		require.NotContains(t, listed, given)
	}
	require.Contains(t, words, "house.span_m 6.4 m")
	require.Contains(t, words, "site.time_zone_h 1 h")
	require.Contains(t, words, "fog.water_c 15 °C")
	require.Contains(t, words, "lights none")
	require.Contains(t, words, "vents 0")
	require.Contains(t, words, "house.doors[0].height_m 2 m")
	require.Contains(t, words, `cover.roof "double film"`)
	require.Contains(t, words, "emergency_heat none")
	require.Contains(t, words, "heater_fan none")
	require.Contains(t, words, "assumptions.dry_cover false")
	require.Equal(t, 46100.0, listed["heater.power_w"].Value)
	// With the defaults written out, nothing is left to be taken but what the house does not have.
	for _, d := range parsed(t, string(f.Text())).Defaults {
		require.True(t, d.Value == nil, d.String())
	}
}

func TestPrintedPlansReadTheSame(t *testing.T) {
	for _, name := range files(t) {
		f, err := plan.Open(name, nil)
		require.NoError(t, err)
		require.Contains(t, f.Note, "invented")
		again := parsed(t, string(f.Text()))
		require.Empty(t, cmp.Diff(f.Plan, again.Plan), name)
		require.Equal(t, string(f.Text()), string(again.Text()))
		echo, err := json.Marshal(f.Plan)
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(f.Plan, parsed(t, string(echo)).Plan), "the echo in results is a plan, too")
	}
}

// TestThePlansShowEverySection counts what the four plans have together.
func TestThePlansShowEverySection(t *testing.T) {
	has := map[string]bool{}
	shapes := map[string]bool{}
	for _, name := range files(t) {
		f, err := plan.Open(name, nil)
		require.NoError(t, err)
		shapes[f.House.Shape] = true
		missing := map[string]bool{}
		for _, d := range f.Defaults {
			if d.Value == nil || d.Value == 0 {
				missing[d.Path] = true
			}
		}
		for _, k := range plan.Keys() {
			if (k.Kind == plan.Optional || k.Kind == plan.List) && !strings.Contains(k.Path, "[]") && !missing[k.Path] {
				has[k.Path] = true
			}
		}
	}
	for _, k := range plan.Keys() {
		if (k.Kind == plan.Optional || k.Kind == plan.List) && !strings.Contains(k.Path, "[]") {
			require.True(t, has[k.Path] || k.Path == "screen.own" && has["screen"], "no plan has %s", k.Path)
		}
	}
	require.Len(t, shapes, 4)
}

func TestTheDemoPlan(t *testing.T) {
	d := plan.Demo()
	require.Equal(t, "demo house", d.Name)
	require.Equal(t, 13.0, (d.SetPoints.Day.Temperature*(d.SetPoints.DayUntil-d.SetPoints.DayFrom)+d.SetPoints.Night.Temperature*(24-d.SetPoints.DayUntil+d.SetPoints.DayFrom))/24)
	require.InDelta(t, 1.9, d.House.Doors[0].Width*d.House.Doors[0].Height, 1e-12)
	require.Equal(t, 24, d.Lights.Rows*d.Lights.PerRow)
}

func TestFuelHasAPriceAndAHeatingValue(t *testing.T) {
	price := parsed(t, `{}`).Heater.Fuel
	require.Equal(t, 0.08, *price.PricePerKWh)
	require.Nil(t, price.HeatingValuePerL)
	oil := parsed(t, `{"heater": {"fuel": {"name": "light oil", "price_per_l": 1.1}}}`)
	require.Nil(t, oil.Heater.Fuel.PricePerKWh, "one price is enough")
	require.Equal(t, 36.0, *oil.Heater.Fuel.HeatingValuePerL)
	var words []string
	for _, d := range oil.Defaults {
		words = append(words, d.String())
	}
	require.Contains(t, words, "heater.fuel.heating_value_mj_l 36 MJ/L")
	require.NotContains(t, words, "heater.fuel.price_per_kwh none")
	gas := parsed(t, `{"heater": {"fuel": {"name": "natural gas", "price_per_m3": 1, "heating_value_mj_m3": 33}}}`)
	require.Equal(t, 33.0, *gas.Heater.Fuel.HeatingValuePerM3, "what is given counts")
	require.Equal(t, 93.0, *parsed(t, `{"heater": {"fuel": {"name": "propane", "price_per_m3": 1}}}`).Heater.Fuel.HeatingValuePerM3)
	changed, err := oil.Change([]byte(`{"heater": {"fuel": {"price_per_l": null, "price_per_kg": 2}}}`))
	require.NoError(t, err)
	require.Nil(t, changed.Heater.Fuel.HeatingValuePerL, "the default goes with its reason")
}

func TestDefaultsInFewLines(t *testing.T) {
	f := parsed(t, `{"site": {"mains": {"voltage_v": 400}}, "house": {"doors": []}}`)
	lines := f.Taken()
	require.Contains(t, lines, "site.mains: phases_count 1 (count)")
	require.Contains(t, lines, "site.heating_season: wind_m_s 2.2 m/s, cloud_fraction 0.6 (fraction)")
	require.Contains(t, lines, "lights none, vents 0")
	require.Less(t, len(lines), 75)
	require.Equal(t, strings.Count(strings.Join(lines, "\n"), "latitude_deg"), 1)
	for _, line := range parsed(t, string(plan.Demo().Text())).Taken() {
		for _, part := range strings.Split(line, ", ") {
			require.True(t, strings.HasSuffix(part, " none"), "a full plan lacks nothing but sections: %s", part)
		}
	}
}

func TestAllFaultsAreReportedTogether(t *testing.T) {
	got := refused(t, `{
	  "house": {"lenght_m": 30, "span": 8, "shape": "round arc", "ridge_height_m": "3.2", "bays_count": 1.5, "depth_m": 9, "depth_m": 1},
	  "site": {"latitude_deg": 100, "winter_night": {"relative_humidity": 85}, "months": {"temperature_c": [1, 2]}},
	  "vents": [{"length_m": 3}, 7],
	  "cover": {"roof": "glass"},
	  "lights": [],
	  "fog": true,
	  "temperatur_c": 5,
	  "altitude_m": 3
	}`)
	want := []string{
		"house.depth_m stands twice",
		"site.latitude_deg is 100, allowed -80 to 80 degree",
		"site.winter_night.relative_humidity is 85, allowed 0.05 to 1 (fraction)",
		"site.months.temperature_c is a list of 2, wanted a list of 12 numbers, allowed -50 to 45 °C",
		`house.shape is "round arc", wanted one of: "gable", "uneven gable", "round arch", "pointed arch", "lean-to"; perhaps "round arch"`,
		`house.ridge_height_m is "3.2", wanted a number, allowed 0.5 to 20 m`,
		"house.bays_count is 1.5, wanted a whole number, allowed 1 to 200 (count)",
		"house.lenght_m is not a key of a plan (its value is 30); perhaps house.length_m",
		"house.span is not a key of a plan (its value is 8); perhaps house.span_m",
		"lights is a list of 0, wanted an object in braces, {} for all its defaults",
		"vents[0].name is missing: what reports call it",
		"vents[1] is 7, wanted an object in braces",
		"vents[1].name is missing: what reports call it",
		"fog is true, wanted an object in braces, {} for all its defaults",
		"temperatur_c is not a key of a plan (its value is 5)",
		"altitude_m is not a key of a plan (its value is 3); perhaps site.altitude_m",
		`cover.roof is "glass", wanted one of: "single film", "single infrared film", "double film", "double film, infrared inside", "single glass", "double glass", "twin-wall sheet 6 mm", "twin-wall sheet 10 mm", "triple-wall sheet 16 mm"`,
	}
	require.Equal(t, strings.Join(want, "\n"), got)
}

func TestAtMostSoManyFaultsAreListed(t *testing.T) {
	var b strings.Builder
	for i := range 150 {
		fmt.Fprintf(&b, `"wrong%d": 1,`, i)
	}
	lines := strings.Split(refused(t, `{`+b.String()+`"x": 1}`), "\n")
	require.Len(t, lines, plan.MaxFaults+1)
	require.Equal(t, "and 101 faults more", lines[plan.MaxFaults])
}

func TestNullIsLeavingOut(t *testing.T) {
	f := parsed(t, `{"house": {"span_m": null, "doors": null, "dwarf_wall": null}, "lights": null, "vents": null, "site": null}`)
	require.Empty(t, cmp.Diff(parsed(t, `{}`).Plan, f.Plan))
}

func TestOwnCoversAndOtherNamesAreLookedUp(t *testing.T) {
	layer := `{"emittance_outward_fraction": 0.6, "emittance_inward_fraction": 0.6}`
	parsed(t, `{"cover": {"roof": "mine", "own": [{"name": "mine", "layers": [`+layer+`]}]}}`)
	require.Contains(t, refused(t, `{"cover": {"roof": "mime", "own": [{"name": "mine", "layers": [`+layer+`]}]}}`), `perhaps "mine"`)
	require.Contains(t, refused(t, `{"cover": {"own": [{"name": "mine", "layers": []}]}}`), "cover.own[0].layers has 0 entries, allowed 1 to 6")
	require.Contains(t, refused(t, `{"cover": {"own": [{"name": " ", "layers": [`+layer+`]}]}}`), "wanted a text that is not empty")
	require.Contains(t, refused(t, `{"ducts": [{"name": "a", "from": "b", "diameter_m": 1, "length_m": 1}, {"name": "b", "diameter_m": 1, "length_m": 1}]}`),
		`ducts[0].from is "b", wanted one of: "fan"`, "a branch starts from one before it")
	require.Contains(t, refused(t, `{"house": {"doors": [{"lobby": "porch"}]}}`), `house.doors[0].lobby is "porch", wanted one of: "none"`)
}

func TestPlansAreReadAtOnce(t *testing.T) {
	base := plan.Demo()
	before := string(base.Text())
	var all sync.WaitGroup
	for i := range 8 {
		all.Add(1)
		go func() {
			defer all.Done()
			f, err := base.Change(fmt.Appendf(nil, `{"house": {"length_m": %d}}`, 15+i))
			if err != nil || f.House.Length != float64(15+i) {
				t.Error(f.House.Length, err)
			}
		}()
	}
	all.Wait()
	require.Equal(t, before, string(base.Text()))
	require.True(t, reflect.DeepEqual(base.Plan, plan.Demo().Plan))
}
