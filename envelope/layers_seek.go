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
	tried := false
	if s.near.stage == stageAuto && s.near.have[s.near.last] && s.near.last > faceDamp {
		condenses, err := s.condenses()
		if tried = err == nil; tried && condenses {
			return 1, nil
		}
		s.near.shed = max(0, (s.water.ratio-s.room.ratio)/s.water.slope)
		copy(s.near.x[faceDry][:], s.x[:s.vars]) // nearer than a dry face of hours ago
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
	if dry && (tried || s.near.stage == stageFree || s.onlyDry(dryFace)) {
		return 0, nil
	}
	if !tried {
		x := s.x
		condenses, err := s.condenses()
		switch {
		case err != nil:
			return 0, err
		case condenses:
			return 1, nil
		case dry:
			s.near.shed = max(0, (s.water.ratio-s.room.ratio)/s.water.slope)
			s.x = x
			return 0, s.taken(faceDry)
		}
	}
	share := seekShare
	if w := s.near; w.hanging > 0 && w.hanging < 1 {
		copy(s.x[:s.vars], w.x[faceDamp][:])
		share = w.hanging
	}
	if share, ok := s.poise(share); ok {
		return share, nil
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

// seekShare is the fraction of a face under drops with which their search begins.
const seekShare = 0.5

// onlyDry reports whether a face at t, °C, at or above the dew point, where its
// balances have just been closed dry, cannot be wet as well. They are evaluated as
// they were afterwards.
func (s *solver) onlyDry(t float64) bool {
	if cools := s.coolsBy(); t-s.room.dew > cools {
		if s.dry.transmit[s.n-1] > 0 {
			s.near.shed = t - s.room.dew - cools
		}
		return true
	}
	x := s.x
	only := s.shedsWater()
	s.x = x
	s.take(faceDry)
	s.evaluate(s.system)
	return only
}

// shedsWater reports whether the face would be above the dew point under water that
// passes no vapour, and surely so: from water that passes some, vapour would leave.
// It takes steps of Newton's method to that state until the next is too short to
// matter.
func (s *solver) shedsWater() bool {
	s.take(faceDamp)
	s.mix(1)
	n, last := s.vars, innerFace(s.n-1)
	m := &s.system.matrix
	for range shedSteps {
		s.evaluate(s.system)
		for r := range n {
			m[r][n] = -s.f[r]
		}
		if !s.system.eliminate(n, 1) {
			return false
		}
		longest := 0.0
		for a := range 2 * s.n {
			longest = max(longest, abs(s.rises(a, n)))
		}
		off, doubt := s.t[last]+s.rises(last, n)-s.room.dew, shedDoubt*longest
		if off-doubt > shedLeast || off+doubt < shedLeast || longest > stepLimit {
			s.near.shed = max(0, off-doubt)
			return off-doubt > shedLeast
		}
		for r := range n {
			s.x[r] += m[r][n]
		}
	}
	return false
}

// The look of shedsWater: how far above the dew point the face is at least, K, the
// fraction of the longest step of a face by which the next may be off, and the
// steps.
const (
	shedLeast = 1e-3
	shedDoubt = 0.5
	shedSteps = 4
)

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
