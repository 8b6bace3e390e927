package answers

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strconv"
)

// Encode writes v as JSON in one line: seven significant digits, keys in the
// order of the fields, nil pointers as null. A number that is none is an error:
// where one may be missing the field is a pointer.
func Encode(v any) ([]byte, error) { return encode(nil, reflect.ValueOf(v), "") }

func encode(out []byte, v reflect.Value, path string) ([]byte, error) {
	switch v.Kind() {
	case reflect.Float64:
		x := v.Float()
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return nil, fmt.Errorf("%s came out as %g", path, x)
		}
		return append(out, Number(x)...), nil
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return append(out, "null"...), nil
		}
		return encode(out, v.Elem(), path)
	case reflect.Struct:
		out = append(out, '{')
		first := true
		var err error
		for i := range v.NumField() {
			f := v.Type().Field(i)
			key := f.Tag.Get("json")
			if !f.IsExported() || key == "-" {
				continue
			}
			if !first {
				out = append(out, ',')
			}
			first = false
			out = append(strconv.AppendQuote(out, key), ':')
			if out, err = encode(out, v.Field(i), path+"."+key); err != nil {
				return nil, err
			}
		}
		return append(out, '}'), nil
	case reflect.Slice, reflect.Array:
		if raw, ok := v.Interface().(json.RawMessage); ok {
			return append(out, raw...), nil
		}
		out = append(out, '[')
		var err error
		for i := range v.Len() {
			if i > 0 {
				out = append(out, ',')
			}
			if out, err = encode(out, v.Index(i), path+"["+strconv.Itoa(i)+"]"); err != nil {
				return nil, err
			}
		}
		return append(out, ']'), nil
	}
	text, err := json.Marshal(v.Interface())
	return append(out, text...), err
}

// Number prints a number with seven significant digits, as JSON takes it.
func Number(x float64) string {
	if x == 0 {
		return "0"
	}
	y, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'e', 6, 64), 64)
	if size := math.Abs(y); size >= 1e-4 && size < 1e9 {
		return strconv.FormatFloat(y, 'f', -1, 64)
	}
	return strconv.FormatFloat(y, 'e', -1, 64)
}
