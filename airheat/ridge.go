package airheat

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/domain"
)

// TwoLayers is a house with a lower and an upper layer of air, heated so that
// the lower one keeps a set-point.
//
//	Q = Hl (Tl - To) + Hu (Tu - To)
//	phi Q + c (M + Vr)(Tl - Tu) = Hu (Tu - To)
//
// phi is the share of the heat that rises past the crop, c the heat capacity
// of the air by volume, M the mixing between the layers, and Vr the heater's
// flow where its return is taken at the ridge, else 0: what the heater draws
// from the upper layer, the lower one replaces.
type TwoLayers struct {
	LowerLoss    float64 // W/K, 0 to 1e9, lower layer to outside
	UpperLoss    float64 // W/K, 1e-6 to 1e9, upper layer to outside
	Lower        float64 // °C, -90 to 120, set-point of the lower layer
	Outside      float64 // °C, -90 to 120
	RisingShare  float64 // fraction, 0 to 1, of the heat that rises past the crop
	Mixing       float64 // m³/s, 0 to 10000, exchanged between the layers without fans
	HeaterFlow   float64 // m³/s, 1e-6 to 10000, through the heater, at the lower layer's density
	HeatCapacity float64 // J/(m³ K), 300 to 3000, of the air: psychro.State's HeatCapacity over SpecificVolume
}

func (l *TwoLayers) check() error {
	err := errors.Join(
		conductanceRange.Check("LowerLoss", l.LowerLoss),
		domain.Range{Min: 1e-6, Max: conductanceRange.Max, Unit: "W/K"}.Check("UpperLoss", l.UpperLoss),
		roomRange.Check("Lower", l.Lower), roomRange.Check("Outside", l.Outside),
		shareRange.Check("RisingShare", l.RisingShare),
		domain.Range{Min: 0, Max: flowRange.Max, Unit: "m³/s"}.Check("Mixing", l.Mixing),
		flowRange.Check("HeaterFlow", l.HeaterFlow),
		domain.Range{Min: 300, Max: 3000, Unit: "J/(m³ K)"}.Check("HeatCapacity", l.HeatCapacity),
	)
	if err == nil && !(l.Lower > l.Outside) {
		err = &RangeError{Field: "Lower", Value: l.Lower, Min: l.Outside, Max: roomRange.Max, Unit: "°C", Source: "a house colder than outside needs no heat"}
	}
	if err == nil && l.LowerLoss == 0 && l.Mixing == 0 {
		err = &RangeError{Field: "LowerLoss + Mixing", Value: 0, Min: math.SmallestNonzeroFloat64, Max: conductanceRange.Max, Source: "a lower layer that loses and exchanges nothing needs no heat"}
	}
	if err == nil && l.RisingShare == 1 && l.Mixing == 0 {
		err = &RangeError{Field: "Mixing", Value: 0, Min: math.SmallestNonzeroFloat64, Max: flowRange.Max, Unit: "m³/s", Source: "with all heat rising and no mixing the lower layer is never heated"}
	}
	return err
}

// Layered is the balance of the two layers for one way of running the heater.
type Layered struct {
	Heat   float64 // W, what the house loses and the heater gives
	Upper  float64 // °C, the upper layer
	Return float64 // °C, air that the heater takes in
	Supply float64 // °C, air that the heater lets out
}

// solve gives the balance with exchange m³/s between the layers and the upper
// loss multiplied by film.
func (l *TwoLayers) solve(exchange, film float64) (heat, upper float64) {
	hu := l.UpperLoss * film
	dl := l.Lower - l.Outside
	c := l.HeatCapacity * exchange
	// Hu x = phi (Hl dl + Hu x) + c (dl - x), x = Tu - To.
	x := (l.RisingShare*l.LowerLoss*dl + c*dl) / (hu*(1-l.RisingShare) + c)
	return l.LowerLoss*dl + hu*x, l.Outside + x
}

// tooHot refuses an upper layer that no house has.
func (l *TwoLayers) tooHot(upper float64) error {
	if upper <= roomRange.Max {
		return nil
	}
	return fmt.Errorf("%w: with RisingShare %g and Mixing %g m³/s the upper layer would be at %.0f °C", ErrNoSolution, l.RisingShare, l.Mixing, upper)
}

func (l *TwoLayers) layered(heat, upper float64, ridge bool) Layered {
	r := Layered{Heat: heat, Upper: upper, Return: l.Lower}
	if ridge {
		r.Return = upper
	}
	r.Supply = r.Return + heat/(l.HeatCapacity*l.HeaterFlow)
	return r
}

