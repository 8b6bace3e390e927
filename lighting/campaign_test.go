package lighting

import (
	"errors"
	"flag"
	"math"
	"math/rand"
	"testing"
)

var campaign = flag.Int("campaign", 0, "how many random cases TestCampaign works out")

// TestCampaign, run with -campaign N, dims N random sets of groups and asks that
// each result is the least in its bounds; it counts those that did not converge.
func TestCampaign(t *testing.T) {
	if *campaign == 0 {
		t.Skip("only with -campaign N")
	}
	rng := rand.New(rand.NewSource(1))
	stuck, wrong := 0, 0
	for range *campaign {
		groups, points := 1+rng.Intn(6), 4+rng.Intn(40)
		maps := make([]GroupMap, groups)
		target, low, high := make([]float64, points), make([]float64, groups), make([]float64, groups)
		for i := range target {
			target[i] = 400 * rng.Float64()
		}
		for g := range maps {
			at, wide, top := float64(points)*rng.Float64(), 1+float64(points)*rng.Float64(), math.Pow(10, 3*rng.Float64())
			for i := range points {
				d := (float64(i) - at) / wide
				maps[g].PPFD = append(maps[g].PPFD, top/math.Pow(1+d*d, 2))
			}
			low[g] = 0.3 * rng.Float64()
			high[g] = low[g] + (1-low[g])*rng.Float64()
		}
		d, err := Dim(maps, target, low, high)
		if err != nil {
			if !errors.Is(err, ErrNotConverged) {
				t.Fatal(err)
			}
			stuck++
			continue
		}
		for g, m := range maps {
			slope, terms := 0.0, 0.0
			for i, v := range m.PPFD {
				slope += v * (target[i] - d.PPFD[i])
				terms += v * (target[i] + d.PPFD[i])
			}
			small := 1e-9 * terms
			if v := d.Levels[g]; v < low[g] || v > high[g] || slope > small && v < high[g] || slope < -small && v > low[g] {
				wrong++
			}
		}
	}
	t.Logf("%d sets of groups: %d not converged, %d levels not the best", *campaign, stuck, wrong)
	if wrong > 0 || stuck*100_000 > *campaign {
		t.Error("too many")
	}
}
