package envelope

// partly finds the share of the inner face under drops with which the face is
// at the dew point, so that no vapour passes; dryFace in °C is the face with
// none, which is colder. Regula falsi, an end that stays counting half.
func (s *solver) partly(dryFace float64) (share float64, err error) {
	above, err := s.damp(1)
	if err != nil || !(above > 0) {
		return 1, err
	}
	return s.between(0, 1, dryFace-s.room.dew, above)
}

// dropsClosure is the aim in W/m² of balances while the share is sought.
const dropsClosure = 1e-12

// between is partly for shares from low, where the face lies below the dew point
// by below in K, to high, where it lies above.
func (s *solver) between(low, high, below, above float64) (share float64, err error) {
	const (
		near   = 1e-12 // K, from the dew point: the share may hardly change the face, and the radiation it sends by 100 W/m²
		narrow = 1e-15 // fraction, shares that differ by no more are one number
		passes = 100   // halves an interval more than often enough
	)
	aim := s.aim
	s.aim = min(aim, dropsClosure)
	defer func() { s.aim = aim }()
	side := 0
	for range passes {
		share = low - below*(high-low)/(above-below)
		if !(share > low && share < high) {
			share = (low + high) / 2
		}
		off, err := s.damp(share)
		if err != nil {
			return share, err
		}
		switch {
		case off > near:
			high, above = share, off
			if side == 1 {
				below /= 2
			}
			side = 1
		case off < -near:
			low, below = share, off
			if side == -1 {
				above /= 2
			}
			side = -1
		default:
			return share, nil
		}
		if high-low < narrow {
			break
		}
	}
	return share, nil
}

// dropsBelow is by how much in K a dry face lies below the dew point at most
// where drops on a share of it could keep it there: the emittance of drops on a
// film that passes heat radiation warms it by up to 0.22 K in 13,000 random
// covers at the dew point.
const dropsBelow = 0.3

// dropShares are the shares at which such a state is looked for, closer where
// it begins (chosen).
var dropShares = [...]float64{0.02, 0.05, 0.1, 0.2, 0.35, 0.5, 0.7, 0.85}

// drops reports whether a face that is wet could as well be wet in part: a film
// that passes heat radiation is warmed by a few drops and cooled by many. It
// returns the heat from the house into that state, W/m², and ends in the wet
// one.
func (s *solver) drops(dryFace float64) (found bool, flux float64, err error) {
	below := dryFace - s.room.dew
	if below >= 0 || below < -dropsBelow || s.dry.transmit[s.n-1] == 0 {
		return false, 0, nil
	}
	for _, share := range dropShares {
		off, err := s.damp(share)
		if err != nil {
			return false, 0, err
		}
		if off > 0 {
			if _, err := s.between(0, share, below, off); err != nil {
				return false, 0, err
			}
			found, flux = true, s.fluxIn()
			break
		}
	}
	return found, flux, s.soak()
}

// damp solves the cover with water on the given share of the inner face and no
// vapour, and returns how far the face lies above the dew point in K.
func (s *solver) damp(share float64) (float64, error) {
	s.mix(share)
	if err := s.taken(faceDamp); err != nil {
		return 0, err
	}
	return s.t[innerFace(s.n-1)] - s.room.dew, nil
}

// mix makes the tables of a face with water on the given share.
func (s *solver) mix(share float64) {
	last := s.n - 1
	o, f := outerFace(last), innerFace(last)
	s.mixed = *s.dry
	s.mixed.emittance[o] += share * (s.wet.emittance[o] - s.dry.emittance[o])
	s.mixed.emittance[f] += share * (s.wet.emittance[f] - s.dry.emittance[f])
	s.mixed.transmit[last] += share * (s.wet.transmit[last] - s.dry.transmit[last])
	s.mixed.trace(s.n)
}
