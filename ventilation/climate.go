package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// Ranges of the balance of heat and water.
var (
	sunRange         = domain.Range{Min: 0, Max: 1500, Unit: "W/m²", Source: "sun on a horizontal plane, broken clouds included"}
	floorAreaRange   = domain.Range{Min: 0.1, Max: 1e6, Unit: "m²", Source: "a cold frame to a hundred hectares"}
	volumeRange      = domain.Range{Min: 0.05, Max: 1e7, Unit: "m³", Source: "a cold frame to a hundred hectares"}
	coverAreaRange   = domain.Range{Min: 0.1, Max: 2e6, Unit: "m²", Source: "a cold frame to a hundred hectares"}
	coverURange      = domain.Range{Min: 0.05, Max: 12, Unit: "W/(m² K)", Source: "insulated wall to single film in wind"}
	surfaceRange     = domain.Range{Min: 0.5, Max: 100, Unit: "W/(m² K)", Source: "still air to storm"}
	conductanceRange = domain.Range{Min: 0, Max: 100, Unit: "W/(m² K)", Source: "insulated floor to a thin slab over water"}
	shareRange       = domain.Range{Min: 0, Max: 1, Unit: "fraction", Source: "definition"}
	soilVapourRange  = domain.Range{Min: 0, Max: 1e5, Unit: "s/m", Source: "free water to dry sand"}
	climateHeatRange = domain.Range{Min: -1e8, Max: 1e8, Unit: "W", Source: "houses up to some hectares"}
	vapourRange      = domain.Range{Min: 0, Max: 1000, Unit: "kg/s", Source: "houses up to some hectares"}
	skyRange         = domain.Range{Min: -100, Max: 80, Unit: "°C", Source: "clear dry sky to the air's own temperature"}
	groundRange      = domain.Range{Min: -40, Max: 60, Unit: "°C", Source: "frozen to sun-baked ground"}
	storeRange       = domain.Range{Min: 0, Max: 1e7, Unit: "W/K", Source: "houses up to some hectares"}
	condensingRange  = domain.Range{Min: 0, Max: 10, Unit: "kg/(s Pa)", Source: "houses up to some hectares"}
	storeVapourRange = domain.Range{Min: 0, Max: 1e5, Unit: "Pa", Source: "dry air to boiling water"}
	padRange         = domain.Range{Min: 0, Max: 0.99, Unit: "fraction", Source: "wet pads reach 0.7 to 0.9"}
)

// ClimateHouse is a house as the balance of heat and water sees it.
type ClimateHouse struct {
	FloorArea float64      // m², 0.1 to 1e6
	Volume    float64      // m³, 0.05 to 1e7, of the air
	Cover     SimpleCover  // roof and walls by one U; not read where Real is given
	Real      *RealCover   // roof and walls as package envelope has them; nil for Cover
	Floor     FloorSurface // ground under the crop
	Crop      Canopy       // the plants
	Air       *Network     // openings, leaks and fans; leaks of the plan of Real come on top; with Real it may be nil
}

// SimpleCover is the cover as a whole: one inner surface of one temperature.
type SimpleCover struct {
	Area          float64 // m², 0.1 to 2e6
	U             float64 // W/(m² K), 0.05 to 12, inside air to outside air, with the two surface coefficients that follow
	Inside        float64 // W/(m² K), 0.5 to 100, inner surface coefficient contained in U
	Outside       float64 // W/(m² K), 0.5 to 100, outer surface coefficient contained in U
	Convection    float64 // W/(m² K), 0.5 to 100, inside air to the inner surface, without radiation
	Emissivity    float64 // fraction, 0 to 1, effective emissivity between crop, floor and inner surface; 0 for no radiation
	Transmittance float64 // fraction, 0 to 1, of the sun on the horizontal that arrives inside, per floor area
	Absorptance   float64 // fraction, 0 to 1, of the sun on the horizontal that the cover absorbs, per floor area
	SkyFactor     float64 // fraction, 0 to 1, outer emissivity times the view of the sky
}

