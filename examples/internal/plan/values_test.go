package plan_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/internal/domain"
)

// nested makes a plan that has every section and one entry in each list, with
// the value at path.
func nested(path string, v any) map[string]any {
	root := map[string]any{}
	set := func(path string, v any) {
		m := root
		parts := strings.Split(path, ".")
		for i, part := range parts {
			name, list := strings.CutSuffix(part, "[]")
			if i == len(parts)-1 && !list {
				m[name] = v
				return
			}
			if list {
				if m[name] == nil {
					m[name] = []any{map[string]any{}}
				}
				m = m[name].([]any)[0].(map[string]any)
				continue
			}
			if m[name] == nil {
				m[name] = map[string]any{}
			}
			m = m[name].(map[string]any)
		}
	}
	for _, k := range plan.Keys() {
		switch {
		case k.Path == path:
			set(path, v)
		case k.Kind == plan.Optional && strings.HasPrefix(path, k.Path+"."):
			set(k.Path, map[string]any{})
		case k.Kind == plan.List && strings.HasPrefix(path, k.Path+"[]"):
			set(k.Path, []any{map[string]any{}})
		}
	}
	return root
}

// TestEachRangeIsRefusedJustOutside tries every number of the table at its ends
// and one step of a float64 beyond them.
func TestEachRangeIsRefusedJustOutside(t *testing.T) {
	for _, k := range plan.Keys() {
		if k.Kind != plan.Number && k.Kind != plan.Whole && k.Kind != plan.Numbers {
			continue
		}
		place := strings.ReplaceAll(k.Path, "[]", "[0]")
		try := func(v float64) error {
			value := any(v)
			if k.Kind == plan.Numbers {
				place = strings.ReplaceAll(k.Path, "[]", "[0]") + "[0]"
				list := []float64{v}
				for len(list) < k.Least {
					list = append(list, k.Min)
				}
				value = list
			}
			text, err := json.Marshal(nested(k.Path, value))
			require.NoError(t, err)
			_, err = plan.Parse(text)
			return err
		}
		var r *domain.RangeError
		for _, v := range []float64{k.Min, k.Max} {
			if err := try(v); errors.As(err, &r) {
				require.NotEqual(t, place, r.Field, "%v", err)
			}
		}
		for _, v := range []float64{math.Nextafter(k.Min, math.Inf(-1)), math.Nextafter(k.Max, math.Inf(1))} {
			err := try(v)
			require.ErrorAs(t, err, &r, k.Path)
			require.Equal(t, place, r.Field)
			require.Equal(t, k.Unit, r.Unit)
		}
		if k.Kind == plan.Whole {
			require.ErrorContains(t, try(k.Min+0.5), "wanted a whole number")
		}
	}
}

func TestEveryValueOfAWrongKindIsRefused(t *testing.T) {
	for _, k := range plan.Keys() {
		wrong := map[string]any{"null": nil, "number": 1.5, "text": "nonsense", "switch": true, "object": map[string]any{}, "list": []any{}}
		delete(wrong, "null")
		switch k.Kind {
		case plan.Number, plan.Whole:
			delete(wrong, "number")
		case plan.Text:
			delete(wrong, "text")
		case plan.Switch:
			delete(wrong, "switch")
		case plan.Section, plan.Optional:
			delete(wrong, "object")
		case plan.List:
			delete(wrong, "list")
		case plan.Numbers:
			if k.Least == 0 {
				delete(wrong, "list")
			}
		}
		for _, v := range wrong {
			text, err := json.Marshal(nested(k.Path, v))
			require.NoError(t, err)
			require.Contains(t, refused(t, string(text)), strings.ReplaceAll(k.Path, "[]", "[0]")+" is ", "%s = %v", k.Path, v)
		}
	}
}
