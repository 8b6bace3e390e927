package lighting

import (
	"fmt"
	"io"
	"math"
	"sort"
)

// LM63 is what a photometric data file of ANSI/IES LM-63 [IesLM02] says, read
// by ReadLM63. Candela are scaled: each value of the file times the candela
// multiplier, the ballast factor and, in the editions 1986 and 1991, the
// ballast-lamp photometric factor. Lamp count and lumens never scale them.
type LM63 struct {
	Edition       Edition    // the edition that the first line names
	Labels        []Label    // in the file's order, [MORE] lines joined
	Lamps         int        // count of lamps, 1 to 1e9
	LumensPerLamp float64    // lm, -1e9 to 1e9; negative for absolute photometry
	Multiplier    float64    // factor, -1e9 to 1e9; on the candela, already applied
	BallastFactor float64    // factor, -1e9 to 1e9; on the candela, already applied
	Field12       float64    // any unit, -1e9 to 1e9; the twelfth number as it stands: a factor, applied, in 1986 and 1991, a label without effect later
	InputPower    float64    // W, 0 to 1e9
	Width         float64    // m, -1e9 to 1e9; across the 0-180 plane; negative by the code for round openings
	Length        float64    // m, -1e9 to 1e9; along the 0-180 plane; negative by the code for round openings
	Height        float64    // m, -1e9 to 1e9; negative by the code for round openings
	Tilt          *LampTilt  // nil when the file has none
	Web           CandelaWeb // as goniometer angles
	Warnings      []string   // what was accepted although it departs from the standard
}

// Label is one keyword line of a file. Keyword is empty for a line of free
// text.
type Label struct {
	Keyword string // without the brackets
	Value   string // lines joined by line feeds
}

// LampTilt describes how the output of a lamp changes when its fixture is tilted.
type LampTilt struct {
	Geometry int       // 1 vertical lamp, 2 horizontal and stays so, 3 horizontal and tilts with the fixture
	Angles   []float64 // degree from straight down, strictly increasing
	Factors  []float64 // factor, 0 to 1e9; on all candela
}

// Edition is an edition of LM-63.
type Edition uint8

// The editions. 1986 files have no line that names the edition.
const (
	LM63of1986 Edition = iota
	LM63of1991
	LM63of1995
	LM63of2002
	LM63of2019
)

// editionLines are the first lines of files, by edition [IesLM02].
var editionLines = [...]string{"", "IESNA91", "IESNA:LM-63-1995", "IESNA:LM-63-2002", "IES:LM-63-2019"}

// String returns the line by which a file names the edition.
func (e Edition) String() string {
	switch {
	case e == LM63of1986:
		return "LM-63-1986"
	case int(e) < len(editionLines):
		return editionLines[e]
	}
	return fmt.Sprintf("Edition(%d)", uint8(e))
}

// factor12 reports whether the twelfth number multiplies the candela.
func (e Edition) factor12() bool { return e <= LM63of1991 }

// LM63Error says where a file was refused. It matches ErrRange.
type LM63Error struct {
	Line   int    // counted from 1; 0 when the fault is not in a line
	Token  string // the word at fault, shortened; empty at the end of the file
	Reason string // what is wrong with it
	InTilt bool   // the place is in the separate tilt file
}

// Error names line, token and reason.
func (e *LM63Error) Error() string {
	s := e.Reason
	if e.Token != "" {
		s = fmt.Sprintf("%q: %s", e.Token, s)
	}
	if e.Line > 0 {
		s = fmt.Sprintf("line %d: %s", e.Line, s)
	}
	if e.InTilt {
		s = "tilt file: " + s
	}
	return "LM-63 file: " + s
}

// Is reports whether target is ErrRange.
func (e *LM63Error) Is(target error) bool { return target == ErrRange }

// maxLM63Bytes is the size of the largest file that ReadLM63 takes.
const maxLM63Bytes = 16 << 20

