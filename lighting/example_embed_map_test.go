package lighting_test

import (
	"fmt"
	"os"

	"cloche.example/lighting"
)

// Three rows of six fixtures over a bed, from a photometric file: the map, its
// evenness, and the hours for 14 mol/(m² d). The file and the house are
// invented.
func Example_embedPhotonMap() {
	file, err := os.Open("testdata/invented_300w.ies")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer file.Close()
	fixture, err := lighting.FromLM63(file, 1.0/71) // µmol/lm of metal halide
	if err != nil {
		fmt.Println(err)
		return
	}
	bed := lighting.Bed{Z: 0.8, Length: 12, Width: 4.5}
	layout, err := lighting.Rows(fixture, bed, 1.4, 6, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	m, err := bed.Map(layout)
	if err != nil {
		fmt.Println(err)
		return
	}
	run, err := lighting.LightingTime(14, m.Evenness.Mean)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d points, mean %.0f µmol/(m² s), least/mean %.2f\n", len(m.PPFD), m.Evenness.Mean, m.Evenness.U0)
	fmt.Printf("14 mol/(m² d) take %.1f h\n", run.Hours())

	// Output:
	// 731 points, mean 178 µmol/(m² s), least/mean 0.38
	// 14 mol/(m² d) take 21.9 h
}
