package weather

import (
	"bytes"
	"fmt"
)

// excerptColumns are the columns of an excerpt of TMY3.
var excerptColumns = []header{
	{"dry_bulb_c", temperature, 1, "°C"},
	{"dew_point_c", dewPoint, 1, "°C"},
	{"relative_humidity_pct", humidity, 0.01, "%"},
	{"pressure_mbar", pressure, 100, "mbar"},
	{"wind_m_s", wind, 1, "m/s"},
	{"wind_from_deg", windFrom, 1, "degree"},
	{"global_horizontal_w_m2", global, 1, "W/m²"},
	{"direct_normal_w_m2", direct, 1, "W/m²"},
	{"diffuse_horizontal_w_m2", diffuse, 1, "W/m²"},
	{"opaque_cloud_tenths", cloud, 0.1, "tenths"},
}

var excerptStart = []byte("month,day,hour_ending,")

// isExcerpt knows the file by its first line.
func isExcerpt(text []byte) bool { return bytes.HasPrefix(text, excerptStart) }

// excerpt parses an excerpt of TMY3, which has a month, a day and the number of
// the hour, 1 to 24, in place of date and clock.
type excerpt struct {
	f     *faults
	t     *table
	names []header
	where []int
	width int
	cells [][]byte
}

func newExcerpt(f *faults) *excerpt {
	return &excerpt{f: f, t: &table{format: TMY3, typical: true, readings: atEnd, source: "excerpt of TMY3, US National Renewable Energy Laboratory"}}
}

func (p *excerpt) line(number int, text []byte) error {
	if len(bytes.TrimSpace(text)) == 0 {
		return nil
	}
	p.cells = split(p.cells, text)
	if p.width == 0 {
		p.width = len(p.cells)
		return p.head()
	}
	if len(p.cells) != p.width {
		p.f.addf(number, "%d columns, but the first line names %d", len(p.cells), p.width)
		return nil
	}
	month, okM := digits(p.cells[0])
	dayOfMonth, okD := digits(p.cells[1])
	h, okH := digits(p.cells[2])
	stamp, ok := int64(0), false
	if okM && okD && okH && h >= 1 && h <= 24 {
		stamp, ok = inLeapYear(month, dayOfMonth, h-1)
	}
	if !ok {
		p.f.addf(number, "%.10q,%.10q,%.10q is no month, day and hour such as 1,31,24", p.cells[0], p.cells[1], p.cells[2])
		return nil
	}
	return p.t.row(number, stamp, p.cells, p.where, p.names, p.f)
}

// head reads the names of the columns.
func (p *excerpt) head() error {
	for i, c := range p.cells[3:] {
		name := string(bytes.TrimSpace(c))
		known := name == "total_cloud_tenths"
		for _, h := range excerptColumns {
			if name != h.name {
				continue
			}
			if p.t.headers[h.col] != "" {
				return fmt.Errorf("two columns %s", name)
			}
			known = true
			p.names, p.where = append(p.names, h), append(p.where, i+3)
			p.t.headers[h.col] = name
		}
		if !known {
			return fmt.Errorf("unknown column %.40q", name)
		}
	}
	return nil
}

func (p *excerpt) table() (*table, error) {
	p.t.year = nominal(p.t.stamp)
	return p.t, nil
}
