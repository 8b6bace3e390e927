package lighting

import "math"

// All figures of this file are of a cosine-power point straight above a level
// plane, with the sensor's cosine: its PPFD falls as cos^(m+3) of the angle
// from the vertical, E = I0 h^(m+1)/(h²+ρ²)^((m+3)/2). Sources that leave out
// the sensor's cosine get m+2 in place of m+3 [Moreno06]: do not mix the two.

// SpotPPFD returns the PPFD in µmol/(m² s) at the distance offset, m, at least
// 0, from the foot of a downlight with the axial intensity axial, µmol/(s sr),
// and the cosine exponent m (0 to 20,000), hanging at height, m, above 0. NaN
// outside.
func SpotPPFD(axial, m, height, offset float64) float64 {
	if !(axial >= 0) || !exponentRange.Contains(m) || !(height > 0) || !(offset >= 0) {
		return math.NaN()
	}
	r2 := height*height + offset*offset
	return axial / r2 * math.Pow(height*height/r2, (m+1)/2)
}

// SpotAngle returns the angle in degree from the vertical at which the PPFD of
// a downlight with the exponent m (0 to 20,000) has fallen to share (fraction, above 0 to 1)
// of its peak: acos share^(1/(m+3)). NaN outside.
func SpotAngle(m, share float64) float64 {
	if !exponentRange.Contains(m) || !(share > 0 && share <= 1) {
		return math.NaN()
	}
	return math.Acos(math.Pow(share, 1/(m+receiverPower))) / radian
}

// receiverPower is what distance and the sensor's cosine add to the exponent
// of a downlight's spot.
const receiverPower = 3.0

// SpotDiameter returns the diameter in m of the spot within which the PPFD is
// at least share (fraction, above 0 to 1) of its peak, for a downlight with
// the exponent m (0 to 20,000) at height, m, above 0: 2 h tan of SpotAngle. NaN
// outside.
func SpotDiameter(m, height, share float64) float64 {
	if !(height > 0) {
		return math.NaN()
	}
	return 2 * height * math.Tan(SpotAngle(m, share)*radian)
}

// SpotHeight returns the height in m at which the spot of a downlight with the
// exponent m (0 to 20,000), taken at share (fraction, above 0 and below 1) of
// its peak, has the given diameter, m, above 0. NaN outside.
func SpotHeight(m, diameter, share float64) float64 {
	if !(diameter > 0) || share == 1 {
		return math.NaN()
	}
	return diameter / SpotDiameter(m, 1, share)
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

// SpotOverlapShare returns SpotOverlap as a fraction of one spot's area, for
// the given diameter, m, above 0, and spacing, m, at least 0. NaN outside.
func SpotOverlapShare(diameter, spacing float64) float64 {
	if !(diameter > 0) {
		return math.NaN()
	}
	return SpotOverlap(diameter, spacing) / (math.Pi / 4 * diameter * diameter)
}

// FlatPair returns the spacing in m of two downlights with the exponent m (0
// to 20,000) at height, m, above 0, at which the PPFD midway is maximally flat
// along the line through both: 2h/√(m+4). Wider spacing leaves a dip. NaN
// outside.
func FlatPair(m, height float64) float64 { return flat(m, height, 4, 2) }

// FlatSquare returns the side in m of a square of four downlights with the
// exponent m (0 to 20,000) at height, m, above 0, at which the PPFD in its
// middle is maximally flat: 2h/√(m+3). NaN outside.
func FlatSquare(m, height float64) float64 { return flat(m, height, receiverPower, 2) }

// FlatRing returns the radius in m of a ring of three or more downlights with
// the exponent m (0 to 20,000) at height, m, above 0, at which the PPFD in its
// middle is maximally flat: h √(2/(m+3)). NaN outside.
func FlatRing(m, height float64) float64 { return flat(m, height, receiverPower, math.Sqrt2) }

func flat(m, height, add, factor float64) float64 {
	if !exponentRange.Contains(m) || !(height > 0) {
		return math.NaN()
	}
	return factor * height / math.Sqrt(m+add)
}

// FlatPairHeight returns the height in m at which two downlights with the
// exponent m (0 to 20,000), spacing, m, above 0, apart, give a flat middle: the
// inverse of FlatPair. NaN outside.
func FlatPairHeight(m, spacing float64) float64 { return spacing / FlatPair(m, 1) * sign(spacing) }

// FlatSquareHeight is the inverse of FlatSquare: the height in m for the
// exponent m (0 to 20,000) and the side spacing, m, above 0. NaN outside.
func FlatSquareHeight(m, spacing float64) float64 { return spacing / FlatSquare(m, 1) * sign(spacing) }

// sign is 1 for a positive number and otherwise NaN.
func sign(v float64) float64 {
	if v > 0 {
		return 1
	}
	return math.NaN()
}

// Midway returns the PPFD midway between two equal downlights as a ratio to the PPFD under one of
// them, both counted in both places: below 1 the spots leave a dip, above 1
// they pile up. The exponent m is 0 to 20,000, height in m above 0, spacing in m
// above 0. NaN outside.
func Midway(m, height, spacing float64) float64 {
	return 2 * SpotPPFD(1, m, height, spacing/2) / (SpotPPFD(1, m, height, 0) + SpotPPFD(1, m, height, spacing)) * sign(spacing)
}
