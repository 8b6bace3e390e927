package main

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// number is a number of a plan with its allowed range.
type number struct {
	path string
	v    reflect.Value
	tag  reflect.StructTag
}

// numbers lists those of the plan below v.
func numbers(path string, v reflect.Value, tag reflect.StructTag) (list []number) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			list = append(list, numbers(join(path, f.Tag.Get("json")), v.Field(i), f.Tag)...)
		}
	case reflect.Array:
		for i := range v.Len() {
			list = append(list, numbers(path, v.Index(i), tag)...)
		}
	case reflect.Float64, reflect.Int:
		list = append(list, number{path, v, tag})
	}
	return list
}

func (n number) set(x float64) {
	if n.v.Kind() == reflect.Int {
		n.v.SetInt(int64(x))
	} else {
		n.v.SetFloat(x)
	}
}

func demoNumbers(t testing.TB) (*plan, []number) {
	p, err := load("", nil)
	require.NoError(t, err)
	return &p, numbers("", reflect.ValueOf(&p).Elem(), "")
}

// answered demands a whole answer or a clear refusal.
func answered(t testing.TB, p *plan) {
	text, err := json.Marshal(p)
	require.NoError(t, err)
	for _, args := range [][]string{{"-plan", "-"}, {"-plan", "-", "-json"}} {
		var out, problems bytes.Buffer
		switch run(args, bytes.NewReader(text), &out, &problems) {
		case 0:
			require.Empty(t, problems.String())
			require.NotContains(t, out.String(), "NaN", string(text))
			require.NotContains(t, out.String(), "Inf", string(text))
		case 2:
			require.Empty(t, out.String())
			require.NotContains(t, problems.String(), "unsupported value", string(text))
			require.NotContains(t, problems.String(), "NaN", string(text))
		default:
			t.Fatalf("%s\n%s", problems.String(), text)
		}
	}
}

// Every number of the plan at the ends of its range, all others as in the
// demo.
func TestEndsOfEveryRange(t *testing.T) {
	_, list := demoNumbers(t)
	for i, n := range list {
		r := limits(n.tag)
		for _, x := range []float64{r.Min, r.Max} {
			p, all := demoNumbers(t)
			all[i].set(x)
			answered(t, p)
		}
	}
}

// Numbers anywhere in their ranges, a few at once.
func TestPlansAtRandom(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 11))
	for range 60 {
		p, list := demoNumbers(t)
		for range 1 + r.IntN(6) {
			n := list[r.IntN(len(list))]
			lim := limits(n.tag)
			n.set(lim.Min + r.Float64()*(lim.Max-lim.Min))
		}
		answered(t, p)
	}
}

func FuzzPlan(f *testing.F) {
	f.Add(string(demoPlan))
	f.Add(strings.ReplaceAll(string(demoPlan), "3", "9"))
	f.Add(`{"site":{"altitude_m":[{}]},"site":{}}`)
	f.Add("{")
	f.Fuzz(func(t *testing.T, text string) {
		var out, problems bytes.Buffer
		switch run([]string{"-plan", "-"}, strings.NewReader(text), &out, &problems) {
		case 0:
			require.NotContains(t, out.String(), "NaN")
		case 2:
			require.Empty(t, out.String())
			require.NotEmpty(t, problems.String())
		default:
			t.Fatal(problems.String())
		}
	})
}
