package weather

import (
	"fmt"
	"time"

	"cloche.example/internal/sun"
)

// Format is how a file was written.
type Format uint8

// The formats that Read knows.
const (
	Cloche Format = iota // this project's own CSV
	TMY3                 // typical year of the US National Renewable Energy Laboratory
	PVGIS                // typical year of the European Commission's Joint Research Centre
)

func (f Format) String() string {
	switch f {
	case Cloche:
		return "Cloche weather"
	case TMY3:
		return "TMY3"
	case PVGIS:
		return "PVGIS typical year"
	}
	return fmt.Sprintf("Format(%d)", f)
}

// Site is where the weather was.
type Site struct {
	Name      string  // as the file has it
	Latitude  float64 // degree north, -90 to 90
	Longitude float64 // degree east, -180 to 180
	Zone      float64 // h, -12 to 14; local standard time ahead of UTC
	Altitude  float64 // m above sea level, -500 to 9000
}

// Series is weather by the hour. All slices that are not nil have one length.
type Series struct {
	Format     Format
	Site       Site
	SiteInFile bool   // the file named its site; otherwise it is that of Options
	Source     string // what the file says of its origin
	Typical    bool   // the months come from different years; the dates then are of a nominal year

	Time             []time.Time // start of the hour, local standard time
	Temperature      []float64   // °C
	DewPoint         []float64   // °C, over liquid water (over ice below -40 °C)
	RelativeHumidity []float64   // fraction, over ice below freezing
	Pressure         []float64   // Pa
	Wind             []float64   // m/s; nil if the file has none
	WindFrom         []float64   // degree clockwise from north, whence it blows; NaN where unknown, nil if the file has none
	Global           []float64   // W/m² on the horizontal
	Direct           []float64   // W/m² across the beam
	Diffuse          []float64   // W/m² from the sky on the horizontal
	Sky              []float64   // W/m², heat radiation of the sky on the horizontal; NaN where missing, see FillSky
	Cloud            []float64   // fraction of the sky; nil if the file has none
	Sun              []sun.HourSun

	Account Account
}

// Hours returns the length of the columns.
func (s *Series) Hours() int { return len(s.Time) }

// Whole reports whether the series is a year of 8,760 or 8,784 hours.
func (s *Series) Whole() bool { return s.Hours() == 8760 || s.Hours() == 8784 }

// Filled is one gap that was filled in a straight line between the values
// before and after it.
type Filled struct {
	Line   int    // of the file, where the gap is or after it
	Hours  int    // count
	Column string // as the file names it; "all" for hours that were not in the file
}

// Account says what reading added to the file, in hours.
type Account struct {
	Filled               []Filled // gaps filled on request
	FilledHours          int      // hours in which anything was filled
	Erbs                 int      // sunlit hours whose beam and diffuse come from the global radiation
	FromDiffuse          int      // sunlit hours whose beam is the rest of the global radiation
	FromDirect           int      // sunlit hours whose diffuse is the rest of the global radiation
	SkyRead              int      // hours whose radiation of the sky was in the file
	SkyFromCloud         int      // hours for FillSky with cloud known
	SkyFromHumidity      int      // hours for FillSky with the humidity alone
	Negative             int      // values of radiation from -10 W/m² to 0, taken as 0
	OverIce              int      // hours with more vapour than saturation over ice, taken as saturated
	Apart                int      // hours whose beam and diffuse miss the global radiation by 50 W/m² and 20 %
	PressureFromAltitude bool     // the file has no pressure
	LeapDayLeftOut       bool     // a leap year without 29 February
	ZoneFromLongitude    bool     // neither file nor caller gave a zone near the sun's
	NoOffset             bool     // the file does not say for which minute its radiation stands
}

// Lines returns the account in words, a line each.
func (a Account) Lines() []string {
	var out []string
	say := func(n int, one, more string) {
		switch {
		case n == 1:
			out = append(out, "1 hour "+one)
		case n > 1:
			out = append(out, fmt.Sprintf("%d hours %s", n, more))
		}
	}
	say(a.FilledHours, "filled, in a straight line between the hours beside it", "filled, in straight lines between the hours beside them")
	say(a.Erbs, "of sun split into beam and diffuse after Erbs", "of sun split into beam and diffuse after Erbs")
	say(a.FromDiffuse, "of sun whose beam is global less diffuse", "of sun whose beam is global less diffuse")
	say(a.FromDirect, "of sun whose diffuse is global less beam", "of sun whose diffuse is global less beam")
	say(a.SkyRead, "with the sky's heat radiation from the file", "with the sky's heat radiation from the file")
	say(a.SkyFromCloud, "with the sky's heat radiation from cloud and humidity", "with the sky's heat radiation from cloud and humidity")
	say(a.SkyFromHumidity, "with the sky's heat radiation from humidity alone, as if clear", "with the sky's heat radiation from humidity alone, as if clear")
	if a.Negative > 0 {
		out = append(out, fmt.Sprintf("%d values of radiation a little below 0 taken as 0", a.Negative))
	}
	say(a.OverIce, "above saturation over ice, taken as saturated", "above saturation over ice, taken as saturated")
	say(a.Apart, "whose beam and diffuse do not add up to the global radiation", "whose beam and diffuse do not add up to the global radiation")
	if a.PressureFromAltitude {
		out = append(out, "pressure of the standard atmosphere at the site's altitude")
	}
	if a.LeapDayLeftOut {
		out = append(out, "29 February is not in the file")
	}
	if a.ZoneFromLongitude {
		out = append(out, "time zone taken from the longitude")
	}
	if a.NoOffset {
		out = append(out, "the file does not say for which minute its radiation stands: taken at the stamp")
	}
	return out
}

// SkyHour is what the radiation of the sky can be worked out from.
type SkyHour struct {
	Time             time.Time // start of the hour, local standard time
	Temperature      float64   // °C
	RelativeHumidity float64   // fraction, over ice below freezing
	DewPoint         float64   // °C, over liquid water
	Pressure         float64   // Pa
	Cloud            float64   // fraction of the sky; NaN if it is not known
}

// FillSky asks radiation for the heat radiation of the sky, W/m² on the
// horizontal, in each hour that has none.
func (s *Series) FillSky(radiation func(SkyHour) float64) {
	for i, v := range s.Sky {
		if v == v {
			continue
		}
		h := SkyHour{s.Time[i], s.Temperature[i], s.RelativeHumidity[i], s.DewPoint[i], s.Pressure[i], missing}
		if s.Cloud != nil {
			h.Cloud = s.Cloud[i]
		}
		s.Sky[i] = radiation(h)
	}
}
