package program

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestProgressIsForTerminals(t *testing.T) {
	file, err := os.Create(filepath.Join(t.TempDir(), "log"))
	require.NoError(t, err)
	defer file.Close()
	none, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0)
	require.NoError(t, err)
	defer none.Close()
	for _, w := range []io.Writer{new(bytes.Buffer), file, none} {
		require.Equal(t, io.Discard, Progress(w))
	}
	terminal, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0)
	if err != nil {
		t.Skip("no terminal to be had: ", err)
	}
	defer terminal.Close()
	require.Equal(t, io.Writer(terminal), Progress(terminal))
}
