package main

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
	"time"

	"cloche.example/internal/demo"
	"cloche.example/lighting"
)

// clearness is the mean share of the clear sky's radiation, by month, of the
// invented year.
var clearness = [12]float64{0.42, 0.50, 0.56, 0.62, 0.66, 0.66, 0.68, 0.67, 0.60, 0.52, 0.42, 0.38}

// inventedYear is a year of hours of global radiation at the demo site, W/m²:
// Haurwitz's clear sky at the middle of each hour, local standard time, times
// a share that wanders from day to day. The wandering is a fixed sequence, so
// that every run shows the same year.
func inventedYear() ([]float64, error) {
	site, err := lighting.NewSite(demo.Latitude, demo.Longitude, demo.Altitude)
	if err != nil {
		return nil, err
	}
	zone := time.FixedZone("local standard time", int(math.Round(demo.Longitude/15))*3600)
	start := time.Date(2023, 1, 1, 0, 0, 0, 0, zone)
	global := make([]float64, 8760)
	state, weather := uint32(20260301), 0.0
	for h := range global {
		at := start.Add(time.Duration(h) * time.Hour)
		if h%24 == 0 {
			state = state*1664525 + 1013904223 // a linear congruence, its high bits
			weather = 0.6*weather + 0.8*(float64(state>>8)/(1<<23)-1)
		}
		share := min(max(clearness[at.Month()-1]+0.4*weather, 0.08), 1)
		global[h] = share * lighting.Haurwitz(site.Sun(at.Add(30*time.Minute)).Zenith())
	}
	return global, nil
}

// readYear reads one number a line, W/m², the mean of each hour of a year from
// the first of January, local standard time; lines that begin with # are left
// out.
func readYear(r io.Reader) ([]float64, error) {
	var global []float64
	lines := bufio.NewScanner(r)
	for n := 1; lines.Scan(); n++ {
		text := strings.TrimSpace(lines.Text())
		if text == "" || text[0] == '#' {
			continue
		}
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return nil, fmt.Errorf("line %d: %.40q is not a number of W/m²", n, text)
		}
		if global = append(global, v); len(global) > 8784 {
			return nil, fmt.Errorf("line %d: more than the 8784 hours of a leap year", n)
		}
	}
	return global, lines.Err()
}
