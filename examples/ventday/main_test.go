package main

import (
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
	"cloche.example/internal/program"
	"cloche.example/ventilation"
)

// with is the program with a standard input.
func with(stdin string) golden.Run {
	return func(args []string, out, problems io.Writer) int {
		return run(args, strings.NewReader(stdin), out, problems)
	}
}

func TestDemo(t *testing.T) {
	out := golden.Print(t, with(""))
	require.Contains(t, strings.Join(strings.Fields(out), " "), plan.Demo().Note)
	golden.Equal(t, "demo.txt", out)
}

// answer is what the tests read of the JSON.
type answer struct {
	OpenBy *float64 `json:"shut_house_asks_for_air_from_h"`
	Ways   []way    `json:"ways"`
}

// ways are by hand, automatic, wide open.
func ways(t *testing.T, args ...string) answer {
	t.Helper()
	return decoded(t, golden.Print(t, with(""), append(args, "-json")...))
}

func decoded(t *testing.T, text string) answer {
	t.Helper()
	var d struct{ Answer answer }
	require.NoError(t, json.Unmarshal([]byte(text), &d))
	require.Len(t, d.Answer.Ways, 3)
	return d.Answer
}

func demoPlan(t *testing.T, change string) *plan.Plan {
	t.Helper()
	p, err := plan.Demo().Change([]byte(change))
	require.NoError(t, err)
	return &p.Plan
}

func TestShadeAndFogCool(t *testing.T) {
	bare := ways(t)
	for _, args := range [][]string{{"-shade-transmittance", "0.5"}, {"-fog", "300"}} {
		for i, w := range ways(t, args...).Ways {
			require.Less(t, w.High, bare.Ways[i].High-0.5, args)
		}
	}
	require.Zero(t, bare.Ways[automatic].Water)
	require.Greater(t, ways(t, "-fog", "100").Ways[automatic].Water, 10.0)
}

// Shut, the house is as warm as one whose vents open by hand later in the day.
func TestOpenBy(t *testing.T) {
	d := ways(t)
	require.NotNil(t, d.OpenBy)
	for _, s := range d.Ways[byHand].Steps {
		if s.Hour == *d.OpenBy {
			require.Greater(t, s.Inside, plan.Demo().SetPoints.Day.VentTemperature)
		} else if s.Hour < *d.OpenBy {
			require.LessOrEqual(t, s.Inside, plan.Demo().SetPoints.Day.VentTemperature)
		}
	}
}

func TestSquallLowersTheVents(t *testing.T) {
	for _, s := range ways(t, "-squall", "15").Ways[automatic].Steps {
		if s.Hour == 15 {
			require.InDelta(t, plan.Demo().VentControl.InWind, s.Opening, 1e-9)
			require.Equal(t, "wind", s.By)
		}
	}
}

func TestFinerSteps(t *testing.T) {
	coarse, fine := ways(t), ways(t, "-step", "10m")
	require.Len(t, fine.Ways[0].Steps, 144)
	require.InDelta(t, coarse.Ways[automatic].High, fine.Ways[automatic].High, 0.5)
}

// A fan that blows out cools the house of vents that alone are too few, and the
// day's sums are those of its points.
func TestFansHelp(t *testing.T) {
	fan := `{"vents": [{"name": "side", "place": "left side", "length_m": 4}], "vent_fans": [{"name": "fan", "flow_m3_s": 5}]}`
	p, err := plan.Parse([]byte(fan))
	require.NoError(t, err)
	still := p
	still.VentFans = nil
	var high [2]float64
	for i, q := range []plan.Filled{p, still} {
		d, err := compute(t.Context(), choice{&q.Plan, -1, 3600e9}, program.NewMeter(io.Discard, ""))
		require.NoError(t, err)
		high[i] = d.courses[wideOpen].High
		for _, c := range d.courses {
			limits := ventilation.DefaultDayLimits()
			limits.Temperature = q.SetPoints.Limits.Hot
			again := c.DayCourse
			d.sum(&again, limits)
			require.InDelta(t, c.Mean, again.Mean, 1e-9)
			require.InDelta(t, c.Transpired, again.Transpired, 1e-9)
			again.Mean, again.DeficitMean, again.Transpired = c.Mean, c.DeficitMean, c.Transpired
			require.Equal(t, c.DayCourse, again)
		}
	}
	require.Less(t, high[0], high[1]-1)
}

func TestFigures(t *testing.T) {
	for _, name := range []string{"a.svg", "a.png", "a.pdf"} {
		file := filepath.Join(t.TempDir(), name)
		golden.Print(t, with(""), "-figure", file)
		info, err := os.Stat(file)
		require.NoError(t, err)
		require.Greater(t, info.Size(), int64(2000))
	}
}

// Every plan that the repository holds has an answer.
func TestPlans(t *testing.T) {
	plans, err := filepath.Glob("../plans/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, plans)
	for _, file := range plans {
		require.NotContains(t, golden.Print(t, with(""), "-plan", file), "NaN")
	}
	golden.Refuse(t, with(`{"vents": []}`), []string{"-plan", "-"}, "neither vents nor vent_fans")
	require.Contains(t, golden.Print(t, with(`{"site": {"latitude_deg": -40}, "vents": [{"name": "ridge", "place": "ridge"}, {"name": "side", "place": "right side"}]}`), "-plan", "-"), "January")
}

func TestWrongInputIsOneLine(t *testing.T) {
	for _, args := range [][]string{
		{"-mean", "NaN"}, {"-mean", "300"}, {"-swing", "-1"}, {"-dew", "99"}, {"-wind", "-1"}, {"-squall", "25"}, {"-shade-transmittance", "40"}, {"-fog", "-1"},
		{"-hand-from", "20"}, {"-hand", "50"}, {"-band", "0"}, {"-step", "7m"}, {"-step", "0"}, {"-step", "48h"}, {"-leaf-area", "-1"}, {"-limit", "300"},
		{"-figure", "x.doc"}, {"-figure", "/no/such/place.svg"}, {"more"}, {"-no"}} {
		golden.Refuse(t, with(""), args)
	}
	golden.Refuse(t, with(""), []string{"-squall", "NaN"}, "-squall")
	out := golden.Print(t, with(""), "-h")
	require.Contains(t, out, "-figure")
}
