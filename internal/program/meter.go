package program

import (
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

// Done takes the line away again.
func (m *Meter) Done() {
	if !m.last.IsZero() {
		fmt.Fprint(m.to, "\r\033[K")
	}
}
