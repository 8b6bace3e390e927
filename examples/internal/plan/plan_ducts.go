package plan

// Duct is one of the list ducts: branches of the duct work, each after the one that it starts from.
type Duct struct {
	Name          string   `json:"name"`               // what other branches call it
	From          string   `json:"from"`               // name of the branch that it starts from, or fan
	Diameter      *float64 `json:"diameter_m"`         // m, 0.03 to 5, nil when not given; of a round duct
	Width         *float64 `json:"width_m"`            // m, 0.03 to 5, nil when not given; of a rectangular duct
	Height        *float64 `json:"height_m"`           // m, 0.03 to 5, nil when not given; of a rectangular duct
	Length        float64  `json:"length_m"`           // m, 0 to 1000; of the branch
	Roughness     float64  `json:"roughness_m"`        // m, 0 to 0.02; of the wall
	Fittings      float64  `json:"fittings_factor"`    // factor, 0 to 1000; sum of the loss factors of bends and outlets
	DamperAngle   *float64 `json:"damper_angle_deg"`   // degree, 5 to 60, nil when not given; from open; without it there is no damper
	WantedFlow    *float64 `json:"wanted_flow_m3_s"`   // m³/s, 0 to 200, nil when not given; for which dampers are to be set
	Junction      string   `json:"junction"`           // none, straight or side; how it leaves the other branch at a tee
	JunctionAngle float64  `json:"junction_angle_deg"` // degree, 30 to 90; of a side branch
	EndsIn        string   `json:"ends_in"`            // house, perforated tube or soil store; what a last branch blows into
	EndPressure   float64  `json:"end_pressure_pa"`    // Pa, -1000 to 1000; at that end, above the house
	WallU         float64  `json:"wall_u_w_m2_k"`      // W/(m² K), 0 to 50; through its wall
}

// HeaterFan is the optional section heater_fan: the heater's fan, by its table or its polynomial.
type HeaterFan struct {
	KnownFrom       string    `json:"known_from"`                // table or polynomial; which of the figures below counts
	Flow            []float64 `json:"flow_m3_s"`                 // m³/s, 0 to 500; table: flows, rising
	Pressure        []float64 `json:"pressure_pa"`               // Pa, -2000 to 10000; table: pressure at each flow
	Coefficients    []float64 `json:"coefficients_pa"`           // Pa, -1e9 to 1e9; polynomial: pressure over flow in m³/s, constant first
	FirstFlow       float64   `json:"first_flow_m3_s"`           // m³/s, 0 to 500; polynomial: least flow
	LastFlow        float64   `json:"last_flow_m3_s"`            // m³/s, 0.001 to 500; polynomial: greatest flow
	Speed           float64   `json:"speed_ratio"`               // ratio, 0.05 to 2; to the speed at which it was tested
	Efficiency      float64   `json:"efficiency_fraction"`       // fraction, 0.01 to 1; air power over shaft power
	MotorEfficiency float64   `json:"motor_efficiency_fraction"` // fraction, 0.01 to 1; shaft power over electric power, belt and control included
	MotorInAir      bool      `json:"motor_in_air"`              // whether the motor stands in the air that it moves
}

// PerforatedTube is the optional section perforated_tube: a tube with rows of holes that spreads the warm air.
type PerforatedTube struct {
	Diameter     float64  `json:"diameter_m"`          // m, 0.05 to 3; inside
	LeadIn       float64  `json:"lead_in_m"`           // m, 0 to 100; from the fan to the first row
	Pitch        float64  `json:"pitch_m"`             // m, 0.02 to 10; from row to row
	Rows         int      `json:"rows_count"`          // count, 1 to 2000; of holes
	HolesPerRow  int      `json:"holes_per_row_count"` // count, 1 to 50; in each row
	HoleDiameter *float64 `json:"hole_diameter_m"`     // m, 0.002 to 0.3, nil when not given; of a hole; without it found for the evenness wanted
	Evenness     float64  `json:"evenness_fraction"`   // fraction, 0.3 to 0.999; wanted, weakest row over strongest
	Roughness    float64  `json:"roughness_m"`         // m, 0 to 0.005; of its wall
	Discharge    float64  `json:"discharge_factor"`    // factor, 0.3 to 1; of a hole
	WallU        float64  `json:"wall_u_w_m2_k"`       // W/(m² K), 0 to 50; through its wall
	AboveCrop    float64  `json:"above_crop_m"`        // m, 0.05 to 20; from the tube down to the crop
}

// AirCircuit is the section air_circuit: heat brought by air, for a comparison with water.
type AirCircuit struct {
	Supply     float64 `json:"supply_c"`            // °C, 20 to 90; leaving the heater
	Return     float64 `json:"return_c"`            // °C, -10 to 60; coming back
	Pressure   float64 `json:"pressure_pa"`         // Pa, 0 to 5000; of the circuit
	Efficiency float64 `json:"efficiency_fraction"` // fraction, 0.01 to 1; from electricity to air power
	Volume     float64 `json:"volume_m3"`           // m³, 0 to 10000; of air in it
	Metal      float64 `json:"metal_kj_k"`          // kJ/K, 0 to 1000000; heat capacity of what holds it
	WallLoss   float64 `json:"wall_loss_w_k"`       // W/K, 0 to 10000; of the ducts that lie outdoors
}

// WaterCircuit is the section water_circuit: heat brought by water, for the comparison.
type WaterCircuit struct {
	Supply      float64 `json:"supply_c"`            // °C, 20 to 110; leaving the heater
	Return      float64 `json:"return_c"`            // °C, 5 to 100; coming back
	Pressure    float64 `json:"pressure_pa"`         // Pa, 0 to 500000; of the circuit
	Efficiency  float64 `json:"efficiency_fraction"` // fraction, 0.01 to 1; from electricity to water power
	Volume      float64 `json:"volume_m3"`           // m³, 0 to 1000; of water in it
	Metal       float64 `json:"metal_kj_k"`          // kJ/K, 0 to 1000000; heat capacity of what holds it
	WallLoss    float64 `json:"wall_loss_w_k"`       // W/K, 0 to 10000; of the pipes that lie outdoors
	StoppedLoss float64 `json:"stopped_loss_w_k"`    // W/K, 0 to 10000; of stopped pipes to the outside
}
