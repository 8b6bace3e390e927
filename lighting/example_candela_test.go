package lighting_test

import (
	"context"
	"fmt"
	"os"
	"strings"

	"cloche.example/lighting"
)

// Candela become photons in three ways; none of them is taken for another. The
// file is invented.
func Example_candelaToPhotons() {
	file, err := os.Open("testdata/invented_300w.ies")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer file.Close()
	data, err := lighting.ReadLM63(file, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	candela, err := data.Table()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s: %.0f lm from %.0f W, %.0f cd straight down\n", data.Edition, candela.Lumens(), data.InputPower, candela.Intensity(0, 0))

	white := lighting.IlluminantD65()
	red, err := lighting.NewSpectrum([]float64{640, 660, 680}, []float64{0, 1, 0})
	if err != nil {
		fmt.Println(err)
		return
	}
	bySpectrum, err := lighting.PhotonTable(candela, white, lighting.PAR())
	if err != nil {
		fmt.Println(err)
		return
	}
	byFactor, err := candela.WithPhotonsPerLumen(1.0 / 54)
	if err != nil {
		fmt.Println(err)
		return
	}
	channels, err := lighting.ChannelTables(candela, []lighting.Channel{{Name: "white", Spectrum: white, Lumens: 0.9}, {Name: "red", Spectrum: red, Lumens: 0.1}}, lighting.PAR())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("by the spectrum of daylight: %.0f µmol/s; by 54 lx per µmol/(m² s): %.0f µmol/s\n", bySpectrum.Flux(), byFactor.Flux())
	fmt.Printf("nine tenths of the lumens white, one red at 660 nm: %.0f and %.0f µmol/s\n", channels[0].Flux(), channels[1].Flux())

	// A bar with a table is split until the light at the points keeps still.
	bar := lighting.Fixture{Light: bySpectrum, At: lighting.Point{X: 1, Y: 0.5, Z: 1}, Length: 1.2}
	points, err := lighting.NewPoints(lighting.Receiver{At: lighting.Point{X: 1, Y: 0.5}, Normal: lighting.Up()}, lighting.Receiver{At: lighting.Point{X: 2, Y: 1}, Normal: lighting.Up()})
	if err != nil {
		fmt.Println(err)
		return
	}
	parts, err := bar.SplitWithin(points, 0.001)
	if err != nil {
		fmt.Println(err)
		return
	}
	lights, err := lighting.NewLights(parts...)
	if err != nil {
		fmt.Println(err)
		return
	}
	ppfd := make([]float64, points.Len())
	if _, err := lights.MapTo(ppfd, points); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("as a bar of 1.2 m, 1 m up, in %d segments: %.0f µmol/(m² s) below, %.0f beside\n", len(parts), ppfd[0], ppfd[1])
	// The same on all cores, for maps of millions of points; it can be stopped.
	if _, err := lights.MapParallelTo(context.Background(), ppfd, points, nil); err != nil {
		fmt.Println(err)
	}

	// Output:
	// IES:LM-63-2019: 49889 lm from 300 W, 20133 cd straight down
	// by the spectrum of daylight: 899 µmol/s; by 54 lx per µmol/(m² s): 924 µmol/s
	// nine tenths of the lumens white, one red at 660 nm: 809 and 604 µmol/s
	// as a bar of 1.2 m, 1 m up, in 32 segments: 292 µmol/(m² s) below, 72 beside
}

// A photon web of one's own: an invented fixture whose light falls off in a
// straight line from below to the side.
func Example_photonWeb() {
	table, err := lighting.NewTable(lighting.Web{Coordinates: lighting.TypeC, Vertical: []float64{0, 90}, Horizontal: []float64{0}, Intensity: [][]float64{{100, 0}}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("2π 100 (1 - 2/π) = %.1f µmol/s, %.0f µmol/(s sr) at 45 degree\n", table.Flux(), table.Intensity(45, 0))

	// Output:
	// 2π 100 (1 - 2/π) = 228.3 µmol/s, 50 µmol/(s sr) at 45 degree
}

// Writing a photometric file, here of the oldest edition, with a lamp that
// gives less when it is tilted. All of it is invented.
func ExampleLM63_Write() {
	f := &lighting.LM63{Edition: lighting.LM63of1986, Lamps: 1, LumensPerLamp: 6200, Multiplier: 1, BallastFactor: 1, Field12: 1, InputPower: 65,
		Tilt: &lighting.LampTilt{Geometry: 1, Angles: []float64{0, 90}, Factors: []float64{1, 0.9}},
		Web:  lighting.CandelaWeb{Vertical: []float64{0, 45, 90}, Horizontal: []float64{0}, Candela: [][]float64{{1900, 1350, 0}}}}
	var text strings.Builder
	if err := f.Write(&text); err != nil {
		fmt.Println(err)
	}
	fmt.Print(strings.ReplaceAll(text.String(), "\r\n", "\n")) // files have both
	fmt.Printf("tilted by 30 degree the candela are %.3f of these\n", f.TiltFactor(30))

	// Output:
	// TILT=INCLUDE
	// 1
	// 2
	// 0 90
	// 1 0.9
	// 1 6200 1 3 1 1 2 0 0 0
	// 1 1 65
	// 0 45 90
	// 0
	// 1900 1350 0
	// tilted by 30 degree the candela are 0.967 of these
}
