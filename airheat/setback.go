package airheat

import (
	"errors"
	"fmt"
	"math"
	"time"

	"gonum.org/v1/gonum/mat"

	"cloche.example/envelope"
	"cloche.example/internal/solve"
	"cloche.example/internal/transient"
)

// SetBack is what a lower set-point at night does, once every day is like the
// one before.
type SetBack struct {
	HeatPerDay   float64       // J a day from the heater with the set-back
	ConstantHeat float64       // J a day that would hold the day's set-point throughout
	Saving       float64       // fraction of ConstantHeat saved
	Recovery     time.Duration // from the start of the day until the air is at its set-point, to the step; 24 h if never
	Lowest       float64       // °C, lowest air
	LowestSoil   float64       // °C, lowest soil layer
	WarmestAir   float64       // °C, warmest air; below the day's set-point the heater is too small
	Residual     float64       // J a day, heat less losses: zero when the days repeat
}

const (
	setBackStep  = 300.0 // s, the thermostat's step
	setBackDays  = 3000  // after which a house that still drifts is given up
	leastShare   = 1e-3  // of the way that Newton's method says, below which the next day begins where the last ended, which always draws nearer
	turningShare = 1e-9  // of that way, to which the place is found where days go neither on nor back
	turningDays  = 40    // about as many as that takes
	stepsGain    = 0.25  // of that share, by which the day must come nearer to repeating: where the heater turns from full to less the way bends
	daysAlike    = 1e-9  // K, between one day's start and the next of a day that repeats
	atTheSetting = 1e-6  // K, by which rounding may leave the air below a set-point it has reached
)

// NightSetBack returns the repeating day of the house under the constant
// drive d (its Heat counts as a gain, its Ramp must be 0) with the set-points
// sp and a heater of up to rated, W, 1e-6 to 1e9. The thermostat acts in steps of five
// minutes, each solved exactly: the heat within a step is constant and brings
// the air to the set-point at its end. What is saved is the loss of the cooler
// house alone; a heavy house hardly cools in a night and saves little.
func (h Transient) NightSetBack(d envelope.Drive, sp SetPoints, rated float64) (SetBack, error) {
	err := errors.Join(h.made(), d.Check(), sp.check(), positivePower.Check("rated", rated))
	if d.Ramp != 0 {
		err = errors.Join(err, &RangeError{Field: "Ramp", Value: d.Ramp, Unit: "K/s", Source: "a repeating day has a constant outside"})
	}
	if err != nil {
		return SetBack{}, err
	}
	_, t := h.holdingHeat(d, sp.mean())
	hold, _ := h.holdingHeat(d, sp.Day)
	constant := math.Max(0, hold-d.Heat) * 86400
	r, end, slope := h.day(t, d, sp, rated)
	for days := 1; days < setBackDays; days++ {
		off := end.over(t)
		if farthest(off) < daysAlike {
			r.ConstantHeat = constant
			if constant > 0 {
				r.Saving = 1 - r.HeatPerDay/constant
			}
			return r, nil
		}
		share, nearer, back := 0.0, false, false // back: the day at the end of the way leads back
		x, ok := fixedPoint(slope, off)
		if ok {
			share = 1
		}
		for ; share > leastShare && days < setBackDays && !nearer; share, days = share/2, days+1 {
			t2 := t.on(&x, share)
			r2, end2, slope2 := h.day(t2, d, sp, rated)
			back = back || share == 1 && dot(end2.over(t2), off) < 0
			if nearer = farthest(end2.over(t2)) < (1-stepsGain*share)*farthest(off); nearer {
				t, r, end, slope = t2, r2, end2, slope2
			}
		}
		if nearer {
			continue
		}
		// The place lies at the set-point of a heavy house, where the heater turns from full
		// to none within a hair's breadth; or a day brings it nearer.
		if back {
			t2 := h.turning(t, &x, off, d, sp, rated)
			r2, end2, slope2 := h.day(t2, d, sp, rated)
			days += turningDays
			if farthest(end2.over(t2)) < farthest(off) {
				t, r, end, slope = t2, r2, end2, slope2
				continue
			}
		}
		t = end
		r, end, slope = h.day(t, d, sp, rated)
	}
	return SetBack{}, fmt.Errorf("%w: the days do not yet repeat after %d of them", ErrNotConverged, setBackDays)
}

// turning returns where on the way x from t the day no longer goes on along off,
// which it does at t and does not at the end.
func (h Transient) turning(t Temperatures, x *[3]float64, off [3]float64, d envelope.Drive, sp SetPoints, rated float64) Temperatures {
	share, err := solve.Root(func(share float64) float64 {
		u := t.on(x, share)
		_, end, _ := h.day(u, d, sp, rated)
		return dot(end.over(u), off)
	}, 0, 1, turningShare)
	if err != nil {
		share = 0.5
	}
	return t.on(x, share)
}

