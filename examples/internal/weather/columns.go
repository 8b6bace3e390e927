package weather

import (
	"fmt"
	"math"
	"strconv"

	"cloche.example/internal/domain"
)

// column numbers the quantities of a file.
type column int

const (
	temperature column = iota
	dewPoint
	humidity // over liquid water
	pressure
	wind
	windFrom
	global
	direct
	diffuse
	sky
	cloud
	columns
)

var missing = math.NaN()

// ranges hold what can be, in the units of Series.
var ranges = [columns]domain.Range{
	temperature: {Min: -90, Max: 60, Unit: "°C", Source: "extremes on Earth -89 and 57 °C"},
	dewPoint:    {Min: -100, Max: 40, Unit: "°C"},
	humidity:    {Min: domain.MoreThan(0), Max: 1, Unit: "fraction"},
	pressure:    {Min: 30e3, Max: 110e3, Unit: "Pa"},
	wind:        {Min: 0, Max: 75, Unit: "m/s"},
	windFrom:    {Min: 0, Max: 360, Unit: "degree"},
	global:      {Min: 0, Max: 1500, Unit: "W/m²"},
	direct:      {Min: 0, Max: 1420, Unit: "W/m²", Source: "1,412 W/m² outside the atmosphere"},
	diffuse:     {Min: 0, Max: 1000, Unit: "W/m²"},
	sky:         {Min: 50, Max: 600, Unit: "W/m²"},
	cloud:       {Min: 0, Max: 1, Unit: "fraction"},
}

// darkest is the least reading of a pyranometer at night that still counts as
// 0, W/m².
const darkest = -10

// header is one column as a format names it.
type header struct {
	name  string
	col   column
	scale float64 // to the unit of Series
	unit  string  // of the file, for messages
}

// value returns the field's value in the unit of Series, NaN if it is missing.
func (h header) value(field []byte, negative *int) (float64, error) {
	for len(field) > 0 && field[0] == ' ' {
		field = field[1:]
	}
	for len(field) > 0 && field[len(field)-1] == ' ' {
		field = field[:len(field)-1]
	}
	if len(field) == 0 {
		return missing, nil
	}
	v, err := strconv.ParseFloat(string(field), 64)
	if err != nil {
		if s := string(field[:min(len(field), 20)]); s != "NA" && s != "null" {
			return missing, fmt.Errorf("%s is %q, not a number", h.name, s)
		}
		return missing, nil
	}
	if v != v || v <= -9000 && v >= -99999 || v == 9999 || v == 99999 {
		return missing, nil
	}
	scaled := v * h.scale
	r := ranges[h.col]
	switch {
	case scaled >= r.Min && scaled <= r.Max:
		return scaled + 0, nil
	case scaled < 0 && scaled >= darkest && (h.col == global || h.col == direct || h.col == diffuse):
		*negative++
		return 0, nil
	}
	if h.scale != 1 {
		if r.Min == domain.MoreThan(0) {
			r.Max, r.Unit = r.Max/h.scale, h.unit
		} else {
			r.Min, r.Max, r.Unit = r.Min/h.scale, r.Max/h.scale, h.unit
		}
	}
	return missing, r.Check(h.name, v)
}

// split cuts a line at its commas into dst.
func split(dst [][]byte, text []byte) [][]byte {
	dst = dst[:0]
	start := 0
	for i, c := range text {
		if c == ',' {
			dst = append(dst, text[start:i])
			start = i + 1
		}
	}
	return append(dst, text[start:])
}
