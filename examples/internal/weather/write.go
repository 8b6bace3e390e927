package weather

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"strconv"
)

// Write writes the series as Cloche's own CSV, which Read reads back: to
// 0.01 °C, m/s and fraction, 0.1 W/m², 1 Pa and 1 degree.
func Write(w io.Writer, s *Series) error {
	out := bufio.NewWriter(w)
	fmt.Fprintln(out, "# Cloche weather 1")
	if s.Site.Name != "" {
		fmt.Fprintf(out, "# name: %s\n", s.Site.Name)
	}
	for i, v := range []float64{s.Site.Latitude, s.Site.Longitude, s.Site.Zone, s.Site.Altitude} {
		fmt.Fprintf(out, "# %s: %s\n", siteKeys[i], strconv.FormatFloat(v, 'f', -1, 64))
	}
	if s.Source != "" {
		fmt.Fprintf(out, "# source: %s\n", s.Source)
	}
	if s.Typical {
		fmt.Fprintln(out, "# typical_year: yes")
	}
	cols := []struct {
		name   string
		v      []float64
		places float64 // ten to the power of the digits kept
	}{
		{"temperature_c", s.Temperature, 100}, {"dew_point_c", s.DewPoint, 100}, {"pressure_pa", s.Pressure, 1},
		{"wind_m_s", s.Wind, 100}, {"wind_from_deg", s.WindFrom, 1}, {"global_w_m2", s.Global, 10}, {"direct_w_m2", s.Direct, 10},
		{"diffuse_w_m2", s.Diffuse, 10}, {"sky_w_m2", s.Sky, 10}, {"cloud", s.Cloud, 100},
	}
	out.WriteString("time")
	kept := cols[:0]
	for _, c := range cols {
		if c.v == nil || c.name == "sky_w_m2" && s.Account.SkyRead == 0 {
			continue
		}
		kept = append(kept, c)
		out.WriteString("," + c.name)
	}
	out.WriteByte('\n')
	var b []byte
	for i, t := range s.Time {
		b = t.AppendFormat(b[:0], "2006-01-02T15:04")
		for _, c := range kept {
			b = append(b, ',')
			if v := c.v[i]; !math.IsNaN(v) {
				b = strconv.AppendFloat(b, math.Round(v*c.places)/c.places+0, 'f', -1, 64)
			}
		}
		out.Write(append(b, '\n'))
	}
	return out.Flush()
}
