package lighting

import (
	"context"
	"errors"
	"fmt"
	"runtime"
	"sync"
	"sync/atomic"

	"cloche.example/internal/domain"
)

// GroupMap is the map of one group of fixtures at full output.
type GroupMap struct {
	Group string    // name of the group
	PPFD  []float64 // µmol/(m² s), 0 to 100000; at each point
	Power float64   // W, 0 to 1e9; of electricity at full output
}

// GroupMaps maps each group of the layout alone, in the order of
// their first fixtures, so that any dimming is a sum of them (DimmedTo).
func GroupMaps(layout Layout, p *Points) ([]GroupMap, error) {
	var maps []GroupMap
	for _, name := range layout.groups() {
		group := layout.group(name)
		l, err := NewLights(group...)
		if err != nil {
			return nil, fmt.Errorf("group %q: %w", name, err)
		}
		ppfd, err := l.MapTo(nil, p)
		if err != nil {
			return nil, fmt.Errorf("group %q: %w", name, err)
		}
		maps = append(maps, GroupMap{name, ppfd, group.Power()})
	}
	if len(maps) == 0 {
		return nil, fmt.Errorf("no fixtures: %w", ErrRange)
	}
	return maps, nil
}

// levelRange is the accepted dimming level of a group.
var levelRange = domain.Range{Min: 0, Max: 1, Unit: "fraction"}

// DimmedTo writes to dst the PPFD in µmol/(m² s) of the groups at the given
// levels, fraction 0 to 1 of full output, one for each map, and returns it. A
// nil dst is allocated; otherwise its length must be that of the maps, or
// DimmedTo panics.
func DimmedTo(dst []float64, maps []GroupMap, levels []float64) ([]float64, error) {
	if len(maps) == 0 || len(maps) != len(levels) {
		return nil, fmt.Errorf("%d levels for %d groups: %w", len(levels), len(maps), ErrRange)
	}
	var errs []error
	for i, s := range levels {
		if !levelRange.Contains(s) {
			errs = append(errs, levelRange.Check(fmt.Sprintf("levels[%d]", i), s))
		}
	}
	if len(errs) > 0 {
		return nil, errors.Join(errs...)
	}
	if dst == nil {
		dst = make([]float64, len(maps[0].PPFD))
	}
	clear(dst)
	for g, m := range maps {
		if len(m.PPFD) != len(dst) {
			panic("lighting: dst and maps differ in length")
		}
		for i, v := range m.PPFD {
			dst[i] += levels[g] * v
		}
	}
	return dst, nil
}

// MapParallelTo is MapTo, in µmol/(m² s), on all cores. Progress, when not nil,
// is called with the points done and the points in all, from one goroutine at a
// time, about a hundred times. When the context ends first, its error is
// returned and dst is incomplete.
func (l *Lights) MapParallelTo(ctx context.Context, dst []float64, p *Points, progress func(done, total int)) ([]float64, error) {
	dst, err := l.ready(dst, p)
	if err != nil {
		return dst, err
	}
	var next, done atomic.Int64
	var mu sync.Mutex
	var wg sync.WaitGroup
	told, step := 0, max(1, len(dst)/100)
	tell := func(n int) {
		mu.Lock()
		defer mu.Unlock()
		if n == len(dst) && told < n || n >= told+step {
			told = n
			progress(n, len(dst))
		}
	}
	for range min(runtime.GOMAXPROCS(0), (len(dst)+block-1)/block) {
		wg.Go(func() {
			for ctx.Err() == nil {
				lo := int(next.Add(block)) - block
				if lo >= len(dst) {
					return
				}
				hi := min(lo+block, len(dst))
				l.mapBlock(dst, p, lo, hi)
				if n := int(done.Add(int64(hi - lo))); progress != nil {
					tell(n)
				}
			}
		})
	}
	wg.Wait()
	if int(done.Load()) < len(dst) {
		return dst, ctx.Err()
	}
	return dst, checkFinite(dst, p)
}
