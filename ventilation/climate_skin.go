package ventilation

import (
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/constant"
)

// What drives the covers from inside, and what they take.
const (
	byAir    = iota // °C, inside air
	byGlow          // W/m², radiation of crop and floor as one black surface
	byVapour        // Pa, inside vapour pressure
	drives

	airHeat  = 0 // W, sensible heat out of the air
	glowHeat = 1 // W, heat radiation out of crop and floor
	water    = 2 // kg/s, what condenses
)

// skin is the covers of a house near one state of its inside: what they take
// there and its slopes. The balances are solved with this straight form, the
// covers again where they lead, until the two agree.
type skin struct {
	real   *RealCover
	k      envelope.HouseConditions
	covers envelope.HouseCovers
	sun    [][envelope.MaxLayers]float64 // W/m², where the weather has no sun by facets

	known  bool  // near is a state of this house
	cold   bool  // the covers began from afar: moves are too long to tell what straight forms miss
	near   taken // where the covers were last solved
	solved int   // count of solutions of all covers

	milder float64 // K, by which what the covers are in has become milder since they were solved

	miss float64 // W, by which the last pass missed what was foreseen
	bend float64 // fraction, by which it missed what was foreseen to change
	slow int     // count of passes that left most of it

	// A film that lets heat radiation through takes another heat wet than dry:
	// where the balances are met by neither, the covers stand between the two.
	between   bool
	far       taken   // the covers on the other side
	share     float64 // fraction, of far
	low, high float64 // fraction, between which share lies
}

// taken is what the covers take at one state of the inside.
type taken struct {
	at                [drives]float64         // what drives them
	took              [drives]float64         // what they take
	slope             [drives][drives]float64 // its change with each drive
	latent            float64                 // W, set free by what condenses
	leak              float64                 // kg/s of dry air through the leaks
	leakByK, leakByPa float64                 // kg/(s K) and kg/(s Pa), its changes with inside temperature and vapour
	lining            float64                 // °C, mean of the inner faces
	sky               float64                 // W, driven by the sky
	open              float64                 // W/m², by which what the facets see and their balances were off
	smooth            float64                 // K, that a coefficient is from another course
	margin            float64                 // K, that a face is from another state
	edge              float64                 // K, the same, whatever films see of each other
}

// outside sets the weather and what is done to the covers.
func (s *skin) outside(r *RealCover, w *Weather, set *Setting, floor float64) {
	s.real, s.k = r, r.Conditions
	k := &s.k
	k.Outside, k.OutsideHumidity = w.Air.Temperature(), min(1, w.Air.RelativeHumidity())
	k.SkyDrop = k.Outside - w.Sky
	k.Wind, k.Pressure, k.ScreenDrawn = w.Wind, w.Air.Pressure(), set.Screen
	k.Sun = nil
	shape := r.House.Shape()
	if len(s.sun) != len(shape.Facets) {
		s.sun = make([][envelope.MaxLayers]float64, len(shape.Facets))
	}
	lit := 1 - set.Shade
	even := lit * w.Sun * r.Absorptance * floor / shape.CoverArea
	switch {
	case w.Gain != nil && lit == 1:
		k.Sun = w.Gain.Sun
	case w.Gain != nil:
		for i := range s.sun {
			for j, v := range w.Gain.Sun[i] {
				s.sun[i][j] = lit * v
			}
		}
		k.Sun = s.sun
	case w.Sun*r.Absorptance > 0:
		for i := range s.sun {
			if f := &shape.Facets[i]; !f.Kind.InGround() && !f.Party {
				s.sun[i] = [envelope.MaxLayers]float64{even}
			}
		}
		k.Sun = s.sun
	}
}

// shift moves the straight form to an outside that is milder by so many kelvin:
// with all temperatures the covers take what they took.
func (t *taken) shift(milder float64) {
	glow := t.at[byGlow]
	t.at[byAir] += milder
	t.at[byGlow] += milder * 4 * glow / math.Sqrt(math.Sqrt(glow/constant.StefanBoltzmann))
	_, slope := saturation(t.lining)
	t.at[byVapour] += milder * slope
}

// solve solves the covers at the drives z.
func (s *skin) solve(z *[drives]float64) (t taken, err error) {
	if math.IsNaN(z[byAir] + z[byGlow] + z[byVapour]) {
		return t, fmt.Errorf("covers: %w", ErrNotConverged)
	}
	k := &s.k
	k.Inside = max(realAirRange.Min, min(realAirRange.Max, z[byAir]))
	glow := math.Sqrt(math.Sqrt(max(0, z[byGlow])/constant.StefanBoltzmann)) - kelvin
	k.RadiantRise = max(-60, min(100, glow-k.Inside))
	es, _ := saturation(k.Inside)
	k.InsideHumidity = max(0, min(1, z[byVapour]/es))
	s.solved++
	if err = s.real.House.CoversTo(&s.covers, k); err != nil {
		return t, fmt.Errorf("covers: %w", err)
	}
	c := &s.covers
	t = taken{at: *z, took: [drives]float64{airHeat: c.Air, glowHeat: c.Radiation, water: c.Condensate}, slope: c.Slope,
		latent: c.Latent, leak: c.Leakage.DryAir, leakByK: c.LeakageByK, leakByPa: c.LeakageByPa, lining: c.Inner, sky: c.Sky, open: c.Open, smooth: c.Smooth, margin: c.Margin, edge: c.Edge}
	s.bound(&t)
	return t, nil
}

// from returns what the straight form through t takes at z, and its slopes. What
// condenses is held between none and what would condense on a face so cold that
// it has no vapour pressure: far from t, in colder and drier air, the line would
// take more than there is. The heat that vapour brings to the faces follows it.
func (t *taken) from(z *[drives]float64) (took [drives]float64, slope [drives][drives]float64) {
	slope = t.slope
	for i := range took {
		took[i] = t.took[i]
		for j := range z {
			took[i] += slope[i][j] * (z[j] - t.at[j])
		}
	}
	line := took[water]
	wets := slope[water][byVapour]
	most := max(wets, t.took[water]/max(t.at[byVapour], 1))
	switch {
	case line < 0:
		took[water], slope[water] = 0, [drives]float64{}
	case line > most*z[byVapour]:
		took[water], slope[water] = most*z[byVapour], [drives]float64{byVapour: most}
	default:
		return took, slope
	}
	if wets <= 0 {
		return took, slope
	}
	for _, i := range [2]int{airHeat, glowHeat} {
		brings := t.slope[i][byVapour] / wets // J/kg
		took[i] += brings * (took[water] - line)
		for j := range z {
			slope[i][j] += brings * (slope[water][j] - t.slope[water][j])
		}
	}
	return took, slope
}

// takes returns what the covers take at z by the straight form, and its slopes.
func (s *skin) takes(z *[drives]float64) (took [drives]float64, slope [drives][drives]float64) {
	took, slope = s.near.from(z)
	if s.between {
		far, steep := s.far.from(z)
		for i := range took {
			took[i] += s.share * (far[i] - took[i])
			for j := range z {
				slope[i][j] += s.share * (steep[i][j] - slope[i][j])
			}
		}
	}
	return took, slope
}
