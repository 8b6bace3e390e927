package weather

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// tmy3Columns are what a house needs of TMY3, [Wilcox08].
var tmy3Columns = []header{
	{"Dry-bulb (C)", temperature, 1, "°C"},
	{"Dew-point (C)", dewPoint, 1, "°C"},
	{"RHum (%)", humidity, 0.01, "%"},
	{"Pressure (mbar)", pressure, 100, "mbar"},
	{"Wspd (m/s)", wind, 1, "m/s"},
	{"Wdir (degrees)", windFrom, 1, "degree"},
	{"GHI (W/m^2)", global, 1, "W/m²"},
	{"DNI (W/m^2)", direct, 1, "W/m²"},
	{"DHI (W/m^2)", diffuse, 1, "W/m²"},
	{"OpqCld (tenths)", cloud, 0.1, "tenths"},
}

// isTMY3 knows the file by its second line.
func isTMY3(text []byte) bool {
	return bytes.HasPrefix(text, []byte("Date (MM/DD/YYYY),Time (HH:MM)"))
}

// tmy3 parses a file of TMY3.
type tmy3 struct {
	f     *faults
	t     *table
	count int // lines so far
	names []header
	where []int
	width int
	cells [][]byte
}

func newTMY3(f *faults) *tmy3 {
	return &tmy3{f: f, t: &table{format: TMY3, typical: true, readings: atEnd, source: "TMY3, US National Renewable Energy Laboratory"}}
}

func (p *tmy3) line(number int, text []byte) error {
	p.count++
	switch {
	case p.count == 1:
		return p.station(text)
	case p.count == 2:
		p.cells = split(p.cells, text)
		p.width = len(p.cells)
		for _, h := range tmy3Columns {
			for i, c := range p.cells {
				if string(c) == h.name {
					p.names, p.where = append(p.names, h), append(p.where, i)
					p.t.headers[h.col] = h.name
					break
				}
			}
		}
		return nil
	case len(bytes.TrimSpace(text)) == 0:
		return nil
	}
	p.cells = split(p.cells, text)
	if len(p.cells) != p.width {
		p.f.addf(number, "%d columns, but the second line names %d", len(p.cells), p.width)
		return nil
	}
	date, clock := bytes.TrimSpace(p.cells[0]), bytes.TrimSpace(p.cells[1])
	stamp, ok := int64(0), false
	if len(date) == 10 && date[2] == '/' && date[5] == '/' && len(clock) == 5 && clock[2] == ':' {
		month, okM := digits(date[:2])
		dayOfMonth, okD := digits(date[3:5])
		h, okH := digits(clock[:2])
		if minute, okMin := digits(clock[3:]); okM && okD && okH && okMin && minute == 0 && h >= 1 && h <= 24 {
			stamp, ok = inLeapYear(month, dayOfMonth, h-1)
		}
	}
	if !ok {
		p.f.addf(number, "%.20q,%.20q is no date and hour such as 01/31/1988,24:00", date, clock)
		return nil
	}
	return p.t.row(number, stamp, p.cells, p.where, p.names, p.f)
}

// station reads the first line: number, name, state, zone, latitude,
// longitude, elevation.
func (p *tmy3) station(text []byte) error {
	cells, err := csv.NewReader(strings.NewReader(string(text))).Read()
	if err != nil || len(cells) < 7 {
		return errors.New("the first line of TMY3 names station, place, state, zone, latitude, longitude and elevation")
	}
	var v [4]float64
	for i := range v {
		if v[i], err = strconv.ParseFloat(strings.TrimSpace(cells[3+i]), 64); err != nil {
			return fmt.Errorf("the station's %s is %.20q, not a number", [4]string{"zone", "latitude", "longitude", "elevation"}[i], cells[3+i])
		}
	}
	p.t.site = &Site{Name: place(cells[1] + ", " + cells[2]), Zone: v[0], Latitude: v[1], Longitude: v[2], Altitude: v[3]}
	p.t.source += ", station " + place(cells[0])
	return nil
}

// place is a name from a file, of bounded length.
func place(s string) string {
	s = strings.Join(strings.Fields(s), " ")
	if r := []rune(s); len(r) > 80 {
		s = string(r[:80])
	}
	return s
}

func (p *tmy3) table() (*table, error) {
	if p.count < 2 {
		return nil, errUnknown
	}
	p.t.year = nominal(p.t.stamp)
	return p.t, nil
}
