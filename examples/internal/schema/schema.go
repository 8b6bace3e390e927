// Package schema holds the JSON of the example programs to a schema made from
// their types: for tests.
package schema

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"reflect"
	"slices"
	"testing"

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
func (s Schema) File(t testing.TB) (back Schema) {
	t.Helper()
	text, err := json.MarshalIndent(s, "", " ")
	if err != nil {
		t.Fatal(err)
	}
	golden.Equal(t, "../schema.json", string(text)+"\n")
	file, err := os.ReadFile("schema.json")
	if err == nil {
		err = json.Unmarshal(file, &back)
	}
	if err != nil {
		t.Fatal(err)
	}
	return back
}

// Holds holds a text of JSON to the schema.
func (s Schema) Holds(t testing.TB, at, text string) {
	t.Helper()
	var v any
	if err := json.Unmarshal([]byte(text), &v); err != nil {
		t.Fatal(err)
	}
	if err := s.Check(at, v); err != nil {
		t.Error(err)
	}
}

// Check tells where a value first departs from a schema of the kinds that Of makes.
func (s Schema) Check(at string, v any) error {
	if either, ok := s["anyOf"].([]any); ok {
		if v == nil {
			return nil
		}
		return Schema(either[1].(map[string]any)).Check(at, v)
	}
	right := false
	if words, ok := s["enum"].([]any); ok {
		right = slices.Contains(words, v)
	}
	switch s["type"] {
	case nil:
		right = right || s["enum"] == nil
	case "number":
		_, right = v.(float64)
	case "integer":
		x, ok := v.(float64)
		right = ok && x == math.Trunc(x)
	case "string":
		_, right = v.(string)
	case "boolean":
		_, right = v.(bool)
	case "array":
		var list []any
		list, right = v.([]any)
		for _, item := range list {
			if err := Schema(s["items"].(map[string]any)).Check(at+"[]", item); err != nil {
				return err
			}
		}
	case "object":
		var m map[string]any
		if m, right = v.(map[string]any); right {
			return s.keys(at, m)
		}
	}
	if !right {
		return fmt.Errorf("%s is %v, which is no %v %v", at, v, s["type"], s["enum"])
	}
	return nil
}

// keys checks an object: every key known, none missing.
func (s Schema) keys(at string, m map[string]any) error {
	known := s["properties"].(map[string]any)
	for key, item := range m {
		of, ok := known[key].(map[string]any)
		if !ok {
			return fmt.Errorf("%s has a key %q that the schema does not know", at, key)
		}
		if err := Schema(of).Check(at+"."+key, item); err != nil {
			return err
		}
	}
	for _, key := range s["required"].([]any) {
		if _, ok := m[key.(string)]; !ok {
			return fmt.Errorf("%s lacks %q", at, key)
		}
	}
	return nil
}
