package plan_test

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
)

// sound demands that every number of a filled plan is finite, and that the plan
// reads the same again.
func sound(t *testing.T, f plan.Filled) {
	t.Helper()
	var walk func(v reflect.Value, path string)
	walk = func(v reflect.Value, path string) {
		switch v.Kind() {
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i), path+"."+v.Type().Field(i).Name)
			}
		case reflect.Pointer:
			if !v.IsNil() {
				walk(v.Elem(), path)
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i), path)
			}
		case reflect.Float64:
			require.False(t, math.IsNaN(v.Float()) || math.IsInf(v.Float(), 0), path)
		}
	}
	walk(reflect.ValueOf(f.Plan), "")
	again, err := plan.Parse(f.Text())
	require.NoError(t, err)
	require.True(t, reflect.DeepEqual(f.Plan, again.Plan), cmp.Diff(f.Plan, again.Plan))
}

// TestShortPlansSuffice gives the size of a house alone, with sections that
// have all their defaults: no default contradicts what was given.
func TestShortPlansSuffice(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	shapes := []string{"gable", "uneven gable", "round arch", "pointed arch", "lean-to"}
	places := []string{"left side", "right side", "near end", "far end", "ridge", "left roof", "right roof"}
	sections := []string{"lights", "co2", "emergency_heat", "soil_store", "perforated_tube", "shade", "fog", "pads", "screen"}
	for i := range 1000 {
		house := map[string]any{"shape": shapes[i%5], "span_m": 1 + 30*r.Float64(), "length_m": 1 + 150*r.Float64(), "eave_height_m": 0.4 + 5*r.Float64()}
		if r.IntN(2) == 0 {
			house["depth_m"] = r.Float64()
		}
		if r.IntN(3) == 0 && house["shape"] != "lean-to" {
			house["bays_count"] = 1 + r.IntN(4)
		}
		if r.IntN(3) == 0 {
			house["annexes"] = []any{map[string]any{"name": "lobby", "place": places[r.IntN(4)]}}
		}
		p := map[string]any{"house": house}
		for _, s := range sections {
			if r.IntN(3) == 0 {
				p[s] = map[string]any{}
			}
		}
		if r.IntN(2) == 0 {
			p["vents"] = []any{map[string]any{"name": "a", "place": places[r.IntN(len(places))]}, map[string]any{"name": "b"}}
		}
		if p["pads"] != nil || r.IntN(2) == 0 {
			p["vent_fans"] = []any{map[string]any{"name": "a", "flow_m3_s": 1}}
		}
		text, err := json.Marshal(p)
		require.NoError(t, err)
		f, err := plan.Parse(text)
		require.NoError(t, err, string(text))
		if i%10 == 0 {
			sound(t, f)
		}
	}
}

// TestRandomPlans gives any keys, right and wrong: an error that names keys, or
// a plan that is sound.
func TestRandomPlans(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	keys := plan.Keys()
	read, refused := 0, 0
	for range 1500 {
		p := map[string]any{}
		for range 1 + r.IntN(6) {
			k := keys[r.IntN(len(keys))]
			put(p, k.Path, random(r, k))
		}
		text, err := json.Marshal(p)
		require.NoError(t, err)
		f, err := plan.Parse(text)
		if err != nil {
			refused++
			require.NotEmpty(t, err.Error())
			continue
		}
		read++
		sound(t, f)
	}
	require.Greater(t, read, 100)
	require.Greater(t, refused, 100)
}

// put sets a value, making sections and first entries of lists on the way.
func put(m map[string]any, path string, v any) {
	name, rest, deeper := strings.Cut(path, ".")
	name, list := strings.CutSuffix(name, "[]")
	if !deeper {
		m[name] = v
		return
	}
	below, ok := m[name].(map[string]any)
	if items, is := m[name].([]any); is && len(items) > 0 {
		below, ok = items[0].(map[string]any)
	}
	if !ok {
		below = map[string]any{"name": "a", "layers": []any{map[string]any{"emittance_outward_fraction": 0.5, "emittance_inward_fraction": 0.5}},
			"rows": []any{1}, "flow_m3_s": 1, "length_m": 1, "volume_m3": 1}
		if !list {
			below = map[string]any{}
		}
	}
	put(below, rest, v)
	if m[name] = any(below); list {
		m[name] = []any{below}
	}
}

// random is a value for a key, in range more often than not.
func random(r *rand.Rand, k plan.Key) any {
	if r.IntN(12) == 0 {
		return []any{nil, -1.5, "nonsense", true, []any{}, map[string]any{}, 1e308}[r.IntN(7)]
	}
	within := func() float64 { return k.Min + (k.Max-k.Min)*math.Pow(r.Float64(), 3) }
	switch k.Kind {
	case plan.Number:
		return within()
	case plan.Whole:
		return math.Floor(within())
	case plan.Text:
		return fmt.Sprint("text ", r.IntN(9))
	case plan.Choice, plan.Name:
		return k.Choices[r.IntN(len(k.Choices))]
	case plan.Switch:
		return r.IntN(2) == 0
	case plan.Numbers:
		list := make([]float64, max(k.Least, r.IntN(4)))
		for i := range list {
			list[i] = within()
		}
		return list
	case plan.List:
		return []any{}
	}
	return map[string]any{}
}
