package repo

import (
	"encoding/csv"
	"flag"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/internal/check"
)

var update = flag.Bool("update", false, "rewrite the recorded surface, and lower the recorded limits to what is there")

// TestLimits holds each package to the limits in testdata/limits.csv, one
// column a measure. A limit is lowered by -update and raised by hand, with the
// reason in the change that does so.
func TestLimits(t *testing.T) {
	const file = "testdata/limits.csv"
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	table, err := csv.NewReader(strings.NewReader(string(text))).ReadAll()
	require.NoError(t, err)
	all := loaded(t)
	said := &comments{map[string]string{}, map[string]string{}}
	for _, s := range all {
		said.add(s)
	}
	used, err := uses(root)
	require.NoError(t, err)
	require.Len(t, table, len(all)+1)
	reasons := map[string]string{}
	for _, row := range check.CSV(t, "unstated.csv")[1:] {
		reasons[row[0]] = row[1]
	}
	for i, s := range all {
		row := table[i+1]
		require.Equal(t, s.name, row[0])
		_, methods := functions(s)
		names := make([]string, len(methods))
		for i, m := range methods {
			names[i] = declared(m)
		}
		for j, measure := range []struct {
			name   string
			faults []string
			list   bool
		}{
			{"identifiers", identifiers(s), false},
			{"methods", names, false},
			{"unshown", unshown(s, used), true},
			{"unstated", excused(s, unstated(s, said), reasons), true},
			{"rows", rows(s), true},
			{"variables", variables(s), true},
			{"pointers", pointerMethods(s), true},
			{"enums", silentEnums(s), true},
			{"clashes", clashes(s, all), true},
		} {
			t.Run(s.name+"/"+measure.name, func(t *testing.T) {
				require.Equal(t, measure.name, table[0][j+1])
				limit, err := strconv.Atoi(row[j+1])
				require.NoError(t, err)
				n := len(measure.faults)
				if *update {
					row[j+1] = strconv.Itoa(min(n, limit))
				}
				list := ""
				if measure.list && n > 0 {
					list = ":\n" + strings.Join(measure.faults, "\n")
				}
				if n > limit {
					t.Errorf("%d, at most %d%s", n, limit, list)
				} else {
					t.Logf("%d of %d%s", n, limit, list)
				}
			})
		}
	}
	if *update {
		out := &strings.Builder{}
		require.NoError(t, csv.NewWriter(out).WriteAll(table))
		require.NoError(t, os.WriteFile(file, []byte(out.String()), 0o600))
	}
}
