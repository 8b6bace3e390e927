package program

import (
	"context"
	"fmt"
	"io"
	"time"
)

// Meter tells where a person watches how far a long computation has come. It
// says nothing in its first second. It is for one goroutine at a time.
type Meter struct {
	to    io.Writer
	what  string
	begun time.Time
	last  time.Time
}

// How often it tells.
const (
	quiet = time.Second
	pause = 200 * time.Millisecond
)

// NewMeter returns the meter of what is done, told to problems where that is a
// terminal.
func NewMeter(problems io.Writer, what string) *Meter {
	return &Meter{to: Progress(problems), what: what, begun: time.Now()}
}

// At says which share is done, a fraction from 0 to 1.
func (m *Meter) At(share float64) {
	now := time.Now()
	if now.Sub(m.begun) < quiet || now.Sub(m.last) < pause {
		return
	}
	m.last = now
	fmt.Fprintf(m.to, "\r%s: %3.0f %%", m.what, 100*share)
}

// still says that the work goes on, and for how long it has.
func (m *Meter) still() {
	m.last = time.Now()
	fmt.Fprintf(m.to, "\r%s: %.0f s", m.what, m.last.Sub(m.begun).Seconds())
}

// Done takes the line away again.
func (m *Meter) Done() {
	if !m.last.IsZero() {
		fmt.Fprint(m.to, "\r\033[K")
	}
}

// Wait does work that cannot tell how far it is, and says on the meter for how long
// it has gone on. When the context ends first, its error is returned at once and
// the work left to itself: only a program that is about to end may do so.
func Wait(ctx context.Context, m *Meter, work func() error) error {
	done := make(chan error, 1)
	go func() { done <- work() }()
	tick := time.NewTicker(quiet)
	defer tick.Stop()
	for {
		select {
		case err := <-done:
			return err
		case <-ctx.Done():
			return ctx.Err()
		case <-tick.C:
			m.still()
		}
	}
}
