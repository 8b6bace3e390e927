package lighting

import "math"

// All figures of this file are of a cosine-power point that hangs straight
// above a level plane, with the sensor's cosine: its PPFD falls as cos^(m+3) of
// the angle from the vertical, E = I0 h^(m+1)/(h²+ρ²)^((m+3)/2). Sources that
// leave out the sensor's cosine get m+2 in place of m+3 [Moreno06]: do not mix
// the two.

// SpotPPFD returns the PPFD in µmol/(m² s) at the distance offset, m, at least
// 0, from the foot of the downlight, which hangs at height, m, more than 0,
// above the plane. NaN outside.
func (d CosinePower) SpotPPFD(height, offset float64) float64 {
	if !(height > 0) || !(offset >= 0) {
		return math.NaN()
	}
	return spotPPFD(d.axial(), d.m, height, offset)
}

func spotPPFD(axial, m, height, offset float64) float64 {
	r2 := height*height + offset*offset
	return axial / r2 * math.Pow(height*height/r2, (m+1)/2)
}

// SpotAngle returns the angle in degree from the vertical at which the PPFD of
// the downlight has fallen to share, the fraction more than 0, at most 1, of
// its peak: acos share^(1/(m+3)). NaN outside.
func (d CosinePower) SpotAngle(share float64) float64 {
	if !(share > 0 && share <= 1) {
		return math.NaN()
	}
	return math.Acos(math.Pow(share, 1/(d.m+receiverPower))) / radian
}

// receiverPower is what distance and the sensor's cosine add to the exponent
// of a downlight's spot.
const receiverPower = 3.0

// SpotDiameter returns the diameter in m of the spot within which the PPFD is
// at least share, the fraction more than 0, at most 1, of its peak, for the
// downlight at height, m, more than 0, above the plane: 2 h tan of SpotAngle,
// in proportion to the height. NaN outside.
func (d CosinePower) SpotDiameter(height, share float64) float64 {
	if !(height > 0) {
		return math.NaN()
	}
	return 2 * height * math.Tan(d.SpotAngle(share)*radian)
}

// SpotOverlap returns the area in m² that two equal spots of the given
// diameter, m, at least 0, share when their middles are spacing, m, at least
// 0, apart: 2 r² acos(d/2r) - d/2 √(4r²-d²). NaN outside.
func SpotOverlap(diameter, spacing float64) float64 {
	switch {
	case !(diameter >= 0) || !(spacing >= 0):
		return math.NaN()
	case spacing >= diameter:
		return 0
	}
	r := diameter / 2
	return 2*r*r*math.Acos(spacing/diameter) - spacing/2*math.Sqrt(diameter*diameter-spacing*spacing)
}

// FlatPair returns the spacing in m of two such downlights at height, m, more
// than 0, above the plane, at which the PPFD midway is maximally flat along the
// line through both: 2h/√(m+4). Wider spacing leaves a dip. NaN outside.
func (d CosinePower) FlatPair(height float64) float64 { return d.flat(height, 4, 2) }

// FlatSquare returns the side in m of a square of four such downlights at
// height, m, more than 0, above the plane, at which the PPFD in its middle is
// maximally flat: 2h/√(m+3). NaN outside.
func (d CosinePower) FlatSquare(height float64) float64 { return d.flat(height, receiverPower, 2) }

// FlatRing returns the radius in m of a ring of three or more such downlights
// at height, m, more than 0, above the plane, at which the PPFD in its middle
// is maximally flat: h √(2/(m+3)). NaN outside.
func (d CosinePower) FlatRing(height float64) float64 {
	return d.flat(height, receiverPower, math.Sqrt2)
}

func (d CosinePower) flat(height, add, factor float64) float64 {
	if !(height > 0) {
		return math.NaN()
	}
	return factor * height / math.Sqrt(d.m+add)
}

// Midway returns the PPFD midway between two such downlights as a ratio to the
// PPFD under one of them, both counted in both places: below 1 the spots leave
// a dip, above 1 they pile up. Both hang at height, m, more than 0, above the
// plane, spacing, m, more than 0, apart. NaN outside.
func (d CosinePower) Midway(height, spacing float64) float64 {
	if !(height > 0) || !(spacing > 0) {
		return math.NaN()
	}
	return 2 * spotPPFD(1, d.m, height, spacing/2) / (spotPPFD(1, d.m, height, 0) + spotPPFD(1, d.m, height, spacing))
}
