package weather

import (
	"bytes"
	_ "embed" // the year
)

//go:embed greensboro.csv.gz
var greensboro []byte

// Greensboro returns the typical year of Greensboro, North Carolina, 36.1
// degree north, made from a TMY3 file of the US National Renewable Energy
// Laboratory, which is in the public domain: 8,760 hours from 1 January, with
// temperature, dew point, pressure, wind, sun and cloud. README.md beside it
// says how it was made.
func Greensboro() (*Series, error) { return Read(bytes.NewReader(greensboro), Options{}) }
