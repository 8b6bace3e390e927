package main

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/campaign"
	"cloche.example/examples/internal/plan"
)

// closed demands that what belongs together adds up.
func closed(t testing.TB, a *answers.Result, said string) {
	near := func(want, got, scale float64, what string) {
		t.Helper()
		if !(math.Abs(want-got) <= 1e-9*max(math.Abs(scale), 1)) {
			t.Errorf("%s: %g is not %g, of %g\n%s", what, got, want, scale, said)
		}
	}
	for name, n := range map[string]answers.Night{"wet": a.Wet, "dry": a.Dry} {
		sum, size := 0.0, 0.0
		for _, term := range n.Terms {
			sum += term.Loss
			size += math.Abs(term.Loss)
		}
		near(n.Total, sum, size, name+": terms")
		near(n.Coefficient*(a.Air.Inside-a.Air.Outside), n.Total, size, name+": per kelvin")
		for _, f := range n.Facets {
			near(f.Loss, f.Dry+f.Condensing+f.Sky, size, name+": "+f.Name)
			near(f.Loss, f.U*f.Area*(a.Air.Inside-a.Air.Outside), size, name+": U of "+f.Name)
		}
	}
	near(a.Heater.Needed, max(a.Wet.Total, a.Wet.DryFilm, a.Dry.Total), a.Wet.Total, "heater")
	near(a.Heater.Margin, a.Heater.Power/a.Heater.Needed-1, 1, "margin")
	y := a.Year
	near(y.Total, y.HeatCost+y.LampCost+y.FanCost, y.Total, "year")
	heat, heating, lamps := 0.0, 0.0, 0.0
	for _, m := range y.Months {
		heat, heating, lamps = heat+m.Heat, heating+m.HeatCost, lamps+m.LampCost
	}
	near(y.Heat, heat, heat, "heat of the months")
	if y.Heat > 0 {
		near(y.HeatCost, heating, heating, "heating of the months")
	}
	near(y.LampCost, lamps, lamps, "lamps of the months")
	power := 0.0
	for _, l := range a.Power.Loads {
		power += l.Power
	}
	near(a.Power.Total, power, power, "loads")
	near(a.Water.Given, a.Water.Crop+a.Water.Drained, a.Water.Given, "water")
	if d := a.Drying; d.Possible && d.ToAir > 0 {
		near(d.Released, d.Condensed+d.ToAir, max(d.Released, math.Abs(d.Condensed)), "drying")
	}
}

// TestRandomPlans asks for an error or for finite figures that add up, whatever
// the plan.
func TestRandomPlans(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 8))
	keys := campaign.Keys()
	bases := campaign.Bases(t)
	refused, failed := 0, map[string]int{}
	for i := range campaign.Rounds() {
		change := campaign.Change(r, keys)
		p, err := bases[i%len(bases)].Change([]byte(change))
		if err != nil {
			refused++
			continue
		}
		a, err := answers.Of(&p.Plan, i%5 == 0)
		if err != nil {
			require.NotContains(t, err.Error(), "NaN", change)
			failed[err.Error()]++
			continue
		}
		closed(t, &a, change)
		for _, d := range a.Decisions {
			require.Contains(t, answers.Codes(), d.Code)
			require.Contains(t, []string{"holds", "fails", "told"}, d.Verdict)
			require.True(t, d.Verdict != "fails" || d.Cure != "", "%s fails without a cure: %s", d.Code, change)
		}
		for _, w := range a.Warnings {
			require.Contains(t, answers.WarningCodes(), w.Code)
		}
		text, err := answers.Encode(&a)
		require.NoError(t, err, change)
		require.True(t, json.Valid(text))
		out := fmt.Sprint(textOf(&p, &a))
		for _, odd := range []string{"NaN", "Inf", "-0.0 ", "%!"} {
			require.NotContains(t, out, odd, change)
		}
	}
	t.Logf("%d plans, %d refused, %d not computed", campaign.Rounds(), refused, len(failed))
	for said, n := range failed {
		t.Logf("%d × %.300s", n, said)
	}
	require.Less(t, refused, campaign.Rounds()*9/10)
}

func textOf(p *plan.Filled, a *answers.Result) string { return text(p, a).String() }

// TestEndsOfEveryRange puts each key to the ends of its range.
func TestEndsOfEveryRange(t *testing.T) {
	base := plan.Demo()
	failed := 0
	for _, k := range campaign.Keys() {
		if k.Kind != plan.Number && k.Kind != plan.Whole {
			continue
		}
		for _, x := range []float64{k.Min, k.Max} {
			p, err := base.With(plan.Figure{Path: k.Path, Value: x})
			if err != nil {
				continue
			}
			a, err := answers.Of(&p.Plan, false)
			if err != nil {
				failed++
				t.Logf("%s %g: %.200s", k.Path, x, err)
				require.NotContains(t, err.Error(), "NaN")
				continue
			}
			closed(t, &a, fmt.Sprintf("%s %g", k.Path, x))
			_, err = answers.Encode(&a)
			require.NoError(t, err, "%s %g", k.Path, x)
		}
	}
	t.Logf("%d not computed", failed)
}