// RidgeReturn compares the return at the crop's level with one from the ridge.
type RidgeReturn struct {
	Floor      Layered // return from the lower layer
	Ridge      Layered // return from the upper layer
	MixedHeat  float64 // W, with both layers at the set-point: no arrangement needs less unless the upper layer is cooler
	CoilView   float64 // fraction: warmer return over the rise at floor return, what the coil seems to save
	Saving     float64 // fraction of the floor return's heat that the house really saves; negative: it costs
	Bound      float64 // fraction that full mixing would save; with the upper layer warmer no saving exceeds it
	SavingHeat float64 // W really saved
	Costs      bool    // the ridge return raises the heat: the upper layer is the cooler one
}

// RidgeReturn solves both balances. The coil view wrongly counts the warmer
// return as heat saved: a coil given warmer air delivers a warmer supply, and
// the house still loses the same. The real saving is what the cooler upper
// layer loses less: Hu (Tu,floor - Tu,ridge).
//
// Where so much heat rises that the upper layer would be above 120 °C the two
// layers do not describe a house: ErrNoSolution.
func (l TwoLayers) RidgeReturn() (RidgeReturn, error) {
	if err := l.check(); err != nil {
		return RidgeReturn{}, err
	}
	var r RidgeReturn
	q, u := l.solve(l.Mixing, 1)
	if err := l.tooHot(u); err != nil {
		return RidgeReturn{}, err
	}
	r.Floor = l.layered(q, u, false)
	q, u = l.solve(l.Mixing+l.HeaterFlow, 1)
	r.Ridge = l.layered(q, u, true)
	r.MixedHeat = (l.LowerLoss + l.UpperLoss) * (l.Lower - l.Outside)
	r.CoilView = (r.Floor.Upper - l.Lower) / (r.Floor.Heat / (l.HeatCapacity * l.HeaterFlow))
	r.SavingHeat = l.UpperLoss * (r.Floor.Upper - r.Ridge.Upper)
	r.Saving = r.SavingHeat / r.Floor.Heat
	r.Bound = 1 - r.MixedHeat/r.Floor.Heat
	r.Costs = r.SavingHeat < 0
	return r, nil
}

// coilView returns the fraction of the coil's rise that a warmer return seems
// to save: warmer and rise in K. At a rise of 100 K a return 10 K warmer gives
// 0.10; see TwoLayers.RidgeReturn for what the house saves. NaN for a rise
// that is not positive.
func coilView(warmer, rise float64) float64 {
	if !(rise > 0) {
		return math.NaN()
	}
	return warmer / rise
}

// MixingFans are fans that stir the two layers.
type MixingFans struct {
	Flow       float64 // m³/s, 0 to 10000, moved between the layers, beyond TwoLayers.Mixing
	Power      float64 // W, 0 to 1e9, of electricity; all of it becomes heat in the house
	FilmFactor float64 // ratio, 1 to 3, by which the moving air raises the upper layer's loss, 1 or more
}

// FansCompared is what mixing fans change in a house whose heater draws its
// return at the crop's level.
type FansCompared struct {
	Upper      float64 // °C, the upper layer with fans
	HouseHeat  float64 // W, what the house loses with fans
	HeaterHeat float64 // W, what the heater still gives: HouseHeat less the fans' power
	SavingHeat float64 // W of heater heat saved against no fans
	Power      float64 // W of electricity used
	NetSaving  float64 // W, heat saved less electricity at what it is worth
}

// Fans returns the balance with mixing fans instead of a ridge return. worth,
// a ratio, 0 to 100, is how many W of heat one W of electricity is worth: the ratio of
// prices, or of primary energy; 1 counts joule for joule.
func (l TwoLayers) Fans(f MixingFans, worth float64) (FansCompared, error) {
	err := errors.Join(l.check(),
		domain.Range{Min: 0, Max: flowRange.Max, Unit: "m³/s"}.Check("Flow", f.Flow),
		powerRange.Check("Power", f.Power),
		domain.Range{Min: 1, Max: 3, Unit: "ratio"}.Check("FilmFactor", f.FilmFactor),
		domain.Range{Min: 0, Max: 100, Unit: "ratio"}.Check("worth", worth),
	)
	if err != nil {
		return FansCompared{}, err
	}
	before, hottest := l.solve(l.Mixing, 1)
	if err := l.tooHot(hottest); err != nil {
		return FansCompared{}, err
	}
	after, upper := l.solve(l.Mixing+f.Flow, f.FilmFactor)
	if f.Power > after {
		return FansCompared{}, fmt.Errorf("%w: the fans' Power of %.0f W is more than the house loses, %.0f W: it would be warmer than Lower", ErrNoSolution, f.Power, after)
	}
	c := FansCompared{Upper: upper, HouseHeat: after, HeaterHeat: after - f.Power, Power: f.Power}
	c.SavingHeat = before - c.HeaterHeat
	c.NetSaving = c.SavingHeat - worth*f.Power
	return c, nil
}
