package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/internal/constant"
	"cloche.example/psychro"
)

// Moist air as of [HoF17] ch. 1 eq. 20, 26 and 30; liquid water of ch. 1
// eq. 33.
const (
	vapourRatio     = constant.MoleRatio  // dimensionless, molar mass of water over that of dry air
	vapourHeat      = constant.HeatVapour // J/(kg K), heat capacity of vapour
	evaporationHeat = constant.LatentZero // J/kg, enthalpy of vapour at 0 °C
	liquidHeat      = constant.HeatLiquid // J/(kg K), heat capacity of liquid water
)

// Limits of every temperature while solving, °C: beyond all that is accepted as a
// state, so that the way to one may pass outside, and where saturation is known.
const (
	climateLow  = -99.0
	climateHigh = 109.0
)

func vapourEnthalpy(t float64) float64 { return evaporationHeat + vapourHeat*t }

// climateCase is one house in one weather under one setting.
type climateCase struct {
	c    *Climate
	air  *Network // openings, leaks and fans
	fans bool     // one of them is a fan

	pressure, wind float64 // Pa, m/s
	outside        float64 // °C
	outsideVapour  float64 // Pa
	outsideRatio   float64 // kg/kg
	outsideAir     air     // its density
	dryOut         float64 // kg of dry air per kg of it
	lewis          float64 // dimensionless, by which heat transfer outdoes vapour transfer at a surface
	entering       float64 // °C, past the pad
	enteringRatio  float64 // kg/kg, past the pad
	enteringVapour float64 // Pa, past the pad
	enteringHeat   float64 // J/(kg K), of it
	opening        float64 // fraction

	sun              CanopySun  // W/m², on crop and floor
	canopySun        float64    // W
	floorSun         float64    // W
	coverSun         float64    // W
	skyLoss          float64    // W
	solAir           float64    // °C
	ground           float64    // °C
	floorConductance float64    // W/K, floor surface to the ground
	stomata          Response   // without the factors of leaf temperature and deficit
	heat             float64    // W
	moisture         float64    // kg/s
	mist             float64    // kg/s
	conductance      [5]float64 // W/K, order of magnitude, of each balance
	residual         [5]float64
	size             [5]float64
	jacobian         [5][5]float64
	held             bool         // the inside temperature is given and its balance left open
	target           float64      // °C, the inside temperature when held
	skin             *skin        // real covers; nil for SimpleCover
	found            climateNodes // the state written last
	guess            climateNodes // a state near the one sought
	warm             bool         // guess is one
	store            storeSeen    // W/K and °C, that the air is blown through
	condensing       float64      // kg/(s Pa), in the store
	storeVapour      float64      // Pa, above which it does
	mass             storeSeen    // W/K and °C, the structure as the air sees it
	massShare        float64      // fraction of the sun that arrives inside that the structure takes
	massSun          float64      // W, that sun
	massGives        float64      // W, of that sun that the air gets at once
	sunLight         float64      // W/m², sun above the crop
	lampLight        float64      // W/m², light of lamps above the crop
	co2              float64      // µmol/mol, for the stomata; 0: as the crop has it
	lampAir, radiant float64      // W, of lamps to the air; heat radiation to crop and floor
	floorHeat        float64      // W, into the floor
	lastFlow         float64      // kg/s of dry air
	lastDrive        float64      // Pa
	lastRate         float64      // m³/s, of lastFlow with the density of the inside air
}

