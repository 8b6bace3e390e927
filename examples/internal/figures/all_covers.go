package figures

// coverFigures are those of package envelope.
func coverFigures() []Figure {
	return []Figure{
		nightSky(), filmAtNight(), wetOrDry(), convection(), ownCover(), sealedGlazing(), paneLight(),
		controllerTick(), archLoss(), filmHouse(), radiantRoom(), ownFacets(), wallLayers(), bareFloor(), slab(),
	}
}
