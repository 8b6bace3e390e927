package reference

import (
	"bytes"
	"flag"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/page"
)

var update = flag.Bool("update", false, "write the package comments anew")

// The package comments that the pages show are those of the packages.
func TestCommentsAreCurrent(t *testing.T) {
	for _, pkg := range Packages {
		parts := []string{"../../../" + pkg + "/doc.go"}
		more, err := filepath.Glob("../../../" + pkg + "/doc_*.go") // by name, as the documentation has them
		require.NoError(t, err)
		var text []string
		for _, part := range append(parts, more...) {
			tree, err := parser.ParseFile(token.NewFileSet(), part, nil, parser.ParseComments|parser.PackageClauseOnly)
			require.NoError(t, err)
			text = append(text, tree.Doc.Text())
		}
		comment := strings.Join(text, "\n")
		file := "docs/" + pkg + ".txt"
		if *update {
			require.NoError(t, os.WriteFile(file, []byte(comment), 0o644))
		}
		held, err := os.ReadFile(file)
		require.NoError(t, err)
		require.Equal(t, comment, string(held), "go test ./examples/internal/reference -update writes it anew")
	}
}

func TestPages(t *testing.T) {
	names := []string{"index.html"}
	for _, g := range Pages() {
		names = append(names, g.Name+".html")
	}
	for _, g := range Pages() {
		var b bytes.Buffer
		require.NoError(t, g.WriteHTML(&b))
		require.NoError(t, page.Check(b.Bytes(), names...), g.Name)
		found, ok := Find(g.Name)
		require.True(t, ok)
		require.Equal(t, g.Title, found.Title)
	}
	_, ok := Find("checks-nothing")
	require.False(t, ok)
}

// Every package has its table of functions and its checks; a suspect row says
// why and what is right.
func TestRecordsAreWhole(t *testing.T) {
	for _, part := range parts {
		checks, err := Checks(part)
		require.NoError(t, err)
		require.NotEmpty(t, checks)
		for _, c := range checks {
			require.NotEmpty(t, c.Source(), c.Where)
			require.NotEmpty(t, c.Printed, c.Where)
			require.NotEmpty(t, c.Test, c.Where)
			require.NotEmpty(t, c.Seen, c.Where)
			if c.Verdict == "suspect" {
				require.NotEmpty(t, c.Reason, c.Where)
				require.NotEmpty(t, c.Right, c.Where)
			}
		}
	}
	for _, pkg := range Packages {
		all, err := sections(pkg)
		require.NoError(t, err)
		tables := 0
		for _, s := range all {
			if tabled(s) {
				tables++
			}
		}
		require.NotZero(t, tables, pkg)
	}
}

func TestSource(t *testing.T) {
	for where, want := range map[string]string{
		"HoF17.ch1.Table3/25C": "HoF17", "Vanthoor11 table 1/ppm": "Vanthoor11", "fuels.csv/wood/ash": "table fuels.csv",
		"from memory/BimschV10/oil": "from memory", "ideal gas, mg/m³": "ideal gas", "pvlib.test_physical/45": "pvlib",
	} {
		require.Equal(t, want, Check{Where: where}.Source())
	}
}

// A row goes on in lines that begin with a blank, and a cell may end one blank
// before the next head.
func TestTable(t *testing.T) {
	head, rows, err := table("function    equation  range    accuracy  check\nOne, Two,   eq. 1     0 to 1 m exact     by hand,\n and Three                       here      a book\nFour        none      any      1 %       laws\n")
	require.NoError(t, err)
	require.Equal(t, columns, head)
	require.Equal(t, [][]string{{"One, Two, and Three", "eq. 1", "0 to 1 m", "exact here", "by hand, a book"}, {"Four", "none", "any", "1 %", "laws"}}, rows)
	_, _, err = table("function    equation  range    accuracy  check\nOne, Two, Three, Four eq. 1  exact  by hand\n")
	require.ErrorContains(t, err, "does not stand under its heads")
	_, rows, err = table("km    a\n")
	require.NoError(t, err)
	require.Nil(t, rows)
}
