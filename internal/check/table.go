package check

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"testing"
)

// Line is one row of a data table as the library holds it.
type Line struct {
	Name  string
	Cells []float64 // in the order of the record's columns; NaN where a cell has no value
}

// Table compares every cell of a data table with its record, testdata/name: a
// CSV whose first column is the row's name, whose last is the source of its
// cells, "from memory" for one that was recalled, and whose columns between are
// the cells. The header names columns and units.
//
// A cell of the record is the number as the table holds it, and behind an
// equals sign what the source prints, times the size of its unit where that is
// another: 1.5, 3.52=0.62*5.678263, 0.004=4*1e-3. It is empty for NaN.
func Table(t *testing.T, name string, table []Line) {
	t.Helper()
	rows := CSV(t, name)
	faults := compare(rows, table)
	for _, err := range faults {
		t.Error(err)
	}
	if len(faults) == 0 {
		recordTable(t.Name(), name, rows, table)
	}
}

// compare lists what differs between a record and a table.
func compare(record [][]string, table []Line) (faults []error) {
	fault := func(format string, a ...any) { faults = append(faults, fmt.Errorf(format, a...)) }
	if len(record) < 2 || len(record[0]) < 3 {
		fault("the record is empty")
		return faults
	}
	header := record[0]
	rows := map[string][]string{}
	for _, r := range record[1:] {
		if rows[r[0]] != nil {
			fault("%s stands twice in the record", r[0])
		}
		if strings.TrimSpace(r[len(r)-1]) == "" {
			fault("%s: the record names no source", r[0])
		}
		rows[r[0]] = r
	}
	for _, l := range table {
		r := rows[l.Name]
		if r == nil || len(l.Cells) != len(header)-2 {
			fault("%s: %d cells, which the record does not have", l.Name, len(l.Cells))
			continue
		}
		delete(rows, l.Name)
		for i, got := range l.Cells {
			if err := cell(r[i+1], got); err != nil {
				fault("%s, %s: %w", l.Name, header[i+1], err)
			}
		}
	}
	for name := range rows {
		fault("%s: recorded, and not in the table", name)
	}
	return faults
}

// cell compares one number with its record.
func cell(record string, got float64) error {
	held, printed, converted := strings.Cut(record, "=")
	if held == "" {
		if !math.IsNaN(got) {
			return fmt.Errorf("%g, and the record has no value", got)
		}
		return nil
	}
	want, half, err := Parse(held)
	if err != nil {
		return err
	}
	if !(math.Abs(got-want) <= 1e-9*math.Abs(want)) {
		return fmt.Errorf("%g, recorded %s", got, held)
	}
	if !converted {
		return nil
	}
	product := 1.0
	for f := range strings.SplitSeq(printed, "*") {
		v, err := strconv.ParseFloat(strings.TrimSpace(f), 64)
		if err != nil {
			return err
		}
		product *= v
	}
	if !(math.Abs(product-want) <= half*(1+1e-9)) {
		return fmt.Errorf("%s recorded as %s, which gives %g", held, printed, product)
	}
	return nil
}

// recordTable records the cells of a table that agrees with its record.
func recordTable(test, name string, rows [][]string, table []Line) {
	held := map[string][]string{}
	for _, r := range rows[1:] {
		held[r[0]] = r
	}
	for _, l := range table {
		r := held[l.Name]
		source := r[len(r)-1]
		for i, got := range l.Cells {
			if cell := r[i+1]; cell != "" {
				_, half, _ := Parse(strings.SplitN(cell, "=", 2)[0])
				record([]string{name + "/" + l.Name + "/" + rows[0][i+1], test, "", cell, digits(got), digits(half), Agrees, "", "", seenInTable(source).String(), source})
			}
		}
	}
}