// on returns the temperatures after the share of the way x.
func (t Temperatures) on(x *[3]float64, share float64) Temperatures {
	return Temperatures{t.Air + share*x[0], t.Structure + share*x[1], t.Soil + share*x[2]}
}

// dot returns the product of two differences of temperatures, K².
func dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// day returns a day from its first hour on, the temperatures at its end, and how
// these change with those at its start.
func (h Transient) day(t Temperatures, d envelope.Drive, sp SetPoints, rated float64) (r SetBack, end Temperatures, slope [3][3]float64) {
	const perHour = int(3600 / setBackStep)
	step := h.s.Step(setBackStep)
	r = SetBack{Lowest: math.Inf(1), LowestSoil: math.Inf(1), WarmestAir: math.Inf(-1), Recovery: 24 * time.Hour}
	slope = [3][3]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}
	lost := 0.0
	for i := range 24 * perHour {
		// The day starts with DayStarts, so that the recovery stands first.
		set := sp.at((i/perHour + sp.DayStarts) % 24)
		rest := h.steady(d)
		x := [3]float64{t.Air - rest.Air, t.Structure - rest.Structure, t.Soil - rest.Soil}
		free := rest.Air + transient.Times(&step.Decay, x)[0]
		wanted := (set - free) / step.PerWatt[0]
		q := math.Max(0, math.Min(rated, wanted))
		change := step.Decay
		if q > 0 {
			heated := d
			heated.Heat += q
			rest = h.steady(heated)
			x = [3]float64{t.Air - rest.Air, t.Structure - rest.Structure, t.Soil - rest.Soil}
			if q == wanted { // the heat makes up for what the air lacks
				for i := range change {
					for j := range change {
						change[i][j] -= step.PerWatt[i] / step.PerWatt[0] * step.Decay[0][j]
					}
				}
			}
		}
		slope = product(&change, &slope)
		m := transient.Times(&step.Mean, x)
		n := &h.n
		lost += setBackStep * ((n.Cover+n.Leakage)*(rest.Air+m[0]-d.Outside) + n.CoverSky*(rest.Air+m[0]-d.Outside+d.SkyDrop) +
			n.StructureOutside*(rest.Structure+m[1]-d.Outside) + n.SoilDeep*(rest.Soil+m[2]-d.Deep) - d.Heat - d.StructureHeat - d.SoilHeat)
		e := transient.Times(&step.Decay, x)
		t = Temperatures{rest.Air + e[0], rest.Structure + e[1], rest.Soil + e[2]}
		r.HeatPerDay += q * setBackStep
		r.Lowest, r.WarmestAir, r.LowestSoil = min(r.Lowest, t.Air), max(r.WarmestAir, t.Air), min(r.LowestSoil, t.Soil)
		if t.Air >= sp.Day-atTheSetting && r.Recovery == 24*time.Hour {
			r.Recovery = time.Duration(i+1) * setBackStep * time.Second
		}
	}
	r.Residual = r.HeatPerDay - lost
	return r, t, slope
}

// product returns a times b.
func product(a, b *[3][3]float64) (c [3][3]float64) {
	for i := range c {
		for j := range c {
			c[i][j] = a[i][0]*b[0][j] + a[i][1]*b[1][j] + a[i][2]*b[2][j]
		}
	}
	return c
}

// fixedPoint returns the step x from the start of a day to that of the day that
// repeats, of which off is what this one misses: (1 - slope) x = off.
func fixedPoint(slope [3][3]float64, off [3]float64) (x [3]float64, ok bool) {
	m := mat.NewDense(3, 3, nil)
	for i := range slope {
		for j := range slope {
			m.Set(i, j, -slope[i][j])
		}
		m.Set(i, i, 1-slope[i][i])
	}
	err := mat.NewVecDense(3, x[:]).SolveVec(m, mat.NewVecDense(3, off[:]))
	return x, err == nil && !math.IsNaN(x[0]+x[1]+x[2])
}

// over returns by how much each temperature lies above that of u.
func (t Temperatures) over(u Temperatures) [3]float64 {
	return [3]float64{t.Air - u.Air, t.Structure - u.Structure, t.Soil - u.Soil}
}

// farthest returns the largest of the differences, whichever its sign.
func farthest(off [3]float64) float64 {
	return max(math.Abs(off[0]), math.Abs(off[1]), math.Abs(off[2]))
}
