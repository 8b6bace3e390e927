package envelope_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	. "cloche.example/envelope"
)

// The house of the table, invented: a gable of 8 by 20 m at grade, 15 °C inside,
// 0 °C outside, leaks of half an air change (ten commercial houses in
// calm had 0.56), metal bars of 5 %, 20 g/(m² h) of vapour from the crop.
const (
	tableVapour = 0.020 // kg/(m² h) of floor
	tableRise   = 15.0  // K
	clearSky    = 20.0  // K below the air
	cloudySky   = 2.0   // K below the air
)

func tableHouse(t *testing.T, c Cover) *House {
	t.Helper()
	f := DefaultForm()
	f.Span, f.Length, f.Eave, f.Ridge = 8, 20, 2.2, 4.1
	s, err := NewShape(f)
	require.NoError(t, err)
	leaks := DefaultLeakage()
	leaks.AirChanges = 0.5
	return built(t, HousePlan{Shape: s, Covers: map[FacetKind]Cover{Roof: c, SideWall: c, EndWall: c},
		Ground: DefaultGround(ClaySoil()), Climate: DefaultGroundClimate(), Leakage: leaks, FrameAllowance: 0.05})
}

// coefficient returns what a heater in the house would be found to give, the
// ground apart, W/(m² K) of cover: covers, bars and leaks, at the humidity to
// which the house's own vapour brings it, where what condenses and leaks is what
// the crop gives.
func coefficient(t *testing.T, h *House, vapour, wind, sky float64) float64 {
	t.Helper()
	k := DefaultHouseConditions()
	k.Inside, k.Outside, k.SkyDrop, k.Wind = tableRise, 0, sky, wind
	var r HouseLoss
	low, high := 0.0, 1.0
	for range 16 {
		k.InsideHumidity = (low + high) / 2
		require.NoError(t, h.LossTo(&r, &k))
		if r.Evaporation*3600 < vapour*h.Shape().FloorArea {
			low = k.InsideHumidity
		} else {
			high = k.InsideHumidity
		}
	}
	k.InsideHumidity = high
	require.NoError(t, h.LossTo(&r, &k))
	return (r.Cover + r.Frame + r.Leakage.Total) / h.Shape().CoverArea / tableRise
}

// published is a coefficient as measured or printed, W/(m² K), at 0, 4 and 8 m/s;
// a negative one is not known there.
type published struct {
	cover, screen string
	source        string
	at            [3]float64
	dry           bool // nothing evaporated in the house or box
	leaky         int  // index of at from which it lies above ours by what leaks carry
}

func line(still, perWind float64) [3]float64 {
	return [3]float64{still, still + 4*perWind, still + 8*perWind}
}

// spread is how far a measured or printed coefficient may lie outside ours from
// an overcast to a clear sky: lines through the nights of one house scatter by
// more (the compartments of [Hemming19], 5 to 39 %).
const spread = 0.10

// Not run, since they give no numbers to compute from: greenhouse loads of a Turkish
// abstract, of a Turkish exercise and of the leaflets M-6701 and Southern Idaho 2004,
// whose answers could not be read; a north wall, a footing, gables and screens insulated
// at once (30 %, Andersson and Skov 2005); black film over the crop itself (35 %, Acta
// Hort. 51); shares of loss through leaks and ground of a trade page.

// The line of a leaky house rises with the wind by what its leaks carry: from
// there on ours with half an air change lies below by no more than mostLeaks air
// changes more would carry.
const (
	tight     = 3
	mostLeaks = 6.0
)

