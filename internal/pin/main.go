// Command pin finds coefficients that no test holds in place. It changes each
// floating-point literal of a package's library code by one per cent, alone,
// and runs the package's tests; a literal whose change no test notices is
// printed. It writes nothing into the source tree.
//
//	go run ./internal/pin [-file NAME] [-every N] [-whole] ./psychro
//
// It takes about a second or more a literal: it is a long run, for use when a
// formula or a table is added. The ends of ranges are left out. With -whole it
// tries whole numbers from 3 on, too, as tables have them; one that stands for no
// floating-point number does not build when changed, and is passed over.
package main

import (
	"encoding/json"
	"flag"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
)

type literal struct {
	file       string
	line       int
	start, end int
	text       string
}

func main() {
	only := flag.String("file", "", "look at this file only")
	every := flag.Int("every", 1, "try every N-th literal")
	whole := flag.Bool("whole", false, "try whole numbers, too")
	run := flag.String("run", "", "run only the tests that match, as go test -run does")
	flag.Parse()
	if flag.NArg() != 1 || *every < 1 {
		flag.Usage()
		os.Exit(2)
	}
	if err := pin(flag.Arg(0), *only, *every, *run, *whole); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func pin(dir, only string, every int, run string, whole bool) error {
	literals, err := find(dir, only, whole)
	if err != nil {
		return err
	}
	tmp, err := os.MkdirTemp("", "pin")
	if err != nil {
		return err
	}
	defer os.RemoveAll(tmp)
	if out, err := tests(dir, run).CombinedOutput(); err != nil {
		return fmt.Errorf("the tests fail without a change, so that nothing can be told from them:\n%s", out)
	}
	tried, free := 0, 0
	for i := 0; i < len(literals); i += every {
		l := literals[i]
		seen, err := noticed(dir, tmp, run, l)
		if err != nil {
			return err
		}
		if seen == unbuilt {
			continue
		}
		tried++
		if seen == unnoticed {
			free++
			fmt.Printf("%s:%d: %s can change by 1 %%\n", l.file, l.line, l.text)
		}
	}
	fmt.Printf("%d literals tried, %d free\n", tried, free)
	return nil
}

// find returns the floating-point literals of the package's library files, and with
// whole its whole numbers.
func find(dir, only string, whole bool) ([]literal, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*.go"))
	if err != nil {
		return nil, err
	}
	var out []literal
	for _, path := range files {
		if strings.HasSuffix(path, "_test.go") || only != "" && filepath.Base(path) != only {
			continue
		}
		fset := token.NewFileSet()
		f, err := parser.ParseFile(fset, path, nil, 0)
		if err != nil {
			return nil, err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if isRange(n) {
				return false
			}
			b, ok := n.(*ast.BasicLit)
			if !ok || b.Kind != token.FLOAT && !(whole && b.Kind == token.INT) {
				return true
			}
			if v, err := strconv.ParseFloat(b.Value, 64); err != nil || v == 0 || b.Kind == token.INT && v < leastWhole {
				return true
			}
			p := fset.Position(b.Pos())
			out = append(out, literal{path, p.Line, p.Offset, p.Offset + len(b.Value), b.Value})
			return true
		})
	}
	return out, nil
}

// isRange reports whether n is a literal of an input's range. Its ends are no
// coefficients: they are chosen, and comments are held to them.
func isRange(n ast.Node) bool {
	c, ok := n.(*ast.CompositeLit)
	if !ok {
		return false
	}
	sel, ok := c.Type.(*ast.SelectorExpr)
	if !ok {
		return false
	}
	x, ok := sel.X.(*ast.Ident)
	return ok && x.Name == "domain" && sel.Sel.Name == "Range"
}

// leastWhole passes over the ones and twos of formulas.
const leastWhole = 3

// What became of a change.
const (
	noticedByTests = iota
	unnoticed
	unbuilt
)

// noticed reports what becomes of l one per cent larger: whether a test of the
// package fails.
func noticed(dir, tmp, run string, l literal) (int, error) {
	src, err := os.ReadFile(l.file)
	if err != nil {
		return 0, err
	}
	v, err := strconv.ParseFloat(l.text, 64)
	if err != nil {
		return 0, err
	}
	changed := string(src[:l.start]) + strconv.FormatFloat(v*1.01, 'g', -1, 64) + string(src[l.end:])
	file := filepath.Join(tmp, "changed.go")
	if err := os.WriteFile(file, []byte(changed), 0o600); err != nil {
		return 0, err
	}
	abs, err := filepath.Abs(l.file)
	if err != nil {
		return 0, err
	}
	overlay, err := json.Marshal(map[string]map[string]string{"Replace": {abs: file}})
	if err != nil {
		return 0, err
	}
	list := filepath.Join(tmp, "overlay.json")
	if err := os.WriteFile(list, overlay, 0o600); err != nil {
		return 0, err
	}
	out, err := tests(dir, run, "-overlay", list).CombinedOutput()
	switch {
	case err == nil:
		return unnoticed, nil
	case strings.Contains(string(out), "[build failed]"):
		return unbuilt, nil
	}
	return noticedByTests, nil
}

// tests is the command that runs the package's tests.
func tests(dir, run string, more ...string) *exec.Cmd {
	args := append([]string{"test", "-vet=off", "-failfast", "-timeout", "5m", "-run", run}, more...)
	return exec.Command("go", append(args, "./"+filepath.ToSlash(filepath.Clean(dir)))...)
}
