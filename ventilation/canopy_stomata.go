package ventilation

// Stomata names a published response of the stomata. Resistances stand for a
// leaf area of 2 LAI: the flux of vapour of a canopy is 2 LAI times the
// difference of vapour density over the sum of the boundary layer's resistance and this.
type Stomata uint8

const (
	// TomatoStomata follow light, leaf temperature, deficit and CO2
	// [Stanghellini87] (from memory).
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
	Least      float64 // s/m, the resistance with all factors at 1
	Light      float64 // dimensionless factor of light
	Warmth     float64 // dimensionless factor of leaf temperature
	Carbon     float64 // dimensionless factor of CO2
	Deficit    float64 // dimensionless factor of the deficit leaf to air
	Resistance float64 // s/m, the product, on a leaf area of 2 LAI
}

// still returns the response without the factors of leaf temperature and
// deficit, for the sun absorbed by leaf surface, W/m², both sides counted, and
// co2, µmol/mol. With them a tomato has
//
//	f(I) = (I + 4.30)/(I + 0.54)
//	f(T) = 1 + 0.022593 (T - 24.512)²
//	f(C) = 1 + 6.08e-7 (C - 200)², at most 1.49
//	f(D) = 1 + 4.3 D² (D in kPa), at most 3.8
func (s Stomata) still(sun, co2 float64) Response {
	if s == GrassStomata {
		r := 2 * grassLeaf / grassActive
		return Response{r, 1, 1, 1, 1, r}
	}
	d := co2 - tomatoCarbon2
	r := Response{
		Least:   tomatoLeast,
		Light:   (sun + tomatoLight1) / (sun + tomatoLight2),
		Warmth:  1,
		Carbon:  min(1+tomatoCarbon1*d*d, tomatoCarbonTop),
		Deficit: 1,
	}
	r.Resistance = r.Least * r.Light * r.Carbon
	return r
}

// factors returns a tomato's factors of leaf temperature, °C, and deficit, Pa.
func (s Stomata) factors(leaf, deficit float64) (warmth, dry float64) {
	d := leaf - tomatoWarm2
	return 1 + tomatoWarm1*d*d, min(1+tomatoDeficit*deficit*deficit, tomatoDeficitTop)
}

// factor returns the product of the factors of leaf temperature, °C, and deficit, Pa, and its
// derivatives.
func (s Stomata) factor(leaf, deficit float64) (f, byLeaf, byDeficit float64) {
	if s == GrassStomata {
		return 1, 0, 0
	}
	warmth, dry := s.factors(leaf, deficit)
	slope := 2 * tomatoDeficit * deficit
	if dry >= tomatoDeficitTop {
		slope = 0
	}
	return warmth * dry, 2 * tomatoWarm1 * (leaf - tomatoWarm2) * dry, warmth * slope
}
