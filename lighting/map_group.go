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
	PPFD  []float64 // µmol/(m² s) at each point
	Power float64   // W of electricity at full output
}

// GroupMaps maps each group of the layout alone, in the order of Groups, so
// that any dimming is a sum of them (Dimmed).
func GroupMaps(layout Layout, p *Points) ([]GroupMap, error) {
	var maps []GroupMap
	for _, name := range layout.Groups() {
		group := layout.Group(name)
		l, err := NewLights(group...)
		if err != nil {
			return nil, fmt.Errorf("group %q: %w", name, err)
		}
		ppfd, err := l.Map(p)
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

// RangeLevel is the accepted dimming level of a group.
var levelRange = domain.Range{Min: 0, Max: 1, Unit: "fraction"}

// Dimmed writes to dst the PPFD in µmol/(m² s) of the groups at the given
// levels, fraction 0 to 1 of full output, one for each map, and returns it. A
// nil dst is allocated; otherwise its length must be that of the maps.
func Dimmed(dst []float64, maps []GroupMap, levels []float64) ([]float64, error) {
	if len(maps) == 0 || len(maps) != len(levels) {
		return nil, fmt.Errorf("%d levels for %d groups: %w", len(levels), len(maps), ErrRange)
	}
	var errs []error
	for i, s := range levels {
		if !levelRange.Contains(s) {
			errs = append(errs, levelRange.Check(fmt.Sprintf("level of group %q", maps[i].Group), s))
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

// MapParallel is MapTo, in µmol/(m² s), on all cores. Progress, when not nil, is called with
// the points done and the points in all, from one goroutine at a time, about a
// hundred times. When the context ends first, its error is returned and dst is
// incomplete.
func (l *Lights) MapParallel(ctx context.Context, dst []float64, p *Points, progress func(done, total int)) ([]float64, error) {
	if dst == nil {
		dst = make([]float64, p.Len())
	}
	if len(dst) != p.Len() {
		panic("lighting: dst and points differ in length")
	}
	if err := l.checkClearance(p); err != nil {
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

// MapHeights maps the bed at each of the heights, m, of a growing crop, on a
// grid of nx by ny cells: one map in µmol/(m² s) for each height.
func MapHeights(l *Lights, bed Bed, nx, ny int, heights ...float64) ([][]float64, error) {
	var maps [][]float64
	var errs []error
	for _, z := range heights {
		p, err := bed.At(z).Grid(nx, ny)
		if err != nil {
			errs = append(errs, fmt.Errorf("crop at %g m: %w", z, err))
			continue
		}
		ppfd, err := l.Map(p)
		if err != nil {
			errs = append(errs, fmt.Errorf("crop at %g m: %w", z, err))
			continue
		}
		maps = append(maps, ppfd)
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	return maps, nil
}
