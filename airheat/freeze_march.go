package airheat

import (
	"fmt"
	"math"
	"time"
)

// newColumn lays out the layers, each layerGrowth times the one above, or less so
// that the lowest is layerSpread times the first.
func newColumn(f *FreezeOut) column {
	c := column{f: f, layers: f.Soil.Layers}
	sum, d := 0.0, 1.0
	growth := math.Min(layerGrowth, math.Pow(layerSpread, 1/float64(c.layers-1)))
	for i := range c.layers {
		c.thick[i] = d
		sum += d
		d *= growth
	}
	top := 0.0
	for i := range c.layers {
		c.thick[i] *= f.Soil.Depth / sum
		c.depth[i] = top + c.thick[i]/2
		top += c.thick[i]
	}
	return c
}

// rates are the flows into each heat content, W; the last entry is the loss to
// outside and below less the heat given. guess is the air's last temperature
// and becomes the present one; what is returned is the soil's surface, °C.
func (c *column) rates(y *[freezeStateLen]float64, outside float64, guess *float64, out *[freezeStateLen]float64) (surface float64) {
	f := c.f
	n, s := &f.Nodes, &f.Soil
	ta := f.airAt(y[0], *guess)
	*guess = ta
	ts := y[1] / n.StructureCapacity
	t0, ice0 := s.soilAt(y[2] / (s.Area * c.thick[0]))
	conduct := func(ice float64) float64 { return s.Thawed + (s.Frozen-s.Thawed)*ice }
	half := conduct(ice0) / (c.thick[0] / 2)
	u := s.Surface * half / (s.Surface + half)
	toSoil := s.Area * u * (ta - t0)
	surface = ta - toSoil/(s.Area*s.Surface)
	cover := (n.Cover+n.Leakage)*(ta-outside) + n.CoverSky*(ta-outside+f.SkyDrop)
	toStructure := n.AirStructure * (ta - ts)
	frame := n.StructureOutside * (ts - outside)
	out[0] = f.Heat - cover - toStructure - toSoil
	out[1] = toStructure - frame
	down := toSoil
	for i := range c.layers {
		var next float64
		t1, ice1 := f.Deep, 0.0
		r := c.thick[i] / 2 / conduct(ice0)
		if i+1 < c.layers {
			t1, ice1 = s.soilAt(y[3+i] / (s.Area * c.thick[i+1]))
			r += c.thick[i+1] / 2 / conduct(ice1)
		}
		next = s.Area * (t0 - t1) / r
		out[2+i] = down - next
		down, t0, ice0 = next, t1, ice1
	}
	out[lostAt] = cover + frame + down - f.Heat
	return surface
}

// A step of the march is cut into stages by the Runge-Kutta-Legendre method of
// second order (C. D. Meyer, D. S. Balsara, T. D. Aslam, J. Computational Physics
// 257 (2014) 594-626, from memory): s stages are stable over (s² + s − 2)/4 times
// what one explicit step bears, so that thin layers cost little, and heat is kept
// to rounding. After each change of the outside the steps begin at a share of the
// air's time constant and grow.
const (
	firstStep    = 0.1        // of the air's time constant
	stepGrowth   = 1.15       // ratio of one step to the one before, at most
	longestStep  = 60.0       // s
	hour         = 3600.0     // s, that the steps share out
	maxEvaluated = 20_000_000 // stages of the whole march: some twenty seconds
)

// stiffest returns a bound of the fastest rate of the column, 1/s: twice the sum
// of each store's conductances over its capacity.
func (c *column) stiffest() float64 {
	n, s := &c.f.Nodes, &c.f.Soil
	fastest := 2 * math.Max(1/c.airTime(), (n.AirStructure+n.StructureOutside)/n.StructureCapacity)
	k := math.Max(s.Thawed, s.Frozen)
	above := s.Surface
	for i := range c.layers {
		below := 2 * k / c.thick[i]
		if i+1 < c.layers {
			below = 2 * k / (c.thick[i] + c.thick[i+1])
		}
		fastest = math.Max(fastest, 2*(above+below)/((s.Dry+iceCapacity*s.Water)*c.thick[i]))
		above = below
	}
	return fastest
}

// airTime returns the time constant of the air, s.
func (c *column) airTime() float64 {
	n, s := &c.f.Nodes, &c.f.Soil
	return n.AirCapacity / (n.Cover + n.CoverSky + n.Leakage + n.AirStructure + s.Area*s.Surface)
}

// legs is how an hour is cut: steps, s, and the stages of each.
type legs struct {
	step  []float64
	stage []int
	all   int // stages of the hour
}

// legs cuts an hour, finer by the factor fine.
func (c *column) legs(fine float64) legs {
	var l legs
	fastest := c.stiffest()
	next := math.Min(longestStep, firstStep*c.airTime()) / fine
	sum := 0.0
	for sum < hour {
		l.step = append(l.step, next)
		sum += next
		next = math.Min(longestStep/fine, next*(1+(stepGrowth-1)/fine))
	}
	for i := range l.step {
		l.step[i] *= hour / sum
		// The smallest s with (s² + s − 2)/4 ≥ step × fastest/2.
		s := math.Max(2, math.Ceil((math.Sqrt(9+8*l.step[i]*fastest)-1)/2))
		s = math.Min(s, maxEvaluated) // no number that an int could not hold
		l.stage = append(l.stage, int(s))
		l.all += int(s)
	}
	return l
}

