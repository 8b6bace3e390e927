// Package demo holds the house that every example program shows: one small
// heated greenhouse, dug into the ground. The house, its site and its grower
// are invented; no real house or product stands behind the figures.
package demo

// Note is printed by every program that shows the demo house.
const Note = "The demo house, its site and its prices are invented for this example."

// The site.
const (
	Latitude      = 50.6  // degree north
	Longitude     = 14.1  // degree east
	Altitude      = 340.0 // m above sea level
	OutsideDesign = -14.0 // °C, coldest design night
	OutsideRH     = 0.85  // fraction
	Wind          = 3.5   // m/s at the cover
	CloudCover    = 0.0   // fraction of the sky
)

// The house: a gable, the floor below grade, heights above grade.
const (
	Span        = 6.4  // m, eave to eave
	Length      = 14.8 // m
	EaveHeight  = 1.3  // m above grade
	RidgeHeight = 3.1  // m above grade
	Depth       = 0.7  // m, floor below grade
	Azimuth     = 90.0 // degree, direction of the ridge clockwise from north
)

// The air wanted inside on the design night.
const (
	Inside   = 15.0 // °C
	InsideRH = 0.80 // fraction
)

// The heater and its fuel.
const (
	HeaterPower   = 34000.0 // W
	HeaterFlow    = 0.75    // m³/s at the fan inlet
	HeaterEff     = 0.88    // fraction of the lower heating value
	PelletPrice   = 0.38    // currency per kg
	ElectricPrice = 0.31    // currency per kWh
)

// The LED fixtures over one bed of trays.
const (
	Fixtures    = 24    // count, 3 rows of 8
	FixtureRows = 3     // count
	FixturePPF  = 380.0 // µmol/s each
	FixtureW    = 145.0 // W each
	BeamAngle   = 110.0 // degree, full angle at half intensity
	LampHeight  = 1.15  // m above the trays
	BedLength   = 11.2  // m
	BedWidth    = 3.6   // m
	Photoperiod = 18.0  // h
)
