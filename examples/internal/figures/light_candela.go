package figures

import (
	"fmt"
	"strings"

	"cloche.example/lighting"
)

func candelaToPhotons() Figure {
	return Figure{
		Name: "candela-to-photons", Title: "Candela to photons, three ways", Subject: "photons and spectra", Package: "lighting", Example: "Example_candelaToPhotons",
		Question: "A photometric file gives candela. How many photons is that, by a spectrum, by a factor, and with red mixed in?",
		Sketch:   "Candela weigh light by the eye. The same file under another spectrum is another lamp.",
		Given: []Given{
			{"f", "a rule's lumens for each photon flux", "lx per µmol/(m² s)", 54, 8, 90},
			{"λ", "wavelength of the red channel", "nm", 660, 600, 690},
			{"w", "part of the lumens that is white", "fraction", 0.9, 0, 1},
			{"l", "length of the bar", "m", 1.2, 0.1, 2},
			{"h", "height of the bar", "m", 1, 0.5, 4},
		},
		Assumes: []string{"An invented file; white as daylight (CIE D65), red as a triangle 40 nm wide at the foot; both shine in the same directions."},
		Change:  []string{"All white, w = 1: the two ways of the first line draw near. A tenth of the lumens in red makes half as many photons again.", "Raise the bar to five lengths: it is within a per cent of a point."},
		Code:    "solveCandelaToPhotons",
		Solve:   solveCandelaToPhotons,
	}
}

func solveCandelaToPhotons(v []float64) (r Result, err error) {
	data, err := lighting.ReadLM63(strings.NewReader(photometric), nil)
	if err != nil {
		return r, err
	}
	candela, err := data.Table()
	if err != nil {
		return r, err
	}
	white, nm, w := lighting.IlluminantD65(), v[1], v[2]
	red, err := lighting.NewSpectrum([]float64{nm - 20, nm, nm + 20}, []float64{0, 1, 0})
	if err != nil {
		return r, err
	}
	bySpectrum, err := lighting.PhotonTable(candela, white, lighting.PAR())
	if err != nil {
		return r, err
	}
	byFactor, err := candela.WithPhotonsPerLumen(1 / v[0])
	if err != nil {
		return r, err
	}
	channels, err := lighting.ChannelTables(candela, []lighting.Channel{{Name: "white", Spectrum: white, Lumens: w}, {Name: "red", Spectrum: red, Lumens: 1 - w}}, lighting.PAR())
	if err != nil {
		return r, err
	}
	mix := fmt.Sprintf("%.3g of the lumens white, the rest red at %g nm", w, nm)
	if w == 0.9 {
		mix = fmt.Sprintf("nine tenths of the lumens white, one red at %g nm", nm)
	}
	lamp := lighting.Fixture{Light: bySpectrum, At: lighting.Point{X: 1, Y: 0.5, Z: v[4]}, Length: v[3]}
	points, err := lighting.NewPoints(lighting.Receiver{At: lighting.Point{X: 1, Y: 0.5}, Normal: lighting.Up()}, lighting.Receiver{At: lighting.Point{X: 2, Y: 1}, Normal: lighting.Up()})
	if err != nil {
		return r, err
	}
	parts, err := lamp.SplitWithin(points, 0.001)
	if err != nil {
		return r, err
	}
	lights, err := lighting.NewLights(parts...)
	if err != nil {
		return r, err
	}
	ppfd, err := lights.MapTo(nil, points)
	if err != nil {
		return r, err
	}
	r.Lines = []string{
		fmt.Sprintf("%s: %.0f lm from %.0f W, %.0f cd straight down", data.Edition, candela.Lumens(), data.InputPower, candela.Intensity(0, 0)),
		fmt.Sprintf("by the spectrum of daylight: %.0f µmol/s; by %g lx per µmol/(m² s): %.0f µmol/s", bySpectrum.Flux(), v[0], byFactor.Flux()),
		fmt.Sprintf("%s: %.0f and %.0f µmol/s", mix, channels[0].Flux(), channels[1].Flux()),
		fmt.Sprintf("as a bar of %g m, %g m up, in %d segments: %.0f µmol/(m² s) below, %.0f beside", v[3], v[4], len(parts), ppfd[0], ppfd[1]),
	}
	lumens, fw, fr := candela.Lumens(), white.LuxPerPPFD(), red.LuxPerPPFD()
	point := bySpectrum.Intensity(0, 0) / (v[4] * v[4])
	r.Steps = []Step{
		{Says: "Lumens of the file: the candela integrated over all directions.", Symbol: "Φ_v", Source: "IesLM02", Value: lumens, Unit: "lm", Figures: 5},
		{Says: "Photons by the spectrum of daylight, of which so many lumens make one.", Formula: "Φ_D = Φ_v/f_D", Source: "CieCol18", Values: numbers{"Φ_v": lumens, "f_D": fw}, Value: bySpectrum.Flux(), Unit: "µmol/s"},
		{Says: "Photons by the rule.", Formula: "Φ_f = Φ_v/f", Source: "Thimijan83, second-hand", Values: numbers{"Φ_v": lumens, "f": v[0]}, Value: byFactor.Flux(), Unit: "µmol/s"},
		{Says: "The white channel's part.", Formula: "Φ_w = w Φ_v/f_D", Values: numbers{"w": w, "Φ_v": lumens, "f_D": fw}, Value: channels[0].Flux(), Unit: "µmol/s"},
		{Says: "The red channel's: few lumens, many photons, since the eye is nearly blind there.", Formula: "Φ_r = (1 - w) Φ_v/f_r", Values: numbers{"w": w, "Φ_v": lumens, "f_r": fr}, Value: channels[1].Flux(), Unit: "µmol/s"},
		{Says: "As a single point the lamp would give straight below.", Formula: "E_1 = I_0/h^2", Values: numbers{"I_0": bySpectrum.Intensity(0, 0), "h": v[4]}, Value: point, Unit: "µmol/(m² s)"},
		{Says: "The bar gives less there, since its ends are farther off and slant.", Formula: "s = E/E_1", Values: numbers{"E": ppfd[0], "E_1": point}, Value: ppfd[0] / point},
	}
	r.Picture = bars("Photons of the same file under four spectra", "Four bars for the same lumens: daylight and the rule are alike, white with red has more, and all red six times as many.", "%.0f",
		"µmol/s of the same lumens: the file alone does not say which.",
		bar{"daylight", lumens / fw}, bar{"the rule", lumens / v[0]}, bar{"white and red", channels[0].Flux() + channels[1].Flux()}, bar{"all red", lumens / fr})
	return r, nil
}
