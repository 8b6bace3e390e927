package weather

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"errors"
	"fmt"
	"io"

	"cloche.example/examples/internal/input"
)

// Bounds of a file.
const (
	longestLine = 16 << 10 // bytes
	mostBytes   = 16 << 20 // after decompression
	mostHours   = 8784
	mostHeader  = 200 // lines before the first hour
	mostEmpty   = 200 // empty lines
	mostLines   = 10_000
)

// Options are what a file may leave open.
type Options struct {
	Fill bool     // fill gaps of at most 3 hours, in a straight line
	Site *Site    // used where the file names none; nil refuses such files
	Zone *float64 // h, -12 to 14; local standard time ahead of UTC for files in UTC; nil takes the whole hour nearest to the longitude
}

// Read reads a file of hourly weather. The error names every fault by its
// line, the first 20 of them; a series comes only without one. Work and memory
// are bounded whatever the reader yields, so long as it yields.
func Read(r io.Reader, o Options) (*Series, error) {
	in := bufio.NewReaderSize(r, 64<<10)
	var text io.Reader = in
	if magic, _ := in.Peek(2); bytes.Equal(magic, []byte{0x1f, 0x8b}) {
		z, err := gzip.NewReader(in)
		if err != nil {
			return nil, fmt.Errorf("the compressed data cannot be read: %w", err)
		}
		text = z
	}
	f := new(faults)
	t, err := parse(&bounded{text, mostBytes}, f)
	if err != nil {
		f.file(err)
		return nil, f.err()
	}
	return finish(t, o, f)
}

// bounded ends with an error, not with an end of file, after some bytes.
type bounded struct {
	r    io.Reader
	left int
}

func (b *bounded) Read(p []byte) (int, error) {
	if b.left <= 0 {
		return 0, fmt.Errorf("the file is longer than %d MiB", mostBytes>>20)
	}
	n, err := b.r.Read(p[:min(len(p), b.left)])
	b.left -= n
	return n, err
}

// parser takes a file's lines one by one.
type parser interface {
	line(number int, text []byte) error // an error ends the file
	table() (*table, error)
}

// table is a file as it was written, in the units of Series.
type table struct {
	format   Format
	site     *Site
	source   string
	typical  bool
	year     int64        // s, of the nominal year of a typical one
	utc      bool         // stamps are UTC
	named    map[int]bool // lines with a fault that may have cost them a value
	offset   float64      // h from the stamp to the instant for which radiation stands, of PVGIS
	noOffset bool
	readings readAt
	headers  [columns]string // as the file names them, "" where it has no such column
	stamp    []int64         // s since 1970 of the start of the hour, by the clock of the file
	line     []int
	col      [columns][]float64
	negative int
}

// readAt says what the state in a row is.
type readAt uint8

const (
	meanOfHour readAt = iota
	atStart
	atEnd
)

var errUnknown = errors.New("this is no weather file known here; known are Cloche's own CSV (a line with the names of the columns, such as time,temperature_c,relative_humidity,global_w_m2), " +
	"TMY3 (second line \"Date (MM/DD/YYYY),Time (HH:MM),...\", or an excerpt with the columns month,day,hour_ending,dry_bulb_c,...) and the PVGIS typical year as CSV (first line \"Latitude (decimal degrees): ...\")")

// parse goes through the lines.
func parse(r io.Reader, f *faults) (*table, error) {
	var p parser
	var first []byte
	firstNumber, empty := 0, 0
	for line, err := range input.Lines(r, longestLine) {
		if err != nil {
			return nil, err
		}
		if line.Number > mostLines {
			return nil, fmt.Errorf("the file has more than %d lines", mostLines)
		}
		blank := len(bytes.TrimSpace(line.Text)) == 0
		if blank {
			if empty++; empty > mostEmpty {
				return nil, fmt.Errorf("line %d: more than %d empty lines", line.Number, mostEmpty)
			}
		}
		switch {
		case p != nil:
			if err := p.line(line.Number, line.Text); err != nil {
				return nil, fmt.Errorf("line %d: %w", line.Number, err)
			}
			continue
		case blank:
			continue
		case first == nil && isPVGIS(line.Text):
			p = newPVGIS(f)
		case first == nil && isExcerpt(line.Text):
			p = newExcerpt(f)
		case first == nil && isCloche(line.Text):
			p = newCloche(f)
		case first == nil:
			first, firstNumber = bytes.Clone(line.Text), line.Number
			continue
		case isTMY3(line.Text):
			p = newTMY3(f)
			if err := p.line(firstNumber, first); err != nil {
				return nil, fmt.Errorf("line %d: %w", firstNumber, err)
			}
		default:
			return nil, errUnknown
		}
		if err := p.line(line.Number, line.Text); err != nil {
			return nil, fmt.Errorf("line %d: %w", line.Number, err)
		}
	}
	if p == nil {
		if first == nil {
			return nil, errors.New("the file is empty")
		}
		return nil, errUnknown
	}
	return p.table()
}

// row adds an hour to the table.
func (t *table) row(number int, stamp int64, cells [][]byte, where []int, names []header, f *faults) error {
	if len(t.stamp) == mostHours {
		return fmt.Errorf("the file has more than the %d hours of a leap year", mostHours)
	}
	t.stamp = append(t.stamp, stamp)
	t.line = append(t.line, number)
	for c := range columns {
		t.col[c] = append(t.col[c], missing)
	}
	last := len(t.stamp) - 1
	for i, h := range names {
		v, err := h.value(cells[where[i]], &t.negative)
		if err != nil {
			f.add(number, err)
		}
		t.col[h.col][last] = v
	}
	return nil
}