// DefaultSimpleCover returns a single-film or single-glass cover of area, m², with
// the surface coefficients of EN 673 [EnGlass11] (8 inside, 23 outside, from
// memory): U 5.8, convection 4, effective emissivity 0.8, transmittance 0.65,
// absorptance 0.10, and a sky factor of 0.6.
func DefaultSimpleCover(area float64) SimpleCover {
	return SimpleCover{Area: area, U: 5.8, Inside: 8, Outside: 23, Convection: 4, Emissivity: 0.8,
		Transmittance: 0.65, Absorptance: 0.10, SkyFactor: 0.6}
}

// FloorSurface is the ground under the crop.
type FloorSurface struct {
	Conductance float64 // W/(m² K), 0 to 100, surface to the ground's temperature
	Convection  float64 // W/(m² K), 0.5 to 100, inside air to the surface
	Absorptance float64 // fraction, 0 to 1, of the sun that reaches it; the rest leaves the house
	Wet         float64 // fraction, 0 to 1, of the floor that evaporates; 0 for a dry or covered floor
	Resistance  float64 // s/m, 0 to 1e5, of the soil's top layer to vapour; 0 for free water
}

// DefaultFloorSurface returns bare moist soil: 2 W/(m² K) to the ground, 3 W/(m² K)
// to the air, absorptance 0.8, half of it wet with 500 s/m. The values are
// orders of magnitude, not measurements.
func DefaultFloorSurface() FloorSurface {
	return FloorSurface{Conductance: 2, Convection: 3, Absorptance: 0.8, Wet: 0.5, Resistance: 500}
}

// Weather is what drives the house from outside.
type Weather struct {
	Air    psychro.State // outside air
	Sun    float64       // W/m², 0 to 1500, on the horizontal
	Wind   float64       // m/s, 0 to 45, on real covers at most 40; at the height to which the pressure coefficients refer
	Sky    float64       // °C, -100 to 80, radiant temperature of the sky; the outside air's own for no loss to the sky
	Ground float64       // °C, -40 to 60, temperature of the ground below the floor's conductance

	Gain *envelope.SolarGain // sun through and into each facet of Real, of envelope.Glazing; nil: by Sun and the shares of the cover
}

// Setting is what is done to the house now. The zero Setting does nothing: vents
// shut, no heat, no water, no shade, the screen open.
type Setting struct {
	Opening  float64  // fraction, 0 to 1, of the area of every opening, 0 shut to 1; leaks and fans stay
	Heat     float64  // W, -1e8 to 1e8, sensible heat to the inside air; negative takes heat
	Moisture float64  // kg/s, 0 to 1000, vapour set free in the inside air at its temperature
	Mist     float64  // kg/s, 0 to 1000, liquid water that evaporates in the inside air and takes its latent heat
	Pad      float64  // fraction, 0 to 0.99, efficiency of a wet pad that all entering air passes
	Shade    float64  // fraction, 0 to 1, of the sun kept from the house outside the cover
	Radiant  float64  // W, 0 to 1e8, heat radiation of pipes and radiant heaters to crop and floor
	Floor    float64  // W, 0 to 1e8, heat of a heated floor into its surface
	Lamps    LampHeat // of the lamps that burn
	Screen   bool     // the screen of Real is drawn; the sun that it keeps out is part of Shade
	Air      *Network // openings, leaks and fans in place of the house's; nil: the house's
	Exchange float64  // W/K, 0 to 1e7, from the inside air to a store that it is blown through, such as tubes in the soil
	Store    float64  // °C, -60 to 80, of that store as the air meets it

	Condensing  float64 // kg/(s Pa), 0 to 10, vapour that condenses in that store for each Pa of the inside air above StoreVapour, and none below
	StoreVapour float64 // Pa, 0 to 1e5, with Condensing
}

