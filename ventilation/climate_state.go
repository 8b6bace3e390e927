package ventilation

import (
	"math"

	"cloche.example/internal/constant"
	"cloche.example/psychro"
)

// ClimateState is a steady state of a house: temperatures, humidity and flow
// that close every balance together, with each term. Heat flows are for the
// whole house.
type ClimateState struct {
	Temperature       float64 // °C, inside air
	HumidityRatio     float64 // kg/kg dry air, inside
	RelativeHumidity  float64 // fraction, inside
	VapourPressure    float64 // Pa, inside
	Deficit           float64 // Pa, vapour pressure deficit of the inside air at its own temperature
	LeafDeficit       float64 // Pa, saturation pressure at the canopy's temperature less the inside vapour pressure; NaN without a crop
	DewPoint          float64 // °C, of the inside air; NaN for dry air
	CanopyTemperature float64 // °C; NaN without a crop
	FloorTemperature  float64 // °C, of the floor
	CoverTemperature  float64 // °C, inner surface of the cover

	Entering      float64 // °C, air that enters: outside air, past the pad if there is one
	EnteringRatio float64 // kg/kg dry air, of it
	DryAir        float64 // kg/s of dry air that enters and leaves
	Leakage       float64 // kg/s, the part of DryAir that leaks through real covers
	Volume        float64 // m³/s of outside air that enters
	VolumeOut     float64 // m³/s of inside air that leaves
	AirChanges    float64 // air changes per hour, 1/h, by Volume
	Pressure      float64 // Pa, inside at the datum less the outside static pressure there; NaN when sealed
	Neutral       float64 // m, neutral level above the datum; NaN when sealed or without a difference of density

	SunCanopy    float64 // W, sun absorbed by the leaves
	SunFloor     float64 // W, sun absorbed by the floor
	SunCover     float64 // W, sun absorbed by the cover
	SunStructure float64 // W, sun absorbed by the structure, which is a store
	SunReflected float64 // W, sun that came in and goes out again
	Heat         float64 // W, sensible heat put into the air
	Radiant      float64 // W, heat radiation of heaters and lamps to crop and floor
	FloorHeating float64 // W, put into the floor's surface
	LampAir      float64 // W, of lamps to the air
	SkyLoss      float64 // W, of the cover to the sky beyond what it would lose to surroundings at the outside temperature
	SolAir       float64 // °C, the outside temperature that has the effect of air, sun on the cover and sky together; NaN with real covers

	CanopyHeat   float64 // W, canopy to air
	CanopyLatent float64 // W, canopy to vapour
	CanopyUp     float64 // W, heat radiation of the canopy to the cover
	CanopyDown   float64 // W, heat radiation of the canopy to the floor
	FloorHeat    float64 // W, floor to air
	FloorLatent  float64 // W, floor to vapour
	FloorUp      float64 // W, heat radiation of the floor to the cover
	Ground       float64 // W, floor to the ground
	ToStructure  float64 // W, air to the structure, less what that gives of its sun
	ToStore      float64 // W, sensible heat, air to the store of the setting's Exchange
	StoreLatent  float64 // W, that the water takes there which condenses in the store, as vapour of the inside temperature
	CoverHeat    float64 // W, air to the inner surface of the cover by convection; with real covers through frame, doors and bridges, too
	CoverLatent  float64 // W, set free at the inner surface by condensation
	CoverLoss    float64 // W, from the inner surface to SolAir; with real covers all heat that they, frame, doors and bridges take
	AirSensible  float64 // W, carried off by the air: it enters and is warmed
	AirLatent    float64 // W, carried off by the air: the water it gains, as vapour of the inside temperature
	Liquid       float64 // W, brought in by liquid water that evaporates less what drips carry off, counted from 0 °C
	MoistureHeat float64 // W, enthalpy of the vapour that is set free

	Transpired      float64 // kg/s, by the canopy; negative is dew on the leaves
	FloorEvaporated float64 // kg/s, by the floor; negative is dew on it
	Mist            float64 // kg/s, evaporated in the air
	Moisture        float64 // kg/s, set free as vapour
	Condensed       float64 // kg/s, on the cover
	Drip            float64 // kg/s, out of saturated air: fog
	IntoStore       float64 // kg/s, condensed in the store of the setting's Exchange
	ByAir           float64 // kg/s, water carried off by the air
	FromPad         float64 // kg/s, water evaporated in the pad

	Stomata  float64 // s/m, stomatal resistance on 2 LAI; zero under dew, NaN without a crop
	Boundary float64 // s/m, resistance of the leaves' boundary layer on 2 LAI; NaN without a crop

	HeatIn        float64 // W, that enters the inside: sun and light absorbed by canopy and floor, heat put in, enthalpy of vapour set free and of liquid water
	HeatOut       float64 // W, that leaves it: to the ground, through the cover, and with the air
	WaterIn       float64 // kg/s, that becomes vapour inside
	WaterOut      float64 // kg/s, that leaves the inside air
	HeatResidual  float64 // W, HeatIn less HeatOut
	WaterResidual float64 // kg/s, WaterIn less WaterOut
	NodeResidual  float64 // fraction, the largest imbalance of canopy, floor, cover, water and air divided by the terms of each, beyond the rounding of temperatures
	Stable        bool    // a small disturbance of the flow dies out
	Forced        bool    // the fans of the rule's Forced run
	CoversBetween bool    // films that let heat radiation through stand between dry and wet, which take another heat each: real covers take what lies between
}

