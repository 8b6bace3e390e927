package ventilation

import (
	"errors"
	"fmt"

	"cloche.example/internal/domain"
)

// ShadePlace says where a shade lies.
type ShadePlace uint8

// The places.
const (
	OutsideScreen ShadePlace = iota // hung in the open air above the cover: its heat stays outside
	Whitewash                       // on the outer face of the cover: part of its heat passes the cover
	InsideScreen                    // under the cover: its heat is in the house
)

var shadePlaceNames = []string{"screen outside", "whitewash", "screen inside"}

// String names the place.
func (s ShadePlace) String() string { return enumName("ShadePlace", shadePlaceNames, uint8(s)) }

// Optics is how a layer deals with the sun; what is left is absorbed.
type Optics struct {
	Transmittance float64 // fraction, 0 to 1
	Reflectance   float64 // fraction, 0 to 1, on both faces
}

// absorptance returns the fraction that is neither transmitted nor reflected.
func (o Optics) absorptance() float64 { return 1 - o.Transmittance - o.Reflectance }

func (o Optics) check(where string) error {
	if shareRange.Contains(o.Transmittance) && shareRange.Contains(o.Reflectance) && shareRange.Contains(o.Transmittance+o.Reflectance) {
		return nil
	}
	return errors.Join(
		shareRange.Check(where+".Transmittance", o.Transmittance),
		shareRange.Check(where+".Reflectance", o.Reflectance),
		shareRange.Check(where+".Transmittance + "+where+".Reflectance", o.Transmittance+o.Reflectance),
	)
}

// Shade is a shading screen or whitewash with the cover it works beside.
type Shade struct {
	Place   ShadePlace // where it lies
	Layer   Optics     // the shade itself, threads and gaps together
	Drawn   float64    // fraction, 0 to 1, of the cover that it shades
	Cover   Optics     // the cover alone
	U       float64    // W/(m² K), 0.05 to 12, of the cover, inside air to outside air
	Outside float64    // W/(m² K), U to 100, outer surface coefficient contained in U
}

// ShadeBalance tells where the sun on the cover goes, each as a fraction of
// it. The five parts sum to 1.
type ShadeBalance struct {
	Transmitted  float64 // fraction that reaches crop and floor
	Reflected    float64 // fraction back to the sky
	ToOutside    float64 // fraction that warms shade and cover and goes to the outside air
	CoverInward  float64 // fraction absorbed by the cover (and whitewash) and passed into the house
	ShadeInward  float64 // fraction absorbed by a screen under the cover, set free in the house
	Bare         float64 // fraction that the cover alone transmits
	BareInward   float64 // fraction that the cover alone absorbs and passes into the house
	Factor       float64 // ratio Transmitted to Bare: what the shade leaves of the light
	InwardFactor float64 // ratio of all heat in the house to that with the cover alone
}

// check joins every fault of s, by field.
func (s Shade) check() error {
	err := errors.Join(
		s.Layer.check("Layer"),
		shareRange.Check("Drawn", s.Drawn),
		s.Cover.check("Cover"),
		coverURange.Check("U", s.U),
		domain.Range{Min: s.U, Max: surfaceRange.Max, Unit: "W/(m² K)", Source: "U contains it"}.Check("Outside", s.Outside),
	)
	if s.Cover.Transmittance == 0 {
		err = errors.Join(err, &RangeError{Field: "Cover.Transmittance", Value: 0, Min: 0, Max: 1, Unit: "fraction", Source: "more than zero: nothing to shade"})
	}
	return errors.Join(err, enumFault("Place", "ShadePlace", shadePlaceNames, uint8(s.Place)))
}

// stack returns what two layers do together to light that meets the first,
// reflections between them summed to the end: 1/(1 - r1 r2).
func stack(first, second Optics) (through, back, inFirst, inSecond float64) {
	between := 1 / (1 - first.Reflectance*second.Reflectance)
	through = first.Transmittance * second.Transmittance * between
	back = first.Reflectance + first.Transmittance*first.Transmittance*second.Reflectance*between
	inFirst = first.absorptance() * (1 + first.Transmittance*second.Reflectance*between)
	inSecond = first.Transmittance * second.absorptance() * between
	return through, back, inFirst, inSecond
}

