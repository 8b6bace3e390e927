package envelope

import (
	"cloche.example/internal/constant"
	"cloche.example/psychro"
)

// Steps of the drives by which slopes are found where a face is wet in part,
// freezes, or a gap stands at a jump: small beside what moves such a state, large
// beside what its search leaves open. One that changes what is taken by more than
// steppedJump, W/m², has crossed an edge between wet and dry, and the step back
// is taken if that changes it less.
var driveStep = [insideDrives]float64{airDrive: 0.01, glowDrive: 0.05, vapourDrive: -0.5}

const steppedJump = 0.3

// stepped returns what the part takes at the state that settle found, and its
// slopes by small steps of the drives.
func (s *solver) stepped(c *layerSet, touching bool, at *[insideDrives]float64) (partTakes, error) {
	p := s.takes()
	for d := range insideDrives {
		step := driveStep[d]
		if at[d]+step < 0 {
			step = -step
		}
		q, err := s.beside(c, touching, at, d, step)
		if err != nil {
			return p, err
		}
		if jump := p.differs(&q); jump > steppedJump && at[d] > -step {
			back, err := s.beside(c, touching, at, d, -step)
			if err == nil && p.differs(&back) < jump {
				q, step = back, -step
			}
		}
		for i := range q.took {
			p.slope[i][d] = (q.took[i] - p.took[i]) / step
		}
	}
	return p, nil
}

// differs returns the heat in W/m² by which the parts differ in what they take.
func (p *partTakes) differs(q *partTakes) float64 {
	return abs(q.took[airTakes]-p.took[airTakes]) + abs(q.took[glowTakes]-p.took[glowTakes]) + evaporation(0)*abs(q.took[vapourTakes]-p.took[vapourTakes])
}

// beside returns what the part takes where the drive d is moved by the step.
func (s *solver) beside(c *layerSet, touching bool, at *[insideDrives]float64, d int, step float64) (partTakes, error) {
	to := *at
	to[d] += step
	moved := *s.k
	moved.Inside = to[airDrive]
	moved.RadiantRise = fourthRoot(to[glowDrive]/standard.sigma) - constant.ZeroCelsius - moved.Inside
	moved.InsideHumidity = min(1, to[vapourDrive]/psychro.SaturationPressureOver(psychro.SurfaceAt(moved.Inside), moved.Inside))
	room := newRoomAir(&moved)
	var o Solution
	near := nearPart{stage: s.near.stage}
	other := solver{dry: s.dry, wet: s.wet, c: s.c, k: &moved, room: &room, near: &near, system: s.system}
	other.prepare(c, &moved, s.c, touching)
	err := other.settle(&o)
	return other.takes(), err
}
