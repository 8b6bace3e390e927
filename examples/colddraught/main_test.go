package main

import (
	"encoding/json"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/golden"
)

// with is the program with a standard input.
func with(stdin string) golden.Run {
	return func(args []string, out, problems io.Writer) int {
		return run(args, strings.NewReader(stdin), out, problems)
	}
}

func TestDemo(t *testing.T) {
	text := golden.Print(t, with(""))
	require.Contains(t, strings.Join(strings.Fields(text), " "), plan.Demo().Note)
	golden.Equal(t, "demo.txt", text)
}

// answer is what the tests read of the JSON.
type answer struct {
	Wanted float64   `json:"air_wanted_m3_s"`
	Orders []way     `json:"orders"`
	Doors  []passage `json:"doors"`
}

func answered(t *testing.T, stdin string, args ...string) answer {
	t.Helper()
	var d struct{ Answer answer }
	require.NoError(t, json.Unmarshal([]byte(golden.Print(t, with(stdin), append(args, "-json")...)), &d))
	return d.Answer
}

func TestColderOutsideAndLowVentsAreWorse(t *testing.T) {
	d := answered(t, "", "-outside", "-12,-6,0,6", "-opened", "10,30,60,100")
	require.Len(t, d.Orders, 2)
	high, low := d.Orders[0].Rows, d.Orders[1].Rows
	require.Len(t, high, 4)
	for i := range high {
		require.Len(t, high[i].Opened, 4)
		for k, of := range high[i].Opened {
			require.Greater(t, *of.Coldest, *low[i].Opened[k].Coldest+0.5)
			if k > 0 { // wider is colder
				require.Less(t, *of.Coldest, *high[i].Opened[k-1].Coldest)
			}
			if i > 0 { // milder outside is warmer
				require.Greater(t, *of.Coldest, *high[i-1].Opened[k].Coldest)
			}
		}
		require.GreaterOrEqual(t, high[i].Widest.First, low[i].Widest.First)
	}
}

// The air wanted is what the report of the whole house finds that drying asks.
func TestTheReportAgrees(t *testing.T) {
	p := plan.Demo()
	all, err := answers.Of(&p.Plan, false)
	require.NoError(t, err)
	d := answered(t, "")
	require.InDelta(t, all.Drying.Flow, d.Wanted, 1e-9)
	require.InDelta(t, 500.0/3600, answered(t, "", "-air", "500").Wanted, 1e-9)
	for _, r := range d.Orders[0].Rows {
		require.NotNil(t, r.Wanted)
		require.InDelta(t, d.Wanted, r.Wanted.Air, 0.02*d.Wanted)
	}
}

// Cracks let in on the calm design night what the plan's leakage says.
func TestCracksLeakAsThePlan(t *testing.T) {
	p := plan.Demo()
	house, err := answers.NewHouse(&p.Plan)
	require.NoError(t, err)
	loss, err := house.Loss(house.Night, 1)
	require.NoError(t, err)
	h, err := choice{plan: &p.Plan, outside: []float64{p.Site.WinterNight.Temperature}, opened: []float64{5}}.house(false)
	require.NoError(t, err)
	h.vents.Outside = p.Site.WinterNight.Temperature
	shut, err := h.vents.At(make([]float64, len(h.from)))
	require.NoError(t, err)
	require.InEpsilon(t, loss.Leakage.Volume, shut.Air.Volume, 0.1)
}

func TestOneKindOfVents(t *testing.T) {
	ridge := `{"vents": [{"name": "ridge", "place": "ridge"}]}`
	require.Len(t, answered(t, ridge, "-plan", "-").Orders, 1)
	require.Contains(t, golden.Print(t, with(ridge), "-plan", "-", "-air", "90000"), "too small")
}

// Without vents cracks and doors are all by which cold air comes.
func TestNoVents(t *testing.T) {
	plain := `{"vents": []}`
	text := golden.Print(t, with(plain), "-plan", "-")
	require.Contains(t, text, "The plan has no vents")
	require.NotContains(t, text, "NaN")
	d := answered(t, plain, "-plan", "-", "-outside", "-14,0")
	require.Empty(t, d.Orders)
	require.Len(t, d.Doors, 2)
	cold, mild := d.Doors[0], d.Doors[1]
	require.Greater(t, cold.Air, mild.Air)
	require.Less(t, cold.Mixed, mild.Mixed)
	// Vents that are there change nothing of it.
	vented := answered(t, `{"vents": [{"name": "ridge", "place": "ridge"}]}`, "-plan", "-", "-outside", "-14,0")
	require.Equal(t, vented.Doors, d.Doors)
	// What flows in is as much as the two-way flow of a doorway lets in with
	// the demo's figures: a third of the opening's discharge, area and root of
	// g' times height, in the time that it stands open.
	p := plan.Demo()
	require.Len(t, p.House.Doors, 1)
	door := p.House.Doors[0]
	rise := 29 / (0.5 * (288.15 + 259.15)) * 9.81
	want := 0.6 * door.Width * door.Height / 3 * math.Sqrt(rise*door.Height) * door.Open
	require.InEpsilon(t, want, answered(t, "", "-outside", "-14").Doors[0].Air, 0.1)
	golden.Print(t, with(plain), "-plan", "-", "-figure", filepath.Join(t.TempDir(), "a.svg"))
	none := answered(t, `{"vents": [], "house": {"doors": []}}`, "-plan", "-")
	require.Empty(t, none.Doors)
}

func TestWindDraws(t *testing.T) {
	require.Contains(t, golden.Print(t, with(""), "-wind", "6"), " -  ") // the ridge lets no air in
}

func TestFigures(t *testing.T) {
	for _, name := range []string{"a.svg", "a.png", "a.pdf"} {
		file := filepath.Join(t.TempDir(), name)
		golden.Print(t, with(""), "-figure", file, "-crop", "0.7", "-wind", "3")
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		require.Greater(t, len(text), 2000)
		if name == "a.svg" {
			require.Contains(t, string(text), ">vents<")
		}
	}
}

// Every plan that the repository holds has an answer and a picture.
func TestPlans(t *testing.T) {
	plans, err := filepath.Glob("../plans/*.json")
	require.NoError(t, err)
	require.NotEmpty(t, plans)
	for _, file := range plans {
		require.NotContains(t, golden.Print(t, with(""), "-plan", file, "-figure", filepath.Join(t.TempDir(), "a.svg")), "NaN")
	}
}

func TestHelp(t *testing.T) { require.Contains(t, golden.Print(t, with(""), "-h"), "-figure") }

func TestWrongInput(t *testing.T) {
	for flag, values := range map[string][]string{
		"-inside": {"x", "NaN", "300"}, "-limit": {"16", "-400"}, "-crop": {"40", "-2"}, "-wind": {"-1", "90", "NaN"}, "-air": {"0", "1e12", "NaN"},
		"-outside": {"20", "a,b", "", "-2,-400"}, "-opened": {"0", "101", "5;6"}, "-figure": {"x.doc"},
	} {
		for _, v := range values {
			golden.Refuse(t, with(""), []string{flag, v})
		}
	}
	golden.Refuse(t, with(""), []string{"-inside", "5"}, "chill_c")
	golden.Refuse(t, with(""), []string{"-figure", "/no/such/place.svg"}, "/no/such/place.svg")
	golden.Refuse(t, with(""), []string{"more"}, "more")
	golden.Refuse(t, with(""), []string{"-no"}, "-no")
}
