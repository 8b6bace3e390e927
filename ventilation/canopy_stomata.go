package ventilation

import "math"

// Stomata names a published response of the stomata. Resistances stand for a
// leaf area of 2 LAI: the flux of vapour of a canopy is 2 LAI times the
// difference of vapour density over the sum of the boundary layer's resistance and this.
type Stomata uint8

const (
	// TomatoStomata follow light, leaf temperature, deficit and CO2, by day and by
	// night each in its way [Stanghellini87] (from memory).
	TomatoStomata Stomata = iota
	// GrassStomata are constant: 100 s/m of a well-lit leaf, half of the leaves
	// active [FAO56] ch. 2 eq. 5 and box 5; as 2 LAI, 400 s/m day and night.
	GrassStomata
)

var stomataNames = []string{"tomato", "grass"}

// String names the response.
func (s Stomata) String() string { return enumName("Stomata", stomataNames, uint8(s)) }

// Tomato: ri = rmin f(I) f(T) f(CO2) f(D) [Stanghellini87] (from memory).
const (
	tomatoLeast = 82.003 // s/m

	tomatoLight1 = 4.30 // W/m² of leaf surface
	tomatoLight2 = 0.54 // W/m² of leaf surface

	tomatoWarm1 = 2.2593e-2 // 1/K²
	tomatoWarm2 = 24.512    // °C

	tomatoCarbon1   = 6.08e-7 // (µmol/mol)^-2
	tomatoCarbon2   = 200.0   // µmol/mol
	tomatoCarbonTop = 1.49    // dimensionless

	tomatoDeficit    = 4.3e-6 // 1/Pa² (4.3 1/kPa²)
	tomatoDeficitTop = 3.8    // dimensionless
)

// Tomato by night: ri = rnight f(T) f(CO2) f(D) [Stanghellini87] (from memory).
const (
	tomatoNight = 658.5 // s/m

	tomatoNightWarm1   = 5e-3    // 1/K²
	tomatoNightWarm2   = 33.6    // °C
	tomatoNightCarbon  = 1.1e-11 // (µmol/mol)^-2
	tomatoNightDeficit = 5.2e-6  // 1/Pa² (5.2 1/kPa²)

	// The share of the day's response rises by a logistic curve of the sun above
	// the canopy [Vanthoor11] appendix (from memory).
	tomatoDawn  = 5.0 // W/m² of floor
	tomatoDawns = 1.0 // m²/W
)

// Grass [FAO56] ch. 2 eq. 5: rl = 100 s/m, LAI active = 0.5 LAI.
const (
	grassLeaf   = 100.0 // s/m
	grassActive = 0.5   // fraction
)

func (s Stomata) check(where string) error {
	return enumFault(where+"Stomata", "Stomata", stomataNames, uint8(s))
}

// Response is the stomatal resistance with the factors it is made of.
type Response struct {
	Least      float64 // s/m, the resistance by day with all factors at 1
	Light      float64 // dimensionless factor of light
	Warmth     float64 // dimensionless factor of leaf temperature
	Carbon     float64 // dimensionless factor of CO2
	Deficit    float64 // dimensionless factor of the deficit leaf to air
	Night      float64 // s/m, the resistance that the night's response has
	Day        float64 // fraction of the day's response; the rest is the night's
	Resistance float64 // s/m, Day times the product of Least and the factors, and the rest of Night, on a leaf area of 2 LAI
}

// still returns the response without the factors of leaf temperature and
// deficit, for the sun on the canopy and co2, µmol/mol. With them a tomato has,
// I the sun absorbed by leaf surface, W/m², both sides counted,
//
//	by day    82.003 f(I) f(T) f(C) f(D)    by night    658.5 f(T) f(C) f(D)
//	f(I) = (I + 4.30)/(I + 0.54)
//	f(T) = 1 + 0.022593 (T - 24.512)²       1 + 0.005 (T - 33.6)²
//	f(C) = 1 + 6.08e-7 (C - 200)², to 1.49  1 + 1.1e-11 (C - 200)²
//	f(D) = 1 + 4.3 D² (D in kPa), to 3.8    1 + 5.2 D², to 3.8
//
// The two are joined by the share Day = 1/(1 + exp(5 - S)), S the sun above the
// canopy in W/m² of floor, so that nothing jumps at dusk.
func (s Stomata) still(sun CanopySun, co2 float64) Response {
	if s == GrassStomata {
		r := 2 * grassLeaf / grassActive
		return Response{r, 1, 1, 1, 1, r, 1, r}
	}
	d := co2 - tomatoCarbon2
	r := Response{
		Least:   tomatoLeast,
		Light:   (sun.Leaf + tomatoLight1) / (sun.Leaf + tomatoLight2),
		Warmth:  1,
		Carbon:  min(1+tomatoCarbon1*d*d, tomatoCarbonTop),
		Deficit: 1,
		Night:   tomatoNight * (1 + tomatoNightCarbon*d*d),
		Day:     1 / (1 + math.Exp(tomatoDawns*(tomatoDawn-(sun.Canopy+sun.Floor+sun.Reflected)))),
	}
	r.Resistance = r.Day*r.Least*r.Light*r.Carbon + (1-r.Day)*r.Night
	return r
}

// at returns the response still with its factors of leaf temperature, °C, and
// deficit, Pa.
func (r Response) at(s Stomata, leaf, deficit float64) Response {
	if s == GrassStomata {
		return r
	}
	r.Warmth, _ = warmth(tomatoWarm1, tomatoWarm2, leaf)
	r.Deficit, _ = dryness(tomatoDeficit, deficit)
	f, _ := warmth(tomatoNightWarm1, tomatoNightWarm2, leaf)
	g, _ := dryness(tomatoNightDeficit, deficit)
	r.Night *= f * g
	r.Resistance = r.Day*r.Least*r.Light*r.Warmth*r.Carbon*r.Deficit + (1-r.Day)*r.Night
	return r
}

// resistance returns at's Resistance of the response still r, and its derivatives
// with leaf temperature and deficit.
func (r *Response) resistance(s Stomata, leaf, deficit float64) (ri, byLeaf, byDeficit float64) {
	if s == GrassStomata {
		return r.Resistance, 0, 0
	}
	if day := r.Day * r.Least * r.Light * r.Carbon; day > 0 {
		f, fT := warmth(tomatoWarm1, tomatoWarm2, leaf)
		g, gD := dryness(tomatoDeficit, deficit)
		ri, byLeaf, byDeficit = day*f*g, day*fT*g, day*f*gD
	}
	if night := (1 - r.Day) * r.Night; night > 0 {
		f, fT := warmth(tomatoNightWarm1, tomatoNightWarm2, leaf)
		g, gD := dryness(tomatoNightDeficit, deficit)
		ri, byLeaf, byDeficit = ri+night*f*g, byLeaf+night*fT*g, byDeficit+night*f*gD
	}
	return ri, byLeaf, byDeficit
}

// warmth returns a tomato's factor of leaf temperature, 1 + a (T - best)², and
// its slope.
func warmth(a, best, leaf float64) (f, slope float64) {
	d := leaf - best
	return 1 + a*d*d, 2 * a * d
}

// dryness returns a tomato's factor of the deficit, 1 + a D² and at most 3.8,
// and its slope.
func dryness(a, deficit float64) (f, slope float64) {
	if f = 1 + a*deficit*deficit; f >= tomatoDeficitTop {
		return tomatoDeficitTop, 0
	}
	return f, 2 * a * deficit
}
