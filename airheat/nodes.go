package airheat

import (
	"errors"
	"math"
	"time"

	"cloche.example/internal/domain"
)

// Nodes describes a house as three nodes: the air, the structure with
// everything in it that warms quickly, and the upper soil.
//
//	Ca dTa/dt = Q  - (Cover+Leakage)(Ta-To) - CoverSky(Ta-Tsky) - AirStructure(Ta-Ts) - AirSoil(Ta-Tg)
//	Cs dTs/dt = Qs + AirStructure(Ta-Ts) - StructureOutside(Ts-To)
//	Cg dTg/dt = Qg + AirSoil(Ta-Tg) - SoilDeep(Tg-Td)
type Nodes struct {
	AirCapacity       float64 // J/K, air and what follows it within a minute; > 0
	StructureCapacity float64 // J/K, frame, benches, pots, plants; > 0
	SoilCapacity      float64 // J/K, the soil layer that takes part in a day; > 0
	Cover             float64 // W/K, air to outside air through the cover; >= 0
	CoverSky          float64 // W/K, air through the cover to the sky; >= 0
	Leakage           float64 // W/K, exchange of air with outside; >= 0
	AirStructure      float64 // W/K, air to structure; >= 0
	AirSoil           float64 // W/K, air to soil surface; >= 0
	StructureOutside  float64 // W/K, structure to outside; >= 0
	SoilDeep          float64 // W/K, soil layer to the ground below; >= 0
}

// Drive is what acts on the house from the start of a calculation on.
type Drive struct {
	Heat          float64 // W, heat given to the air
	StructureHeat float64 // W, heat given to the structure, for instance sun
	SoilHeat      float64 // W, heat given to the soil
	Outside       float64 // °C, outside air at the start
	Ramp          float64 // K/s, rise of the outside air and the sky
	SkyDrop       float64 // K, how far the sky lies below the outside air
	Deep          float64 // °C, ground below the soil layer
}

// Temperatures are those of the three nodes.
type Temperatures struct {
	Air       float64 // °C
	Structure float64 // °C
	Soil      float64 // °C
}

// Node names one of the three nodes.
type Node uint8

// The three nodes.
const (
	AirNode Node = iota
	StructureNode
	SoilNode
)

// Of returns the temperature of node n, °C, and NaN for an unknown node.
func (t Temperatures) Of(n Node) float64 {
	switch n {
	case AirNode:
		return t.Air
	case StructureNode:
		return t.Structure
	case SoilNode:
		return t.Soil
	}
	return math.NaN()
}

// Ranges of the three-node house.
var (
	capacityRange    = domain.Range{Min: 1, Max: 1e13, Unit: "J/K"}
	conductanceRange = domain.Range{Min: 0, Max: 1e9, Unit: "W/K"}
	heatRange        = domain.Range{Min: -1e9, Max: 1e9, Unit: "W"}
	roomRange        = domain.Range{Min: -90, Max: 120, Unit: "°C"}
	rampRange        = domain.Range{Min: -0.1, Max: 0.1, Unit: "K/s"}
	skyDropRange     = domain.Range{Min: 0, Max: 60, Unit: "K"}
)