func (c *Climate) prepare(k *climateCase, w *Weather, s *Setting) error {
	if z, a, b := c.check(), w.check(), s.check(); z != nil || a != nil || b != nil {
		return errors.Join(z, a, b)
	}
	k.c = c
	h := &c.house
	k.pressure, k.wind, k.outside, k.opening = w.Air.Pressure(), w.Wind, w.Air.Temperature(), s.Opening
	k.outsideRatio = w.Air.HumidityRatio()
	k.outsideVapour = k.pressure * k.outsideRatio / (vapourRatio + k.outsideRatio)
	k.outsideAir, k.dryOut = newAir(moistDensity(k.outside, k.outsideVapour, k.pressure)), 1/(1+k.outsideRatio)
	// Of the outside air, which is known: within 2 % of that of any film inside.
	k.lewis = w.Air.LewisFactor()
	k.store, k.condensing, k.storeVapour = storeSeen{s.Exchange, s.Store}, s.Condensing, s.StoreVapour
	air := h.Air
	if s.Air != nil {
		air = s.Air
	}
	if err := k.through(air, w.Air, s.Pad); err != nil {
		return err
	}
	if s.Opening == 0 && air.fansAlone() {
		return errShut
	}
	sun := w.Sun * (1 - s.Shade)
	into := sun * c.transmittance
	if h.Real != nil && w.Gain != nil {
		into = w.Gain.Transmitted / h.FloorArea * (1 - s.Shade)
	}
	k.massSun = k.massShare * into * h.FloorArea
	k.sunLight, k.lampLight = (1-k.massShare)*into, s.Lamps.Light/h.FloorArea
	k.sun = h.Crop.sun(k.sunLight + k.lampLight)
	k.canopySun = k.sun.Canopy * h.FloorArea
	k.floorSun = k.sun.Floor * h.Floor.Absorptance * h.FloorArea
	k.coverSun = sun * c.absorptance * h.FloorArea
	k.lampAir, k.radiant, k.floorHeat = s.Lamps.Air, s.Radiant+s.Lamps.Radiant, s.Floor
	k.ground = w.Ground
	k.floorConductance = h.FloorArea * h.Floor.Conductance
	k.stomata = Response{}
	if c.leaf > 0 {
		co2 := h.Crop.CO2
		if k.co2 > 0 {
			co2 = k.co2
		}
		k.stomata = h.Crop.Stomata.still(k.sun, co2)
	}
	k.heat, k.moisture, k.mist = s.Heat, s.Moisture, s.Mist
	k.held, k.lastDrive = false, math.NaN()
	if h.Real != nil {
		return k.prepareSkin(w, s)
	}
	// Sol-air temperature [HoF17] ch. 18 eq. 30.
	to, ts := k.outside+kelvin, w.Sky+kelvin
	k.skyLoss = h.Cover.Area * h.Cover.SkyFactor * constant.StefanBoltzmann * (to*to*to*to - ts*ts*ts*ts)
	k.solAir = k.outside + (k.coverSun-k.skyLoss)/(h.Cover.Outside*h.Cover.Area)
	k.conductances()
	return nil
}

// through lets air in by the openings, past a wet pad of that efficiency.
func (k *climateCase) through(air *Network, outside psychro.State, pad float64) error {
	if k.c.house.Real == nil && len(air.paths) == 0 {
		return fmt.Errorf("Air: %w", noOpening())
	}
	k.air, k.fans = air, false
	for i := range air.paths {
		k.fans = k.fans || air.paths[i].kind == fanPath
	}
	k.entering, k.enteringRatio = k.outside, k.outsideRatio
	if pad > 0 {
		wet, err := psychro.Stream{State: outside, DryAir: 1}.Pad(pad)
		if err != nil {
			return fmt.Errorf("Pad: %w", err)
		}
		k.entering, k.enteringRatio = wet.Out.State.Temperature(), wet.Out.State.HumidityRatio()
	}
	k.enteringVapour = k.pressure * k.enteringRatio / (vapourRatio + k.enteringRatio)
	k.enteringHeat = heatCapacityAir + vapourHeat*k.enteringRatio
	return nil
}

// errShut is the fault of a fan in a sealed house.
var errShut = fmt.Errorf("Opening: %w: a fan runs, every opening is shut and there is no leak", ErrNoSolution)

// fansAlone reports whether a network has a fan that blows and no leak.
func (n *Network) fansAlone() bool {
	blows := false
	for i := range n.paths {
		switch e := &n.paths[i]; e.kind {
		case leakPath:
			return false
		case fanPath:
			blows = blows || e.flow != 0
		}
	}
	return blows
}
