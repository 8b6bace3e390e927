package figures_test

import (
	"bytes"
	"encoding/csv"
	"go/doc"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/figures"
)

// trimmed drops what the comparison of documentation examples drops.
func trimmed(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strings.TrimRight(lines[i], " ")
	}
	return strings.TrimSpace(strings.Join(lines, "\n"))
}

// examples returns what the documentation examples of a package print, by the
// name of their function.
func examples(t *testing.T, pkg string) map[string]string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", "..", "..", pkg, "example_*_test.go"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	out := map[string]string{}
	for _, file := range files {
		tree, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.ParseComments)
		require.NoError(t, err)
		for _, e := range doc.Examples(tree) {
			out["Example"+e.Name] = trimmed(e.Output)
		}
	}
	return out
}

// The photometric file is that of the documentation examples.
func TestThePhotometricFileIsTheExamples(t *testing.T) {
	ours, err := os.ReadFile(filepath.Join("testdata", "invented_300w.ies"))
	require.NoError(t, err)
	theirs, err := os.ReadFile(filepath.Join("..", "..", "..", "lighting", "testdata", "invented_300w.ies"))
	require.NoError(t, err)
	require.Equal(t, string(theirs), string(ours))
}

// A figure prints the lines of its documentation example, and every
// documentation example has its figure.
func TestFiguresPrintWhatTheExamplesPrint(t *testing.T) {
	of := map[string]string{}
	for _, f := range figures.All() {
		if f.Example != "" {
			require.Empty(t, of[f.Package+"."+f.Example], "%s has two figures", f.Example)
			of[f.Package+"."+f.Example] = f.Name
		}
	}
	without := map[string]string{} // package.Example: why it has no figure
	text, err := os.ReadFile(filepath.Join("testdata", "without.csv"))
	require.NoError(t, err)
	lines := csv.NewReader(bytes.NewReader(text))
	lines.Comment = '#'
	rows, err := lines.ReadAll()
	require.NoError(t, err)
	for _, row := range rows {
		require.Len(t, row, 2)
		require.NotEmpty(t, row[1])
		require.Empty(t, of[row[0]], "%s has a figure", row[0])
		without[row[0]] = row[1]
	}
	for _, pkg := range []string{"psychro", "envelope", "airheat", "lighting", "ventilation"} {
		t.Run(pkg, func(t *testing.T) {
			have := examples(t, pkg)
			for _, f := range figures.All() {
				if f.Package != pkg || f.Example == "" {
					continue
				}
				require.NotEmpty(t, have[f.Example], "%s names %s, which prints nothing", f.Name, f.Example)
				r, err := f.Run(f.Defaults())
				require.NoError(t, err)
				require.Equal(t, have[f.Example], trimmed(strings.Join(r.Lines, "\n")), f.Name)
			}
			for name := range have {
				if of[pkg+"."+name] == "" && without[pkg+"."+name] == "" {
					t.Errorf("package %s: %s has no figure; write one, or give the reason in testdata/without.csv", pkg, name)
				}
			}
		})
	}
}