// check returns all faults of n.
func (n *Nodes) check() error {
	err := errors.Join(
		capacityRange.Check("AirCapacity", n.AirCapacity),
		capacityRange.Check("StructureCapacity", n.StructureCapacity),
		capacityRange.Check("SoilCapacity", n.SoilCapacity),
		conductanceRange.Check("Cover", n.Cover),
		conductanceRange.Check("CoverSky", n.CoverSky),
		conductanceRange.Check("Leakage", n.Leakage),
		conductanceRange.Check("AirStructure", n.AirStructure),
		conductanceRange.Check("AirSoil", n.AirSoil),
		conductanceRange.Check("StructureOutside", n.StructureOutside),
		conductanceRange.Check("SoilDeep", n.SoilDeep),
	)
	if err != nil {
		return err
	}
	// Each node must lose heat somewhere, or it has no steady state.
	out := n.Cover + n.CoverSky + n.Leakage
	structure, soil := n.StructureOutside > 0, n.SoilDeep > 0
	if out == 0 && !(structure && n.AirStructure > 0) && !(soil && n.AirSoil > 0) {
		err = errors.Join(err, &RangeError{Field: "Cover + CoverSky + Leakage", Value: out, Min: math.SmallestNonzeroFloat64, Max: conductanceRange.Max, Unit: "W/K", Source: "the air must lose heat somewhere"})
	}
	if n.AirStructure+n.StructureOutside == 0 {
		err = errors.Join(err, &RangeError{Field: "AirStructure + StructureOutside", Value: 0, Min: math.SmallestNonzeroFloat64, Max: conductanceRange.Max, Unit: "W/K", Source: "the structure must be joined to something"})
	}
	if n.AirSoil+n.SoilDeep == 0 {
		err = errors.Join(err, &RangeError{Field: "AirSoil + SoilDeep", Value: 0, Min: math.SmallestNonzeroFloat64, Max: conductanceRange.Max, Unit: "W/K", Source: "the soil must be joined to something"})
	}
	return err
}

func (d *Drive) check() error {
	return errors.Join(
		heatRange.Check("Heat", d.Heat),
		heatRange.Check("StructureHeat", d.StructureHeat),
		heatRange.Check("SoilHeat", d.SoilHeat),
		roomRange.Check("Outside", d.Outside),
		rampRange.Check("Ramp", d.Ramp),
		skyDropRange.Check("SkyDrop", d.SkyDrop),
		roomRange.Check("Deep", d.Deep),
	)
}

// House is a three-node house ready for exact solution: the eigenvalues and
// eigenvectors of its equations. It is a value, safe to copy and to share.
type House struct {
	n      Nodes
	scale  [3]float64    // square root of each capacity
	lambda [3]float64    // 1/s, decay rates, falling
	vec    [3][3]float64 // vec[i][k]: node i of eigenvector k, orthonormal in scaled temperatures
}

// NewHouse checks n and solves its eigenproblem. All faults are reported
// together. Written in y = sqrt(C) T the matrix is symmetric, so its
// eigenvalues are real and positive and the solution is a sum of three
// decays; Jacobi's rotations give them to the last digits.
func NewHouse(n Nodes) (House, error) {
	if err := n.check(); err != nil {
		return House{}, err
	}
	h := House{n: n}
	h.scale = [3]float64{math.Sqrt(n.AirCapacity), math.Sqrt(n.StructureCapacity), math.Sqrt(n.SoilCapacity)}
	as := -n.AirStructure / (h.scale[0] * h.scale[1])
	ag := -n.AirSoil / (h.scale[0] * h.scale[2])
	m := [3][3]float64{
		{(n.Cover + n.CoverSky + n.Leakage + n.AirStructure + n.AirSoil) / n.AirCapacity, as, ag},
		{as, (n.AirStructure + n.StructureOutside) / n.StructureCapacity, 0},
		{ag, 0, (n.AirSoil + n.SoilDeep) / n.SoilCapacity},
	}
	h.lambda, h.vec = jacobi3(m)
	return h, nil
}

// made refuses the zero House.
func (h *House) made(field string) error {
	if h.scale[0] > 0 {
		return nil
	}
	return &RangeError{Field: field, Min: capacityRange.Min, Max: capacityRange.Max, Unit: "J/K", Source: "a House comes from NewHouse"}
}

// Nodes returns the description the house was made from.
func (h *House) Nodes() Nodes { return h.n }

// TimeConstants returns the three time constants of the coupled house, the
// shortest first.
func (h *House) TimeConstants() [3]time.Duration {
	return [3]time.Duration{duration(1 / h.lambda[0]), duration(1 / h.lambda[1]), duration(1 / h.lambda[2])}
}

