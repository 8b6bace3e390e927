package repo

import (
	"os"
	"os/exec"
	"path/filepath"
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
