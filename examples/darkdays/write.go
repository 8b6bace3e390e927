package main

import (
	"fmt"
	"time"

	"cloche.example/internal/report"
	"cloche.example/internal/year"
	"cloche.example/lighting"
)

func write(in lamps, r result) *report.Report {
	var p report.Report
	y := r.year
	p.Title("Lamps over a year: %s", r.crop.Name)
	p.Note("%s", in.plan.Note)
	if in.invented() {
		p.Note("%s Its months have the plan's means.", year.Note)
	}
	p.Section("Answer")
	for _, s := range r.answer() {
		p.Note("%s", s)
	}

	p.Section("Given")
	p.Value("Daily light wanted", r.target, 1, "mol/(m² d)")
	if in.assumed {
		p.Note("The plan has no lamps; those of its defaults stand for them.")
	}
	if _, known := lighting.FindCropLight(r.crop.Name); known {
		p.Note("%s: %s; %s (%s).", r.crop.Name, r.crop.Basis, r.crop.Source, r.crop.Read)
	}
	p.Value("Light of the lamps on the bed", in.ppfd, 0, "µmol/(m² s)")
	p.Value("Light outside that reaches the bed", in.transmittance, 2, "fraction")
	p.Value("Photons in a joule of global radiation", in.plan.Site.PhotonsOfDaylight, 3, "µmol/J")
	p.Value("Lamps may burn from", in.from, 1, "h")
	p.Value("until", in.until, 1, "h")
	p.Value("and only while daylight on the bed is at most", in.plan.Lights.OffAbove, 0, "µmol/(m² s)")

	p.Section("Month by month")
	var rows [][]string
	for m := time.January; m <= time.December; m++ {
		mm := y.Month(m)
		days := float64(len(mm.Days))
		missing := 0.0
		for _, d := range mm.Days {
			missing += d.Deficit / days
		}
		rows = append(rows, []string{m.String(), report.Number(mm.Daylight/days, 1), report.Number(lighting.Deficit(r.target, mm.Daylight/days), 1),
			report.Number(missing, 1), report.Number(mm.LampTime.Hours(), 0), report.Number(float64(mm.DarkDays), 0), report.Number(float64(mm.ShortDays), 0)})
	}
	p.Table([]string{"", "daylight", "missing, mean day", "mean daily shortfall", "lamps, h", "dark days", "short days"}, rows)
	p.Note("Light in mol/(m² d) on the bed. Dark days miss the target without lamps, short days with them. The mean of what days miss exceeds what the mean day misses: plan with days.")

	p.Section("Dark days")
	for _, share := range []float64{0.05, 0.1, 0.25, 0.5} {
		light := y.Percentile(share)
		missing := lighting.Deficit(r.target, light)
		label := report.Number(100*share, 0) + " % of the days have less daylight than"
		p.Value(label, light, 2, "mol/(m² d)")
		switch run, err := lighting.LightingTime(missing, in.ppfd); {
		case err != nil:
			p.Text("   lamps", "-", "longer than a day: more lamps, or less light")
		case run.Hours() > in.allowed():
			p.Value("   lamps", run.Hours(), 1, "h, longer than they may burn")
		default:
			p.Value("   lamps", run.Hours(), 1, "h")
		}
	}

	p.Section("The year")
	p.Value("Daylight on the bed", y.Daylight, 0, "mol/m²")
	p.Value("From the lamps", y.Lamps, 0, "mol/m²")
	p.Value("Lamps burn", y.LampTime.Hours(), 0, "h")
	p.Value("Days that miss the target without lamps", float64(y.DarkDays), 0, "")
	p.Value("Days that miss it with them", float64(y.ShortDays), 0, "")
	p.Value("Power", r.power, 1, "W/m² of bed")
	p.Value("Power of the bed's lamps", r.energy.Power, 0, "W")
	p.Value("Electricity", r.energy.Electricity/3.6e6, 0, "kWh")
	p.Value("Heat into the house", r.energy.Heat/3.6e6, 0, "kWh")
	p.Value("Cost", r.energy.Cost, 0, in.plan.Currency)
	p.Note("Each day is planned with its whole daylight known: a controller that must guess burns longer. All electricity ends as heat inside; where the house would have been heated in that hour it saves fuel, else it must be vented.")

	p.Section("Cautions")
	for _, c := range lighting.Cautions(nil, lighting.Bed{Length: 1, Width: 1}) {
		p.Note("%s", c)
	}
	return &p
}

// answer says whether the lamps reach the light wanted.
func (r result) answer() []string {
	all := []string{fmt.Sprintf("Without lamps %d days of the year miss %s mol/m²; the lamps burn %s h for them and take %s kWh.", r.year.DarkDays, report.Number(r.target, 1), report.Number(r.year.LampTime.Hours(), 0), report.Number(r.energy.Electricity/3.6e6, 0))}
	if r.year.ShortDays == 0 {
		return append(all, "With them no day falls short.")
	}
	return append(all, fmt.Sprintf("With them %d days still fall short: more lamps, a longer photoperiod, or a crop that asks for less.", r.year.ShortDays))
}

func (r result) warnings() []string {
	if r.year.ShortDays > 0 {
		return r.answer()[1:]
	}
	return nil
}

// found is a month in JSON.
type found struct {
	Month    int     `json:"month"`
	Daylight float64 `json:"daylight_mol_m2"`
	Lamps    float64 `json:"lamps_h"`
	Dark     int     `json:"days_short_without_lamps_count"`
	Short    int     `json:"days_short_with_lamps_count"`
}

func data(in lamps, r result) any {
	d := struct {
		Crop          string  `json:"crop"`
		Wanted        float64 `json:"wanted_mol_m2_d"`
		PPFD          float64 `json:"lamps_on_bed_umol_m2_s"`
		Transmittance float64 `json:"daylight_on_bed_over_outside_fraction"`
		Burn          float64 `json:"lamps_h"`
		Dark          int     `json:"days_short_without_lamps_count"`
		Short         int     `json:"days_short_with_lamps_count"`
		Power         float64 `json:"lamps_w"`
		Electricity   float64 `json:"electricity_kwh"`
		Cost          float64 `json:"cost_currency"`
		Months        []found `json:"months"`
	}{r.crop.Name, r.target, in.ppfd, in.transmittance, r.year.LampTime.Hours(), r.year.DarkDays, r.year.ShortDays, r.energy.Power, r.energy.Electricity / 3.6e6, r.energy.Cost, nil}
	for m := time.January; m <= time.December; m++ {
		mm := r.year.Month(m)
		d.Months = append(d.Months, found{int(m), mm.Daylight, mm.LampTime.Hours(), mm.DarkDays, mm.ShortDays})
	}
	return d
}
