package main

import "fmt"

// band is what houses take in a season, as published, by the m² of floor. They are
// houses of other shapes in other places: they tell whether a result is of the
// right size, and no more.
type band struct {
	Where  string  `json:"where"`
	What   string  `json:"what"` // heat, or fuel by its lower heating value unless it is said
	Low    float64 `json:"low_kwh_m2"`
	High   float64 `json:"high_kwh_m2"`
	Source string  `json:"source"`
	Seen   string  `json:"seen"`
}

// Units of the sources in kWh.
const (
	perTherm   = 29.3071         // of 100 000 Btu
	perFoot    = 0.3048 * 0.3048 // m² of a square foot
	perMJ      = 1 / 3.6         //
	perOilKg   = 11.4 * 0.8      // useful, of light oil burnt at 80 %
	perGasM3   = 31.65 * perMJ   // higher heating value
	perJoule   = 1 / 3.6e6       //
	perHectare = 1e4             // m²
	oilHouse   = 432             // m² of the two houses heated with oil
	challenge  = "S. Hemming, H.F. de Zwart, A. Elings, A. Petropoulou, I. Righini, Autonomous Greenhouse Challenge, second edition, data set, 4TU.ResearchData 2020, doi 10.4121/uuid:88d22c60-21b3-4ea8-90db-20249a5be2a7"
	glass      = "Swedish University of Agricultural Sciences, study on glass qualities"
)

// published are the bands, the mildest first. What a source prints stands in its own
// unit.
var published = []band{
	{"Turkish coast, tomato, kept at 5 and at 13 °C", "heat", 2348 * perOilKg / oilHouse, 7021 * perOilKg / oilHouse, "kg of oil of two houses of 432 m², in a maker's catalogue of sheets", "quoted there without its origin"},
	{"Bleiswijk, Netherlands, tomato, 16 December to 29 May, lamps of 240 to 323 kWh/m² besides", "heat", 173.0 * perMJ, 471.6 * perMJ, challenge, "data read in full"},
	{"Netherlands, all of the trade in 2013; cucumber in practice", "fuel", 120e15 * perJoule / (10500 * perHectare), 40 * perGasM3, "120 PJ of gas on 10 500 ha; Wageningen UR, news of 12 August 2010: 40 m³ of gas for each m²", "the first quoted on a page, the second an excerpt"},
	{"California, 1981", "fuel, higher heating value", 1.15 * perTherm / perFoot, 1.15 * perTherm / perFoot, "University of California, leaflet on energy in greenhouses, about 1982", "excerpt"},
	{"Sweden, tomato, low-emission glass, 5000 and 1000 m²", "heat", 318, 359, glass, "excerpt"},
	{"Sweden, tomato, single glass, 5000 and 1000 m²", "heat", 455, 512, glass, "excerpt"},
	{"Quebec, in the mean", "heat", 650, 850, "a thesis on greenhouses in Quebec, section 2.4, which also prints 2880 MJ/m², or 800 kWh/m², for the higher figure", "quoted"},
}

// use is what the house itself takes, by the m² of floor.
type use struct {
	Heat  float64 `json:"heat_kwh_m2"`
	Fuel  float64 `json:"heater_energy_kwh_m2"`
	Lamps float64 `json:"lamps_kwh_m2"`
	Per   float64 `json:"heat_and_lamps_w_m2_k"` // over the degree-hours of inside over outside; 0 where these are few
}

// Heat and lamps over degree-hours in six compartments of one glasshouse, W/(m² K):
// the least and the most. The sun's heat is left out, what vents let out is in it.
const (
	leastPer   = 6.42
	mostPer    = 9.38
	compartSix = "S. Hemming, H.F. de Zwart, A. Elings, I. Righini, A. Petropoulou, Autonomous Greenhouse Challenge, first edition (2018), data set, 4TU.ResearchData; Sensors 19(8):1807, 2019; data read in full"
)

// apartEnough is how much warmer the house is in the mean than the air outside, K, where
// heat over degree-hours says something.
const apartEnough = 3

// use is that of the whole time.
func (a *answer) use() use {
	w, area := &a.Account.Whole, a.year.house.steady.House.Shape.FloorArea
	u := use{Heat: w.Heater / area, Fuel: w.Fuel / area, Lamps: w.LampPower / area}
	if w.Inside-w.Outside > apartEnough {
		u.Per = 1000 * (u.Heat + u.Lamps) / ((w.Inside - w.Outside) * float64(w.Hours))
	}
	return u
}

// bandLines words the house and the published bands beside it.
func (a *answer) bandLines() (list []string) {
	u := a.Use
	list = append(list, fmt.Sprintf("This house: %s kWh of heat, %s of fuel or electricity for it and %s of lamps for each m² of floor.", num(u.Heat, 0), num(u.Fuel, 0), num(u.Lamps, 0)))
	if u.Per > 0 {
		list = append(list, fmt.Sprintf("Heat and lamps over degree-hours: %s W/(m² K); in six compartments of a glasshouse %s to %s (%s).", num(u.Per, 1), num(leastPer, 1), num(mostPer, 1), compartSix))
	}
	for _, b := range a.Bands {
		span := num(b.Low, 0)
		if b.High > b.Low {
			span += " to " + num(b.High, 0)
		}
		list = append(list, fmt.Sprintf("%s: %s kWh/m² of %s (%s; %s).", b.Where, span, b.What, b.Source, b.Seen))
	}
	return list
}
