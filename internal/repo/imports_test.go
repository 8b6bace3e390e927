package repo

import (
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const (
	root   = "../.."
	module = "cloche.example"
)

// packages are the five that users import.
var packages = []string{"psychro", "envelope", "airheat", "ventilation", "lighting"}

// allowed lists, for each of our packages, which other ones of ours its
// library code and its tests may import. Everything may import internal.
var allowed = map[string][]string{
	"internal":    {},
	"psychro":     {},
	"lighting":    {},
	"envelope":    {"psychro"},
	"airheat":     {"psychro", "envelope"},
	"ventilation": {"psychro", "envelope"},
	"examples":    packages,
}

// testModules may be imported by tests, and drawModules by example programs,
// beyond the standard library and gonum.
var (
	testModules = []string{"github.com/google/go-cmp/", "github.com/stretchr/testify/"}
	drawModules = []string{"gonum.org/v1/plot"}
)

// goFiles returns the Go files below the module's root, by their path from it.
func goFiles(t *testing.T) []string {
	t.Helper()
	var files []string
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == "testdata" || strings.HasPrefix(d.Name(), ".") && d.Name() != ".." && path != root) {
			return fs.SkipDir
		}
		if strings.HasSuffix(path, ".go") {
			rel, err := filepath.Rel(root, path)
			if err != nil {
				return err
			}
			files = append(files, filepath.ToSlash(rel))
		}
		return nil
	})
	require.NoError(t, err)
	require.NotEmpty(t, files)
	return files
}

func TestImportsRunOneWay(t *testing.T) {
	for _, file := range goFiles(t) {
		top, _, _ := strings.Cut(file, "/")
		parsed, err := parser.ParseFile(token.NewFileSet(), filepath.Join(root, file), nil, parser.ImportsOnly)
		require.NoError(t, err)
		mayImport, known := allowed[top]
		require.True(t, known, "%s stands outside the layout", file)
		for _, spec := range parsed.Imports {
			path, err := strconv.Unquote(spec.Path.Value)
			require.NoError(t, err)
			if why := forbidden(file, top, path, mayImport); why != "" {
				t.Errorf("%s imports %s: %s", file, path, why)
			}
		}
	}
}

// forbidden says why the file may not import path, or returns "".
func forbidden(file, top, path string, mayImport []string) string {
	first, rest, _ := strings.Cut(path, "/")
	if first == module {
		target, _, _ := strings.Cut(rest, "/")
		if target == "internal" || target == top {
			return ""
		}
		for _, m := range mayImport {
			if target == m {
				return ""
			}
		}
		return "imports run internal -> psychro -> envelope -> {airheat, ventilation}; lighting needs internal alone"
	}
	if !strings.Contains(first, ".") || strings.HasPrefix(path, "gonum.org/v1/gonum/") {
		return ""
	}
	extra := []string{}
	if strings.HasSuffix(file, "_test.go") {
		extra = append(extra, testModules...)
	}
	if top == "examples" {
		extra = append(extra, drawModules...)
	}
	for _, m := range extra {
		if strings.HasPrefix(path+"/", m) || strings.HasPrefix(path, m) {
			return ""
		}
	}
	return "the design allows no such module here"
}

func TestForbiddenKnowsTheArrows(t *testing.T) {
	require.Empty(t, forbidden("envelope/a.go", "envelope", "cloche.example/psychro", allowed["envelope"]))
	require.Empty(t, forbidden("psychro/a.go", "psychro", "cloche.example/internal/domain", nil))
	require.NotEmpty(t, forbidden("psychro/a.go", "psychro", "cloche.example/envelope", allowed["psychro"]))
	require.NotEmpty(t, forbidden("lighting/a.go", "lighting", "cloche.example/psychro", allowed["lighting"]))
	require.Empty(t, forbidden("airheat/a.go", "airheat", "cloche.example/envelope", allowed["airheat"]))
	require.Empty(t, forbidden("ventilation/a.go", "ventilation", "cloche.example/envelope", allowed["ventilation"]))
	require.NotEmpty(t, forbidden("ventilation/a.go", "ventilation", "cloche.example/airheat", allowed["ventilation"]))
	require.NotEmpty(t, forbidden("envelope/a.go", "envelope", "cloche.example/airheat", allowed["envelope"]))
	require.NotEmpty(t, forbidden("internal/x/a.go", "internal", "cloche.example/psychro", allowed["internal"]))
	require.NotEmpty(t, forbidden("lighting/a.go", "lighting", "gonum.org/v1/plot", nil))
	require.NotEmpty(t, forbidden("lighting/a.go", "lighting", "github.com/stretchr/testify/require", nil))
	require.Empty(t, forbidden("lighting/a_test.go", "lighting", "github.com/stretchr/testify/require", nil))
}

// TestGoModAsksForNothingElse reads go.mod's direct requirements.
func TestGoModAsksForNothingElse(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "go.mod"))
	require.NoError(t, err)
	direct := []string{}
	for _, line := range strings.Split(string(text), "\n") {
		f := strings.Fields(strings.TrimPrefix(strings.TrimSpace(line), "require "))
		if len(f) >= 2 && strings.Contains(f[0], "/") && strings.HasPrefix(f[1], "v") && !strings.Contains(line, "// indirect") {
			direct = append(direct, f[0])
		}
	}
	want := []string{"github.com/google/go-cmp", "github.com/stretchr/testify", "gonum.org/v1/gonum", "gonum.org/v1/plot"}
	require.ElementsMatch(t, want, direct)
	require.NotContains(t, string(text), "replace")
	require.Contains(t, string(text), "module "+module+"\n")
	require.Contains(t, string(text), "\ngo 1.25\n")
}

// TestTopLevelHoldsOnlyTheLayout allows dot entries besides.
func TestTopLevelHoldsOnlyTheLayout(t *testing.T) {
	want := map[string]bool{"go.mod": true, "go.sum": true, "README.md": true, "DEVELOPERS.md": true, "LICENSE": true, "examples": true, "internal": true}
	for _, p := range packages {
		want[p] = true
	}
	entries, err := os.ReadDir(root)
	require.NoError(t, err)
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") && !want[e.Name()] {
			t.Errorf("%s has no place at the top level", e.Name())
		}
	}
}
