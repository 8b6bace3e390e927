package main

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/golden"
)

// ones is one line that does not end.
type ones struct{}

func (ones) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '1'
	}
	return len(p), nil
}

// Whatever is handed in as weather or plan, a wrong file ends in one line of
// error, at once.
func TestHostileInput(t *testing.T) {
	huge := filepath.Join(t.TempDir(), "huge.csv")
	require.NoError(t, os.WriteFile(huge, []byte("time,temperature_c\n"), 0o644))
	if err := os.Truncate(huge, 16<<30); err != nil {
		huge = "" // this file system has no files with holes
	}
	for name, c := range map[string]struct {
		args []string
		in   io.Reader
	}{
		"a line without an end":    {[]string{"-weather", "-"}, ones{}},
		"a plan without an end":    {[]string{"-plan", "-"}, ones{}},
		"changes without an end":   {[]string{"-weather", "-", "-lines"}, ones{}},
		"16 GB of zeros":           {[]string{"-weather", huge}, strings.NewReader("")},
		"16 GB of zeros as a plan": {[]string{"-plan", huge}, strings.NewReader("")},
		"binary":                   {[]string{"-weather", "-"}, strings.NewReader("\x7fELF\x02\x01\x01\x00")},
		"UTF-16":                   {[]string{"-weather", "-"}, strings.NewReader("\xff\xfet\x00i\x00m\x00e\x00")},
		"a spreadsheet":            {[]string{"-weather", "-"}, strings.NewReader("PK\x03\x04xl/workbook.xml")},
		"nothing":                  {[]string{"-weather", "-"}, strings.NewReader("")},
		"a folder":                 {[]string{"-weather", t.TempDir()}, strings.NewReader("")},
		"a device":                 {[]string{"-weather", "/dev/zero"}, strings.NewReader("")},
	} {
		t.Run(name, func(t *testing.T) {
			if c.args[1] == "" {
				t.Skip("no file with holes")
			}
			begun := time.Now()
			golden.Refuse(t, func(args []string, out, problems io.Writer) int {
				return run(args, c.in, out, problems)
			}, c.args)
			require.Less(t, time.Since(begun), 20*time.Second) // for a machine under load
		})
	}
}

// A line of -lines that does not end is told, and ends the answers.
func TestALineWithoutAnEnd(t *testing.T) {
	var out, problems bytes.Buffer
	run([]string{"-lines", "-weather", weatherFile(t, part(t, "02-04", 1))}, ones{}, &out, &problems)
	require.Contains(t, out.String()+problems.String(), "no end within")
}
