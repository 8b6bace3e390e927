package figures

// lightFigures are those of package lighting.
func lightFigures() []Figure {
	return []Figure{
		inverseSquare(), spots(), lightFactors(), mapAndEvenness(), waysToHang(), dimming(), roomLight(), fewestFixtures(),
		luxToPhotons(), candelaToPhotons(), photonWeb(), photometricFile(), dailyLight(),
		sunOfDay(), sunPaths(), fao56Sun(), hourSplit(), darkDay(),
	}
}
