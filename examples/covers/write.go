package main

import (
	"math"

	"cloche.example/internal/report"
)

// write returns the comparison as text.
func write(t table) string {
	var r report.Report
	in, out := t.plan.SetPoints.WinterNight, t.plan.Site.WinterNight
	r.Title("Covers of one house on one night: %s", t.plan.Name)
	r.Note("%s", t.plan.Note)
	r.Section("Night")
	r.Value("inside air", in.Temperature, 1, "°C")
	r.Value("relative humidity inside", 100*in.RelativeHumidity, 0, "%")
	r.Value("outside air and ground", out.Temperature, 1, "°C")
	r.Value("relative humidity outside", 100*out.RelativeHumidity, 0, "%")
	r.Value("sky (Berdahl and Martin, with clouds)", t.sky, 1, "°C")
	r.Value("wind at the cover", out.Wind, 1, "m/s")
	r.Section("House")
	r.Value("floor", t.shape.FloorArea, 1, "m²")
	r.Value("cover above grade", t.shape.CoverArea, 1, "m²")
	r.Value("cover to floor", t.shape.CoverRatio, 2, "")
	first := t.rows[0].loss
	r.Value("ground and buried walls", first.Ground.Total, 0, "W, in every row")
	r.Value("door", first.Doors, 0, "W, in every row")
	r.Section("Loss of the house")
	number := report.Number
	percent := func(v float64) string {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return "-"
		}
		return number(100*v, 0) + " %"
	}
	var lines [][]string
	for _, x := range t.rows {
		lines = append(lines, []string{x.name, number(x.loss.Total, 0), percent(x.loss.Total / first.Total), number(x.loss.Cover, 0), percent(skyShare(x.loss)),
			number(x.dry.Cover, 0), percent(skyShare(x.dry)), number(x.loss.Leakage.Total, 0), number(x.airChanges, 2)})
	}
	r.Table([]string{"cover", "house W", "of plan", "cover W", "to sky", "if dry W", "to sky", "leaks W", "changes/h"}, lines)
	r.Section("Drops and light")
	lines = nil
	for _, x := range t.rows {
		drip := "never"
		if x.drip < 1 {
			drip = number(100*x.drip, 0) + " %"
		}
		coldest := math.Inf(1)
		for _, f := range x.dry.Facets {
			coldest = math.Min(coldest, f.InnerTemperature)
		}
		lines = append(lines, []string{x.name, number(x.uAir, 2), number(coldest, 1), drip, number(3600*x.loss.Condensate, 1), percent(x.light)})
	}
	r.Table([]string{"cover", "U W/(m² K)", "face °C", "drips above", "water L/h", "light"}, lines)
	r.Section("How to read it")
	r.Note("House is all of the loss: covers facet by facet, 4 %% for the frame, door, ground, leakage with its vapour. Cover is roof and walls alone, wet where the dry face lies below the dew point inside; water closes clear film to long-wave radiation, and sets its latent heat free. To sky is the part of it that a sky colder than the air draws. If dry is the same with every face kept dry. The frame comes on top.")
	r.Note("U is that of the dry roof with the sky at air temperature: what a table of U-values means. Face is the coldest dry inner face; drips above is the humidity inside above which it drips. The water needs as much evaporation in the house; where soil and leaves give less, the humidity falls and with it the loss, towards that of the dry cover.")
	r.Note("Air changes are typical of a new cover of the kind, from memory; they differ by a factor of two. Light is for clean, dry covers at normal incidence, the mean over the cover; a drawn screen is for the night, 200 mm below the cover and with a little leakage. Vapour that leaks through it condenses on the cover above, which is not counted; drips above then tells of the screen.")
	r.Section("Cautions")
	r.Note("A cover carries snow and wind, and screens and films burn: structure and fire follow local codes and a licensed engineer. A screen drawn in snow keeps the roof cold and the snow on it. Values of real covers differ by make and age; measure or ask for them.")
	return r.String()
}
