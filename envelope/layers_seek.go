package envelope

import "cloche.example/internal/constant"

// edgeDew is the distance of a face from the dew point, K, below which its balances
// are closed to the end before it is judged: roughClosure moves no face by more
// than a third of it.
const edgeDew = 0.05

// seek finds the state of the part that settle would, from the iterates of before
// and roughly closed, and returns the share of the face that is wet.
func (s *solver) seek() (wet float64, err error) {
	s.aim = roughClosure
	s.dripAt = s.near.dripAt
	switch {
	case s.k.InnerFace == InnerWet:
		return 1, s.soak()
	case s.k.InnerFace != InnerAuto || s.room.ratio == 0 || s.closed == 0:
		return 0, s.taken(faceDry)
	case s.near.stage == stageSoaked:
		return 1, s.soaked()
	}
	wetFirst := s.near.stage == stageAuto && s.near.have[s.near.last] && s.near.last > faceDamp
	if wetFirst {
		if condenses, err := s.condenses(); err == nil && condenses {
			return 1, nil
		}
	}
	last := innerFace(s.n - 1)
	if err := s.taken(faceDry); err != nil {
		return 0, err
	}
	if abs(s.t[last]-s.room.dew) < edgeDew && s.aim > closure {
		s.aim = closure
		if err := s.taken(faceDry); err != nil {
			return 0, err
		}
	}
	dryFace := s.t[last]
	s.dripAt, s.near.dripAt = dryFace, dryFace
	dry := dryFace >= s.room.dew
	if dry && (s.near.stage == stageFree || dryFace-s.room.dew > s.coolsBy()) {
		return 0, nil
	}
	x := s.x
	condenses, err := s.condenses()
	switch {
	case err != nil:
		return 0, err
	case condenses:
		return 1, nil
	case dry:
		s.x = x
		return 0, s.taken(faceDry)
	}
	if w := s.near; w.hanging > 0 && w.hanging < 1 {
		copy(s.x[:s.vars], w.x[faceDamp][:])
		if share, ok := s.poise(w.hanging); ok {
			return share, nil
		}
	}
	s.aim = closure
	return s.partly(dryFace)
}

// signDoubt is the heat of condensation, as a multiple of what the balances
// leave open, below which they do not tell its sign: the face moves by what is
// open over some 10 W/(m² K), and that heat by some 20 W/m² for each kelvin.
const signDoubt = 5

// condenses solves the cover with a wet face, near enough to tell whether vapour
// condenses on it, and reports that.
func (s *solver) condenses() (bool, error) {
	if err := s.soak(); err != nil {
		return false, err
	}
	if s.aim > closure && abs(s.latent) <= signDoubt*s.biggest {
		s.aim = closure
		if err := s.soak(); err != nil {
			return false, err
		}
	}
	return s.vapour >= 0, nil
}

// soaked finds the state under water, from which no vapour leaves.
func (s *solver) soaked() error {
	if s.near.last == faceDamp {
		if off, err := s.damp(1); err != nil || off > edgeDew {
			s.near.dries, s.near.above = true, off
			return err
		}
	}
	if condenses, err := s.condenses(); err != nil || condenses {
		return err
	}
	off, err := s.damp(1)
	s.near.dries, s.near.above = true, off
	return err
}

// Safety of what water may cool a face by.
const (
	coolsSafety = 1.5 // times, for coefficients that change with it
	coolsLeaky  = 1.0 // K, for gaps that air leaks through, whose heat need not rise with the temperature of a face
)

// coolsBy bounds by how much in K water that passes no vapour could cool the dry
// face as it is evaluated, where every face that it lets lose heat were the inner
// one itself: what is drawn from another comes by the surroundings in part.
func (s *solver) coolsBy() float64 {
	drawn := 0.0 // W/m²
	last := 2*s.n - 1
	for a := range 2 * s.n {
		dry := s.dry.emittance[a] * (s.g[a] - s.black[a])
		wet := s.wet.emittance[a] * (s.wet.irradiance(a, 2*s.n, &s.black, s.eOut, s.eIn) - s.black[a])
		drawn += max(0, dry-wet-fluxRounding)
	}
	by := 0.0
	if drawn > 0 {
		k := s.t[last] + constant.ZeroCelsius
		by = coolsSafety * drawn / (s.hIn + s.wet.emittance[last]*s.wet.inside[last]*4*s.black[last]/k)
	}
	if s.leaks {
		by += coolsLeaky
	}
	return by
}
