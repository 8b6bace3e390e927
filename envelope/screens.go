package envelope

// screenGap is the usual space in m between a cover and the screen under it.
const screenGap = 0.2

// A screen as it is drawn in a house.
const (
	drawnGap     = 0.02   // fraction of its area open at edges and joints, where measured screens have 0.01 to 0.02 [DeZwart96]
	drawnLeakage = 1.2e-3 // m³/(s m²), air through that gap at 10 K across the screen [DeZwart96]
)

// WithScreen returns the cover c with the screen drawn 200 mm below it, as it is
// in a house: a fiftieth of its area stays open at edges and joints, 1.2 L/(s m²)
// of air pass there beside what the cloth lets through, and the vapour that goes
// with it has wetted the face above. WithSealedScreen has none of that. The
// error joins a *RangeError for each fault.
func WithScreen(c Cover, screen Layer) (Cover, error) {
	layers := c.Layers()
	if n := len(layers); n > 0 {
		layers[n-1] = layers[n-1].wetted()
	}
	drawn := screen
	if fractionRange.Contains(screen.Openness) && layerLeakageRange.Contains(screen.Leakage) {
		drawn.Openness += drawnGap * (1 - screen.Openness)
		drawn.Leakage += drawnLeakage * (1 - screen.Openness)
	}
	return withScreen(c, layers, drawn)
}

// WithSealedScreen returns the cover c with the screen 200 mm below it, its
// edges sealed and the face above it dry: what a hot box measures and a data
// sheet states. It saves more than a screen drawn in a house.
func WithSealedScreen(c Cover, screen Layer) (Cover, error) {
	return withScreen(c, c.Layers(), screen)
}

func withScreen(c Cover, layers []Layer, screen Layer) (Cover, error) {
	if len(layers) == 0 {
		return Cover{}, layerCountRange.Check("number of layers of the cover", 0)
	}
	return NewCover(append(layers, screen), append(c.Gaps(), Gap{Width: screenGap}))
}

// wetted returns the layer under a film of water on its inner face: opaque, and
// seen from outside with the water behind it. Rays that pass the layer are
// reflected by the water with 1 - 0.95, once and again.
func (l Layer) wetted() Layer {
	rho, tau, back := 1-l.EmittanceOut-l.Transmittance, l.Transmittance, 1-l.EmittanceIn-l.Transmittance
	l.EmittanceOut = 1 - rho - tau*tau*(1-wetEmittance)/(1-back*(1-wetEmittance))
	l.EmittanceIn, l.Transmittance = wetEmittance, 0
	return l
}