// LampHeat is the power of lamps by the way it leaves them. Light and radiation
// are shared by crop and floor, light as the sun's is.
type LampHeat struct {
	Light   float64 // W, 0 to 1e8, as light and near infrared
	Radiant float64 // W, 0 to 1e8, as heat radiation
	Air     float64 // W, 0 to 1e8, to the air by convection
}

// Climate is a house ready for the balance. It never changes and may be used
// by several goroutines at once.
type Climate struct {
	house     ClimateHouse
	beyond    float64 // W/K, inner surface of the cover to the outside air
	longwave  float64 // fraction of heat radiation that the crop takes
	radiation float64 // W/K⁴, emissivity times sigma times the floor area
	leaf      float64 // m², 2 LAI times the floor area
	boundary  float64 // 1174 times the root of the leaf size
	forced    float64 // K m, 207 times the square of the air speed

	transmittance, absorptance float64 // fraction, of the cover
}

// NewClimate returns the house ready for the balance. The error joins every
// fault, each with its field.
func NewClimate(h ClimateHouse) (*Climate, error) {
	if err := h.check(); err != nil {
		return nil, err
	}
	c := &Climate{house: h}
	cover, crop := h.Cover, h.Crop
	if h.Real == nil {
		c.beyond = cover.Area / (1/cover.U - 1/cover.Inside)
		c.radiation = cover.Emissivity * constant.StefanBoltzmann * h.FloorArea
		c.transmittance, c.absorptance = cover.Transmittance, cover.Absorptance
	} else {
		real := *h.Real
		if real.House.Radiant() == envelope.RadiantAir {
			var err error
			if real.House, err = real.House.WithRadiant(envelope.RadiantGiven); err != nil {
				return nil, domain.Within("Real.House", err)
			}
		}
		c.house.Real = &real
		c.transmittance, c.absorptance = real.Transmittance, real.Absorptance
		if h.Air == nil {
			c.house.Air, h.Air = &Network{}, &Network{}
		}
	}
	if crop.LAI > 0 {
		c.longwave = interception(crop.LAI, crop.LongwaveExtinction)
		c.leaf = 2 * crop.LAI * h.FloorArea
		c.boundary = boundaryFactor * math.Sqrt(crop.LeafSize)
		c.forced = boundaryForced * crop.AirSpeed * crop.AirSpeed
	}
	return c, nil
}

// House returns the house.
func (c *Climate) House() ClimateHouse { return c.house }

// check refuses the zero Climate.
func (c *Climate) check() error {
	if c == nil || c.house.Air == nil {
		return fmt.Errorf("Climate: %w: the zero Climate is invalid, NewClimate makes one", ErrRange)
	}
	return nil
}

func (h ClimateHouse) check() error {
	var air error
	if h.Real == nil && (h.Air == nil || len(h.Air.paths) == 0) {
		air = fmt.Errorf("Air: %w: a house needs the network of its openings and leaks, made by NewNetwork", ErrRange)
	}
	cover := h.Cover.check
	if h.Real != nil {
		cover = func() error { return domain.Within("Real", h.Real.check()) }
	}
	f := h.Floor
	return errors.Join(
		floorAreaRange.Check("FloorArea", h.FloorArea),
		volumeRange.Check("Volume", h.Volume),
		cover(),
		conductanceRange.Check("Floor.Conductance", f.Conductance),
		surfaceRange.Check("Floor.Convection", f.Convection),
		shareRange.Check("Floor.Absorptance", f.Absorptance),
		shareRange.Check("Floor.Wet", f.Wet),
		soilVapourRange.Check("Floor.Resistance", f.Resistance),
		h.Crop.check("Crop."),
		air,
	)
}

