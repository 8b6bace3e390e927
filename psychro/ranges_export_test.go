package psychro

// Ranges that the tests of package psychro_test read.
var (
	IceTemperatures    = iceTemperaturesRange
	LiquidTemperatures = liquidTemperaturesRange
)