var publishedLosses = []published{
	{"glass", "", "Mihara and Hayashi 1979, glass, 4.41 + 0.40 w", line(4.41, 0.40), false, 2},
	{"glass", "", "Rafferty, Greenhouses, in Geothermal direct use, table from memory, between 0, 5, 10 and 20 mph", [3]float64{4.34, 5.80, 6.24}, false, tight},
	{"infrared film", "", "Mihara and Hayashi 1979, PVC film, 4.87 + 0.54 w", line(4.87, 0.54), false, 1},
	{"single film", "", "Rafferty, single film, from memory", [3]float64{4.60, 6.08, 6.57}, false, tight},
	{"double film", "", "Rafferty, double film, from memory", [3]float64{3.04, 3.78, 4.02}, false, tight},
	{"double film", "", "Kim and others 2018, Energies 11(3), houses in Korea, wind not stated", [3]float64{-1, 3.85, -1}, false, tight},
	{"double film", "clear", "Kim and others 2018, with thermal curtains", [3]float64{-1, 2.76, -1}, false, tight},
	{"glass", "PVC curtain", "Mihara and Hayashi 1979, PVC curtain, 2.93 + 0.10 w", line(2.93, 0.10), true, tight},
	{"glass", "PE curtain", "Mihara and Hayashi 1979, PE curtain, 3.00 + 0.16 w", line(3.00, 0.16), true, tight},
	{"infrared film", "PVC curtain", "Mihara and Hayashi 1979, PVC and PVC, 2.91 + 0.14 w", line(2.91, 0.14), true, tight},
	{"infrared film", "PE curtain", "Mihara and Hayashi 1979, PVC and PE, 3.15 + 0.17 w", line(3.15, 0.17), true, tight},
	{"twin-wall 6 mm", "", "trade data, ASTM C976, 0.62 Btu/(h ft² °F), near 7 m/s", [3]float64{-1, -1, 3.52}, true, tight},
}

// A house as used agrees with houses as measured: the table of the package
// comment, and every published coefficient beside it.
func TestHousesAsMeasured(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	require.NoError(t, err)
	clear, found := FindLayer("clear screen")
	require.True(t, found)
	open, found := FindLayer("open aluminised screen")
	require.True(t, found)
	film, found := FindLayer("clear film")
	require.True(t, found)
	pvc := film
	pvc.EmittanceOut, pvc.EmittanceIn, pvc.Transmittance = 0.68, 0.68, 0.25 // typical of Materials
	ours, dry := losses{}, losses{}
	var perAir float64 // W/(m² K) of cover of one air change per hour
	for _, c := range []struct {
		name  string
		cover Cover
	}{{"glass", SingleGlass()}, {"single film", SingleFilm()}, {"infrared film", SingleInfraredFilm()}, {"double film", DoubleFilm()}, {"twin-wall 6 mm", TwinWall6()}} {
		for _, s := range []struct {
			name  string
			layer Layer
		}{{"", Layer{}}, {"clear", clear}, {"open strips", open}, {"aluminised", AluminisedScreen()}, {"PVC curtain", pvc}, {"PE curtain", film}} {
			shown := !strings.HasSuffix(s.name, "curtain")
			if !shown && c.name != "glass" && c.name != "infrared film" {
				continue
			}
			cover := c.cover
			if s.name != "" {
				cover, err = WithScreen(c.cover, s.layer)
				require.NoError(t, err)
			}
			h := tableHouse(t, cover)
			key := strings.TrimSpace(fmt.Sprintf("%-15s %s", c.name, s.name))
			var printed [6]float64
			if shown {
				printed = tableRow(t, string(doc), key)
			}
			row := fmt.Sprintf("%-28s", key)
			var x, y [2][3]float64
			perAir = h.Shape().Volume * 1.27 * 1006 / 3600 / h.Shape().CoverArea
			for i, sky := range []float64{cloudySky, clearSky} {
				for j, wind := range []float64{0, 4, 8} {
					x[i][j] = coefficient(t, h, tableVapour, wind, sky)
					if !shown || s.name == "" {
						y[i][j] = coefficient(t, h, 0, wind, sky)
					}
					row += fmt.Sprintf(" %4.1f", x[i][j])
					if shown {
						require.InDelta(t, x[i][j], printed[3*i+j], 0.15, "%s, sky %g K below, %g m/s", key, sky, wind)
					}
				}
				row += "  "
			}
			t.Log(row)
			ours[c.name+"/"+s.name], dry[c.name+"/"+s.name] = x, y
		}
	}
	lossesAsPublished(t, ours, dry, perAir)
	savingsAsMeasured(t, ours, dry)
}

// losses are coefficients under an overcast and a clear sky at 0, 4 and 8 m/s, by
// cover and screen.
type losses map[string][2][3]float64

