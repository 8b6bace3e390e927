package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
)

// lineOf is what the test reads of a line.
type lineOf struct {
	Line    int
	Error   *string
	Answers *struct {
		Account struct {
			Whole struct {
				Heat float64 `json:"heater_kwh"`
				Cold int     `json:"cold_hours_count"`
			}
		}
	}
}

// Each line has its answer, wrong ones an error, and the rest go on; the answer is
// that of the same plan alone.
func TestLines(t *testing.T) {
	name := filepath.Join(t.TempDir(), "plan.json")
	require.NoError(t, os.WriteFile(name, plan.Demo().Text(), 0o644))
	s := part(t, "02-04", 2)
	in := "{}\n\n{\"heater\": {\"power_w\": 9000}}\nno plan\n{\"house\": {\"span_m\": 900}}\n"
	var out, problems bytes.Buffer
	require.Zero(t, run([]string{"-plan", name, "-lines", "-weather", weatherFile(t, s)}, strings.NewReader(in), &out, &problems), problems.String())
	var got []lineOf
	for _, line := range strings.Split(strings.TrimSpace(out.String()), "\n") {
		var one lineOf
		require.NoError(t, json.Unmarshal([]byte(line), &one))
		got = append(got, one)
	}
	require.Len(t, got, 4)
	require.Equal(t, []int{1, 3, 4, 5}, []int{got[0].Line, got[1].Line, got[2].Line, got[3].Line})
	require.InEpsilon(t, solved(t, plan.Demo(), part(t, "02-04", 2)).Account.Whole.Heater, got[0].Answers.Account.Whole.Heat, 1e-2)
	require.Zero(t, got[0].Answers.Account.Whole.Cold)
	require.Greater(t, got[1].Answers.Account.Whole.Cold, 10, "a heater too small")
	require.NotNil(t, got[2].Error)
	require.Contains(t, *got[3].Error, "house.span_m")
}
