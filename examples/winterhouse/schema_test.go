package main

import (
	"encoding/json"
	"os"
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

// schemaOf makes the JSON schema of a type from its fields.
func schemaOf(t reflect.Type) map[string]any {
	switch t.Kind() {
	case reflect.Pointer:
		return map[string]any{"anyOf": []any{map[string]any{"type": "null"}, schemaOf(t.Elem())}}
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
			return schemaOf(reflect.TypeFor[plan.Plan]())
		}
		return map[string]any{"type": "array", "items": schemaOf(t.Elem())}
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
		keys[key] = schemaOf(f.Type)
		required = append(required, key)
	}
	return map[string]any{"type": "object", "properties": keys, "required": required, "additionalProperties": false}
}

func schema() map[string]any {
	s := schemaOf(reflect.TypeFor[file]())
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"] = "winterhouse, version 1"
	s["description"] = "What winterhouse -json prints. Keys carry their units; null stands where a figure does not exist. A line of -lines holds the same answers with its number, the version, and an error in their place."
	decision := s["properties"].(map[string]any)["answers"].(map[string]any)["properties"].(map[string]any)["decisions"].(map[string]any)["items"].(map[string]any)["properties"].(map[string]any)
	codes := []any{}
	for _, c := range answers.Codes() {
		codes = append(codes, c)
	}
	decision["code"] = map[string]any{"enum": codes}
	warnings := []any{}
	for _, c := range answers.WarningCodes() {
		warnings = append(warnings, c)
	}
	s["properties"].(map[string]any)["answers"].(map[string]any)["properties"].(map[string]any)["warnings"].(map[string]any)["items"].(map[string]any)["properties"].(map[string]any)["code"] = map[string]any{"enum": warnings}
	decision["verdict"] = map[string]any{"enum": []any{"holds", "fails", "told"}}
	return s
}

// valid reports where a value departs from a schema of the kinds that schemaOf
// makes.
func valid(t *testing.T, at string, s map[string]any, v any) {
	t.Helper()
	if either, ok := s["anyOf"].([]any); ok {
		if v != nil {
			valid(t, at, either[1].(map[string]any), v)
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
			valid(t, at+"[]", s["items"].(map[string]any), item)
		}
	case "object":
		m, ok := v.(map[string]any)
		require.True(t, ok, "%s is %v", at, v)
		keys := s["properties"].(map[string]any)
		for key, item := range m {
			require.Contains(t, keys, key, at)
			valid(t, at+"."+key, keys[key].(map[string]any), item)
		}
		for _, key := range s["required"].([]any) {
			require.Contains(t, m, key, at)
		}
	}
}

// TestSchemaFile holds the file to the types, and the output to the file.
func TestSchemaFile(t *testing.T) {
	text, err := json.MarshalIndent(schema(), "", " ")
	require.NoError(t, err)
	golden.Equal(t, "../schema.json", string(text)+"\n")
	file, err := os.ReadFile("schema.json")
	require.NoError(t, err)
	var s map[string]any
	require.NoError(t, json.Unmarshal(file, &s))
	for _, name := range []string{"", "../plans/arch.json", "../plans/leanto.json", "../plans/mountain.json"} {
		var v any
		require.NoError(t, json.Unmarshal([]byte(printed(t, "", "-json", "-plan", name)), &v))
		valid(t, "file", s, v)
	}
	answers := s["properties"].(map[string]any)["answers"].(map[string]any)
	valid(t, "line", answers, lines(t, printed(t, "{}", "-lines"))[0]["answers"])
}
