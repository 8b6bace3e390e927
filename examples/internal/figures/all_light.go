package figures

// lightFigures are those of package lighting.
func lightFigures() []Figure {
	return []Figure{spots(), lightFactors(), inverseSquare(), luxToPhotons(), dailyLight(), darkDay(), sunOfDay(), fao56Sun()}
}
