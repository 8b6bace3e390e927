//go:build unix

package input_test

import (
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/input"
)

func TestAPipeThatNobodyWritesToIsRefused(t *testing.T) {
	name := filepath.Join(t.TempDir(), "pipe")
	if err := syscall.Mkfifo(name, 0o600); err != nil {
		t.Skip("this system has no named pipes:", err)
	}
	done := make(chan error, 1)
	go func() {
		_, err := input.Text(name, nil, 100)
		done <- err
	}()
	select {
	case err := <-done:
		require.EqualError(t, err, name+" is a pipe or a device, not a file; - reads standard input")
	case <-time.After(10 * time.Second):
		t.Fatal("it waits for somebody to write")
	}
}
