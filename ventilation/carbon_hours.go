package ventilation

import (
	"errors"
	"math"

	"cloche.example/internal/domain"
)

// CO2Hours is the CO2 of a house over hours.
type CO2Hours struct {
	Outside     float64 // µmol/mol, 50 to 5000, outside air
	Start       float64 // µmol/mol, 50 to 5000, inside at the start of the first hour
	Doser       float64 // kg/s, 0 to 100, the most that is given, as far as keeps the mean of the hour at CO2 of the hour's Targets
	Respiration float64 // kg/(m² s), 0 to 1e-5, set free by crop and soil per floor area
	Photons     float64 // µmol/J, 0 to 5, of the light of lamps
	Heat        float64 // J/kg, 0 to 1e8, sensible heat to the air with each kg that is given, as by a burner without a flue
	Vapour      float64 // kg/kg, 0 to 10, vapour set free with each kg that is given
}

// DefaultCO2Hours returns 420 µmol/mol outside and at first, no doser, 0.5 g/(m²
// h) from good soil [Daunicht71], and lamps of 4.6 µmol/J, as of white light
// without infrared (from memory).
func DefaultCO2Hours() *CO2Hours {
	return &CO2Hours{Outside: 420, Start: 420, Respiration: 0.5e-3 / secondsPerHour, Photons: 4.6}
}

var (
	breathRange   = domain.Range{Min: 0, Max: 1e-5, Unit: "kg/(m² s)", Source: "rich soil sets free a tenth of it"}
	photonsRange  = domain.Range{Min: 0, Max: 5, Unit: "µmol/J", Source: "none to red light"}
	byHeatRange   = domain.Range{Min: 0, Max: 1e8, Unit: "J/kg", Source: "bottled gas to hydrogen with a little methane"}
	byVapourRange = domain.Range{Min: 0, Max: 10, Unit: "kg/kg", Source: "bottled gas to hydrogen with a little methane"}
)

// sunPhotons is the photosynthetic light of the sun, µmol/J of global radiation
// [Vanthoor11b] table 3.
const sunPhotons = 2.3

// check joins every fault of h, by field; nil has none.
func (h *CO2Hours) check() error {
	if h == nil {
		return nil
	}
	return domain.Within("CO2", errors.Join(
		carbonRange.Check("Outside", h.Outside),
		carbonRange.Check("Start", h.Start),
		carbonFlowRange.Check("Doser", h.Doser),
		breathRange.Check("Respiration", h.Respiration),
		photonsRange.Check("Photons", h.Photons),
		byHeatRange.Check("Heat", h.Heat),
		byVapourRange.Check("Vapour", h.Vapour),
	))
}

// air is the CO2 of the house in the hour that was solved.
func (y *yearRun) air(one *CO2Case) carbon {
	h, s, k := y.hours.CO2, &y.state, &y.keeping.k
	house := &y.c.house
	par := sunPhotons*k.sunLight + h.Photons*k.lampLight
	if !leafWarmthRange.Contains(s.CanopyTemperature) {
		par = 0
	}
	*one = CO2Case{FloorArea: house.FloorArea, Volume: house.Volume, Crop: house.Crop, Leaf: s.CanopyTemperature, PAR: min(parRange.Max, par),
		Exchange: s.VolumeOut, Outside: h.Outside, Respiration: h.Respiration * house.FloorArea}
	r := carbon{c: one, per: carbonPer(s.Temperature, k.pressure), lit: one.PAR > 0 && one.Crop.LAI > 0}
	if r.lit {
		r.take = uptakeOf(one.Crop.LAI, one.PAR, one.Leaf)
	}
	return r
}

// dose is what keeps the mean of the hour that was solved at its target, kg/s, as far
// as the doser gives it.
func (y *yearRun) dose(r *carbon) float64 {
	h, target := y.hours.CO2, y.keeping.t.CO2
	if y.hours.Rule == nil || !(target > 0) {
		return 0
	}
	pull, phi := r.store(secondsPerHour)
	need := pull*(target-phi*y.co2-(1-phi)*h.Outside) + r.taken(target) - r.c.Respiration
	return max(0, min(h.Doser, need))
}

// burns tells whether what is given brings heat or vapour.
func (h *CO2Hours) burns() bool { return h != nil && h.Doser > 0 && (h.Heat > 0 || h.Vapour > 0) }

// Turns in which what a burner gives is sought, and to which part of its most.
const (
	burnerTurns     = 8
	burnerAgreement = 1e-6
)

// burner seeks what a burner gives in an hour.
type burner struct {
	given        float64 // kg/s, in the state that was solved
	last, missed float64 // kg/s, given a turn before, and what that fell short
	turns        int
}

// again sets what is given anew from what the state asks for, and reports whether
// that is another amount.
func (b *burner) again(asked, most float64) bool {
	miss := asked - b.given
	b.turns++
	if b.turns >= burnerTurns || math.Abs(miss) <= burnerAgreement*most {
		return false
	}
	next := asked
	if slope := (miss - b.missed) / (b.given - b.last); b.turns > 1 && slope < 0 {
		next = b.given - miss/slope
	}
	b.last, b.missed = b.given, miss
	b.given = max(0, min(most, next))
	return b.given != b.last
}

// breathe ends hour i for the CO2: the mean of the hour goes into the stomata of
// the next.
func (y *yearRun) breathe(i int) error {
	y.dst.CO2[i], y.dst.Dosed[i], y.dst.Photosynthesis[i] = math.NaN(), 0, 0
	h := y.hours.CO2
	if h == nil {
		return nil
	}
	var one CO2Case
	r := y.air(&one)
	supply := y.burner.given
	if !h.burns() {
		supply = y.dose(&r)
	}
	m, err := r.over(y.co2, secondsPerHour, supply)
	if err != nil {
		return err
	}
	y.dst.CO2[i], y.dst.Dosed[i], y.dst.Photosynthesis[i] = m.Concentration, supply, m.Uptake
	y.co2 = m.End
	y.keeping.k.co2 = max(carbonRange.Min, min(carbonRange.Max, m.Concentration))
	return nil
}
