package check

import (
	"encoding/csv"
	"os"
	"path/filepath"
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
