package weather

import (
	"errors"
	"fmt"
	"math"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/internal/sun"
	"cloche.example/psychro"
)

// finish makes the series of a table.
func finish(t *table, o Options, f *faults) (*Series, error) {
	s := &Series{Format: t.format, Source: t.source, Typical: t.typical}
	a := &s.Account
	a.Negative, a.NoOffset = t.negative, t.noOffset
	s.place(t, o, f)
	t.order(o.Fill, a, f)
	if f.count > 0 {
		return nil, f.err()
	}
	done := make([]bool, len(t.stamp))
	for _, c := range []column{temperature, pressure, global, wind, cloud} {
		t.fill(c, o.Fill, done, a, f)
	}
	if t.headers[pressure] == "" {
		a.PressureFromAltitude = true
		p := psychro.StandardPressure(s.Site.Altitude)
		for i := range t.col[pressure] {
			t.col[pressure][i] = p
		}
	}
	for c, names := range map[column]string{temperature: "the temperature", global: "the global radiation"} {
		if t.headers[c] == "" {
			f.file(fmt.Errorf("no column with %s", names))
		}
	}
	if t.headers[dewPoint] == "" && t.headers[humidity] == "" {
		f.file(errors.New("no column with the humidity: neither dew point nor relative humidity"))
	}
	if f.count > 0 {
		return nil, f.err()
	}
	t.dewPoints(o.Fill, done, a, f)
	if f.count > 0 {
		return nil, f.err()
	}
	for _, d := range done {
		if d {
			a.FilledHours++
		}
	}
	for _, c := range []column{temperature, dewPoint, pressure, wind, cloud} {
		t.means(t.col[c])
	}
	if t.format == PVGIS {
		t.means(t.col[sky])
		for _, c := range []column{global, direct, diffuse} {
			t.shift(t.col[c])
		}
	}
	zone := int64(math.Round(s.Site.Zone * hour))
	if t.utc {
		for i := range t.stamp {
			t.stamp[i] += zone
		}
		if t.whole() {
			t.turn()
		}
	}
	s.clock(t, zone)
	s.columns(t)
	s.air()
	if err := s.radiation(t, f); err != nil {
		return nil, err
	}
	if f.count > 0 {
		return nil, f.err()
	}
	return s, nil
}

// Ranges of a site.
var (
	latitudeRange  = domain.Range{Min: -90, Max: 90, Unit: "degree"}
	longitudeRange = domain.Range{Min: -180, Max: 180, Unit: "degree"}
	zoneRange      = domain.Range{Min: -12, Max: 14, Unit: "h"}
	altitudeRange  = domain.Range{Min: -500, Max: 9000, Unit: "m"}
)

// place finds the site of the series.
func (s *Series) place(t *table, o Options, f *faults) {
	switch {
	case t.site != nil:
		s.Site, s.SiteInFile = *t.site, true
	case o.Site != nil:
		s.Site = *o.Site
	default:
		f.file(errors.New("the file names no site: give latitude, longitude, zone and altitude"))
		return
	}
	if t.format == PVGIS {
		if s.Site.Zone = math.Round(s.Site.Longitude / 15); o.Zone == nil {
			s.Account.ZoneFromLongitude = true
		}
	}
	if o.Zone != nil && t.utc {
		s.Site.Zone = *o.Zone
	}
	for _, err := range []error{
		latitudeRange.Check("Latitude", s.Site.Latitude), longitudeRange.Check("Longitude", s.Site.Longitude),
		zoneRange.Check("Zone", s.Site.Zone), altitudeRange.Check("Altitude", s.Site.Altitude),
	} {
		if err != nil {
			f.file(domain.Within("Site", err))
		}
	}
}

// clock gives each hour its time in local standard time.
func (s *Series) clock(t *table, zone int64) {
	name := fmt.Sprintf("UTC%+g", s.Site.Zone)
	where := time.FixedZone(name, int(zone))
	s.Time = make([]time.Time, len(t.stamp))
	for i, v := range t.stamp {
		s.Time[i] = time.Unix(v-zone, 0).In(where)
	}
}

func (s *Series) columns(t *table) {
	s.Temperature, s.DewPoint, s.Pressure = t.col[temperature], t.col[dewPoint], t.col[pressure]
	s.Global, s.Direct, s.Diffuse, s.Sky = t.col[global], t.col[direct], t.col[diffuse], t.col[sky]
	if t.headers[wind] != "" {
		s.Wind = t.col[wind]
	}
	if t.headers[cloud] != "" {
		s.Cloud = t.col[cloud]
	}
	for _, v := range s.Sky {
		switch {
		case v == v:
			s.Account.SkyRead++
		case s.Cloud != nil:
			s.Account.SkyFromCloud++
		default:
			s.Account.SkyFromHumidity++
		}
	}
}

// dewSlack is by how much a dew point may lie above the temperature by
// rounding, K.
const dewSlack = 0.101

