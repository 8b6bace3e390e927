package lighting_test

import (
	"fmt"

	"cloche.example/lighting"
)

// A lux meter reads 10,000 lx. How many photons that is depends on the
// spectrum: the same reading under four lights.
func Example_luxToPhotons() {
	const lux = 10000.0
	line := func(nm float64) lighting.Spectrum {
		s, err := lighting.NewSpectrum([]float64{nm - 20, nm, nm + 20}, []float64{0, 1, 0}) // W/nm, a narrow LED
		if err != nil {
			fmt.Println(err)
		}
		return s
	}
	red, blue := line(660), line(450)
	lights := []struct {
		name string
		s    lighting.Spectrum
	}{
		{"daylight, CIE D65", lighting.IlluminantD65()},
		{"tungsten, CIE A", lighting.IlluminantA()},
		{"LED 660 nm", red},
		{"LED 9 parts 660, 1 part 450", lighting.MixSpectra(red.Scaled(9), blue)},
	}
	for _, l := range lights {
		fmt.Printf("%-28s %6.2f lx per µmol/(m² s)  %6.1f µmol/(m² s)  %.2f µmol/J\n",
			l.name, l.s.LuxPerPPFD(), lux/l.s.LuxPerPPFD(), l.s.PARPhotonsPerJoule())
	}
	for _, b := range []lighting.Band{lighting.PAR(), lighting.FarRed()} {
		fmt.Printf("%s, %g to %g nm: %.2f µmol/s in each W of CIE A\n", b.Name, b.From, b.To, lights[1].s.Photons(b)/lights[1].s.Power(300, 830))
	}
	fmt.Printf("at 660 nm: %.3f µmol/J, V = %.3f; CIE A of 300 to 830 nm: %.1f lm/W\n", lighting.PhotonsPerJoule(660), lighting.LuminousEfficiency(660), lights[1].s.Luminous()/lights[1].s.Power(300, 830))
	rule := lighting.BroadbandFactors()[0]
	fmt.Printf("%-28s %6.2f lx per µmol/(m² s)  %6.1f µmol/(m² s), a labelled rule\n", rule.Name+" [Thimijan83]", rule.LuxPerPPFD, lux/rule.LuxPerPPFD)

	// Output:
	// daylight, CIE D65             55.50 lx per µmol/(m² s)   180.2 µmol/(m² s)  4.53 µmol/J
	// tungsten, CIE A               50.26 lx per µmol/(m² s)   199.0 µmol/(m² s)  5.01 µmol/J
	// LED 660 nm                     8.26 lx per µmol/(m² s)  1210.4 µmol/(m² s)  5.52 µmol/J
	// LED 9 parts 660, 1 part 450    8.20 lx per µmol/(m² s)  1220.3 µmol/(m² s)  5.34 µmol/J
	// photosynthetic, 400 to 700 nm: 2.44 µmol/s in each W of CIE A
	// far-red, 700 to 800 nm: 2.36 µmol/s in each W of CIE A
	// at 660 nm: 5.517 µmol/J, V = 0.061; CIE A of 300 to 830 nm: 122.6 lm/W
	// sun and sky [Thimijan83]      54.00 lx per µmol/(m² s)   185.2 µmol/(m² s), a labelled rule
}
