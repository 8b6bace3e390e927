package envelope

// Ranges that the tests of package envelope_test read.
var (
	AirChangesRange  = airChangesRange
	SoilConductivity = soilConductivityRange
	SoilHeatCapacity = soilHeatCapacityRange
)
