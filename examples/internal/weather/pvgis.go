package weather

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// pvgisColumns are what a house needs of a PVGIS typical year.
var pvgisColumns = []header{
	{"T2m", temperature, 1, "°C"},
	{"RH", humidity, 0.01, "%"},
	{"G(h)", global, 1, "W/m²"},
	{"Gb(n)", direct, 1, "W/m²"},
	{"Gd(h)", diffuse, 1, "W/m²"},
	{"IR(h)", sky, 1, "W/m²"},
	{"WS10m", wind, 1, "m/s"},
	{"WD10m", windFrom, 1, "degree"},
	{"SP", pressure, 1, "Pa"},
}

func isPVGIS(text []byte) bool { return bytes.HasPrefix(text, []byte("Latitude (decimal degrees)")) }

// pvgis parses a typical year of PVGIS.
type pvgis struct {
	f      *faults
	t      *table
	keys   map[string]float64 // the lines before the table of months
	lines  int                // before the first hour
	names  []header
	where  []int
	width  int
	cells  [][]byte
	footer bool
}

func newPVGIS(f *faults) *pvgis {
	return &pvgis{f: f, keys: map[string]float64{}, t: &table{
		format: PVGIS, typical: true, utc: true, readings: atStart,
		source: "PVGIS typical year, European Commission, Joint Research Centre",
	}}
}

func (p *pvgis) line(number int, text []byte) error {
	if p.width == 0 {
		return p.head(text)
	}
	if len(bytes.TrimSpace(text)) == 0 {
		p.footer = true
		return nil
	}
	data := len(text) > 13 && text[8] == ':' && text[13] == ','
	if p.footer {
		if data {
			p.f.addf(number, "an hour behind the empty line that ends the table")
			return nil
		}
		if p.lines++; p.lines > mostHeader {
			return errors.New("the notes below the table do not end")
		}
		return nil
	}
	p.cells = split(p.cells, text)
	if len(p.cells) != p.width {
		p.f.addf(number, "%d columns, but the table's head names %d", len(p.cells), p.width)
		return nil
	}
	stamp, ok := int64(0), false
	if data {
		_, okY := digits(text[:4])
		month, okM := digits(text[4:6])
		dayOfMonth, okD := digits(text[6:8])
		h, okH := digits(text[9:11])
		if minute, okMin := digits(text[11:13]); okY && okM && okD && okH && okMin && minute == 0 && h < 24 {
			stamp, ok = inLeapYear(month, dayOfMonth, h)
		}
	}
	if !ok {
		p.f.addf(number, "%.20q is no time such as 20180131:2300", p.cells[0])
		return nil
	}
	return p.t.row(number, stamp, p.cells, p.where, p.names, p.f)
}

// head takes a line above the hours.
func (p *pvgis) head(text []byte) error {
	if p.lines++; p.lines > mostHeader {
		return errors.New("no line \"time(UTC),T2m,...\" yet")
	}
	if bytes.HasPrefix(text, []byte("time(UTC)")) {
		p.cells = split(p.cells, text)
		p.width = len(p.cells)
		for _, h := range pvgisColumns {
			for i, c := range p.cells {
				if string(c) == h.name {
					p.names, p.where = append(p.names, h), append(p.where, i)
					p.t.headers[h.col] = h.name
					break
				}
			}
		}
		return p.site()
	}
	if key, value, found := strings.Cut(string(text), ":"); found {
		if v, err := strconv.ParseFloat(strings.TrimSpace(value), 64); err == nil {
			p.keys[strings.TrimSpace(key)] = v
		}
	}
	return nil
}

// site reads the place from the lines above the table.
func (p *pvgis) site() error {
	s := new(Site)
	for _, k := range []struct {
		key string
		to  *float64
	}{{"Latitude (decimal degrees)", &s.Latitude}, {"Longitude (decimal degrees)", &s.Longitude}, {"Elevation (m)", &s.Altitude}} {
		v, ok := p.keys[k.key]
		if !ok {
			return fmt.Errorf("no line %q with a number above the table", k.key+":")
		}
		*k.to = v
	}
	p.t.site = s
	offset, ok := p.keys["Irradiance Time Offset (h)"]
	p.t.noOffset = !ok
	if ok && !(offset >= -0.5 && offset <= 1) {
		return fmt.Errorf("Irradiance Time Offset (h) is %g, allowed -0.5 to 1 h", offset)
	}
	p.t.offset = offset
	return nil
}

func (p *pvgis) table() (*table, error) {
	if p.width == 0 {
		return nil, errors.New("no line \"time(UTC),T2m,...\" with the names of the columns")
	}
	p.t.year = nominal(p.t.stamp)
	return p.t, nil
}
