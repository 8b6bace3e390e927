package lighting

import (
	"context"
	"runtime"
	"slices"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestAParallelMapIsTheSame(t *testing.T) {
	layout, err := Staggered(Fixture{Light: cosine(t, 60, 1.8)}, Bed{Length: 9, Width: 3}, 1.2, 6, 3)
	require.NoError(t, err)
	require.Len(t, layout, 6+5+6)
	l, err := NewLights(layout...)
	require.NoError(t, err)
	p, err := Bed{Length: 9, Width: 3}.Grid(180, 60)
	require.NoError(t, err)
	want, err := l.MapTo(nil, p)
	require.NoError(t, err)
	last, calls := 0, 0
	got, err := l.MapParallelTo(context.Background(), nil, p, func(done, total int) {
		require.Equal(t, p.Len(), total)
		require.Greater(t, done, last)
		last, calls = done, calls+1
	})
	require.NoError(t, err)
	require.Equal(t, want, got)
	require.Equal(t, p.Len(), last)
	require.Greater(t, calls, 10)
	ctx, cancel := context.WithCancel(context.Background())
	var n atomic.Int64
	_, err = l.MapParallelTo(ctx, nil, p, func(int, int) { n.Add(1); cancel() })
	require.ErrorIs(t, err, context.Canceled)
	require.Less(t, n.Load(), int64(10))
	_, err = l.MapParallelTo(context.Background(), nil, mustGrid(t, Bed{Z: 3, Length: 1, Width: 1}), nil)
	require.ErrorIs(t, err, ErrRange)
}

// 500 fixtures on 200,000 points: steps of progress that end at the whole, and
// an end soon after the context's.
func TestALargeMapShowsProgressAndCanBeCancelled(t *testing.T) {
	bed := Bed{Length: 50, Width: 20}
	layout, err := Rows(Fixture{Light: cosine(t, 900, 1)}, bed, 2, 25, 20)
	require.NoError(t, err)
	require.Len(t, layout, 500)
	l, err := NewLights(layout...)
	require.NoError(t, err)
	p, err := bed.Grid(500, 400)
	require.NoError(t, err)
	dst := make([]float64, p.Len())
	var steps []int
	_, err = l.MapParallelTo(context.Background(), dst, p, func(done, total int) {
		require.Equal(t, 200_000, total)
		steps = append(steps, done)
	})
	require.NoError(t, err)
	require.Greater(t, len(steps), 50)
	require.Less(t, len(steps), 150)
	require.True(t, slices.IsSorted(steps))
	require.Equal(t, 200_000, steps[len(steps)-1])
	for _, v := range dst {
		require.Positive(t, v)
	}
	ctx, cancel := context.WithCancel(context.Background())
	last := 0
	_, err = l.MapParallelTo(ctx, dst, p, func(done, _ int) {
		last = done
		if done > 20_000 {
			cancel()
		}
	})
	require.ErrorIs(t, err, context.Canceled)
	require.Less(t, last, 20_000+2000+block*runtime.GOMAXPROCS(0)*2, "no further than the blocks under way")
	ctx, cancel = context.WithDeadline(context.Background(), time.Now().Add(-time.Second))
	defer cancel()
	_, err = l.MapParallelTo(ctx, dst, p, nil)
	require.ErrorIs(t, err, context.DeadlineExceeded)
}
