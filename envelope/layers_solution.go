package envelope

// Face is the state of one face of a layer.
type Face struct {
	Temperature float64 // °C
	Irradiance  float64 // W/m², long-wave
	Radiosity   float64 // W/m², long-wave: emitted, reflected and transmitted
	Residual    float64 // W/m², what the face's energy balance leaves open
}

// GapState is what a gap does at the solution.
type GapState struct {
	Rayleigh   float64 // dimensionless
	Nusselt    float64 // dimensionless
	Convection float64 // W/(m² K), of the air
	Bridge     float64 // W/(m² K), of ribs
	Flux       float64 // W/m², outward, of air and ribs
	FlowTilt   float64 // degree, the tilt entered in the correlation: below 90 heat flows upward
	Air        float64 // °C, temperature of the air in the gap
	InRange    bool    // the Rayleigh number lies where the correlation was measured
	AtJump     bool    // the balance closes only within the jump of the vertical correlation at Ra = 5e4; Nusselt lies between the two branches
}

// Patch is the part of a double film whose layers lie on each other.
type Patch struct {
	Share            float64 // fraction of the area
	FluxIn           float64 // W/m², from the house into this part
	FluxOut          float64 // W/m², from this part to the outside
	InnerTemperature float64 // °C, inner face of this part
	OuterTemperature float64 // °C, outer face of this part
	WetShare         float64 // fraction of its inner face under water or frost
	IceShare         float64 // fraction of its deposit that is frost
	Condensate       float64 // kg/(s m²), condensate on it
	Residual         float64 // W/m², largest that a face balance leaves open
}

// Solution is the steady state of a cover. Fluxes are per area of cover and
// positive when heat leaves the house. With a gap collapsed in part, fluxes,
// driven parts and U-values are means over the area; faces, gaps and
// coefficients are those of the part that stands apart.
type Solution struct {
	Layers int                     // number of layers
	Outer  [MaxLayers]Face         // outer face of each layer, from the outside
	Inner  [MaxLayers]Face         // inner face of each layer
	Gaps   [MaxLayers - 1]GapState // between the layers
	Patch  Patch                   // collapsed part, zero without one

	FluxIn       float64 // W/m², from the house into the cover, the sum of the four below
	InConvective float64 // W/m², from the inside air by convection
	InRadiative  float64 // W/m², net long-wave from the inside
	InLatent     float64 // W/m², given up at the inner face by vapour that condenses or freezes, negative while a film dries
	InLeakage    float64 // W/m², by air through the layers into the gaps

	FluxOut       float64 // W/m², from the cover to the outside, the sum of the two below: FluxIn and the absorbed sun
	OutConvective float64 // W/m², to the outside air by convection
	OutRadiative  float64 // W/m², net long-wave to sky and ground

	Load       float64 // W/m², what the heater pays for: FluxIn with LatentLoad in the place of InLatent
	LatentLoad float64 // W/m², heat that evaporates the condensate at the temperature of the inside air: the heat of freezing comes out of the water and is no load
	TwoStates  bool    // the cover passes heat radiation and could be wet as well as dry, or wet in part: this is the wet state
	DryFluxIn  float64 // W/m², FluxIn of the other, drier state where there are two, for the size of the heater; else FluxIn

	AirDriven float64 // W/m², part of FluxIn that the inside drives: air, radiant temperature and vapour against the outside air
	SkyDriven float64 // W/m², part of FluxIn because sky and ground are not at the outside air temperature
	SunDriven float64 // W/m², part of FluxIn because of absorbed sun, negative as a gain

	U          float64 // W/(m² K), Load over inside air less outside air, sky included; NaN at equal temperatures
	UOvercast  float64 // W/(m² K), sensible flux per kelvin of inside over outside with the sky at air temperature: what a table means
	UAmbient   float64 // W/(m² K), FluxIn over AmbientIn less AmbientOut, the reference of ISO 15099; NaN at equal temperatures
	AmbientIn  float64 // °C, inside air and radiant temperature mixed by their coefficients
	AmbientOut float64 // °C, outside air and sky-and-ground temperature mixed by their coefficients
	Condensate float64 // kg/(s m²), condensate on the inner face, negative while a film dries

	OutsideCoefficient float64 // W/(m² K), convection outside
	InsideCoefficient  float64 // W/(m² K), convection inside
	SkyView            float64 // fraction of the half-space outside that is sky
	IrradianceOut      float64 // W/m², long-wave from sky and ground
	IrradianceIn       float64 // W/m², long-wave from the inside
	OutsideInRange     bool    // the wind lies where the correlation was published
	InsideInRange      bool    // the tilt lies where the correlation inside was published

	InnerTemperature float64 // °C, coldest inner face of the innermost layer
	DewPoint         float64 // °C, dew or frost point of the inside air; -Inf of dry air
	DripHumidity     float64 // fraction, relative humidity inside above which the dry innermost face, or one declared wet as it is, draws condensation; above 1 it never does
	Condenses        bool    // vapour condenses or freezes on the inner face, or would if it were not declared dry
	WetShare         float64 // fraction of the inner face under water or frost: 0 dry, 1 wet, between them drops that keep the face at the dew point without any more condensing
	IceShare         float64 // fraction of the deposit that is frost: 0 above 0.01 °C, 1 below, both at 0.01 °C
	DripsAbove       bool    // inside air leaks through screens to a face below its dew point: vapour condenses there, too, which is not counted

	Iterations int     // steps of the solver
	Residual   float64 // W/m², largest that a face balance leaves open

	flow  flow     // what the cover sends and takes, in a house
	drive response // what each drive does, for facets that see each other
}