// ReadLM63 reads a photometric file of any edition from 1986 to 2019, types A,
// B and C. It takes what is harmless (and lists it in Warnings) and refuses,
// with a *LM63Error, what could be read in two ways. A file may refer to a
// second one for the lamp's tilt: pass its text as tilt, or nil to refuse such
// a reference; nothing that a file names is ever opened.
// Files above 16 MiB are refused.
func ReadLM63(r io.Reader, tilt io.Reader) (*LM63, error) {
	if r == nil {
		return nil, &LM63Error{Reason: "no file to read"}
	}
	data, err := limited(r)
	if err != nil {
		return nil, err
	}
	var extra []byte
	if tilt != nil {
		if extra, err = limited(tilt); err != nil {
			return nil, err
		}
	}
	return parseLM63(data, extra, tilt != nil)
}

func limited(r io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxLM63Bytes+1))
	if err != nil {
		return nil, err
	}
	if len(data) > maxLM63Bytes {
		return nil, &LM63Error{Reason: fmt.Sprintf("longer than %d bytes", maxLM63Bytes)}
	}
	return data, nil
}

// Table returns the luminous intensities. Type A measures from the horizontal,
// type B from straight down, each about its own axis: a fixture that was
// measured lying on its back as type A shines sideways here until it is aimed.
func (f *LM63) Table() (*CandelaTable, error) { return NewCandelaTable(f.Web) }

// LampLumens returns the lumens of all lamps, lm, to which the file is
// normalised; NaN for absolute photometry.
func (f *LM63) LampLumens() float64 {
	if f.LumensPerLamp <= 0 {
		return math.NaN()
	}
	return float64(f.Lamps) * f.LumensPerLamp
}

// TiltFactor returns the factor on all candela when the fixture is tilted by
// angle, degree from straight down, by linear interpolation; 1 at every angle
// when the file has no tilt data, NaN outside them.
func (f *LM63) TiltFactor(angle float64) float64 {
	if f.Tilt == nil {
		return 1
	}
	a, v := f.Tilt.Angles, f.Tilt.Factors
	n := len(a)
	if n == 0 || !(angle >= a[0] && angle <= a[n-1]) {
		return math.NaN()
	}
	i := sort.SearchFloat64s(a, angle)
	if i == 0 {
		return v[0]
	}
	return v[i-1] + (v[i]-v[i-1])*(angle-a[i-1])/(a[i]-a[i-1])
}

// Label returns the value of the first label with the keyword, written without
// brackets, and whether there is one.
func (f *LM63) Label(keyword string) (string, bool) {
	for _, l := range f.Labels {
		if l.Keyword == keyword {
			return l.Value, true
		}
	}
	return "", false
}

// Opening returns the shape of the luminous opening that the signs of the
// dimensions encode [IesLM02]; up to the edition of 1995 a 0 could stand for the
// second minus of what is round.
func (f *LM63) Opening() string {
	sign := func(v float64) int {
		switch {
		case v > 0:
			return 1
		case v < 0:
			return -1
		}
		return 0
	}
	w, l, h := sign(f.Width), sign(f.Length), sign(f.Height)
	if w < 0 && l == 0 && (f.Edition <= LM63of1995 || h >= 0) {
		l = -1
	}
	switch [3]int{w, l, h} {
	case [3]int{0, 0, 0}:
		return "point"
	case [3]int{1, 1, 0}:
		return "rectangle"
	case [3]int{1, 1, 1}:
		return "box"
	case [3]int{-1, -1, 0}:
		return "circle or ellipse"
	case [3]int{-1, -1, 1}:
		return "vertical cylinder"
	case [3]int{-1, -1, -1}:
		return "sphere or spheroid"
	case [3]int{-1, 1, -1}:
		return "horizontal cylinder along the 0-180 plane"
	case [3]int{1, -1, -1}:
		return "horizontal cylinder across the 0-180 plane"
	case [3]int{-1, 0, -1}:
		return "vertical disc"
	}
	return "not in the standard's list"
}
