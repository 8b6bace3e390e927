package answers_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
)

func demo(t testing.TB, change string) *plan.Plan {
	t.Helper()
	f, err := plan.Demo().Change([]byte(change))
	require.NoError(t, err)
	return &f.Plan
}

func of(t testing.TB, change string) answers.Result {
	t.Helper()
	r, err := answers.Of(demo(t, change), true)
	require.NoError(t, err)
	return r
}

func TestEveryPlanIsAnswered(t *testing.T) {
	files, err := filepath.Glob("../../plans/*.json")
	require.NoError(t, err)
	for _, name := range files {
		f, err := plan.Open(name, os.Stdin)
		require.NoError(t, err)
		r, err := answers.Of(&f.Plan, true)
		require.NoError(t, err, name)
		text, err := answers.Encode(&r)
		require.NoError(t, err, name)
		for _, d := range r.Decisions {
			t.Logf("%s %s: %s | %s | %s", d.Code, d.Verdict, d.Ask, d.Answer, d.Cure)
		}
		t.Log(len(text))
	}
	r := of(t, `{}`)
	for _, d := range r.Decisions {
		t.Logf("%s %s: %s | %s | %s", d.Code, d.Verdict, d.Ask, d.Answer, d.Cure)
	}
	for _, w := range r.Warnings {
		t.Log(w)
	}
}

func BenchmarkAnswers(b *testing.B) {
	for name, cures := range map[string]bool{"plain": false, "cures": true} {
		b.Run(name, func(b *testing.B) {
			p := demo(b, `{}`)
			for b.Loop() {
				if _, err := answers.Of(p, cures); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// What the heater must give grows with the cold and with the humidity that is held,
// though films that turn dry or wet change what they let through.
func TestDutyHasNoSteps(t *testing.T) {
	warm := `"months":{"temperature_c":[12,12,12,12,12,12,12,12,12,12,12,12]}`
	last := 0.0
	for _, outside := range []string{"6", "5", "4", "3", "2", "1", "0", "-1", "-2", "-6", "-14"} {
		r := of(t, `{"site":{`+warm+`,"winter_night":{"temperature_c":`+outside+`}},"set_points":{"winter_night":{"relative_humidity":0.6}}}`)
		require.Greater(t, r.Heater.Needed, last, outside)
		last = r.Heater.Needed
	}
	last = 0
	for _, humidity := range []string{"0.3", "0.36", "0.38", "0.4", "0.42", "0.5", "0.7", "0.8", "0.9"} {
		r := of(t, `{"set_points":{"winter_night":{"relative_humidity":`+humidity+`}}}`)
		require.GreaterOrEqual(t, r.Heater.Needed, 0.99*last, humidity) // parts of the cover turn wet one after the other
		last = r.Heater.Needed
	}
}
