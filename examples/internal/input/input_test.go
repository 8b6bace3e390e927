package input_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/input"
)

// endless never ends.
type endless struct {
	byte
	read int
}

func (e *endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = e.byte
	}
	e.read += len(p)
	return len(p), nil
}

func TestTextOfAFileAndOfStandardInput(t *testing.T) {
	name := filepath.Join(t.TempDir(), "a.txt")
	require.NoError(t, os.WriteFile(name, []byte("\xef\xbb\xbfµ\r\nb"), 0o600))
	text, err := input.Text(name, nil, 100)
	require.NoError(t, err)
	require.Equal(t, "µ\r\nb", string(text), "the byte-order mark is dropped, line ends stay")
	text, err = input.Text("-", strings.NewReader("c"), 1)
	require.NoError(t, err)
	require.Equal(t, "c", string(text))
	_, err = input.Text("-", strings.NewReader("cc"), 1)
	require.EqualError(t, err, "standard input: it is longer than 1 bytes")
}

func TestOnlyRegularFilesAreOpened(t *testing.T) {
	dir := t.TempDir()
	_, err := input.Text(dir, nil, 100)
	require.EqualError(t, err, dir+" is a folder, not a file")
	_, err = input.Text(filepath.Join(dir, "none"), nil, 100)
	require.ErrorIs(t, err, os.ErrNotExist)
	if _, err := os.Stat("/dev/zero"); err == nil {
		_, err = input.Text("/dev/zero", nil, 100)
		require.EqualError(t, err, "/dev/zero is a pipe or a device, not a file; - reads standard input")
	}
}

func TestForeignDataIsNamed(t *testing.T) {
	for text, want := range map[string]string{
		"\x1f\x8b\x08rest":     "it is compressed with gzip; unpack it first",
		"PK\x03\x04rest":       "it is a zip archive or a spreadsheet, not text",
		"%PDF-1.7":             "it is a PDF document, not text",
		"\xff\xfe{\x00}\x00":   "it is text in UTF-16; save it as UTF-8",
		"\xfe\xff\x00{\x00}":   "it is text in UTF-16; save it as UTF-8",
		"{\x00\"\x00a\x00":     "it is text in UTF-16; save it as UTF-8",
		"\x00{\x00\"":          "it is text in UTF-16; save it as UTF-8",
		"ab\x00\x00\x00":       "it is binary data, not text",
		"a\nb\xff":             "line 2: the text is not UTF-8; save it as UTF-8",
		"a\n\n\x1b[31m":        "line 3: a control character stands in the text",
		"a\u202eb":             "line 1: a control character stands in the text",
		"a\u0085b":             "line 1: a control character stands in the text",
		"a\nb" + "\x7f" + "\n": "line 2: a control character stands in the text",
	} {
		_, err := input.All(strings.NewReader(text), 1000)
		require.EqualError(t, err, want, "%q", text)
		_, err = input.Clean([]byte(text))
		require.EqualError(t, err, want, "%q", text)
	}
}

func TestEndlessDataEndsAtTheLimit(t *testing.T) {
	for b, want := range map[byte]string{'x': "it is longer than 1 MiB", 0: "it is binary data, not text"} {
		e := &endless{byte: b}
		_, err := input.All(e, 1<<20)
		require.EqualError(t, err, want)
		require.Less(t, e.read, 4<<20)
	}
}

func TestAnErrorOfReadingComesThrough(t *testing.T) {
	broken := errors.New("unplugged")
	_, err := input.All(iotest.ErrReader(broken), 10)
	require.ErrorIs(t, err, broken)
	for _, err := range input.Lines(iotest.ErrReader(broken), 10) {
		require.ErrorIs(t, err, broken)
		require.EqualError(t, err, "line 1: unplugged")
	}
}

// gather goes through all lines.
func gather(text string, most int) (lines []string, numbers []int, faults []string) {
	for line, err := range input.Lines(strings.NewReader(text), most) {
		numbers = append(numbers, line.Number)
		lines = append(lines, string(line.Text))
		if err != nil {
			faults = append(faults, err.Error())
		}
	}
	return lines, numbers, faults
}

func TestLinesGoOnAfterAFault(t *testing.T) {
	long := strings.Repeat("x", 5000)
	lines, numbers, faults := gather("\xef\xbb\xbfone\r\n"+long+"\n\xff\nthree\x01\n\nlast", 1000)
	require.Equal(t, []string{"one", "", "", "", "", "last"}, lines)
	require.Equal(t, []int{1, 2, 3, 4, 5, 6}, numbers)
	require.Equal(t, []string{"line 2 is longer than 1000 bytes", "line 3: the text is not UTF-8; save it as UTF-8",
		"line 4: a control character stands in the text"}, faults)
}

func TestLinesAtTheLimit(t *testing.T) {
	for _, end := range []string{"", "\n", "\r\n"} {
		lines, _, faults := gather(strings.Repeat("x", 2000)+end, 2000)
		require.Empty(t, faults)
		require.Len(t, lines, 1)
		_, _, faults = gather(strings.Repeat("x", 2001)+end, 2000)
		require.Equal(t, []string{"line 1 is longer than 2000 bytes"}, faults)
	}
}

func TestLinesOfNothing(t *testing.T) {
	lines, _, faults := gather("", 10)
	require.Empty(t, lines)
	require.Empty(t, faults)
}

func TestALineWithoutEndEnds(t *testing.T) {
	e := &endless{byte: 'x'}
	faults := 0
	for _, err := range input.Lines(e, 1<<16) {
		require.EqualError(t, err, "line 1: it has no end within 64 MiB")
		faults++
	}
	require.Equal(t, 1, faults)
	require.Less(t, e.read, 66<<20)
	for _, err := range input.Lines(&endless{}, 1<<16) {
		require.EqualError(t, err, "line 1: the data is binary data, not text")
	}
}

func FuzzLines(f *testing.F) {
	for _, s := range []string{"", "a\nb", "\xef\xbb\xbfa\r\n", "\xff\n\x00", "{\x00", strings.Repeat("y", 1100)} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		last := 0
		for line, err := range input.Lines(bytes.NewReader(text), 64) {
			require.Equal(t, last+1, line.Number)
			last = line.Number
			require.LessOrEqual(t, len(line.Text), 64)
			require.False(t, err != nil && line.Text != nil)
		}
		if clean, err := input.All(bytes.NewReader(text), 64); err == nil {
			again, err := input.Clean(clean)
			require.NoError(t, err)
			require.Equal(t, clean, again)
		}
	})
}
