package figures

// coverFigures are those of package envelope.
func coverFigures() []Figure {
	return []Figure{
		nightSky(), filmAtNight(), doubleFilm(), wetOrDry(), curtain(), screenEdges(), convection(), ownCover(), sealedGlazing(), coatedGlazing(), paneLight(),
		controllerTick(), houseVapour(), archLoss(), filmHouse(), radiantRoom(), ownFacets(), leakage(), sunThroughCover(), bedLight(), wallLayers(), bareFloor(), slab(),
	}
}
