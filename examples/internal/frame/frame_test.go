package frame_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"cloche.example/examples/internal/frame"
	"cloche.example/examples/internal/plan"
)

type answer struct {
	Length float64 `json:"length_m"`
}

// run is a program that answers with the house's length.
func run(in string, args ...string) (int, string, string) {
	f := frame.New("rod", "rod measures.", "the rod")
	f.Figure("length", "house.length_m", "length of the house")
	var out, problems strings.Builder
	status := f.Run(args, strings.NewReader(in), &out, &problems, func(_ context.Context, p plan.Filled) (frame.Answer, error) {
		if p.House.Length == 13 {
			return frame.Answer{}, errors.New("house.length_m is unlucky")
		}
		return frame.Answer{
			Text: strings.NewReader(fmt.Sprintf("%g m\n", p.House.Length)), Data: answer{p.House.Length}, Warnings: []string{"long"},
			Draw: func(format string) (io.WriterTo, error) { return strings.NewReader(format), nil },
		}, nil
	})
	return status, out.String(), problems.String()
}

func TestThePlanComesInAndFlagsChangeIt(t *testing.T) {
	demo := plan.Demo().House.Length
	file := filepath.Join(t.TempDir(), "plan.json")
	require.NoError(t, os.WriteFile(file, []byte(`{"house": {"length_m": 20}}`), 0o644))
	for _, c := range []struct {
		in, out string
		args    []string
	}{
		{"", fmt.Sprintf("%g m\n", demo), nil},
		{"", "20 m\n", []string{"-plan", file}},
		{`{"house": {"length_m": 21}}`, "21 m\n", []string{"-plan", "-"}},
		{"", "22.5 m\n", []string{"-length", "22.5", "-plan", file}},
	} {
		status, out, problems := run(c.in, c.args...)
		require.Zero(t, status, problems)
		require.Equal(t, c.out, out)
	}
}

func TestJSON(t *testing.T) {
	status, out, problems := run("", "-json", "-length", "18")
	require.Zero(t, status, problems)
	var d struct {
		Program string
		Version int
		Plan    struct {
			House struct {
				Length float64 `json:"length_m"`
			}
		}
		Answer   answer
		Warnings []string
	}
	require.NoError(t, json.Unmarshal([]byte(out), &d))
	require.Equal(t, "rod", d.Program)
	require.Equal(t, frame.Version, d.Version)
	require.InDelta(t, 18, d.Plan.House.Length, 0)
	require.InDelta(t, 18, d.Answer.Length, 0)
	require.Equal(t, []string{"long"}, d.Warnings)
}

func TestWrongInputIsOneLineAndNamesTheFlag(t *testing.T) {
	for want, args := range map[string][]string{
		"-length is 1e+09, allowed": {"-length", "1e9"},
		"-length is unlucky":        {"-length", "13"},
		"is not a number":           {"-length", "x"},
		"no-such-file":              {"-plan", "no-such-file"},
		"must end in .svg":          {"-figure", "a.gif"},
		"is not understood":         {"word"},
	} {
		status, out, problems := run("", args...)
		require.Equal(t, 2, status, want)
		require.Empty(t, out)
		require.Contains(t, problems, want)
		require.Equal(t, 1, strings.Count(problems, "\n"), problems)
	}
}

func TestPicture(t *testing.T) {
	file := filepath.Join(t.TempDir(), "rod.svg")
	status, _, problems := run("", "-figure", file)
	require.Zero(t, status, problems)
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	require.Equal(t, "svg", string(text))
}

func TestNoNumberHasNoJSON(t *testing.T) {
	f := frame.New("rod", "rod measures.", "")
	var out, problems strings.Builder
	status := f.Run([]string{"-json"}, nil, &out, &problems, func(context.Context, plan.Filled) (frame.Answer, error) {
		return frame.Answer{Data: answer{math.NaN()}}, nil
	})
	require.Equal(t, 2, status)
	require.Empty(t, out.String())
	require.Contains(t, problems.String(), "no JSON form")
	require.Panics(t, func() { f.Figure("x", "no.such_key", "nothing") })
}

func TestPlanIsPrintedAndExplained(t *testing.T) {
	status, out, problems := run("", "-print-plan", "-length", "17")
	require.Zero(t, status, problems)
	again, err := plan.Parse([]byte(out))
	require.NoError(t, err)
	require.InDelta(t, 17, again.House.Length, 0)
	status, out, problems = run("", "-explain", "house")
	require.Zero(t, status, problems)
	require.Contains(t, out, "length_m")
	require.NotContains(t, out, "power_w")
	status, _, problems = run("", "-explain", "house", "heater")
	require.Equal(t, 2, status)
	require.Contains(t, problems, "heater")
}

func TestInterrupted(t *testing.T) {
	f := frame.New("rod", "rod measures.", "")
	var out, problems strings.Builder
	status := f.Run(nil, nil, &out, &problems, func(ctx context.Context, _ plan.Filled) (frame.Answer, error) {
		self, err := os.FindProcess(os.Getpid())
		require.NoError(t, err)
		require.NoError(t, self.Signal(os.Interrupt))
		<-ctx.Done()
		return frame.Answer{}, ctx.Err()
	})
	require.Equal(t, 2, status)
	require.Empty(t, out.String())
	require.Equal(t, "rod: interrupted\n", problems.String())
}