func (c SimpleCover) check() error {
	films, sun := error(nil), error(nil)
	if coverURange.Contains(c.U) && surfaceRange.Contains(c.Inside) && surfaceRange.Contains(c.Outside) {
		if most := 1 / (1/c.Inside + 1/c.Outside); c.U > most*(1+slack) {
			films = &RangeError{Field: "Cover.U", Value: c.U, Min: coverURange.Min, Max: most, Unit: coverURange.Unit, Source: "the surface coefficients Inside and Outside alone"}
		}
	}
	if c.Transmittance+c.Absorptance > 1 && shareRange.Contains(c.Transmittance) && shareRange.Contains(c.Absorptance) {
		sun = &RangeError{Field: "Cover.Transmittance + Cover.Absorptance", Value: c.Transmittance + c.Absorptance, Min: 0, Max: 1, Unit: "fraction", Source: "the cover gives away no more sun than falls on it"}
	}
	return errors.Join(
		coverAreaRange.Check("Cover.Area", c.Area),
		coverURange.Check("Cover.U", c.U),
		surfaceRange.Check("Cover.Inside", c.Inside),
		surfaceRange.Check("Cover.Outside", c.Outside),
		films,
		surfaceRange.Check("Cover.Convection", c.Convection),
		shareRange.Check("Cover.Emissivity", c.Emissivity),
		shareRange.Check("Cover.Transmittance", c.Transmittance),
		shareRange.Check("Cover.Absorptance", c.Absorptance),
		sun,
		shareRange.Check("Cover.SkyFactor", c.SkyFactor),
	)
}

func (w *Weather) check() error {
	t, p := w.Air.Temperature(), w.Air.Pressure()
	if temperatureRange.Contains(t) && pressureRange.Contains(p) && sunRange.Contains(w.Sun) &&
		windRange.Contains(w.Wind) && skyRange.Contains(w.Sky) && groundRange.Contains(w.Ground) {
		return nil
	}
	return errors.Join(
		temperatureRange.Check("Air.Temperature", t),
		pressureRange.Check("Air.Pressure", p),
		sunRange.Check("Sun", w.Sun),
		windRange.Check("Wind", w.Wind),
		skyRange.Check("Sky", w.Sky),
		groundRange.Check("Ground", w.Ground),
	)
}

func (s *Setting) check() error {
	if shareRange.Contains(s.Opening) && climateHeatRange.Contains(s.Heat) && vapourRange.Contains(s.Moisture) &&
		vapourRange.Contains(s.Mist) && padRange.Contains(s.Pad) && shareRange.Contains(s.Shade) &&
		heaterRange.Contains(s.Radiant) && heaterRange.Contains(s.Floor) && s.Lamps.valid() &&
		storeRange.Contains(s.Exchange) && temperatureRange.Contains(s.Store) && condensingRange.Contains(s.Condensing) && storeVapourRange.Contains(s.StoreVapour) {
		return nil
	}
	return errors.Join(
		shareRange.Check("Opening", s.Opening),
		climateHeatRange.Check("Heat", s.Heat),
		vapourRange.Check("Moisture", s.Moisture),
		vapourRange.Check("Mist", s.Mist),
		padRange.Check("Pad", s.Pad),
		shareRange.Check("Shade", s.Shade),
		heaterRange.Check("Radiant", s.Radiant),
		heaterRange.Check("Floor", s.Floor),
		domain.Within("Lamps", s.Lamps.check()),
		storeRange.Check("Exchange", s.Exchange),
		temperatureRange.Check("Store", s.Store),
		condensingRange.Check("Condensing", s.Condensing),
		storeVapourRange.Check("StoreVapour", s.StoreVapour),
	)
}

func (l *LampHeat) valid() bool {
	return heaterRange.Contains(l.Light) && heaterRange.Contains(l.Radiant) && heaterRange.Contains(l.Air)
}

func (l *LampHeat) check() error {
	return errors.Join(
		heaterRange.Check("Light", l.Light),
		heaterRange.Check("Radiant", l.Radiant),
		heaterRange.Check("Air", l.Air),
	)
}
