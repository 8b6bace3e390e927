package ventilation

import (
	"errors"
	"fmt"
	"math"

	"cloche.example/envelope"
	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// heaterRange limits the power of heaters and lamps.
var heaterRange = domain.Range{Min: 0, Max: 1e8, Unit: "W", Source: "houses up to some hectares"}

// Hours are columns of equal length with the means of each hour. The first hour
// begins at midnight.
type Hours struct {
	Temperature      []float64 // °C, outside air
	RelativeHumidity []float64 // fraction, outside air
	Sun              []float64 // W/m², on the horizontal
	Wind             []float64 // m/s, at the height to which the pressure coefficients refer
	Sky              []float64 // °C, radiant temperature of the sky
	Pressure         float64   // Pa, all year
	Settings         []Setting // one an hour, or one for all hours

	// Rule moves vents, heater and screen; nil: they stand as Settings have them.
	// With it Opening and Screen of the hour's setting are not used, and Heat and
	// Radiant of it are what is there without the heater. A RefiningRule may set some
	// targets anew once it is told the hour's state.
	Rule TargetRule

	// Gain returns the sun through and into each facet of Real in the hour, which is
	// read before the next is asked for; nil: by Sun and the shares of the cover.
	Gain func(hour int) (*envelope.SolarGain, error)

	Soil      FloorStore     // the ground as a store of heat
	Deep      []float64      // °C, -40 to 60, deep ground by the hour, in place of Soil.Ground; nil: that
	Structure StructureStore // frame, benches and pots as one
	CO2       *CO2Hours      // CO2 of the air, which moves the stomata of the next hour; nil: as the crop has it
}

// HouseYear is a house over hours: columns of equal length.
type HouseYear struct {
	Temperature          []float64 // °C, inside
	HumidityRatio        []float64 // kg/kg dry air, inside
	RelativeHumidity     []float64 // fraction, inside
	Deficit              []float64 // Pa, vapour pressure deficit of the inside air
	CanopyTemperature    []float64 // °C; NaN without a crop
	DryAir               []float64 // kg/s
	Opening              []float64 // fraction, of the vents
	Heat                 []float64 // W, of heater, setting and burner for CO2, into the air and as radiation; lamps apart
	Transpired           []float64 // kg/s
	Condensed            []float64 // kg/s, on the cover
	CoverLoss            []float64 // W, through the cover
	SoilTemperature      []float64 // °C, the soil's mean over the hour
	StructureTemperature []float64 // °C, the structure's mean over the hour
	CO2                  []float64 // µmol/mol; NaN where Hours have none
	Dosed                []float64 // kg/s of CO2 given
	Photosynthesis       []float64 // kg/s of CO2 that the crop takes up
	Short                int       // count of hours in which the rule was not kept
	Failed               int       // count of hours without a state: NaN in every column
	Between              int       // count of hours in which covers stand between dry and wet, see ClimateState
	Solved               int       // count of solutions of all real covers
}

// newHouseYear returns columns for n hours.
func newHouseYear(n int) *HouseYear {
	y := new(HouseYear)
	all := make([]float64, 16*n)
	for i, c := range y.columns() {
		*c = all[i*n : (i+1)*n : (i+1)*n]
	}
	return y
}

func (y *HouseYear) columns() [16]*[]float64 {
	return [16]*[]float64{&y.Temperature, &y.HumidityRatio, &y.RelativeHumidity, &y.Deficit, &y.CanopyTemperature,
		&y.DryAir, &y.Opening, &y.Heat, &y.Transpired, &y.Condensed,
		&y.CoverLoss, &y.SoilTemperature, &y.StructureTemperature, &y.CO2, &y.Dosed, &y.Photosynthesis}
}

// YearTo fills dst with the house of each of the hours, its vents and heat as
// each hour's setting has them, or at what hours.Rule says: shut and with heat
// where the house would be colder than Warm, open as far as needed where it
// would be warmer than Vent, vents and heat for the humidity. Hours in which
// full power or any opening falls short of it have the best that can be had and
// are counted in Short, as are those in which real covers and a limit of the humidity
// take turns: they have the temperatures alone. Where the vents wide open fall short
// of Vent and the rule has Forced, its fans run for the whole hour.
//
// Temperature, humidity and flow of each hour are solved together in a steady
// state; soil and structure alone remember, exactly for temperatures of floor
// and air that hold for an hour, so that any mass is stable. A nil dst
// allocates; otherwise its columns must have the length of the hours, and
// nothing is allocated by the hour. The error joins the faults of stores, rule, CO2
// and settings by field; where hours are refused or have no state it gives
// their number, the first and why: they are NaN in every column and leave the
// stores as they were. It panics for columns of unequal length.
func (c *Climate) YearTo(dst *HouseYear, hours Hours) (*HouseYear, error) {
	n := len(hours.Temperature)
	for _, column := range [4][]float64{hours.RelativeHumidity, hours.Sun, hours.Wind, hours.Sky} {
		if len(column) != n {
			panic("ventilation: columns of unequal length")
		}
	}
	if hours.Deep != nil && len(hours.Deep) != n {
		panic("ventilation: columns of unequal length")
	}
	if dst == nil {
		dst = newHouseYear(n)
	}
	for _, column := range dst.columns() {
		if len(*column) != n {
			panic("ventilation: columns of unequal length")
		}
	}
	if len(hours.Settings) == 0 {
		return nil, &RangeError{Field: "number of Settings", Min: 1, Max: math.Inf(1), Unit: "count", Source: "one an hour, or one for all"}
	}
	if len(hours.Settings) != n && len(hours.Settings) != 1 {
		panic("ventilation: Settings has neither one entry nor one an hour")
	}
	y := yearRun{c: c, hours: hours, dst: dst}
	if err := y.begin(); err != nil {
		return nil, err
	}
	first, why := 0, error(nil)
	for i := range n {
		if err := y.hour(i); err != nil {
			if dst.Failed == 0 {
				first, why = i, err
			}
			dst.Failed++
			for _, column := range dst.columns() {
				(*column)[i] = math.NaN()
			}
			y.keeping.k.warm = false
			y.state = ClimateState{}
		}
	}
	if s := y.keeping.k.skin; s != nil {
		dst.Solved = s.solved
	}
	if dst.Failed > 0 {
		return dst, fmt.Errorf("%d of %d hours have no state; hour %d: %w", dst.Failed, n, first, why)
	}
	return dst, nil
}

// yearRun is a year while it is solved.
type yearRun struct {
	c         *Climate
	hours     Hours
	dst       *HouseYear
	soil      soilMass
	structure structureMass
	keeping   keeping
	state     ClimateState
	co2       float64 // µmol/mol, inside at the end of the hour before
	lamps     float64 // W, that lamps radiate in the hour
	stood     float64 // fraction, of the vents in an hour whose rule does not agree with the covers
	burner    burner
}

func (y *yearRun) begin() error {
	var bad, worse error
	y.soil, bad = y.c.soil(y.hours.Soil)
	y.structure, worse = y.hours.Structure.mass()
	y.dst.Short, y.dst.Failed, y.dst.Between, y.dst.Solved = 0, 0, 0, 0
	y.keeping.k.massShare = y.structure.Sun
	if c := y.hours.CO2; c != nil {
		y.co2 = c.Start
		y.keeping.k.co2 = c.Start
	}
	return errors.Join(y.c.check(), bad, worse, checkRule(y.hours.Rule), y.hours.CO2.check())
}

// weather returns the weather of hour i.
func (y *yearRun) weather(i int) (w Weather, err error) {
	h := &y.hours
	if h.Deep != nil {
		if err = groundRange.Check("Deep", h.Deep[i]); err != nil {
			return w, err
		}
		y.soil.over(h.Deep[i])
	}
	out, err := psychro.FromRelativeHumidity(h.Temperature[i], h.RelativeHumidity[i], h.Pressure)
	if err != nil {
		return w, err
	}
	w = Weather{Air: out, Sun: h.Sun[i], Wind: h.Wind[i], Sky: h.Sky[i],
		Ground: max(groundRange.Min, min(groundRange.Max, y.soil.seen.temperature))} // solve sets it as it is
	if h.Gain != nil {
		w.Gain, err = h.Gain(i)
	}
	return w, err
}
