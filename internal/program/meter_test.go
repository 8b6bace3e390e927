package program

import (
	"bytes"
	"context"
	"io"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestMeter(t *testing.T) {
	var b bytes.Buffer
	m := NewMeter(&b, "maps")
	m.begun = m.begun.Add(-time.Minute)
	m.At(0.5)
	m.Done()
	require.Empty(t, b.String(), "a buffer is no terminal")
	m = &Meter{to: &b, what: "maps", begun: time.Now().Add(-time.Minute)}
	m.At(0.5)
	m.At(0.6) // too soon
	require.Equal(t, "\rmaps:  50 %", b.String())
	m.Done()
	require.Equal(t, "\rmaps:  50 %\r\033[K", b.String())
	b.Reset()
	m.still()
	require.Equal(t, "\rmaps: 60 s", b.String())
	b.Reset()
	m = &Meter{to: &b, what: "maps", begun: time.Now()}
	m.At(0.1)
	m.Done()
	require.Empty(t, b.String(), "short work tells nothing")
}

func TestWait(t *testing.T) {
	m := NewMeter(io.Discard, "")
	require.NoError(t, Wait(t.Context(), m, func() error { return nil }))
	require.ErrorIs(t, Wait(t.Context(), m, func() error { return io.EOF }), io.EOF)
	ctx, cancel := context.WithCancel(t.Context())
	forever := make(chan struct{})
	go cancel()
	require.ErrorIs(t, Wait(ctx, m, func() error { <-forever; return nil }), context.Canceled)
	close(forever)
}
