package input

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"iter"
)

// Line is one line of a text.
type Line struct {
	Number int    // count from 1
	Text   []byte // without its end; valid until the next line is asked for
}

// longestSkip is how far a line that is too long is followed to its end, in
// bytes.
const longestSkip = 64 << 20

// Lines goes through the lines of a text, however many, with memory for one.
// A line that is longer than most bytes, or no plain text, comes with an error,
// and the next line follows. An error of reading, data that is no text at all,
// or a line without an end within 64 MiB ends the text: then the error is the
// last thing that comes. Every error names its line.
func Lines(r io.Reader, most int) iter.Seq2[Line, error] {
	return func(yield func(Line, error) bool) {
		in := bufio.NewReaderSize(r, max(most, 1024)+2) // the line and its end
		for n := 1; ; n++ {
			text, err := in.ReadSlice('\n')
			if n == 1 {
				text = unmark(text)
				if kind := foreign(text); kind != "" {
					yield(Line{Number: n}, fmt.Errorf("line 1: the data is %s", kind))
					return
				}
			}
			if err == io.EOF && len(text) == 0 {
				return
			}
			long := errors.Is(err, bufio.ErrBufferFull)
			if long {
				err = skip(in)
			}
			if err != nil && err != io.EOF {
				yield(Line{Number: n}, fmt.Errorf("line %d: %w", n, err))
				return
			}
			text = bytes.TrimSuffix(bytes.TrimSuffix(text, []byte("\n")), []byte("\r"))
			var fault error
			if long || len(text) > most {
				text, fault = nil, fmt.Errorf("line %d is longer than %s", n, size(most))
			} else if _, bad := flaw(text); bad != nil {
				text, fault = nil, fmt.Errorf("line %d: %w", n, bad)
			}
			if !yield(Line{n, text}, fault) || err == io.EOF {
				return
			}
		}
	}
}

// skip reads to the end of a line that is too long.
func skip(in *bufio.Reader) error {
	for gone := 0; gone < longestSkip; {
		text, err := in.ReadSlice('\n')
		if gone += len(text); !errors.Is(err, bufio.ErrBufferFull) {
			return err
		}
	}
	return fmt.Errorf("it has no end within %s", size(longestSkip))
}
