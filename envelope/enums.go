package envelope

import "fmt"

// Names of the choices, for reports and messages.
var (
	edgeNames              = []string{"bare edge", "horizontal edge insulation", "vertical edge insulation"}
	heatFlowNames          = []string{"horizontal", "up", "down"}
	innerFaceNames         = []string{"dry", "wet", "by the dew point"}
	leakageModelNames      = []string{"given", "by pressure test"}
	placeNames             = []string{"at the far end", "at the near end", "at the right side", "at the left side"}
	outsideConvectionNames = []string{"ISO 6946", "Watmuff", "Bot", "Papadakis", "given"}
	skyPatternNames        = []string{"even", "weighted to the horizon"}
	radiantRoomNames       = []string{"enclosure", "black at the inside air", "given"}
	insideConvectionNames  = []string{"ISO 15099", "ISO 6946", "Papadakis", "Baille", "upright plate", "given"}
)

// name returns the name of choice i, or its number when there is none.
func name(names []string, what string, i uint8) string {
	if int(i) < len(names) {
		return names[i]
	}
	return fmt.Sprintf("%s %d", what, i)
}

// String names the edge insulation.
func (e Edge) String() string { return name(edgeNames, "edge", uint8(e)) }

// String names the direction.
func (f HeatFlow) String() string { return name(heatFlowNames, "heat flow", uint8(f)) }

// String names the treatment of the face.
func (f InnerFace) String() string { return name(innerFaceNames, "inner face", uint8(f)) }

// String names the model.
func (m LeakageModel) String() string { return name(leakageModelNames, "leakage model", uint8(m)) }

// String names the place.
func (p Place) String() string { return name(placeNames, "place", uint8(p)) }

// String names the correlation.
func (m OutsideConvection) String() string {
	return name(outsideConvectionNames, "outside convection", uint8(m))
}

// String names the correlation.
func (m InsideConvection) String() string {
	return name(insideConvectionNames, "inside convection", uint8(m))
}

// String names the radiant surroundings.
func (r RadiantRoom) String() string { return name(radiantRoomNames, "radiant room", uint8(r)) }

// String names the pattern.
func (s SkyPattern) String() string { return name(skyPatternNames, "sky pattern", uint8(s)) }

// String names the section.
func (s Section) String() string { return name(sectionNames, "section", uint8(s)) }

// String names the kind.
func (k FacetKind) String() string { return name(facetNames, "facet kind", uint8(k)) }