// Balance returns where the sun goes with the shade: shade and cover as two
// layers with all reflections between them, and the heat that the outermost
// absorbs shared between the house and the outside air as U to the outer
// coefficient, U/Outside, a sixth to a quarter for a single cover. All that a
// screen under the cover absorbs stays in the house, which is why the same
// screen cools more outside. The sun is taken as one band, diffuse, and the
// house as black behind the shade. The error joins the faults of s by field.
func (s Shade) Balance() (ShadeBalance, error) {
	if err := s.check(); err != nil {
		return ShadeBalance{}, err
	}
	inward := s.U / s.Outside
	bare := ShadeBalance{Transmitted: s.Cover.Transmittance, Reflected: s.Cover.Reflectance}
	bare.CoverInward = s.Cover.absorptance() * inward
	bare.ToOutside = s.Cover.absorptance() - bare.CoverInward
	var b ShadeBalance
	switch s.Place {
	case InsideScreen:
		through, back, cover, screen := stack(s.Cover, s.Layer)
		b = ShadeBalance{Transmitted: through, Reflected: back, CoverInward: cover * inward, ShadeInward: screen}
		b.ToOutside = cover - b.CoverInward
	case Whitewash:
		through, back, wash, cover := stack(s.Layer, s.Cover)
		b = ShadeBalance{Transmitted: through, Reflected: back, CoverInward: (wash + cover) * inward}
		b.ToOutside = wash + cover - b.CoverInward
	default:
		through, back, screen, cover := stack(s.Layer, s.Cover)
		b = ShadeBalance{Transmitted: through, Reflected: back, CoverInward: cover * inward}
		b.ToOutside = screen + cover - b.CoverInward
	}
	mix := func(shaded, open float64) float64 { return s.Drawn*shaded + (1-s.Drawn)*open }
	b.Transmitted = mix(b.Transmitted, bare.Transmitted)
	b.Reflected = mix(b.Reflected, bare.Reflected)
	b.ToOutside = mix(b.ToOutside, bare.ToOutside)
	b.CoverInward = mix(b.CoverInward, bare.CoverInward)
	b.ShadeInward *= s.Drawn
	b.Bare, b.BareInward = bare.Transmitted, bare.CoverInward
	b.Factor = b.Transmitted / b.Bare
	b.InwardFactor = (b.Transmitted + b.CoverInward + b.ShadeInward) / (bare.Transmitted + bare.CoverInward)
	return b, nil
}

// LayerFor returns the layer, of the absorptance, fraction, 0 to 1, that takes
// the transmission of cover down to together, fraction, 0 to 1, as two measurements
// tell it: whitening a glasshouse took it from 0.62 to 0.31 [Baille01]. The
// error joins the faults by field; ErrNoSolution says that no such layer
// does, as for more light than before.
func LayerFor(cover Optics, together, absorptance float64) (Optics, error) {
	if err := errors.Join(cover.check("cover"), shareRange.Check("together", together), shareRange.Check("absorptance", absorptance)); err != nil {
		return Optics{}, err
	}
	// together (1 - r1 r2) = t1 t2 with r1 = 1 - absorptance - t1.
	t := together * (1 - (1-absorptance)*cover.Reflectance) / (cover.Transmittance - together*cover.Reflectance)
	layer := Optics{Transmittance: t, Reflectance: 1 - absorptance - t}
	if !(t >= 0 && layer.Reflectance >= 0) {
		return Optics{}, fmt.Errorf("layer: %w: no layer of absorptance %g takes %g of the light down to %g", ErrNoSolution, absorptance, cover.Transmittance, together)
	}
	return layer, nil
}

// Apply returns the setting s with the shade of b: the sun is kept out by
// 1 - Factor, and the heat that shade and cover then give the house beyond
// what the cover gives with the sun so weakened goes to the air, for sun,
// W/m², on the horizontal and floorArea, m². It returns s as it is for a sun
// or an area below zero.
func (b ShadeBalance) Apply(s Setting, sun, floorArea float64) Setting {
	if !(sun >= 0 && floorArea >= 0) {
		return s
	}
	s.Shade = 1 - (1-s.Shade)*b.Factor
	s.Heat += (b.ShadeInward + b.CoverInward - b.BareInward*b.Factor) * sun * floorArea
	return s
}
