package program

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// broken refuses all that is written to it.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("the pipe is closed") }

func TestRun(t *testing.T) {
	for name, c := range map[string]struct {
		args          []string
		words         int
		fault         error
		status        int
		out, problems string
	}{
		"plain":         {nil, 0, nil, Done, "3 m", ""},
		"flag":          {[]string{"-length", "4"}, 0, nil, Done, "4 m", ""},
		"word":          {[]string{"a"}, 1, nil, Done, "3 m", ""},
		"flag behind":   {[]string{"a", "-length", "5"}, 1, nil, Done, "5 m", ""},
		"no more flags": {[]string{"--", "-length"}, 1, nil, Done, "3 m", ""},
		"too many":      {[]string{"a", "-length", "5", "b"}, 1, nil, WrongInput, "", "rod: \"b\" is not understood; -h explains\n"},
		"word too many": {[]string{"a", "b"}, 1, nil, WrongInput, "", "rod: \"b\" is not understood; -h explains\n"},
		"unknown flag":  {[]string{"-width", "4"}, 0, nil, WrongInput, "", "rod: flag provided but not defined: -width\n"},
		"not a number":  {[]string{"-length", "x"}, 0, nil, WrongInput, "", "rod: invalid value \"x\" for flag -length: parse error\n"},
		"two faults":    {nil, 0, errors.Join(errors.New("too long"), errors.New("too thin")), WrongInput, "", "rod: too long; too thin\n"},
		"help":          {[]string{"-h"}, 0, nil, Done, "rod measures.\n  -length m\n    \tlength, m (default 3)\n", ""},
	} {
		t.Run(name, func(t *testing.T) {
			var out, problems bytes.Buffer
			p := New("rod", "rod measures.")
			p.MostWords = c.words
			length := p.String("length", "3", "length, `m`")
			if name == "not a number" || name == "help" {
				p = New("rod", "rod measures.")
				p.Float64("length", 3, "length, `m`")
			}
			status := p.Run(c.args, &out, &problems, func() (io.WriterTo, error) {
				return strings.NewReader(*length + " m"), c.fault
			})
			require.Equal(t, c.status, status)
			require.Equal(t, c.out, out.String())
			require.Equal(t, c.problems, problems.String())
		})
	}
}

func TestOutputThatCannotBeWritten(t *testing.T) {
	var problems bytes.Buffer
	status := New("rod", "").Run(nil, broken{}, &problems, func() (io.WriterTo, error) { return strings.NewReader("x"), nil })
	require.Equal(t, NotWritten, status)
	require.Equal(t, "rod: the pipe is closed\n", problems.String())
}

func TestGiven(t *testing.T) {
	p := New("rod", "")
	p.Float64("length", 3, "")
	p.Float64("width", 3, "")
	require.NoError(t, p.Parse([]string{"-width", "3"}))
	require.True(t, p.Given("width"))
	require.False(t, p.Given("length"))
}

func TestNumbers(t *testing.T) {
	values := []float64{1, 2.5}
	p := New("rod", "rod measures.")
	p.Numbers(&values, "lengths", "`m` between commas")
	var out bytes.Buffer
	require.Equal(t, Done, p.Run([]string{"-h"}, &out, io.Discard, nil))
	require.Equal(t, "rod measures.\n  -lengths m\n    \tm between commas (default 1,2.5)\n", out.String())
	require.NoError(t, p.Parse([]string{"-lengths", "3, -4e1"}))
	require.Equal(t, []float64{3, -40}, values)
	require.ErrorContains(t, p.Parse([]string{"-lengths", "3,x"}), `"x" is not a number`)
	require.ErrorContains(t, p.Parse([]string{"-lengths", ""}), `"" is not a number`)
}
