package envelope

import "cloche.example/psychro"

// mild is what a cover is in outside, roughly: one temperature for air, sky and
// sun. It tells where the next state of a cover is sought, and changes no state.
type mild struct {
	at    float64 // °C
	outer float64 // W/(m² K), from the outer face to it
}

// skySeen is the coefficient of heat radiation of a cover to what it sees of the
// sky, W/(m² K), and mostMilder the change in K beyond which nothing is moved along
// (both chosen).
const (
	skySeen    = 3.0
	mostMilder = 15.0
)

// mild returns that of a cover which absorbs sun, W/m², at the coefficient h of
// convection outside.
func (k *CoverConditions) mild(h, sun float64) mild {
	outer := h + skySeen
	return mild{at: k.Outside + (sun-skySeen*k.SkyDrop)/outer, outer: outer}
}

// outerConvection returns the coefficient of convection outside, W/(m² K).
func (k *CoverConditions) outerConvection() float64 {
	if k.OutsideConvection != OutsideGiven {
		return k.OutsideConvection.Coefficient(k.Wind)
	}
	return k.OutsideCoefficient
}

// since returns by how many kelvin it has become milder, for a cover that lets
// through W/(m² K) pass from the inside at t, °C: where more wind carries off more
// heat, it is as if it were colder.
func (m mild) since(before mild, through, t float64) float64 {
	if m == before || before.outer == 0 {
		return 0
	}
	more := 1/(1+through*(1/m.outer-1/before.outer)) - 1
	by := m.at - before.at - more*(t-m.at)
	if !(abs(by) <= mostMilder) {
		return 0
	}
	return by
}

// glowSlope returns the change of black radiation, W/(m² K), with the temperature.
func glowSlope(radiation float64) float64 {
	return 4 * radiation / fourthRoot(radiation/standard.sigma)
}

// through returns the heat, W/(m² K), that slopes tell for a kelvin of air and
// surroundings.
func (s *insideSlope) through(glow float64) float64 {
	g := glowSlope(glow)
	return s[airTakes][airDrive] + s[glowTakes][airDrive] + g*(s[airTakes][glowDrive]+s[glowTakes][glowDrive])
}

// Milder returns by how much, K, what the covers are in outside is milder in the
// conditions k than in those of CoversTo before: air, sky, wind and sun as one
// temperature. With the inside warmer by as much the covers take about what they
// took, which tells where to begin: a guess, of coefficients that are chosen. The
// inside of k is not read; it is 0 before the first CoversTo, and for changes beyond
// 15 K.
func (c *HouseCovers) Milder(k *HouseConditions) float64 {
	if c.house == nil {
		return 0
	}
	return c.milder(c.house.mild(k))
}

// milder returns by how many kelvin now is.
func (c *HouseCovers) milder(now mild) float64 {
	slope := insideSlope(c.Slope)
	return now.since(c.mild, slope.through(c.at[glowDrive])/c.house.plan.Shape.CoverArea, c.at[airDrive])
}

// mild returns that of all covers.
func (h *House) mild(k *HouseConditions) mild {
	sun := 0.0
	if k.Sun != nil {
		for i, layers := range k.Sun {
			for _, v := range layers {
				sun += h.net[i] * v
			}
		}
		sun /= h.plan.Shape.CoverArea
	}
	return k.mild(k.outerConvection(), sun)
}

// shift moves what is known of the covers to the conditions k: with all
// temperatures, roughly, as milder as it is outside.
func (c *HouseCovers) shift(k *HouseConditions) {
	now := c.house.mild(k)
	if now == c.mild {
		return
	}
	by := c.milder(now)
	c.mild = now
	h := now.outer - skySeen
	for i := range c.facets {
		f := &c.facets[i]
		sun := 0.0
		if k.Sun != nil {
			for _, v := range k.Sun[f.facet] {
				sun += v
			}
		}
		own := k.mild(h, sun)
		warmer := own.since(f.mild, f.slope.through(f.seen), c.at[airDrive])
		f.apart.shift(warmer, f.set)
		f.touched.shift(warmer, f.set)
		f.mild = own
		if c.house.plan.Radiant == RadiantEnclosure {
			f.seen += by * glowSlope(f.seen)
		}
	}
	c.at[airDrive] += by
	c.at[glowDrive] += by * glowSlope(c.at[glowDrive])
	c.at[vapourDrive] += by * psychro.SaturationSlopeOver(psychro.SurfaceAt(c.Inner), c.Inner)
}

// shift moves the last state of the part in c by so many kelvin.
func (w *followedPart) shift(by float64, c *layerSet) {
	if by == 0 || c == nil {
		return
	}
	for m := range w.near.x {
		c.shift(w.near.x[m][:], by)
	}
	if !w.have {
		return
	}
	c.shift(w.x[:], by)
	w.at[airDrive] += by
	w.at[glowDrive] += by * glowSlope(w.at[glowDrive])
	w.at[vapourDrive] += by * psychro.SaturationSlopeOver(psychro.SurfaceAt(w.inner), w.inner)
}

// shift moves the temperatures of a state x of the cover.
func (c *layerSet) shift(x []float64, by float64) {
	for i := range c.n {
		x[2*i] += by
	}
	for i := range c.n - 1 {
		x[2*c.n+i] += by // air of gaps, where layers leak; not read where none does
	}
}
