package lighting

import (
	"fmt"
	"slices"
)

// angles reads the two lists of angles and checks that they cover what the
// standard allows.
func (p *parser) angles(nV, nH int) error {
	w := &p.f.Web
	low, high := -90.0, 90.0
	lowH, highH := low, high
	if w.Coordinates == TypeC {
		low, high, lowH, highH = 0, 180, 0, 360
	}
	var ends []number
	var err error
	if w.Vertical, ends, err = p.numbers("vertical angle", nV, w.starting(low, high)); err != nil {
		return err
	}
	if i, why := w.verticalFault(); why != "" {
		return p.fault(ends[i].line, string(ends[i].word), "%s", why)
	}
	if w.Horizontal, ends, err = p.numbers("horizontal angle", nH, w.starting(lowH, highH)); err != nil {
		return err
	}
	if i, why := w.horizontalFault(); why != "" {
		return p.fault(ends[i].line, string(ends[i].word), "%s", why)
	}
	return nil
}

// starting is increasing with the first angle where the standard lets it stand,
// so that a shifted stream is found at the number that is out of place.
func (w *CandelaWeb) starting(low, high float64) func(v, last float64, first bool) string {
	also, types := -90.0, "types A and B"
	if w.Coordinates == TypeC {
		also, types = 90, "type C"
	}
	rest := increasing(low, high)
	return func(v, last float64, first bool) string {
		if first && v >= low && v <= high && v != 0 && v != also {
			return fmt.Sprintf("the angles of %s begin at %g or %g", types, min(0, also), max(0, also))
		}
		return rest(v, last, first)
	}
}

// verticalFault tells which end, 0 or 1, of the vertical angles stands where
// the standard does not allow it [IesLM02].
func (w *CandelaWeb) verticalFault() (end int, why string) {
	first, last := w.Vertical[0], w.Vertical[len(w.Vertical)-1]
	if w.Coordinates == TypeC {
		switch {
		case first != 0 && first != 90:
			return 0, "the vertical angles of type C begin at 0 or 90"
		case last != 90 && last != 180:
			return 1, "the vertical angles of type C end at 90 or 180"
		}
		return 0, ""
	}
	switch {
	case first != -90 && first != 0:
		return 0, "the vertical angles of types A and B begin at -90 or 0"
	case last != 90:
		return 1, "the vertical angles of types A and B end at 90"
	}
	return 0, ""
}

// open reports whether the circle of type C is not closed by a plane at 360.
func (w *CandelaWeb) open() bool {
	last := w.Horizontal[len(w.Horizontal)-1]
	return w.Coordinates == TypeC && w.Horizontal[0] == 0 && last > 180 && last < 360
}

// horizontalFault is verticalFault for the horizontal angles.
func (w *CandelaWeb) horizontalFault() (end int, why string) {
	first, last := w.Horizontal[0], w.Horizontal[len(w.Horizontal)-1]
	if w.Coordinates == TypeC {
		switch {
		case first == 90 && last == 270:
			return 0, ""
		case first != 0:
			return 0, "the horizontal angles of type C begin at 0, or run from 90 to 270"
		case w.open() || last == 0 || last == 90 || last == 180 || last == 360:
			return 0, ""
		}
		return 1, "the horizontal angles of type C end at 0, 90, 180 or 360"
	}
	switch {
	case len(w.Horizontal) == 1:
		return 0, "one horizontal angle stands for all in type C alone"
	case first != -90 && first != 0:
		return 0, "the horizontal angles of types A and B begin at -90 or 0"
	case last != 90:
		return 1, "the horizontal angles of types A and B end at 90"
	}
	return 0, ""
}

// candela reads the intensities, scales them and closes the circle.
func (p *parser) candela(nV, nH int) error {
	f := p.f
	scale := f.Multiplier * f.BallastFactor
	if f.Edition.factor12() {
		scale *= f.Field12
	}
	all := make([]float64, nV*nH)
	f.Web.Candela = make([][]float64, nH)
	for i := range all {
		n, err := p.number("candela")
		if err != nil {
			return err
		}
		v := n.v * scale
		if !(v >= 0 && v <= greatestIntensity) || n.v < 0 {
			return p.fault(n.line, string(n.word), "candela %d of plane %d: negative, or above %g cd", i%nV+1, i/nV+1, greatestIntensity)
		}
		all[i] = v
	}
	for j := range f.Web.Candela {
		f.Web.Candela[j] = all[j*nV : (j+1)*nV : (j+1)*nV]
	}
	h := f.Web.Horizontal
	switch {
	case f.Web.open():
		p.warn(p.line, "the planes end at %g degree: closed with plane 0 at 360", h[nH-1])
		f.Web.Horizontal = append(h, 360)
		f.Web.Candela = append(f.Web.Candela, slices.Clone(f.Web.Candela[0]))
	case nH > 1 && h[nH-1] == 360 && !slices.Equal(f.Web.Candela[0], f.Web.Candela[nH-1]):
		p.warn(p.line, "the planes 0 and 360 differ")
	}
	return nil
}

// end looks at what follows the last candela.
func (p *parser) end() error {
	word, line := p.token()
	if len(word) == 0 {
		return nil
	}
	if p.joined {
		return p.fault(line, string(word), "numbers are left over")
	}
	for _, c := range word {
		if c >= '0' && c <= '9' {
			p.warn(line, "numbers follow the last candela")
			return nil
		}
	}
	p.warn(line, "%s follows the last candela", fmt.Sprintf("%.20q", text(word)))
	return nil
}
