package lighting

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
)

// Ranges of a day's light.
var (
	ppfdRange        = domain.Range{Min: 0, Max: 5000, Unit: "µmol/(m² s)", Source: "full sun is about 2000"}
	dliRange         = domain.Range{Min: 0, Max: 80, Unit: "mol/(m² d)", Source: "the clearest days outside reach about 65"}
	photoperiodRange = domain.Range{Min: 0, Max: 24, Unit: "h"}
)

// micromole is a µmol in mol.
const micromole = 1e-6

// DLI returns the daily light integral in mol/(m² d) of ppfd, µmol/(m² s), 0 to
// 5000, that shines for the photoperiod, 0 to 24 h: 0.0036 PPFD h. NaN outside.
func DLI(ppfd float64, photoperiod time.Duration) float64 {
	if !ppfdRange.Contains(ppfd) || !photoperiodRange.Contains(photoperiod.Hours()) {
		return math.NaN()
	}
	return ppfd * photoperiod.Seconds() * micromole
}

// litRange is a photoperiod that has light.
var litRange = domain.Range{Min: domain.MoreThan(0), Max: 24, Unit: "h"}

// PPFDFor returns the PPFD in µmol/(m² s) that gives dli, mol/(m² d), 0 to 80,
// in the photoperiod, more than 0, at most 24 h. NaN outside.
func PPFDFor(dli float64, photoperiod time.Duration) float64 {
	if !dliRange.Contains(dli) || !litRange.Contains(photoperiod.Hours()) {
		return math.NaN()
	}
	return dli / (photoperiod.Seconds() * micromole)
}

// LightingTime returns how long ppfd, µmol/(m² s), 0 to 5000, must shine to add
// dli, mol/(m² d), 0 to 80. The error is ErrNoSolution when that is longer than
// a day.
func LightingTime(dli, ppfd float64) (time.Duration, error) {
	if err := errors.Join(dliRange.Check("dli", dli), ppfdRange.Check("ppfd", ppfd)); err != nil {
		return 0, err
	}
	if dli == 0 {
		return 0, nil
	}
	s := dli / (ppfd * micromole)
	if s > 86400*(1+1e-12) {
		return 0, fmt.Errorf("%w: %g mol/(m² d) from %.4g µmol/(m² s) takes %.1f h, longer than a day", ErrNoSolution, dli, ppfd, s/3600)
	}
	return time.Duration(math.Round(s * float64(time.Second))), nil
}
