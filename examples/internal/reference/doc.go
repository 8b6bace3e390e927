// Package reference makes the pages that show what the library's own records
// say: every published value that the tests compare, and for each package its
// functions by question, its accuracies and its known departures, drawn from
// the package comments.
//
// The records stand in checks and docs. Tests write and hold them:
//
//	go test ./psychro ./envelope ./airheat ./lighting ./ventilation ./internal/sun ./internal/atmosphere -update-checks
//	go test ./examples/internal/reference -update
package reference

import (
	"embed"
	"encoding/csv"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"cloche.example/internal/check"
)

//go:embed checks/*.csv docs/*.txt
var records embed.FS

// Packages are those with a page.
var Packages = []string{"psychro", "envelope", "airheat", "lighting", "ventilation"}

// parts are where checks run: the packages, and what several of them share.
var parts = slices.Concat(Packages, []string{"sun", "atmosphere"})

// Check is one value that a test compared.
type Check struct {
	Part                                 string // where the test stands
	Where                                string // source and place
	Test, Inputs, Printed, Ours, Allowed string
	Verdict                              string
	Reason                               string // for a wide tolerance, or why the printed value is held to be wrong
	Right                                string // of a suspect row: what the source should print
	Seen                                 string // how the value was seen, in the words of check.Seen
	Words                                string // the source of a data table's cell; empty for a row, which names its source in Where
}

// Checks returns all checks of a part.
func Checks(part string) ([]Check, error) {
	file, err := records.Open("checks/" + part + ".csv")
	if err != nil {
		return nil, err
	}
	defer file.Close()
	rows, err := csv.NewReader(file).ReadAll()
	if err != nil {
		return nil, err
	}
	if len(rows) == 0 || !slices.Equal(rows[0], check.Columns) {
		return nil, fmt.Errorf("checks of %s: other columns than %v", part, check.Columns)
	}
	checks := make([]Check, len(rows)-1)
	for i, r := range rows[1:] {
		checks[i] = Check{part, r[0], r[1], r[2], r[3], r[4], r[5], r[6], r[7], r[8], r[9], r[10]}
	}
	return checks, nil
}

// Source returns the key or the words that name the source of a check: "HoF17"
// of "HoF17.ch1.Table3/25C".
func (c Check) Source() string {
	source, _, _ := strings.Cut(c.Where, "/")
	if strings.HasSuffix(source, ".csv") {
		return "table " + source
	}
	if key := keyed.FindString(source); key != "" {
		return key
	}
	source, _, _ = strings.Cut(source, ", ")
	source, _, _ = strings.Cut(source, ".")
	return source
}

// keyed finds a source key: a name and the year, or a standard's number.
var keyed = regexp.MustCompile(`^[A-Z][A-Za-z_]+[0-9]{2,5}[a-z]?\b`)
