package lighting

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"sort"

	"cloche.example/internal/domain"
)

// greatestIntensity of a web, µmol/(s sr) or cd, is far above any lamp's.
const greatestIntensity = 1e12

// check reports every fault of the web.
func (w Web) check() error {
	low, high := -90.0, 90.0
	if w.Coordinates == TypeC {
		low, high = 0, 180
	}
	var errs []error
	if w.Coordinates > TypeA {
		errs = append(errs, &RangeError{Field: "Coordinates", Value: float64(w.Coordinates), Min: 0, Max: float64(TypeA), Source: "TypeC, TypeB and TypeA"})
	}
	errs = append(errs, angles("vertical angle", w.Vertical, low, high, 2)...)
	if w.Coordinates == TypeC {
		errs = append(errs, angles("horizontal angle", w.Horizontal, 0, 360, 1)...)
		errs = append(errs, w.checkSymmetry())
	} else {
		errs = append(errs, angles("horizontal angle", w.Horizontal, -90, 90, 2)...)
		if len(w.Horizontal) > 0 && w.Horizontal[0] > 0 {
			errs = append(errs, &RangeError{Field: "first horizontal angle", Value: w.Horizontal[0], Min: -90, Max: 0, Unit: "degree"})
		}
	}
	if len(w.Intensity) != len(w.Horizontal) {
		errs = append(errs, fmt.Errorf("%d rows of intensity for %d horizontal angles: %w", len(w.Intensity), len(w.Horizontal), ErrRange))
	}
	r := domain.Range{Min: 0, Max: greatestIntensity, Unit: "µmol/(s sr) or cd"}
	for j, row := range w.Intensity {
		if len(row) != len(w.Vertical) {
			errs = append(errs, fmt.Errorf("row %d has %d intensities for %d vertical angles: %w", j+1, len(row), len(w.Vertical), ErrRange))
		}
		for i, v := range row {
			if !r.Contains(v) || math.IsInf(v, 0) {
				errs = append(errs, r.Check(fmt.Sprintf("intensity %d of row %d", i+1, j+1), v))
			}
		}
	}
	return errors.Join(errs...)
}

func angles(name string, a []float64, low, high float64, least int) (errs []error) {
	if len(a) < least {
		errs = append(errs, fmt.Errorf("%d of %s, at least %d: %w", len(a), name, least, ErrRange))
	}
	r := domain.Range{Min: low, Max: high, Unit: "degree"}
	for i, v := range a {
		if err := r.Check(fmt.Sprintf("%s %d", name, i+1), v); err != nil {
			errs = append(errs, err)
		} else if i > 0 && !(v > a[i-1]) {
			errs = append(errs, fmt.Errorf("%s %d is %g after %g, not increasing: %w", name, i+1, v, a[i-1], ErrRange))
		}
	}
	return errs
}

// checkSymmetry wants the horizontal angles of type C to cover the circle.
func (w Web) checkSymmetry() error {
	h := w.Horizontal
	if len(h) == 0 {
		return nil
	}
	first, last := h[0], h[len(h)-1]
	switch {
	case first == 0 && (last == 0 || last == 90 || last == 180 || last == 360):
		return nil
	case first == 90 && last == 270:
		return nil
	}
	return fmt.Errorf("horizontal angles from %g to %g degree, want 0, 0 to 90, 0 to 180, 90 to 270 or 0 to 360: %w", first, last, ErrRange)
}

func (w Web) clone() Web { return w.times(1) }

func (w Web) times(k float64) Web {
	c := Web{Coordinates: w.Coordinates, Vertical: slices.Clone(w.Vertical), Horizontal: slices.Clone(w.Horizontal)}
	for _, row := range w.Intensity {
		row = slices.Clone(row)
		for i := range row {
			row[i] *= k
		}
		c.Intensity = append(c.Intensity, row)
	}
	return c
}