// Solve returns the steady state of the house in the weather w under the
// setting s: temperature, humidity and flow solved together. Where several
// states exist it is the one with the strongest flow, the coolest as a rule;
// States lists them all. The error joins the
// inputs outside their ranges; ErrNoSolution says that the house would
// pass -60 to 80 °C; ErrNotConverged tells the residuals. It allocates nothing.
func (c *Climate) Solve(w Weather, s Setting) (ClimateState, error) {
	var k climateCase
	if err := c.prepare(&k, &w, &s); err != nil {
		return ClimateState{}, err
	}
	var out ClimateState
	err := k.meet(func() error {
		x, stable, err := k.solve()
		if err == nil {
			k.state(&out, &x, stable)
		}
		return err
	}, nil)
	if err != nil {
		return ClimateState{}, err
	}
	return out, nil
}

// HeatFor returns the state in which the inside air has the given temperature,
// °C, -60 to 80, with the heat that this takes in the field Heat: what
// a heater must give, or, negative, a cooler take. The Heat of s is not used.
// Errors are those of Solve.
func (c *Climate) HeatFor(w Weather, s Setting, temperature float64) (ClimateState, error) {
	var k climateCase
	if err := c.prepare(&k, &w, &s); err != nil {
		return ClimateState{}, err
	}
	if err := temperatureRange.Check("temperature", temperature); err != nil {
		return ClimateState{}, err
	}
	var out ClimateState
	err := k.meet(func() error {
		x, stable, err := k.hold(temperature)
		if err == nil {
			k.state(&out, &x, stable)
		}
		return err
	}, nil)
	if err != nil {
		return ClimateState{}, err
	}
	return out, nil
}

// hold returns the state with the inside temperature t, °C, and sets heat to
// what this takes.
func (k *climateCase) hold(t float64) (climateNodes, bool, error) {
	k.held, k.target, k.heat = true, t, 0
	x := k.start()
	if k.warm {
		x = k.guess
		x.air, x.wet, x.drip = t, false, 0
		es, _ := saturation(t)
		x.vapour = min(x.vapour, nearlySaturated*es)
	}
	var err error
	if stable, ok := k.newton(&x, true); ok && stable {
		x, _, err = k.stronger(x)
	} else {
		x, _, err = k.search(k.most())
	}
	if err != nil {
		k.held = false
		return x, false, err
	}
	k.judge(&x)
	k.heat, k.held = -k.residual[onAir], false
	return x, k.judge(&x), nil
}

