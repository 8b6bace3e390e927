package main

import (
	"context"
	"fmt"
	"io"
	"sync"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/plan"
)

// years solves the house and each of the changed houses over the same hours, two at
// a time, and names on progress what is done; then the changes that the house's own
// heat asks for. Those are told apart by their codes.
func (h *house) years(ctx context.Context, p plan.Filled, trials []answers.Change, progress io.Writer) (*trialYears, error) {
	r := &trialYears{trials: trials, tried: make([]tried, len(trials))}
	var fault error
	spread(atATime, len(trials)+1, func(i int) {
		if i == 0 {
			r.own, fault = h.solve(ctx)
			r.say(progress, "the house as it is")
			return
		}
		r.try(ctx, h, i-1, progress)
	})
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if fault != nil || len(trials) == 0 {
		return r, fault
	}
	cooling, err := r.cooling(ctx, h, p)
	if err != nil {
		return nil, err
	}
	r.trials = append(r.trials, cooling...)
	r.tried = append(r.tried, make([]tried, len(cooling))...)
	spread(atATime, len(cooling), func(i int) { r.try(ctx, h, len(trials)+i, progress) })
	return r, ctx.Err()
}

// trialYears are the house's year and those of the changed houses.
type trialYears struct {
	own    *year
	trials []answers.Change
	tried  []tried
	vents  *hotVents
	saying sync.Mutex
}

func (r *trialYears) say(progress io.Writer, name string) {
	r.saying.Lock()
	fmt.Fprintf(progress, "done: %s\n", name)
	r.saying.Unlock()
}

// atATime is how many houses are solved at a time.
const atATime = 2

// spread does what is to be done, so many at a time.
func spread(workers, n int, do func(i int)) {
	next := make(chan int)
	var all sync.WaitGroup
	for range workers {
		all.Go(func() {
			for i := range next {
				do(i)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	all.Wait()
}

// try solves the house of trial i.
func (r *trialYears) try(ctx context.Context, h *house, i int, progress io.Writer) {
	if r.trials[i].WhyNot == "" {
		r.tried[i] = h.try(ctx, r.trials[i])
	}
	r.say(progress, r.trials[i].Name)
}
