package lighting

import (
	"bytes"
	"errors"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// FuzzLM63 reads any bytes: an error with its place, or a file whose table is
// finite and whose written form reads back; and no more numbers than the bytes
// can hold.
func FuzzLM63(f *testing.F) {
	e := lm63Samples(f)
	for name := range e.Valid {
		f.Add(lm63File(f, name))
	}
	for name := range e.Malformed {
		f.Add(lm63File(f, name))
	}
	f.Add(lm63File(f, "own_typeA_2019.ies"))
	f.Add([]byte(lm63Text("IESNA91", lm63Plain)))
	f.Add([]byte("TILT=INCLUDE\n1 1 0 1 " + lm63Plain))
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := ReadLM63(bytes.NewReader(data), nil)
		if err != nil {
			var e *LM63Error
			if !errors.As(err, &e) || e.Line < 1 || e.Reason == "" {
				t.Fatalf("error without a place: %v", err)
			}
			return
		}
		w := file.Web
		if n := len(w.Vertical) * (len(w.Horizontal) - 1); n > len(data) {
			t.Fatalf("%d numbers from %d bytes", n, len(data))
		}
		table, err := file.Table()
		if err != nil {
			t.Fatalf("read but no table: %v", err)
		}
		if v := table.Flux(); !(v >= 0) || math.IsInf(v, 0) {
			t.Fatalf("flux %v", v)
		}
		var b bytes.Buffer
		if err := file.Write(&b); err != nil {
			return // a label that cannot be written, a number beyond the writer's range
		}
		again, err := ReadLM63(bytes.NewReader(b.Bytes()), nil)
		if err != nil {
			t.Fatalf("written but not read: %v\n%s", err, b.Bytes())
		}
		if d := cmp.Diff(w, again.Web, cmpopts.EquateEmpty()); d != "" {
			t.Fatalf("not the same when read back: %s", d)
		}
	})
}
