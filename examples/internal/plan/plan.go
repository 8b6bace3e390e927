package plan

// Plan is everything that a program may ask of a house. What a plan leaves out
// holds its default; a section that the house does not have is nil, or an empty
// list.
type Plan struct {
	Name           string          `json:"name"`            // what reports call the house
	Note           string          `json:"note"`            // a remark that reports repeat, as where the figures come from
	Currency       string          `json:"currency"`        // what all prices are counted in, as EUR
	Site           Site            `json:"site"`            // where the house stands
	House          House           `json:"house"`           // shape and size; heights are above the ground outside
	Cover          Cover           `json:"cover"`           // what the house is covered with: ready-made covers by name, or own ones
	Leakage        Leakage         `json:"leakage"`         // air that finds its way when all is shut
	Screen         *Screen         `json:"screen"`          // nil when the house has none
	Ground         Ground          `json:"ground"`          // under and beside the house
	Floor          Floor           `json:"floor"`           // the floor that crop and air see
	SetPoints      SetPoints       `json:"set_points"`      // what the grower asks for
	Crop           Crop            `json:"crop"`            // what grows, and the water it sets free
	Irrigation     Irrigation      `json:"irrigation"`      // water for the crop
	CO2            *CO2            `json:"co2"`             // nil when the house has none
	Heater         Heater          `json:"heater"`          // the air heater
	EmergencyHeat  *EmergencyHeat  `json:"emergency_heat"`  // nil when the house has none
	HeatStorage    HeatStorage     `json:"heat_storage"`    // what holds heat in the house
	SoilStore      *SoilStore      `json:"soil_store"`      // nil when the house has none
	Ducts          []Duct          `json:"ducts"`           // branches of the duct work, each after the one that it starts from
	HeaterFan      *HeaterFan      `json:"heater_fan"`      // nil when the house has none
	PerforatedTube *PerforatedTube `json:"perforated_tube"` // nil when the house has none
	AirCircuit     AirCircuit      `json:"air_circuit"`     // heat brought by air, for a comparison with water
	WaterCircuit   WaterCircuit    `json:"water_circuit"`   // heat brought by water, for the comparison
	Lights         *Lights         `json:"lights"`          // nil when the house has none
	Vents          []Vent          `json:"vents"`           // openings for air
	VentControl    VentControl     `json:"vent_control"`    // who moves the vents, and when
	VentFans       []VentFan       `json:"vent_fans"`       // fans that blow air in or out
	Shade          *Shade          `json:"shade"`           // nil when the house has none
	Fog            *Fog            `json:"fog"`             // nil when the house has none
	Pads           *Pads           `json:"pads"`            // nil when the house has none
	WinterDrying   WinterDrying    `json:"winter_drying"`   // damp air vented on a winter morning
	Prices         Prices          `json:"prices"`          // besides the heater's fuel
	Assumptions    Assumptions     `json:"assumptions"`     // switches for repeating a published example; leave them out for a real house
}
