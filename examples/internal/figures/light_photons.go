package figures

import (
	"fmt"
	"time"

	"cloche.example/lighting"
)

func luxToPhotons() Figure {
	return Figure{
		Name: "lux", Title: "Lux to photons", Subject: "photons and spectra", Package: "lighting", Example: "Example_luxToPhotons",
		Question: "A lux meter reads a number. How many photons is that, under daylight, a filament lamp and red light-emitting diodes?",
		Sketch:   "A lux meter weighs light by the eye, which is keen in green and nearly blind at 660 nm; a plant counts photons.",
		Given:    []Given{{"E_v", "reading", "lx", 10000, 1, 200000}, {"λ", "wavelength of the red diodes", "nm", 660, 600, 690}},
		Assumes:  []string{"Diodes as triangles 40 nm wide at the foot; daylight and filament by the CIE's tables; a meter that follows V exactly, which cheap ones do not in red and blue."},
		Change:   []string{"Move the diodes from 660 to 630 nm: the eye sees four times more of the same photons."},
		Code:     "solveLux",
		Solve:    solveLux,
	}
}

func solveLux(v []float64) (r Result, err error) {
	lux, nm := v[0], v[1]
	line := func(nm float64) lighting.Spectrum {
		s, e := lighting.NewSpectrum([]float64{nm - 20, nm, nm + 20}, []float64{0, 1, 0}) // W/nm, a narrow LED
		if e != nil {
			err = e
		}
		return s
	}
	red, blue := line(nm), line(450)
	if err != nil {
		return r, err
	}
	lights := []struct {
		name string
		s    lighting.Spectrum
	}{
		{"daylight, CIE D65", lighting.IlluminantD65()},
		{"tungsten, CIE A", lighting.IlluminantA()},
		{fmt.Sprintf("LED %g nm", nm), red},
		{fmt.Sprintf("LED 9 parts %g, 1 part 450", nm), lighting.MixSpectra(red.Scaled(9), blue)},
	}
	var rows []bar
	short := []string{"daylight", "filament", "red diodes", "9 red, 1 blue"}
	for i, l := range lights {
		r.Lines = append(r.Lines, fmt.Sprintf("%-28s %6.2f lx per µmol/(m² s)  %6.1f µmol/(m² s)  %.2f µmol/J",
			l.name, l.s.LuxPerPPFD(), lux/l.s.LuxPerPPFD(), l.s.PARPhotonsPerJoule()))
		rows = append(rows, bar{short[i], lux / l.s.LuxPerPPFD()})
		r.Steps = append(r.Steps, Step{Says: "Photons under " + l.name + ".", Formula: "E = E_v/f", Values: numbers{"E_v": lux, "f": l.s.LuxPerPPFD()}, Value: lux / l.s.LuxPerPPFD(), Unit: "µmol/(m² s)"})
	}
	filament := lights[1].s
	for _, b := range []lighting.Band{lighting.PAR(), lighting.FarRed()} {
		r.Lines = append(r.Lines, fmt.Sprintf("%s, %g to %g nm: %.2f µmol/s in each W of CIE A", b.Name, b.From, b.To, filament.Photons(b)/filament.Power(300, 830)))
	}
	r.Lines = append(r.Lines, fmt.Sprintf("at %g nm: %.3f µmol/J, V = %.3f; CIE A of 300 to 830 nm: %.1f lm/W", nm, lighting.PhotonsPerJoule(nm), lighting.LuminousEfficiency(nm), filament.Luminous()/filament.Power(300, 830)))
	rule := lighting.BroadbandFactors()[0]
	r.Lines = append(r.Lines, fmt.Sprintf("%-28s %6.2f lx per µmol/(m² s)  %6.1f µmol/(m² s), a labelled rule", rule.Name+" [Thimijan83]", rule.LuxPerPPFD, lux/rule.LuxPerPPFD))
	r.Steps = append(r.Steps,
		Step{Says: "Photons of one joule of the red line.", Formula: "n = λ/119.626565582", Source: "SI2019, N_A h c", Values: numbers{"λ": nm}, Value: lighting.PhotonsPerJoule(nm), Unit: "µmol/J", Within: 1e-9, Why: "rounding of N_A h c"},
		Step{Says: "How much of that the eye sees.", Symbol: "V", Source: "CieVis23", Value: lighting.LuminousEfficiency(nm)})
	r.Picture = bars("Photons at one reading under four lights", "Four bars: the same reading of a lux meter is six times more photons under red diodes than under daylight.", "%.0f", "µmol/(m² s) at the same reading, under four lights.", rows...)
	return r, nil
}

func dailyLight() Figure {
	return Figure{
		Name: "daily-light", Title: "What a day of light adds up to", Subject: "photons and spectra", Package: "lighting", Example: "Example_dailyLight",
		Question: "Lamps hold a photon flux density for a photoperiod. What is the day's sum, and which crops does it serve?",
		Sketch:   "A rectangle: flux density upward, hours along; its area is the day's light.",
		Given:    []Given{{"E", "PPFD", "µmol/(m² s)", 180, 0, 2000}, {"H", "photoperiod", "h", 16, 1, 24}},
		Assumes:  []string{"The lamps alone, as bright all day; the ranges of crops are those of the library's table, whose rows name their sources."},
		Change:   []string{"Twice the light for half the time is the same sum; many crops need their night."},
		Code:     "solveDailyLight",
		Solve:    solveDailyLight,
	}
}

