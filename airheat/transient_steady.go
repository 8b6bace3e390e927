package airheat

import (
	"fmt"
	"math"
	"time"

	"cloche.example/envelope"
	"cloche.example/internal/domain"
	"cloche.example/internal/transient"
)

// Temperatures are those of the three nodes.
type Temperatures struct {
	Air       float64 // °C, -90 to 120
	Structure float64 // °C, -90 to 120
	Soil      float64 // °C, -90 to 120
}

// node is one of the three.
type node uint8

const (
	airNode node = iota
	structureNode
	soilNode
)

func (t Temperatures) of(n node) float64 { return [...]float64{t.Air, t.Structure, t.Soil}[n] }

// Ranges of the three-node house.
var (
	heatRange        = domain.Range{Min: -1e9, Max: 1e9, Unit: "W"}
	roomRange        = domain.Range{Min: -90, Max: 120, Unit: "°C"}
	conductanceRange = domain.Range{Min: 0, Max: 1e9, Unit: "W/K"}
	skyDropRange     = domain.Range{Min: -10, Max: 100, Unit: "K"}
)

// Transient is a house of three nodes ready for exact solution. It is a value,
// made by NewTransient, safe to copy and to share.
type Transient struct {
	n envelope.Nodes
	s transient.System
}

// NewTransient checks n and solves its eigenproblem. All faults are reported
// together.
func NewTransient(n envelope.Nodes) (Transient, error) {
	if err := n.Check(); err != nil {
		return Transient{}, err
	}
	return Transient{n: n, s: transient.New(
		[3]float64{n.AirCapacity, n.StructureCapacity, n.SoilCapacity},
		[3][3]float64{
			{n.Cover + n.CoverSky + n.Leakage + n.AirStructure + n.AirSoil, -n.AirStructure, -n.AirSoil},
			{-n.AirStructure, n.AirStructure + n.StructureOutside, 0},
			{-n.AirSoil, 0, n.AirSoil + n.SoilDeep},
		},
	)}, nil
}

// made refuses the zero Transient.
func (h *Transient) made() error {
	if h.s.Made() {
		return nil
	}
	return fmt.Errorf("%w: the zero Transient is invalid, make it with NewTransient", ErrRange)
}

// TimeConstants returns the three time constants of the coupled house, the
// shortest first.
func (h Transient) TimeConstants() [3]time.Duration {
	return [3]time.Duration{duration(1 / h.s.Rates[0]), duration(1 / h.s.Rates[1]), duration(1 / h.s.Rates[2])}
}

// Steady returns the temperatures at which the house would stay under d with
// the outside air held at d.Outside, °C; d.Ramp is ignored. NaN where d is out
// of its ranges, and for the zero Transient.
func (h Transient) Steady(d envelope.Drive) Temperatures {
	if !h.s.Made() || d.Check() != nil {
		return noTemperatures()
	}
	return h.steady(d)
}

func (h *Transient) steady(d envelope.Drive) Temperatures {
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

// HoldingHeat returns the heat in W that keeps the air at air, °C, -90 to 120, in
// the steady state under d, and the temperatures of that state; d.Heat is
// ignored. NaN where air or d is out of its range, and for the zero Transient.
func (h Transient) HoldingHeat(d envelope.Drive, air float64) (float64, Temperatures) {
	if !h.s.Made() || d.Check() != nil || !roomRange.Contains(air) {
		return math.NaN(), noTemperatures()
	}
	return h.holdingHeat(d, air)
}

func (h *Transient) holdingHeat(d envelope.Drive, air float64) (float64, Temperatures) {
	n := &h.n
	t := Temperatures{
		Air:       air,
		Structure: (n.AirStructure*air + d.StructureHeat + n.StructureOutside*d.Outside) / (n.AirStructure + n.StructureOutside),
		Soil:      (n.AirSoil*air + d.SoilHeat + n.SoilDeep*d.Deep) / (n.AirSoil + n.SoilDeep),
	}
	q := (n.Cover+n.Leakage)*(air-d.Outside) + n.CoverSky*(air-d.Outside+d.SkyDrop) + n.AirStructure*(air-t.Structure) + n.AirSoil*(air-t.Soil)
	return q, t
}

// duration converts seconds, saturating at the longest Duration.
func duration(s float64) time.Duration {
	ns := s * 1e9
	if !(ns < math.MaxInt64) {
		return math.MaxInt64
	}
	return time.Duration(math.Round(ns))
}
