package weather

import (
	"bytes"
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"
)

// clocheColumns are the columns of Cloche's own CSV. Two names of one quantity
// exclude one another.
var clocheColumns = []header{
	{"temperature_c", temperature, 1, "°C"},
	{"dew_point_c", dewPoint, 1, "°C"},
	{"relative_humidity", humidity, 1, "fraction"},
	{"relative_humidity_percent", humidity, 0.01, "%"},
	{"pressure_pa", pressure, 1, "Pa"},
	{"wind_m_s", wind, 1, "m/s"},
	{"wind_from_deg", windFrom, 1, "degree"},
	{"global_w_m2", global, 1, "W/m²"},
	{"direct_w_m2", direct, 1, "W/m²"},
	{"diffuse_w_m2", diffuse, 1, "W/m²"},
	{"sky_w_m2", sky, 1, "W/m²"},
	{"cloud", cloud, 1, "fraction"},
	{"cloud_percent", cloud, 0.01, "%"},
}

// isCloche knows the file by a comment or a known column in its first line.
func isCloche(text []byte) bool {
	if bytes.HasPrefix(text, []byte("#")) {
		return true
	}
	for _, c := range split(nil, text) {
		if string(bytes.TrimSpace(c)) == "temperature_c" {
			return true
		}
	}
	return false
}

// cloche parses the project's own CSV.
type cloche struct {
	f        *faults
	t        *table
	keys     map[string]string
	lines    int // before the first hour
	names    []header
	where    []int
	width    int
	cells    [][]byte
	time     int   // place of the column for time, -1 without
	ending   int64 // s, taken off a time that names the hour's end
	clocks   int   // hours with times by the clock
	absolute int   // hours with times that have an offset
	last     int   // line
}

func newCloche(f *faults) *cloche {
	return &cloche{f: f, keys: map[string]string{}, time: -1, t: &table{format: Cloche}}
}

func (p *cloche) line(number int, text []byte) error {
	p.last = number
	text = bytes.TrimSpace(text)
	switch {
	case len(text) == 0:
		return nil
	case text[0] == '#':
		if p.width > 0 {
			p.f.addf(number, "a comment behind the first hour")
			return nil
		}
		return p.comment(number, string(text[1:]))
	case p.width == 0:
		return p.head(text)
	}
	p.cells = split(p.cells, text)
	if len(p.cells) != p.width {
		p.f.addf(number, "%d columns, but the names are %d", len(p.cells), p.width)
		return nil
	}
	stamp := plainStart + int64(len(p.t.stamp))*hour
	if p.time >= 0 {
		s, absolute, err := clock(p.cells[p.time])
		if err != nil {
			p.f.addf(number, "%.30q is %w", p.cells[p.time], err)
			return nil
		}
		if stamp = s - p.ending; absolute {
			p.absolute++
		} else {
			p.clocks++
		}
	}
	return p.t.row(number, stamp, p.cells, p.where, p.names, p.f)
}

// siteKeys are the keys of the site's numbers.
var siteKeys = []string{"latitude_deg", "longitude_deg", "zone_h", "altitude_m"}

// comment takes a line "# key: value". Other comments are let pass, but not
// what looks like a misspelt key.
func (p *cloche) comment(number int, text string) error {
	if p.lines++; p.lines > mostHeader {
		return errors.New("no line with the names of the columns yet")
	}
	key, value, found := strings.Cut(text, ":")
	key, value = strings.TrimSpace(key), strings.TrimSpace(value)
	if !found || strings.Contains(key, " ") {
		return nil
	}
	known := key == "name" || key == "source" || key == "typical_year"
	for _, k := range siteKeys {
		known = known || key == k
	}
	if _, twice := p.keys[key]; known && twice {
		p.f.addf(number, "%s stands twice", key)
	}
	if !known && strings.Contains(key, "_") {
		p.f.addf(number, "%.40q is no key; known are name, %s, source, typical_year", key, strings.Join(siteKeys, ", "))
	}
	if known {
		p.keys[key] = value
	}
	return nil
}

// head reads the names of the columns.
func (p *cloche) head(text []byte) error {
	p.cells = split(p.cells, text)
	if len(p.cells) == 1 {
		return errors.New("one column only: columns are separated by commas, and numbers have a point")
	}
	p.width = len(p.cells)
	var unknown []string
	for i, c := range p.cells {
		name := string(bytes.TrimSpace(c))
		known := name == "time" || name == "time_ending"
		if known {
			if p.time >= 0 {
				return errors.New("two columns for time")
			}
			if p.time = i; name == "time_ending" {
				p.ending = hour
			}
		}
		for _, h := range clocheColumns {
			if name != h.name {
				continue
			}
			if other := p.t.headers[h.col]; other != "" {
				return fmt.Errorf("%s and %s say the same", other, name)
			}
			known = true
			p.names, p.where = append(p.names, h), append(p.where, i)
			p.t.headers[h.col] = name
		}
		if !known {
			unknown = append(unknown, fmt.Sprintf("%.40q", name))
		}
	}
	if unknown != nil {
		list := make([]string, len(clocheColumns))
		for i, h := range clocheColumns {
			list[i] = h.name
		}
		if len(unknown) > 5 {
			unknown = append(unknown[:5], "and others")
		}
		return fmt.Errorf("unknown columns %s; known are time, time_ending, %s", strings.Join(unknown, ", "), strings.Join(list, ", "))
	}
	return nil
}

func (p *cloche) table() (*table, error) {
	if p.width == 0 {
		return nil, errors.New("no line with the names of the columns")
	}
	t := p.t
	t.source = place(p.keys["source"])
	switch p.keys["typical_year"] {
	case "", "no":
	case "yes":
		t.typical = true
	default:
		return nil, fmt.Errorf("typical_year is %.20q, allowed yes or no", p.keys["typical_year"])
	}
	if p.absolute > 0 && p.clocks > 0 {
		return nil, errors.New("some times have an offset and some have none")
	}
	t.utc = p.absolute > 0
	if p.time < 0 {
		switch len(t.stamp) {
		case 8760:
		case 8784:
			for i := range t.stamp {
				t.stamp[i] += leapStart - plainStart
			}
		default:
			return nil, fmt.Errorf("%d hours without a column for time: that needs a year of 8,760 or 8,784 hours", len(t.stamp))
		}
	}
	if t.typical {
		for i, s := range t.stamp {
			at := time.Unix(s, 0).UTC()
			s, _ := inLeapYear(int(at.Month()), at.Day(), at.Hour())
			t.stamp[i] = s + int64(at.Minute())*60
		}
		t.year = nominal(t.stamp)
	}
	return t, p.site()
}

// site takes the place from the comments: all of it or none.
func (p *cloche) site() error {
	var v [4]float64
	var lacking []string
	for i, k := range siteKeys {
		text, ok := p.keys[k]
		if !ok {
			lacking = append(lacking, k)
			continue
		}
		var err error
		if v[i], err = strconv.ParseFloat(text, 64); err != nil {
			return fmt.Errorf("%s is %.20q, not a number", k, text)
		}
	}
	switch len(lacking) {
	case 0:
		p.t.site = &Site{Name: place(p.keys["name"]), Latitude: v[0], Longitude: v[1], Zone: v[2], Altitude: v[3]}
	case len(siteKeys):
	default:
		return fmt.Errorf("the site lacks %s", strings.Join(lacking, ", "))
	}
	return nil
}

// stampText is a time as messages show it.
func stampText(s int64) string { return time.Unix(s, 0).UTC().Format("2006-01-02 15:04") }