// Steady returns the temperatures at which the house would stay under d with
// the outside air held at d.Outside, °C; d.Ramp is left aside.
func (h *House) Steady(d Drive) Temperatures {
	n := &h.n
	// Structure and soil eliminated: Ts = (Has Ta + bs)/(Has + Hso), likewise Tg.
	bs := d.StructureHeat + n.StructureOutside*d.Outside
	bg := d.SoilHeat + n.SoilDeep*d.Deep
	ds, dg := n.AirStructure+n.StructureOutside, n.AirSoil+n.SoilDeep
	loss := n.Cover + n.Leakage + n.CoverSky + n.AirStructure*n.StructureOutside/ds + n.AirSoil*n.SoilDeep/dg
	heat := d.Heat + (n.Cover+n.Leakage)*d.Outside + n.CoverSky*(d.Outside-d.SkyDrop) + n.AirStructure*bs/ds + n.AirSoil*bg/dg
	ta := heat / loss
	return Temperatures{Air: ta, Structure: (n.AirStructure*ta + bs) / ds, Soil: (n.AirSoil*ta + bg) / dg}
}

// HoldingHeat returns the heat in W that keeps the air at air, °C, in the
// steady state under d, and the temperatures of that state; d.Heat is left
// aside.
func (h *House) HoldingHeat(d Drive, air float64) (float64, Temperatures) {
	n := &h.n
	t := Temperatures{
		Air:       air,
		Structure: (n.AirStructure*air + d.StructureHeat + n.StructureOutside*d.Outside) / (n.AirStructure + n.StructureOutside),
		Soil:      (n.AirSoil*air + d.SoilHeat + n.SoilDeep*d.Deep) / (n.AirSoil + n.SoilDeep),
	}
	q := (n.Cover+n.Leakage)*(air-d.Outside) + n.CoverSky*(air-d.Outside+d.SkyDrop) + n.AirStructure*(air-t.Structure) + n.AirSoil*(air-t.Soil)
	return q, t
}

// jacobi3 returns the eigenvalues of the symmetric matrix m, falling, and its
// orthonormal eigenvectors as columns, by cyclic Jacobi rotations.
func jacobi3(m [3][3]float64) (val [3]float64, vec [3][3]float64) {
	vec = [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	pairs := [3][2]int{{0, 1}, {0, 2}, {1, 2}}
	for range 60 { // three or four sweeps in practice
		done := true
		for _, pq := range pairs {
			p, q := pq[0], pq[1]
			// Relative to the diagonal, so that small eigenvalues keep their digits.
			if math.Abs(m[p][q]) <= 1e-18*math.Sqrt(math.Abs(m[p][p]*m[q][q])) {
				continue
			}
			done = false
			theta := (m[q][q] - m[p][p]) / (2 * m[p][q])
			t := math.Copysign(1/(math.Abs(theta)+math.Sqrt(theta*theta+1)), theta)
			c := 1 / math.Sqrt(t*t+1)
			s := t * c
			g := t * m[p][q]
			m[p][p] -= g
			m[q][q] += g
			m[p][q], m[q][p] = 0, 0
			r := 3 - p - q
			m[p][r], m[q][r] = c*m[p][r]-s*m[q][r], s*m[p][r]+c*m[q][r]
			m[r][p], m[r][q] = m[p][r], m[q][r]
			for i := range vec {
				vec[i][p], vec[i][q] = c*vec[i][p]-s*vec[i][q], s*vec[i][p]+c*vec[i][q]
			}
		}
		if done {
			break
		}
	}
	val = [3]float64{m[0][0], m[1][1], m[2][2]}
	for i := range 2 {
		for j := i + 1; j < 3; j++ {
			if val[j] > val[i] {
				val[i], val[j] = val[j], val[i]
				for r := range vec {
					vec[r][i], vec[r][j] = vec[r][j], vec[r][i]
				}
			}
		}
	}
	return val, vec
}

// duration converts seconds, saturating at the longest Duration.
func duration(s float64) time.Duration {
	ns := s * 1e9
	if !(ns < math.MaxInt64) {
		return math.MaxInt64
	}
	return time.Duration(math.Round(ns))
}
