package main

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/examples/internal/input"
	"cloche.example/examples/internal/plan"
	"cloche.example/internal/year"
)

// invented tells whether the hours come from no file.
func (in lamps) invented() bool { return in.global == "" && in.plan.Site.WeatherFile == "" }

// hours returns the global radiation of a year: of the file of numbers, of the
// plan's weather, or invented.
func (in lamps) hours(stdin io.Reader) ([]float64, error) {
	switch name := in.plan.Site.WeatherFile; {
	case in.global != "":
		file, err := input.Open(in.global, stdin)
		if err != nil {
			return nil, err
		}
		defer file.Close()
		return readYear(file)
	case name != "":
		s, err := fromplan.Weather(in.plan, name, true, stdin)
		if err != nil {
			return nil, err
		}
		if !s.Whole() {
			return nil, fmt.Errorf("%s: %d hours of weather, and a whole year is wanted", input.Name(name), s.Hours())
		}
		return s.Global, nil
	}
	return invented(in.plan), nil
}

// invented is the invented year under the sun of the plan's place, each month
// brought to the plan's mean.
func invented(p *plan.Plan) []float64 {
	sun := year.At(year.Place{Latitude: p.Site.Latitude, Longitude: p.Site.Longitude, Zone: p.Site.TimeZone}).Sun
	var sum, hours [12]float64
	for i, v := range sun {
		m := year.Month(i)
		sum[m] += v
		hours[m]++
	}
	for i := range sun {
		if m := year.Month(i); sum[m] > 0 {
			sun[i] *= p.Site.Months.Sun[m] * 1e6 / 86400 * hours[m] / sum[m]
		}
	}
	return sun
}

// longest is the length of a line of the file, bytes.
const longest = 1 << 10

// readYear reads one number a line, W/m², the mean of each hour of a year from
// the first of January, local standard time; lines that begin with # are left
// out.
func readYear(r io.Reader) ([]float64, error) {
	var global []float64
	for line, err := range input.Lines(r, longest) {
		if err != nil {
			return nil, err
		}
		text := strings.TrimSpace(string(line.Text))
		if text == "" || text[0] == '#' {
			continue
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return nil, fmt.Errorf("line %d: %.40q is not a number of W/m²", line.Number, text)
		}
		if global = append(global, v); len(global) > 8784 {
			return nil, fmt.Errorf("line %d: more than the 8784 hours of a leap year", line.Number)
		}
	}
	return global, nil
}
