package airheat

import (
	"fmt"
	"math"
	"time"
)

// newColumn lays out the layers, each layerGrowth times the one above.
func newColumn(f *FreezeOut) column {
	c := column{f: f, layers: f.Soil.Layers}
	sum, d := 0.0, 1.0
	for i := range c.layers {
		c.thick[i] = d
		sum += d
		d *= layerGrowth
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
// and becomes the present one; surface is that of the soil.
func (c *column) rates(y *[freezeStateLen]float64, outside float64, guess *float64, out *[freezeStateLen]float64) (loss, surface float64) {
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
	return cover + frame + down - f.Heat, surface
}

// step returns the march's step in s: a share of the shortest time constant.
func (c *column) step() float64 {
	n, s := &c.f.Nodes, &c.f.Soil
	u := s.Area * s.Surface
	tau := n.AirCapacity / (n.Cover + n.CoverSky + n.Leakage + n.AirStructure + u)
	tau = math.Min(tau, n.StructureCapacity/(n.AirStructure+n.StructureOutside))
	k := math.Max(s.Thawed, s.Frozen)
	tau = math.Min(tau, (s.Dry+iceCapacity*s.Water)*c.thick[0]*c.thick[0]/(4*k))
	steps := math.Ceil(3600 / (stepOfFastest * tau))
	return 3600 / steps
}

// maxSteps bounds the march.
const maxSteps = 20_000_000

// Solve marches the house through the hours by the classical Runge-Kutta step
// on heat contents, so that the latent heats are exact and the balance closes
// to rounding. The error of temperature is below 0.01 K against a step of a
// tenth. A house whose air changes so fast that more than 2e7 steps would be
// needed is ErrNotConverged.
func (f FreezeOut) Solve() (FreezeCourse, error) {
	if err := f.check(); err != nil {
		return FreezeCourse{}, err
	}
	c := newColumn(&f)
	dt := c.step()
	per := math.Round(3600 / dt)
	if steps := per * float64(len(f.Outside)); steps > maxSteps {
		return FreezeCourse{}, errTooManySteps(steps) // counted as float64: an int of 32 bits would overflow
	}
	return c.march(int(per)), nil
}

func (c *column) march(per int) FreezeCourse {
	f := c.f
	dt := 3600 / float64(per)
	var y [freezeStateLen]float64
	y[0], _ = f.airHeat(f.Start)
	y[1] = f.Nodes.StructureCapacity * f.Start
	for i := range c.layers {
		t := f.Start + (f.Deep-f.Start)*c.depth[i]/f.Soil.Depth
		y[2+i] = f.Soil.soilHeat(t) * f.Soil.Area * c.thick[i]
	}
	stored := total(&y)
	r := FreezeCourse{LowestAir: f.Start, LowestSoil: f.Start, Air: make([]float64, len(f.Outside)), Surface: make([]float64, len(f.Outside)), Step: duration(dt), AirFirst: Forever, SurfaceFirst: Forever}
	guess := f.Start
	var surface float64
	var airSpell, soilSpell, airIn, soilIn, airLong, soilLong float64
	var k1, k2, k3, k4, z [freezeStateLen]float64
	for h, to := range f.Outside {
		for k := range per {
			var l1, l2, l3, l4 float64
			l1, surface = c.rates(&y, to, &guess, &k1)
			air := guess
			r.LowestAir, r.LowestSoil = math.Min(r.LowestAir, air), math.Min(r.LowestSoil, surface)
			now := 3600*float64(h) + dt*float64(k)
			first(&r.AirFirst, air < f.AirLimit, now)
			first(&r.SurfaceFirst, surface < f.SoilLimit, now)
			airSpell = spell(air < f.AirLimit, dt, airSpell, &airIn, &airLong)
			soilSpell = spell(surface < f.SoilLimit, dt, soilSpell, &soilIn, &soilLong)
			add(&z, &y, &k1, dt/2)
			l2, _ = c.rates(&z, to, &guess, &k2)
			add(&z, &y, &k2, dt/2)
			l3, _ = c.rates(&z, to, &guess, &k3)
			add(&z, &y, &k3, dt)
			l4, _ = c.rates(&z, to, &guess, &k4)
			for i := range y {
				y[i] += dt / 6 * (k1[i] + 2*k2[i] + 2*k3[i] + k4[i])
			}
			r.Lost += dt / 6 * (l1 + 2*l2 + 2*l3 + l4)
		}
		_, surface = c.rates(&y, to, &guess, &k1)
		r.Air[h], r.Surface[h] = guess, surface
		r.LowestAir, r.LowestSoil = math.Min(r.LowestAir, guess), math.Min(r.LowestSoil, surface)
		frost := 0.0
		for i := range c.layers {
			_, ice := f.Soil.soilAt(y[2+i] / (f.Soil.Area * c.thick[i]))
			frost += ice * c.thick[i]
		}
		r.FrostDepth = math.Max(r.FrostDepth, frost)
	}
	r.Released = stored - total(&y)
	r.Residual = r.Released - r.Lost
	r.AirBelow, r.AirSpell, r.SurfaceBelow, r.SurfaceSpell = duration(airIn), duration(airLong), duration(soilIn), duration(soilLong)
	return r
}

func total(y *[freezeStateLen]float64) (sum float64) {
	for _, v := range y {
		sum += v
	}
	return sum
}

func add(z, y, k *[freezeStateLen]float64, f float64) {
	for i := range z {
		z[i] = y[i] + f*k[i]
	}
}

// first notes the time now, s, of the first step that is below.
func first(when *time.Duration, below bool, now float64) {
	if below && *when == Forever {
		*when = duration(now)
	}
}

// spell counts dt when below, and keeps the longest unbroken run.
func spell(below bool, dt, run float64, in, long *float64) float64 {
	if !below {
		return 0
	}
	*in += dt
	run += dt
	*long = math.Max(*long, run)
	return run
}

func errTooManySteps(n float64) error {
	return fmt.Errorf("%w: the air changes so fast that %.0f steps would be needed, more than %d", ErrNotConverged, n, maxSteps)
}
