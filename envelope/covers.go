package envelope

// Ready-made layers, typical values of Materials.
var (
	clearFilm         = Layer{Name: "clear film", EmittanceOut: 0.28, EmittanceIn: 0.28, Transmittance: 0.65, Thickness: 0.15e-3, Conductivity: 0.33}
	infraredFilm      = Layer{Name: "infrared film", EmittanceOut: 0.68, EmittanceIn: 0.68, Transmittance: 0.25, Thickness: 0.18e-3, Conductivity: 0.33}
	fluoropolymerFilm = Layer{Name: "ETFE film", EmittanceOut: 0.65, EmittanceIn: 0.65, Transmittance: 0.25, Thickness: 0.1e-3, Conductivity: 0.24}
	evaFilm           = Layer{Name: "EVA film", EmittanceOut: 0.63, EmittanceIn: 0.63, Transmittance: 0.30, Thickness: 0.18e-3, Conductivity: 0.34}
	glass4            = Layer{Name: "glass", EmittanceOut: 0.84, EmittanceIn: 0.84, Thickness: 0.004, Conductivity: 1}
	polycarbonateSkin = Layer{Name: "polycarbonate wall", EmittanceOut: 0.89, EmittanceIn: 0.89, Transmittance: 0.05, Thickness: 0.5e-3, Conductivity: 0.20}
	aluminisedScreen  = Layer{Name: "aluminised screen", EmittanceOut: 0.30, EmittanceIn: 0.60, Transmittance: 0.05, Thickness: 0.2e-3, Conductivity: 0.2, Leakage: 0.0005}
	openScreen        = Layer{Name: "open aluminised screen", EmittanceOut: 0.30, EmittanceIn: 0.60, Transmittance: 0.05, Thickness: 0.2e-3, Conductivity: 0.2, Openness: 0.4, Leakage: 0.01}
	clearScreen       = Layer{Name: "clear screen", EmittanceOut: 0.55, EmittanceIn: 0.55, Transmittance: 0.35, Thickness: 0.2e-3, Conductivity: 0.2, Leakage: 0.001}
)

// readyLayers returns the ready-made layers.
func readyLayers() []Layer {
	return []Layer{clearFilm, infraredFilm, fluoropolymerFilm, evaFilm, glass4, polycarbonateSkin, aluminisedScreen, openScreen, clearScreen}
}

// FindLayer returns the ready-made layer of the name, and whether there is one:
// "clear film" (0.15 mm), "infrared film" (0.18 mm), "ETFE film" (0.1 mm), "EVA
// film" (0.18 mm), "glass" (4 mm), "polycarbonate wall" (0.5 mm, of a hollow
// sheet), "aluminised screen" (closed), "open aluminised screen" (open strips),
// "clear screen" (closed). Screens have their bright face outward. All values
// are typical ones of Materials.
func FindLayer(name string) (Layer, bool) {
	for _, l := range readyLayers() {
		if l.Name == name {
			return l, true
		}
	}
	return Layer{}, false
}

// AluminisedScreen returns a closed screen, bright face outward.
func AluminisedScreen() Layer { return aluminisedScreen }

// ribFraction is the share of a hollow sheet's section that its ribs take
// (from memory: 0.01 to 0.04).
const ribFraction = 0.02

// SheetGap returns the gap of a hollow sheet, width in m, with its ribs as a
// parallel conductance.
func SheetGap(width float64) Gap {
	return Gap{Width: width, Bridge: ribFraction * polycarbonateSkin.Conductivity / width}
}

// NamedCover is a ready-made cover with its light for normal incidence.
type NamedCover struct {
	Name  string  // what it is, no brand
	Cover Cover   // for heat
	Light float64 // fraction of light at normal incidence, clean and dry; typical values from memory, see Materials
}

// must builds a cover from the table's own values, which the tests build too.
func must(layers []Layer, gaps ...Gap) Cover {
	c, _ := NewCover(layers, gaps)
	return c
}

// SingleFilm returns one clear polyethylene film.
func SingleFilm() Cover { return must([]Layer{clearFilm}) }

// SingleInfraredFilm returns one infrared-absorbing polyethylene film.
func SingleInfraredFilm() Cover { return must([]Layer{infraredFilm}) }

// inflated is the usual space in m of an inflated double film.
const inflated = 0.1

// DoubleFilm returns two clear films held 100 mm apart by a blower.
func DoubleFilm() Cover { return must([]Layer{clearFilm, clearFilm}, Gap{Width: inflated}) }

// DoubleInfraredFilm returns a clear film outside and an infrared-absorbing
// one inside, 100 mm apart.
func DoubleInfraredFilm() Cover { return must([]Layer{clearFilm, infraredFilm}, Gap{Width: inflated}) }

// SingleGlass returns one pane of 4 mm.
func SingleGlass() Cover { return must([]Layer{glass4}) }

// DoubleGlass returns two panes of 4 mm, 12 mm apart.
func DoubleGlass() Cover { return must([]Layer{glass4, glass4}, Gap{Width: 0.012}) }

// TwinWall6 returns a hollow polycarbonate sheet of 6 mm.
func TwinWall6() Cover {
	return must([]Layer{polycarbonateSkin, polycarbonateSkin}, SheetGap(0.005))
}

// TwinWall10 returns a hollow polycarbonate sheet of 10 mm.
func TwinWall10() Cover {
	return must([]Layer{polycarbonateSkin, polycarbonateSkin}, SheetGap(0.009))
}

// TripleWall16 returns a hollow polycarbonate sheet of 16 mm with three walls.
func TripleWall16() Cover {
	return must([]Layer{polycarbonateSkin, polycarbonateSkin, polycarbonateSkin}, SheetGap(0.00725), SheetGap(0.00725))
}

// readyCovers are the ready-made covers, from the simplest on.
var readyCovers = [...]struct {
	name  string
	cover func() Cover
	light float64
}{
	{"single film", SingleFilm, 0.88},
	{"single infrared film", SingleInfraredFilm, 0.87},
	{"double film", DoubleFilm, 0.78},
	{"double film, infrared inside", DoubleInfraredFilm, 0.77},
	{"single glass", SingleGlass, 0.90},
	{"double glass", DoubleGlass, 0.81},
	{"twin-wall sheet 6 mm", TwinWall6, 0.80},
	{"twin-wall sheet 10 mm", TwinWall10, 0.80},
	{"triple-wall sheet 16 mm", TripleWall16, 0.72},
}

// Covers returns the ready-made covers, from the simplest on.
func Covers() (list []NamedCover) {
	for _, c := range readyCovers {
		list = append(list, NamedCover{c.name, c.cover(), c.light})
	}
	return list
}

// FindCover returns the ready-made cover of the name, as Covers lists them, and
// whether there is one.
func FindCover(name string) (NamedCover, bool) {
	for _, c := range readyCovers {
		if c.name == name {
			return NamedCover{c.name, c.cover(), c.light}, true
		}
	}
	return NamedCover{}, false
}