// dewPoints makes the dew point of every row, from the humidity where that is
// what the file has, and names those above the temperature.
func (t *table) dewPoints(fill bool, done []bool, a *Account, f *faults) {
	td := t.col[dewPoint]
	for i, rh := range t.col[humidity] {
		if math.IsNaN(td[i]) && !math.IsNaN(rh) {
			td[i] = dewPointOf(t.col[temperature][i], rh, t.col[pressure][i])
		}
	}
	if t.headers[dewPoint] == "" {
		t.headers[dewPoint] = t.headers[humidity]
	}
	name := t.headers[dewPoint]
	t.fill(dewPoint, fill, done, a, f)
	if t.headers[dewPoint] == "" {
		f.file(fmt.Errorf("%s has no value", name))
		return
	}
	for i, v := range td {
		air := t.col[temperature][i]
		if v > air+dewSlack && t.line[i] != 0 {
			f.addf(t.line[i], "%s is %g °C, above the temperature of %g °C", name, v, air)
		}
		td[i] = math.Min(v, air)
	}
}

// supercooled is below which water does not stay liquid, °C.
const supercooled = -40

// driest is the least dew point, °C, that dry air is given; driestVapour, Pa, is
// below its vapour pressure.
const (
	driest       = -100
	driestVapour = 1e-3
)

// surface is over what a weather service's humidity is taken to be stated.
func surface(t float64) psychro.Surface {
	if t < supercooled {
		return psychro.Ice
	}
	return psychro.Liquid
}

// dewPointOf is the dew point, °C, of air at t, °C, and the relative humidity
// rh, fraction over liquid water, at p, Pa, within 0.001 K.
func dewPointOf(t, rh, p float64) float64 {
	e := rh * psychro.SaturationPressureOver(surface(t), t)
	invert := func(e float64) float64 {
		td := psychro.SaturationTemperatureOver(psychro.Liquid, e)
		if math.IsNaN(td) {
			td = math.Min(supercooled, psychro.SaturationTemperatureOver(psychro.Ice, math.Max(e, driestVapour)))
		}
		return math.Max(driest, td)
	}
	td := invert(e)
	return math.Min(t, invert(e*psychro.EnhancementFactor(t, p)/psychro.EnhancementFactor(td, p)))
}

// air fills the relative humidity of package psychro, over ice below freezing.
func (s *Series) air() {
	s.RelativeHumidity = make([]float64, len(s.Time))
	for i, t := range s.Temperature {
		td, p := s.DewPoint[i], s.Pressure[i]
		s.RelativeHumidity[i] = 1
		if td < t || t < 0 {
			rh := psychro.SaturationPressureOver(surface(td), td) * psychro.EnhancementFactor(td, p) /
				(psychro.SaturationPressure(t) * psychro.EnhancementFactor(t, p))
			if rh > 1 {
				s.Account.OverIce++
			}
			s.RelativeHumidity[i] = math.Min(1, rh)
		}
	}
}

// lowSun is below which the sun's beam is not told from the sky by Erbs,
// degree.
const lowSun = 3

// Limits of the checks of radiation.
const (
	nightLight    = 20 // W/m², of an hour without sun, that still counts as dusk or as an offset
	apartAbsolute = 50 // W/m²
	apartRelative = 0.2
)

// radiation checks the radiation against the sun and fills beam and diffuse
// where they are missing.
func (s *Series) radiation(t *table, f *faults) error {
	site, err := sun.NewSite(s.Site.Latitude, s.Site.Longitude, s.Site.Altitude)
	if err != nil {
		return err
	}
	s.Sun = site.HoursTo(nil, s.Time)
	a := &s.Account
	for i, h := range s.Sun {
		g, b, d := s.Global[i], s.Direct[i], s.Diffuse[i]
		if h.Sine <= 0 {
			most, what := g, t.headers[global]
			if b > most {
				most, what = b, t.headers[direct]
			}
			if most > nightLight && dark(site, s.Time[i]) {
				number := t.line[i]
				f.addf(max(number, 1), "%s is %.4g W/m² in the hour from %s, when the sun is down; is the time zone right?", what, most, s.Time[i].Format("2006-01-02 15:04"))
			}
			s.Direct[i], s.Diffuse[i] = 0, g
			continue
		}
		sinE := h.Sine / h.Lit
		switch noB, noD := math.IsNaN(b), math.IsNaN(d); {
		case noB && noD:
			a.Erbs++
			d = g
			if h.Elevation >= lowSun {
				d = g * sun.Erbs(math.Min(2, g/(h.Extraterrestrial*h.Sine)))
			}
			b = math.Min(h.Extraterrestrial, (g-d)/sinE)
			d = g - b*sinE
		case noB:
			a.FromDiffuse++
			if b = math.Min(h.Extraterrestrial, math.Max(0, g-d)/sinE); h.Elevation < lowSun {
				b, d = 0, g
			}
		case noD:
			a.FromDirect++
			d = math.Max(0, g-b*sinE)
		default:
			if miss := math.Abs(d + b*sinE - g); miss > apartAbsolute && miss > apartRelative*g {
				a.Apart++
			}
		}
		s.Direct[i], s.Diffuse[i] = b, d
	}
	return nil
}

// dark reports whether the sun stays down from half an hour before the hour to
// half an hour after it.
func dark(site sun.Site, start time.Time) bool {
	beside := site.HoursTo(nil, []time.Time{start.Add(-30 * time.Minute), start.Add(30 * time.Minute)})
	return beside[0].Lit == 0 && beside[1].Lit == 0
}
