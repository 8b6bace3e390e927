package main

import (
	"math"

	"cloche.example/internal/report"
)

// text is the report for people.
func (d *design) text(p plan) *report.Report {
	r := new(report.Report)
	r.Title("Winter and summer design: %s", p.Name)
	r.Note("%s", p.Note)

	r.Section("Site and design air")
	r.Value("altitude", p.Site.Altitude, 0, "m")
	r.Value("pressure", d.Air.Pressure, 0, "Pa")
	r.Value("inside air", p.Inside.Temperature, 1, "°C")
	r.Value("  relative humidity", 100*p.Inside.RH, 0, "%")
	r.Value("  dew point", d.Air.InsideDew, 1, "°C")
	r.Value("  wet bulb", d.Air.InsideWet, 1, "°C")
	r.Value("  humidity ratio", 1000*d.Air.InsideW, 2, "g/kg dry air")
	r.Value("outside air, design night", p.Site.Outside, 1, "°C")
	r.Value("  dew point (frost point below 0 °C)", d.Air.OutsideDew, 1, "°C")
	r.Value("  humidity ratio", 1000*d.Air.OutsideW, 2, "g/kg dry air")
	r.Value("wind at the cover", p.Site.Wind, 1, "m/s")
	r.Value("sky, Berdahl and Martin with cloud", d.Air.Sky, 1, "°C")

	r.Section("Shape")
	r.Value("floor", d.Shape.Floor, 1, "m²")
	r.Value("cover above grade", d.Shape.Cover, 1, "m²")
	r.Value("cover over floor", d.Shape.Ratio, 2, "")
	r.Value("volume", d.Shape.Volume, 1, "m³")
	r.Value("  of it below grade", d.Shape.BelowGrade, 1, "m³")
	r.Value("floor perimeter", d.Shape.Perimeter, 1, "m")

	r.Section("Covers on the design night")
	rows := [][]string{}
	for _, f := range d.Facets {
		drip := "no drip"
		if f.Drips {
			drip = "drips"
		}
		rows = append(rows, []string{f.Name, report.Number(f.Area, 1), report.Number(f.U, 2), report.Number(f.UAir, 2),
			report.Number(f.AirDriven, 0), report.Number(f.SkyDriven, 0), report.Number(f.Inner, 1), drip, limit(f.DripRH)})
	}
	r.Table([]string{"facet", "m²", "U", "U, sky=air", "air W", "sky W", "inner °C", "", "drips above"}, rows)
	r.Note("U in W/(m² K), inside air to outside air, under the sky of %.1f °C; beside it U with the sky at air temperature. The last column is the relative humidity inside above which the dry inner face drips.", d.Air.Sky)
	r.Value("condensate on the cover", d.Loss.Condensate, 2, "L/h")

	r.Section("Ground and buried walls (ISO 13370)")
	r.Value("design month", d.Loss.GroundTotal, 0, "W")
	r.Value("  annual mean part", d.Loss.GroundYear, 0, "W")
	r.Value("  seasonal part", d.Loss.GroundTotal-d.Loss.GroundYear, 0, "W")

	r.Section("Leakage")
	r.Value("air changes", p.Cover.AirChanges, 2, "per h")
	r.Value("sensible", d.Loss.LeakSens, 0, "W")
	r.Value("latent", d.Loss.LeakLatent, 0, "W")

	r.Section("Design heat loss")
	for _, t := range d.Loss.Terms {
		r.Text(t.Name, report.Number(t.Loss, 0), "W   "+report.Number(100*t.Share, 1)+" %")
	}
	r.Value("total", d.Loss.Total, 0, "W")
	r.Value("  per kelvin", d.Loss.Coefficient, 1, "W/K")
	r.Value("  per floor area", d.Loss.PerFloor, 1, "W/m²")

	d.heatText(r, p)
	d.lightText(r, p)
	d.summerText(r, p)
	d.dryingText(r, p)
	r.Section("Cautions")
	for _, c := range d.Caution {
		r.Note("%s", c)
	}
	return r
}

// limit prints a relative humidity, or that no humidity drips.
func limit(rh float64) string {
	if math.IsNaN(rh) || rh > 1 {
		return "never"
	}
	return report.Number(100*rh, 0) + " %"
}

// numberOr prints a number, or the word for one that does not exist.
func numberOr(x *float64, decimals int, none string) string {
	if x == nil {
		return none
	}
	return report.Number(*x, decimals)
}
