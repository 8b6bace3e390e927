package envelope

// What is closer than this to another state is closed to the end before it is
// judged.
const (
	edgeDew    = 0.05 // K, of a dry face from the dew point: roughClosure moves no face by more than a third of it
	edgeVapour = 1e-7 // kg/(s m²), that pass a wet face: the heat of it is twice roughClosure
)

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
		if err := s.soakClosely(); err == nil && s.vapour >= 0 {
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
	if dry && (s.near.stage == stageFree || !s.coolsWet()) {
		return 0, nil
	}
	x := s.x
	if err := s.soakClosely(); err != nil {
		return 0, err
	}
	switch {
	case s.vapour >= 0:
		return 1, nil
	case dry:
		s.x = x
		return 0, s.taken(faceDry)
	}
	if w := s.near; w.hanging > 0 && w.hanging < 1 {
		if share, ok := s.poise(w.hanging); ok {
			return share, nil
		}
	}
	s.aim = closure
	return s.partly(dryFace)
}

// soakClosely is soak, to the end where little vapour passes.
func (s *solver) soakClosely() error {
	if err := s.soak(); err != nil || abs(s.vapour) > edgeVapour || s.aim <= closure {
		return err
	}
	s.aim = closure
	return s.soak()
}

// soaked finds the state under water, from which no vapour leaves.
func (s *solver) soaked() error {
	if s.near.last == faceDamp {
		if off, err := s.damp(1); err != nil || off > edgeDew {
			s.near.dries = true
			return err
		}
	}
	if err := s.soakClosely(); err != nil || s.vapour >= 0 {
		return err
	}
	s.near.dries = true
	_, err := s.damp(1)
	return err
}
