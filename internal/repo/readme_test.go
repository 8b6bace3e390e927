package repo

import (
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestREADMEExampleCompilesAndPrints runs the README's embedding example.
func TestREADMEExampleCompilesAndPrints(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	_, rest, found := strings.Cut(string(text), "```go\n")
	require.True(t, found, "the README has no example")
	program, rest, _ := strings.Cut(rest, "```")
	_, rest, _ = strings.Cut(rest, "It prints `")
	want, _, _ := strings.Cut(rest, "`")
	require.NotEmpty(t, want)

	dir, err := os.MkdirTemp(filepath.Join(root, "examples"), ".readme")
	require.NoError(t, err)
	defer os.RemoveAll(dir)
	file := filepath.Join(dir, "main.go")
	require.NoError(t, os.WriteFile(file, []byte(program), 0o600))
	out, err := exec.Command("go", "run", file).CombinedOutput()
	require.NoError(t, err, string(out))
	require.Equal(t, want, strings.TrimSpace(string(out)))
}

// TestREADMENamesTheTwoCommands holds the commands that .ci/run calls.
func TestREADMENamesTheTwoCommands(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	ci, err := os.ReadFile(filepath.Join(root, ".ci/run"))
	require.NoError(t, err)
	require.Contains(t, string(readme), "    go run ./examples/winterhouse ")
	require.Contains(t, string(readme), "    go test ./... ")
	require.Contains(t, string(ci), "\ngo test ./...\n")
}

// TestREADMENamesEveryProgram wants each directory of examples in its table.
func TestREADMENamesEveryProgram(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	programs, err := filepath.Glob(filepath.Join(root, "examples", "*", "main.go"))
	require.NoError(t, err)
	require.NotEmpty(t, programs)
	for _, p := range programs {
		require.Contains(t, string(readme), "`"+filepath.Base(filepath.Dir(p))+"`")
	}
}

// TestEmbeddingExamplesAreShort wants the files of the README's section on
// embedding, each a whole program in one function: no helper beside it, and no
// more lines than a developer should need.
func TestEmbeddingExamplesAreShort(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	named := regexp.MustCompile("`([a-z]+/example_embed_[a-z]+_test\\.go)`").FindAllStringSubmatch(string(readme), -1)
	require.Len(t, named, 5)
	there, err := filepath.Glob(filepath.Join(root, "*", "example_embed_*_test.go"))
	require.NoError(t, err)
	for _, file := range there {
		require.Contains(t, string(readme), "`"+filepath.Base(filepath.Dir(file))+"/"+filepath.Base(file)+"`")
	}
	for _, n := range named {
		t.Run(n[1], func(t *testing.T) {
			most := 25
			if strings.Contains(n[1], "_map_") {
				most = 30 // of which five refusals take four lines each
			}
			path := filepath.Join(root, n[1])
			fset := token.NewFileSet()
			f, err := parser.ParseFile(fset, path, nil, parser.ParseComments)
			require.NoError(t, err)
			require.True(t, strings.HasSuffix(f.Name.Name, "_test"), "outside the package, as a user stands")
			functions := 0
			for _, d := range f.Decls {
				d, ok := d.(*ast.FuncDecl)
				if !ok {
					continue
				}
				functions++
				lines := fset.Position(d.Body.Rbrace).Line - fset.Position(d.Body.Lbrace).Line - 1
				output := 0
				for _, g := range f.Comments {
					if g.Pos() > d.Body.Lbrace && g.End() < d.Body.Rbrace && strings.HasPrefix(strings.ToLower(g.Text()), "output:") {
						output = fset.Position(g.End()).Line - fset.Position(g.Pos()).Line + 1
					}
				}
				require.Positive(t, output, "prints something")
				require.LessOrEqual(t, lines-output, most, d.Name.Name)
			}
			require.Equal(t, 1, functions)
		})
	}
}