// Solve marches the house through the hours on heat contents, so that the latent
// heats are exact and the balance closes to rounding. The error of temperature by
// the steps is below 0.01 K against steps of a tenth; that by the layers is told at
// SoilColumn.Layers. A year with 40 layers takes some seconds. A house whose air
// changes so fast that more than 2e7 evaluations would be needed is
// ErrNotConverged.
func (f FreezeOut) Solve() (FreezeCourse, error) {
	if err := f.check(); err != nil {
		return FreezeCourse{}, err
	}
	c := newColumn(&f)
	l := c.legs(1)
	if work := float64(l.all) * float64(len(f.Outside)); work > maxEvaluated {
		return FreezeCourse{}, fmt.Errorf("%w: the air changes so fast that %.0f evaluations would be needed, more than %d", ErrNotConverged, work, maxEvaluated)
	}
	return c.march(&l), nil
}

func (c *column) march(l *legs) FreezeCourse {
	f := c.f
	var y [freezeStateLen]float64
	y[0], _ = f.airHeat(f.Start)
	y[1] = f.Nodes.StructureCapacity * f.Start
	for i := range c.layers {
		t := f.Start + (f.Deep-f.Start)*c.depth[i]/f.Soil.Depth
		y[2+i] = f.Soil.soilHeat(t) * f.Soil.Area * c.thick[i]
	}
	stored := total(&y)
	r := FreezeCourse{LowestAir: f.Start, LowestSoil: f.Start, Air: make([]float64, len(f.Outside)), Surface: make([]float64, len(f.Outside))}
	guess := f.Start
	var rate [freezeStateLen]float64
	surface := c.rates(&y, f.Outside[0], &guess, &rate)
	air, soil := newWatch(f.AirLimit, guess), newWatch(f.SoilLimit, surface)
	for h, to := range f.Outside {
		now := 3600 * float64(h)
		for k, dt := range l.step {
			c.leap(&y, dt, l.stage[k], to, &guess)
			surface = c.rates(&y, to, &guess, &rate)
			r.LowestAir, r.LowestSoil = math.Min(r.LowestAir, guess), math.Min(r.LowestSoil, surface)
			air.see(guess, now, dt)
			soil.see(surface, now, dt)
			now += dt
			r.Step = max(r.Step, duration(dt))
		}
		r.Air[h], r.Surface[h] = guess, surface
		frost := 0.0
		for i := range c.layers {
			_, ice := f.Soil.soilAt(y[2+i] / (f.Soil.Area * c.thick[i]))
			frost += ice * c.thick[i]
		}
		r.FrostDepth = math.Max(r.FrostDepth, frost)
	}
	r.Lost = y[lostAt]
	r.Released = stored - total(&y)
	r.Residual = r.Released - r.Lost
	r.AirFirst, r.AirBelow, r.AirSpell = air.first, duration(air.in), duration(air.long)
	r.SurfaceFirst, r.SurfaceBelow, r.SurfaceSpell = soil.first, duration(soil.in), duration(soil.long)
	return r
}

// leap takes one step of s stages.
func (c *column) leap(y *[freezeStateLen]float64, dt float64, s int, outside float64, guess *float64) {
	var first, rate, before [freezeStateLen]float64
	start := *y
	c.rates(&start, outside, guess, &first)
	w := 4 / float64(s*s+s-2)
	share := func(j int) float64 { // the method's b
		if j < 2 {
			j = 2
		}
		n := float64(j)
		return (n*n + n - 2) / (2 * n * (n + 1))
	}
	before = start
	for i := range y {
		y[i] += share(1) * w * dt * first[i]
	}
	for j := 2; j <= s; j++ {
		n := float64(j)
		mu := (2*n - 1) / n * share(j) / share(j-1)
		nu := -(n - 1) / n * share(j) / share(j-2)
		c.rates(y, outside, guess, &rate)
		step := mu * w * dt
		again := -(1 - share(j-1)) * step
		for i := range y {
			next := mu*y[i] + nu*before[i] + (1-mu-nu)*start[i] + step*rate[i] + again*first[i]
			before[i], y[i] = y[i], next
		}
	}
}

// watch notes when a temperature lies below a limit; between two steps it goes
// straight.
type watch struct {
	limit, last   float64 // °C
	first         time.Duration
	in, run, long float64 // s
}

func newWatch(limit, start float64) watch {
	w := watch{limit: limit, last: start, first: Forever}
	if start < limit {
		w.first = 0
	}
	return w
}

// see takes the temperature v, dt seconds after now.
func (w *watch) see(v, now, dt float64) {
	a, b := w.last-w.limit, v-w.limit
	w.last = v
	if a >= 0 && b >= 0 {
		return
	}
	part := dt
	switch {
	case a >= 0: // comes down
		part *= b / (b - a)
		if w.first == Forever {
			w.first = duration(now + dt - part)
		}
		w.run = part
	case b >= 0: // goes up
		part *= a / (a - b)
		w.run += part
	default:
		w.run += part
	}
	w.in += part
	w.long = math.Max(w.long, w.run)
	if b >= 0 {
		w.run = 0
	}
}

// lostAt is where the state holds what was lost.
const lostAt = freezeStateLen - 1

func total(y *[freezeStateLen]float64) (sum float64) {
	for _, v := range y[:lostAt] {
		sum += v
	}
	return sum
}