// plane is one row of intensities at an azimuth, degree.
type plane struct {
	at  float64
	row []float64
}

// expand returns the angles about the polar axis, rad, and the rows of
// intensity of the full web: symmetry expanded, azimuths ascending within -π
// to π, a row for each azimuth, a value in it for each polar angle.
func expand(w Web) (polar, azi []float64, rows [][]float64) {
	var planes []plane
	switch w.Coordinates {
	case TypeC:
		polar, planes = w.Vertical, expandC(w)
	case TypeA: // clockwise, and from the horizontal plane
		polar = shifted(w.Vertical)
		for j, h := range w.Horizontal {
			planes = append(planes, plane{-h, w.Intensity[j]})
			if w.Horizontal[0] == 0 && h > 0 {
				planes = append(planes, plane{h, w.Intensity[j]})
			}
		}
	case TypeB: // the horizontal angles run from pole to pole
		h, in := mirrored(w)
		polar = shifted(h)
		for i, v := range w.Vertical {
			row := make([]float64, len(in))
			for j := range in {
				row[j] = in[j][i]
			}
			planes = append(planes, plane{v, row})
		}
	}
	sort.SliceStable(planes, func(a, b int) bool { return planes[a].at < planes[b].at })
	radians := make([]float64, len(polar))
	for i, v := range polar {
		radians[i] = v * radian
	}
	for _, p := range planes {
		azi = append(azi, p.at*radian)
		rows = append(rows, p.row)
	}
	return radians, azi, rows
}

func shifted(a []float64) []float64 {
	s := make([]float64, len(a))
	for i, v := range a {
		s[i] = 90 + v
	}
	return s
}

// mirrored returns the horizontal angles and rows of a type B web on both
// sides of zero.
func mirrored(w Web) (h []float64, rows [][]float64) {
	if w.Horizontal[0] == 0 {
		for j := len(w.Horizontal) - 1; j > 0; j-- {
			h = append(h, -w.Horizontal[j])
			rows = append(rows, w.Intensity[j])
		}
	}
	return append(h, w.Horizontal...), append(rows, w.Intensity...)
}

// expandC returns the planes of a type C web between -180 and 180 degree, both
// ends included.
func expandC(w Web) (planes []plane) {
	add := func(at float64, row []float64) { planes = append(planes, plane{at, row}) }
	last := w.Horizontal[len(w.Horizontal)-1]
	for j, h := range w.Horizontal {
		row := w.Intensity[j]
		switch last {
		case 0:
			add(-180, row)
			add(180, row)
		case 90: // mirrored in both planes
			add(h, row)
			add(h-180, row)
			if h > 0 && h < 90 {
				add(-h, row)
			}
			if h < 90 {
				add(180-h, row)
			}
		case 180: // mirrored in the plane 0-180
			add(h, row)
			if h > 0 {
				add(-h, row)
			}
		case 270: // mirrored in the plane 90-270
			if h <= 180 {
				add(h, row)
			}
			if h >= 180 {
				add(h-360, row)
			}
			if h > 90 && h < 270 {
				add(180-h, row)
			}
		default:
			if h <= 180 {
				add(h, row)
			}
			if h >= 180 && h < 360 {
				add(h-360, row)
			}
			if h == 360 && !slices.Equal(row, w.Intensity[0]) { // stands before the row at 0
				planes = slices.Insert(planes, 0, plane{0, row})
			}
		}
	}
	if last > 180 && !slices.Contains(w.Horizontal, 180) {
		seam := between(w, 180)
		add(-180, seam)
		add(180, seam)
	}
	return planes
}

// between interpolates a row at a horizontal angle between two planes.
func between(w Web, at float64) []float64 {
	j, f := cell(w.Horizontal, at)
	row := make([]float64, len(w.Vertical))
	for i := range row {
		a, b := w.Intensity[j][i], w.Intensity[j+1][i]
		row[i] = a + f*(b-a)
	}
	return row
}
