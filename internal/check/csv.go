package check

import (
	"encoding/csv"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"testing"
)

// CSV returns the rows of testdata/name, its comment lines left out.
func CSV(t testing.TB, name string) [][]string {
	t.Helper()
	file, err := os.Open(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	r := csv.NewReader(file)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

// Numbers returns the rows of testdata/name, which holds nothing but numbers.
func Numbers(t testing.TB, name string) [][]float64 {
	t.Helper()
	text := CSV(t, name)
	rows := make([][]float64, len(text))
	for i, cells := range text {
		rows[i] = Floats(t, cells)
	}
	return rows
}

// Floats returns the numbers that the cells hold; an empty cell is NaN.
func Floats(t testing.TB, cells []string) []float64 {
	t.Helper()
	v := make([]float64, len(cells))
	for i, s := range cells {
		if s == "" {
			v[i] = math.NaN()
			continue
		}
		var err error
		if v[i], err = strconv.ParseFloat(s, 64); err != nil {
			t.Fatal(err)
		}
	}
	return v
}