// state fills out from the solved unknowns x, term by term from their
// definitions.
func (k *climateCase) state(out *ClimateState, x *climateNodes, stable bool) {
	c := k.c
	h := &c.house
	k.found = *x
	m := k.exchange(x)
	k.evaluate(x, m, 0, 0, false)
	t, e, p := x.air, x.vapour, k.pressure
	tk := t + kelvin
	w := vapourRatio * e / (p - e)
	rc := (p - e) / (gasConstantDryAir * tk) * (heatCapacityAir + vapourHeat*w)
	const rv = gasConstantDryAir / vapourRatio
	es, _ := saturation(t)
	nan := math.NaN()

	*out = ClimateState{
		Temperature: t, HumidityRatio: w, RelativeHumidity: e / es, VapourPressure: e, Deficit: es - e,
		DewPoint: psychro.SaturationTemperature(e), FloorTemperature: x.floor, CoverTemperature: x.lining,
		CanopyTemperature: nan, LeafDeficit: nan, Stomata: nan, Boundary: nan,
		Entering: k.entering, EnteringRatio: k.enteringRatio,
		Pressure:  k.lastDrive,
		SunCanopy: k.canopySun, SunFloor: k.floorSun, SunCover: k.coverSun,
		SunReflected: k.sun.Reflected*h.FloorArea + k.sun.Floor*(1-h.Floor.Absorptance)*h.FloorArea,
		Heat:         k.heat, Radiant: k.radiant, FloorHeating: k.floorHeat, LampAir: k.lampAir, SkyLoss: k.skyLoss, SolAir: k.solAir,
		Mist: k.mist, Moisture: k.moisture, Drip: x.drip,
		Stable: stable,
	}
	if k.skin != nil {
		out.Leakage, _, _ = k.skin.near.leakAt(t, e)
	}
	out.DryAir = m + out.Leakage
	out.Volume, out.VolumeOut = out.DryAir*(1+k.outsideRatio)/k.outsideAir.rho, out.DryAir*(1+w)/moistDensity(t, e, p)
	out.AirChanges = AirChanges(out.Volume, h.Volume)
	f := k.flow(t, e)
	out.Neutral = neutralLevel(out.Pressure, FlowConditions{InsideDensity: f.inside.rho, OutsideDensity: f.outside.rho})

	q := c.radiation
	fourth := func(t float64) float64 { t += kelvin; return t * t * t * t }
	if c.leaf > 0 {
		d := x.canopy - t
		out.CanopyTemperature = x.canopy
		out.Boundary = c.boundary / math.Sqrt(math.Sqrt(h.Crop.LeafSize*math.Abs(d)+c.forced))
		out.CanopyHeat = c.leaf * rc * d / out.Boundary
		ec, _ := saturation(x.canopy)
		out.LeafDeficit, out.Stomata = ec-e, 0
		if ec > e {
			out.Stomata, _, _ = k.stomata.resistance(h.Crop.Stomata, x.canopy, ec-e)
		}
		out.Transpired = c.leaf * (ec - e) / (rv * tk * (out.Boundary + out.Stomata))
		out.CanopyLatent = out.Transpired * (vapourEnthalpy(t) - liquidHeat*x.canopy)
		if out.Transpired > 0 {
			out.CanopyLatent = out.Transpired * (vapourEnthalpy(x.canopy) - liquidHeat*x.canopy)
		}
		if k.skin != nil {
			q = constant.StefanBoltzmann * h.FloorArea
		}
		out.CanopyUp = q * c.longwave * (fourth(x.canopy) - fourth(x.lining))
		out.CanopyDown = q * c.longwave * (fourth(x.canopy) - fourth(x.floor))
	}
	out.FloorHeat = h.FloorArea * h.Floor.Convection * (x.floor - t)
	ef, _ := saturation(x.floor)
	if ef > e {
		out.FloorEvaporated = h.FloorArea * h.Floor.Wet * (ef - e) / (rv * tk * (k.lewis*rc/h.Floor.Convection + h.Floor.Resistance))
		out.FloorLatent = out.FloorEvaporated * (vapourEnthalpy(x.floor) - liquidHeat*x.floor)
	} else {
		out.FloorEvaporated = h.FloorArea * (ef - e) / (rv * tk * k.lewis * rc / h.Floor.Convection)
		out.FloorLatent = out.FloorEvaporated * (vapourEnthalpy(t) - liquidHeat*x.floor)
	}
	out.Ground = k.floorConductance * (x.floor - k.ground)
	out.SunStructure = k.massSun
	out.ToStructure = k.mass.conductance*(t-k.mass.temperature) - k.massGives
	out.ToStore = k.store.conductance * (t - k.store.temperature)
	if over := e - k.storeVapour; k.condensing > 0 && over > 0 {
		out.IntoStore = k.condensing * over
		out.StoreLatent = out.IntoStore * vapourEnthalpy(t)
	}
	runs := 0.0 // W, enthalpy of the water that runs off the cover
	if k.skin != nil {
		runs = k.coveredState(out, x)
	} else {
		out.FloorUp = q * (1 - c.longwave) * (fourth(x.floor) - fourth(x.lining))
		out.CoverHeat = h.Cover.Area * h.Cover.Convection * (t - x.lining)
		if ev, _ := saturation(x.lining); e > ev {
			out.Condensed = h.Cover.Area * (e - ev) / (rv * tk * k.lewis * rc / h.Cover.Convection)
			out.CoverLatent = out.Condensed * (vapourEnthalpy(t) - liquidHeat*x.lining)
			runs = liquidHeat * out.Condensed * x.lining
		}
		out.CoverLoss = c.beyond * (x.lining - k.solAir)
	}
	out.AirSensible = m*k.enteringHeat*(t-k.entering) + out.Leakage*(heatCapacityAir+vapourHeat*k.outsideRatio)*(t-k.outside)
	out.ByAir = m*(w-k.enteringRatio) + out.Leakage*(w-k.outsideRatio)
	out.AirLatent = out.ByAir * vapourEnthalpy(t)
	out.FromPad = m * (k.enteringRatio - k.outsideRatio)
	out.Liquid = liquidHeat*(out.Transpired*x.canopy+out.FloorEvaporated*x.floor+k.mist*t-out.Drip*t) - runs
	out.MoistureHeat = k.moisture * vapourEnthalpy(t)
	out.HeatIn = out.SunCanopy + out.SunFloor + out.Heat + out.Radiant + out.FloorHeating + out.LampAir + out.MoistureHeat + out.Liquid
	out.HeatOut = out.Ground + out.ToStructure + out.ToStore + out.StoreLatent + out.CoverLoss + out.AirSensible + out.AirLatent
	out.WaterIn = out.Transpired + out.FloorEvaporated + out.Mist + out.Moisture
	out.WaterOut = out.Condensed + out.Drip + out.IntoStore + out.ByAir
	out.HeatResidual, out.WaterResidual = out.HeatIn-out.HeatOut, out.WaterIn-out.WaterOut
	for i := range k.residual {
		if k.size[i] > 0 {
			out.NodeResidual = max(out.NodeResidual, (math.Abs(k.residual[i])-k.noise(i))/k.size[i])
		}
	}
}