// lossesAsPublished holds every published coefficient beside ours; perAir is what one
// air change per hour carries, W/(m² K) of cover.
func lossesAsPublished(t *testing.T, ours, dry losses, perAir float64) {
	t.Helper()
	for _, p := range publishedLosses {
		x := ours[p.cover+"/"+p.screen]
		if p.dry {
			x = dry[p.cover+"/"+p.screen]
		}
		for j, v := range p.at {
			if v < 0 {
				continue
			}
			least, most := min(x[0][j], x[1][j]), max(x[0][j], x[1][j])
			if j >= p.leaky {
				more := (v - most) / perAir
				t.Logf("%s at %d m/s: %.2f, ours %.2f to %.2f and %.1f air changes more", p.source, 4*j, v, least, most, more)
				require.Greater(t, more, 0.0, p.source)
				require.Less(t, more, mostLeaks, p.source)
				continue
			}
			t.Logf("%s at %d m/s: %.2f, ours %.2f to %.2f", p.source, 4*j, v, least, most)
			require.GreaterOrEqual(t, v, least*(1-spread), "%s %s at %d m/s: %s", p.cover, p.screen, 4*j, p.source)
			require.LessOrEqual(t, v, most*(1+spread), "%s %s at %d m/s: %s", p.cover, p.screen, 4*j, p.source)
		}
	}
}

// savingsAsMeasured holds the savings of screens and films.
func savingsAsMeasured(t *testing.T, ours, dry losses) {
	t.Helper()
	// Savings of screens as drawn: 22 to 58 % in houses of double film by type and
	// tightness (Roberts and others, Rutgers), 25 to 31 % over three winters there
	// (Parker and others 2014), 25 to 35 % for a first screen (Ontario), about 20 %
	// of open weave; the energy screen of [Hemming19], whose cloth is not told, 38 % with
	// 11 either way. Ours, with leaks and vapour
	// that no screen saves:
	saved := func(a, b [2][3]float64) (least, most float64) {
		least = 1
		for i := range a {
			for j := range a[i] {
				s := 1 - b[i][j]/a[i][j]
				least, most = min(least, s), max(most, s)
			}
		}
		return least, most
	}
	for _, c := range []struct {
		cover, screen string
		least, most   float64
	}{
		{"double film", "clear", 0.13, 0.31}, {"double film", "aluminised", 0.22, 0.58}, {"double film", "open strips", 0.02, 0.22},
		{"glass", "clear", 0.15, 0.38}, {"glass", "aluminised", 0.27, 0.58}, {"single film", "aluminised", 0.27, 0.58},
	} {
		least, most := saved(ours[c.cover+"/"], ours[c.cover+"/"+c.screen])
		t.Logf("%s, %s: saves %.0f to %.0f %%", c.cover, c.screen, 100*least, 100*most)
		require.GreaterOrEqual(t, least, c.least, "%s, %s", c.cover, c.screen)
		require.LessOrEqual(t, most, c.most, "%s, %s", c.cover, c.screen)
	}
	// A second film: 30 to 40 % (Rafferty, read), 34 % (Rasheed and others, abstract, a
	// model held against a hot box). Film that absorbs infrared in place of clear: 12 %
	// in the mean of a hundred audits, up to 30 in a clear cold night (Bartok, a trade
	// article); ours 0 under water, which absorbs it already, and up to 12 % dry.
	for _, c := range []struct {
		what                string
		before, after       [2][3]float64
		least, inside, most float64
	}{
		{"a second film, wet", ours["single film/"], ours["double film/"], 0.15, 0.34, 0.41},
		{"a second film, dry", dry["single film/"], dry["double film/"], 0.15, 0.34, 0.41},
		{"infrared film, wet", ours["single film/"], ours["infrared film/"], -0.01, 0, 0.01},
		{"infrared film, dry", dry["single film/"], dry["infrared film/"], 0.04, 0.12, 0.30},
	} {
		least, most := saved(c.before, c.after)
		t.Logf("%s: saves %.0f to %.0f %%", c.what, 100*least, 100*most)
		require.GreaterOrEqual(t, least, c.least, c.what)
		require.LessOrEqual(t, most, c.most, c.what)
		require.GreaterOrEqual(t, most, c.inside-0.005, c.what)
	}
}

// tableRow reads the six figures of a row of the package comment.
func tableRow(t *testing.T, doc, key string) (v [6]float64) {
	t.Helper()
	_, rest, found := strings.Cut(doc, "\n//\t"+key+"  ")
	require.True(t, found, key)
	rest, _, _ = strings.Cut(rest, "\n")
	n, err := fmt.Sscan(rest, &v[0], &v[1], &v[2], &v[3], &v[4], &v[5])
	require.NoError(t, err, rest)
	require.Equal(t, 6, n)
	return v
}
