package weather

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"time"

	"cloche.example/internal/domain"
	"cloche.example/psychro"
)

// finish makes the series of a table.
func finish(t *table, o Options, f *faults) (*Series, error) {
	s := &Series{Format: t.format, Source: t.source, Typical: t.typical}
	a := &s.Account
	a.Negative, a.NoOffset = t.negative, t.noOffset
	placed := s.place(t, o, f)
	if !t.order(o.Fill, a, f) || !placed {
		return nil, f.err()
	}
	t.named, f.lines = f.lines, map[int]bool{}
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
	if t.headers[temperature] == "" || t.headers[global] == "" || t.headers[dewPoint] == "" && t.headers[humidity] == "" {
		return nil, f.err()
	}
	if t.named == nil {
		t.named = map[int]bool{}
	}
	maps.Copy(t.named, f.lines) // no temperature, no dew point
	t.dewPoints(o.Fill, done, a, f)
	if t.headers[dewPoint] == "" {
		return nil, f.err()
	}
	for _, d := range done {
		if d {
			a.FilledHours++
		}
	}
	t.turns(t.col[windFrom], t.col[wind])
	for _, c := range []column{temperature, dewPoint, pressure, wind, cloud} {
		t.means(t.col[c])
	}
	if t.format == PVGIS {
		t.means(t.col[sky])
		for _, c := range []column{global, direct, diffuse} {
			t.shift(t.col[c])
		}
	}
	if ahead := s.ahead(t, o); ahead != 0 {
		for i := range t.stamp {
			t.stamp[i] += ahead
		}
		if t.whole() {
			t.turn()
		}
	}
	s.clock(t, int64(math.Round(s.Site.Zone*hour)))
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

// farFromSun is how far standard time lies from the sun's at most, h; a file that has
// its hours in another zone, such as UTC, is moved to that of its longitude.
const farFromSun = 4

// ahead is by how much the stamps are to be moved, s, for local standard time, which
// this sets in the site.
func (s *Series) ahead(t *table, o Options) int64 {
	had := 0.0
	if !t.utc {
		had = s.Site.Zone
	}
	asked := t.utc && o.Zone != nil
	if !asked && math.Abs(s.Site.Zone-s.Site.Longitude/15) > farFromSun {
		s.Site.Zone = math.Round(s.Site.Longitude / 15)
		s.Account.ZoneFromLongitude = true
	}
	return int64(math.Round((s.Site.Zone - had) * hour))
}

// place finds the site of the series, and reports whether there is one.
func (s *Series) place(t *table, o Options, f *faults) bool {
	switch {
	case t.site != nil:
		s.Site, s.SiteInFile = *t.site, true
	case o.Site != nil:
		s.Site = *o.Site
	default:
		f.file(errors.New("the file names no site: give latitude, longitude, zone and altitude"))
		return false
	}
	if t.format == PVGIS {
		if s.Site.Zone = math.Round(s.Site.Longitude / 15); o.Zone == nil {
			s.Account.ZoneFromLongitude = true
		}
	}
	if o.Zone != nil && t.utc {
		s.Site.Zone = *o.Zone
	}
	placed := true
	for _, err := range []error{
		latitudeRange.Check("Latitude", s.Site.Latitude), longitudeRange.Check("Longitude", s.Site.Longitude),
		zoneRange.Check("Zone", s.Site.Zone), altitudeRange.Check("Altitude", s.Site.Altitude),
	} {
		if err != nil {
			f.file(domain.Within("Site", err))
			placed = false
		}
	}
	return placed
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
	if t.headers[windFrom] != "" && t.headers[wind] != "" {
		s.WindFrom = t.col[windFrom]
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