func solveDailyLight(v []float64) (r Result, err error) {
	ppfd, photoperiod := v[0], time.Duration(v[1]*float64(time.Hour))
	dli := lighting.DLI(ppfd, photoperiod)
	r.Lines = []string{fmt.Sprintf("%.0f µmol/(m² s) x %.0f s x 1e-6 = %.2f mol/(m² d)", ppfd, photoperiod.Seconds(), dli)}
	rows := []bar{{"these lamps", dli}}
	for _, name := range []string{"lettuce", "spinach, young", "tomato"} {
		c, _ := lighting.FindCropLight(name)
		r.Lines = append(r.Lines, fmt.Sprintf("%-15s least %g, target %g: %s", c.Name, c.Least, c.Target, c.Serves(dli)))
		rows = append(rows, bar{c.Name + ", target", c.Target})
	}
	need := lighting.PPFDFor(17, photoperiod)
	r.Lines = append(r.Lines, fmt.Sprintf("for 17 mol/(m² d) in the same time: %.0f µmol/(m² s)", need))
	r.Steps = []Step{
		{Says: "The day's sum: 3600 s in an hour, a millionth of a mole in a µmol.", Formula: "D = 0.0036 E H", Values: numbers{"E": ppfd, "H": v[1]}, Value: dli, Unit: "mol/(m² d)"},
		{Says: "The other way round, for 17 mol/(m² d).", Formula: "E_17 = 17/(0.0036 H)", Values: numbers{"H": v[1]}, Value: need, Unit: "µmol/(m² s)"},
	}
	r.Picture = bars("The day's light beside what crops want", "Four bars: the light of these lamps and the targets of three crops.", "%.1f", "mol/(m² d). A bar shorter than a crop's target is too dark for it, without daylight.", rows...)
	return r, nil
}

func darkDay() Figure {
	return Figure{
		Name: "dark-day", Title: "Lamp hours on a dark day", Subject: "sun and daylight", Package: "lighting", Example: "Example_darkDay",
		Question: "On a dark day in December, how long must the lamps burn?",
		Sketch:   "Daylight outside, less what the cover keeps, less than the crop wants; the lamps fill the rest.",
		Given: []Given{
			{"G", "global radiation of the day", "MJ/(m² d)", 2.1, 0, 30},
			{"τ", "of its light at the bed", "fraction", 0.62, 0.1, 1},
			{"D_c", "what the crop wants", "mol/(m² d)", 14, 2, 50},
			{"E", "PPFD of the lamps", "µmol/(m² s)", 160, 10, 1000},
		},
		Assumes: []string{"2.016 µmol for each joule of global radiation; lamps of 2.8 µmol/J with 85 % of their photons on the bed."},
		Change:  []string{"A bright day of 8 MJ/m² needs no lamps at all."},
		Code:    "solveDarkDay",
		Solve:   solveDarkDay,
	}
}

func solveDarkDay(v []float64) (r Result, err error) {
	target, ppfd := v[2], v[3]
	outside := lighting.OutdoorDLI(v[0]*1e6, lighting.DaylightFaust)
	inside := lighting.InsideDLI(outside, v[1])
	missing := lighting.Deficit(target, inside)
	run, err := lighting.LightingTime(missing, ppfd)
	if err != nil {
		return r, err
	}
	power := lighting.PowerDensity(ppfd, 2.8, 0.85)
	r.Lines = []string{
		fmt.Sprintf("outside  %g MJ x %.3f µmol/J = %.2f mol/(m² d)", v[0], lighting.DaylightFaust, outside),
		fmt.Sprintf("inside   x %.2f = %.2f mol/(m² d)", v[1], inside),
		fmt.Sprintf("missing  %g - %.2f = %.2f mol/(m² d)", target, inside, missing),
		fmt.Sprintf("lamps    %.2f / (0.0036 x %g) = %.1f h", missing, ppfd, run.Hours()),
		fmt.Sprintf("power    %.0f W/m² at 2.8 µmol/J and 85 %% on the bed", power),
	}
	r.Steps = []Step{
		{Says: "Photons of the day outside.", Formula: "D_o = c G", Source: "Faust18", Values: numbers{"c": lighting.DaylightFaust, "G": v[0]}, Value: outside, Unit: "mol/(m² d)"},
		{Says: "At the bed.", Formula: "D_i = τ D_o", Values: numbers{"τ": v[1], "D_o": outside}, Value: inside, Unit: "mol/(m² d)"},
		{Says: "What is missing.", Formula: "D_m = max(0, D_c - D_i)", Values: numbers{"D_c": target, "D_i": inside}, Value: missing, Unit: "mol/(m² d)"},
		{Says: "Hours of the lamps.", Formula: "H = D_m/(0.0036 E)", Values: numbers{"D_m": missing, "E": ppfd}, Value: run.Hours(), Unit: "h", Within: 1e-6, Why: "a time is held in whole nanoseconds"},
		{Says: "Electric power.", Formula: "P = E/(2.8 0.85)", Values: numbers{"E": ppfd}, Value: power, Unit: "W/m²"},
	}
	r.Picture = bars("The day's light", "Three bars: daylight outside, at the bed, and what the lamps must add.", "%.1f", "mol/(m² d). Bed and lamps together give what the crop wants, unless daylight does alone.", bar{"outside", outside}, bar{"at the bed", inside}, bar{"from the lamps", missing})
	return r, nil
}
