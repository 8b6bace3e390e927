// Package schema holds the JSON of the example programs to a schema made from
// their types: for tests.
package schema

import (
	"encoding/json"
	"os"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

// Of makes the JSON schema of a type from the keys of its fields.
func Of(t reflect.Type) map[string]any {
	switch t.Kind() {
	case reflect.Pointer:
		return map[string]any{"anyOf": []any{map[string]any{"type": "null"}, Of(t.Elem())}}
	case reflect.Float64:
		return map[string]any{"type": "number"}
	case reflect.Int:
		return map[string]any{"type": "integer"}
	case reflect.String:
		return map[string]any{"type": "string"}
	case reflect.Bool:
		return map[string]any{"type": "boolean"}
	case reflect.Interface:
		return map[string]any{}
	case reflect.Slice, reflect.Array:
		if t == reflect.TypeFor[json.RawMessage]() {
			return Of(reflect.TypeFor[plan.Plan]())
		}
		return map[string]any{"type": "array", "items": Of(t.Elem())}
	}
	keys := map[string]any{}
	required := []any{}
	for i := range t.NumField() {
		f := t.Field(i)
		key := f.Tag.Get("json")
		if !f.IsExported() || key == "-" {
			continue
		}
		if key == "" {
			panic(t.String() + "." + f.Name + " has no key")
		}
		keys[key] = Of(f.Type)
		required = append(required, key)
	}
	return map[string]any{"type": "object", "properties": keys, "required": required, "additionalProperties": false}
}

// Schema is the schema of a program's JSON.
type Schema map[string]any

// New is the schema of the file form, a struct, with what heads it.
func New(form any, title, description string) Schema {
	s := Of(reflect.TypeOf(form))
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"], s["description"] = title, description
	return s
}

// At is the schema at a path of keys; lists stand for what they list.
func (s Schema) At(path ...string) Schema {
	at := map[string]any(s)
	for _, key := range path {
		if either, ok := at["anyOf"].([]any); ok {
			at = either[1].(map[string]any)
		}
		at = at["properties"].(map[string]any)[key].(map[string]any)
		if items, ok := at["items"].(map[string]any); ok {
			at = items
		}
	}
	if either, ok := at["anyOf"].([]any); ok {
		at = either[1].(map[string]any)
	}
	return at
}

// Words allows a text nothing but these.
func (s Schema) Words(words ...string) {
	list := []any{}
	for _, w := range words {
		list = append(list, w)
	}
	delete(s, "type")
	s["enum"] = list
}

// File holds the file schema.json beside the test to s, and returns it read back.
func (s Schema) File(t testing.TB) Schema {
	t.Helper()
	text, err := json.MarshalIndent(s, "", " ")
	require.NoError(t, err)
	golden.Equal(t, "../schema.json", string(text)+"\n")
	file, err := os.ReadFile("schema.json")
	require.NoError(t, err)
	var back Schema
	require.NoError(t, json.Unmarshal(file, &back))
	return back
}

// Holds holds a text of JSON to the schema.
func (s Schema) Holds(t testing.TB, at, text string) {
	t.Helper()
	var v any
	require.NoError(t, json.Unmarshal([]byte(text), &v))
	Valid(t, at, s, v)
}

// Valid reports where a value departs from a schema of the kinds that Of makes.
func Valid(t testing.TB, at string, s map[string]any, v any) {
	t.Helper()
	if either, ok := s["anyOf"].([]any); ok {
		if v != nil {
			Valid(t, at, either[1].(map[string]any), v)
		}
		return
	}
	if enum, ok := s["enum"].([]any); ok {
		require.Contains(t, enum, v, at)
		return
	}
	switch s["type"] {
	case "number", "integer":
		x, ok := v.(float64)
		require.True(t, ok, "%s is %v", at, v)
		require.True(t, s["type"] == "number" || x == float64(int(x)), "%s is %v", at, v)
	case "string":
		require.IsType(t, "", v, at)
	case "boolean":
		require.IsType(t, true, v, at)
	case "array":
		list, ok := v.([]any)
		require.True(t, ok, "%s is %v", at, v)
		for _, item := range list {
			Valid(t, at+"[]", s["items"].(map[string]any), item)
		}
	case "object":
		m, ok := v.(map[string]any)
		require.True(t, ok, "%s is %v", at, v)
		keys := s["properties"].(map[string]any)
		for key, item := range m {
			require.Contains(t, keys, key, at)
			Valid(t, at+"."+key, keys[key].(map[string]any), item)
		}
		for _, key := range s["required"].([]any) {
			require.Contains(t, m, key, at)
		}
	}
}
