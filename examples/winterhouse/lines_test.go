package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// lines decodes the output of -lines.
func lines(t testing.TB, out string) (list []map[string]any) {
	for _, line := range strings.Split(strings.TrimSuffix(out, "\n"), "\n") {
		var m map[string]any
		require.NoError(t, json.Unmarshal([]byte(line), &m), line)
		list = append(list, m)
	}
	return list
}

func TestLinesChangeThePlan(t *testing.T) {
	in := `{"heater":{"power_w":30000}}` + "\n\n" + `{"heater":{"power_w":-1}}` + "\nno plan\n" + `{"heater":{"power_w":40000}}` + "\n"
	got := lines(t, printed(t, in, "-plan", "../plans/arch.json", "-lines"))
	require.Len(t, got, 4)
	for i, want := range []int{1, 3, 4, 5} {
		require.EqualValues(t, want, got[i]["line"])
	}
	power := func(m map[string]any) float64 {
		return m["answers"].(map[string]any)["heater"].(map[string]any)["power_w"].(float64)
	}
	require.InDelta(t, 30000, power(got[0]), 0)
	require.InDelta(t, 40000, power(got[3]), 0)
	require.Contains(t, got[1]["error"], "heater.power_w is -1")
	require.Nil(t, got[1]["answers"])
	require.Contains(t, got[2]["error"], "does not begin with {")
}

func TestLinesArePlans(t *testing.T) {
	got := lines(t, printed(t, `{}`+"\n"+`{"house":{"length_m":30}}`, "-lines"))
	require.Len(t, got, 2)
	floor := func(m map[string]any) float64 {
		return m["answers"].(map[string]any)["shape"].(map[string]any)["floor_m2"].(float64)
	}
	require.InDelta(t, 6.4*30, floor(got[1]), 1e-6)
	require.Less(t, floor(got[0]), floor(got[1]))
}

func TestCuresChangeNothingButThemselves(t *testing.T) {
	in := `{}` + "\n"
	with := lines(t, printed(t, in, "-lines", "-cures"))[0]["answers"].(map[string]any)
	without := lines(t, printed(t, in, "-lines"))[0]["answers"].(map[string]any)
	require.NotEmpty(t, with["savings"])
	require.Empty(t, without["savings"])
	for _, key := range []string{"heater", "year", "summer", "light", "warm_up_and_frost"} {
		require.Equal(t, without[key], with[key], key)
	}
}

// TestLinesKeepTheirOrderAndMemory sends more plans than would fit if they were
// kept.
func TestLinesKeepTheirOrder(t *testing.T) {
	var in strings.Builder
	for i := range 40 {
		fmt.Fprintf(&in, "{\"heater\":{\"power_w\":%d}}\n", 20000+i)
	}
	for i, m := range lines(t, printed(t, in.String(), "-plan", "../plans/mountain.json", "-lines")) {
		require.EqualValues(t, i+1, m["line"])
		require.InDelta(t, 20000+i, m["answers"].(map[string]any)["heater"].(map[string]any)["power_w"], 0)
	}
}

func BenchmarkLine(b *testing.B) {
	for name, change := range map[string]string{"gable": `{}`, "arch": `{"house":{"shape":"round arch"}}`} {
		b.Run(name, func(b *testing.B) {
			text := string(demo(b, change).Text())
			text = strings.ReplaceAll(text, "\n", " ")
			for b.Loop() {
				printed(b, text, "-lines")
			}
		})
	}
}
