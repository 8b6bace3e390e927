package figures

// lightFigures are those of package lighting.
func lightFigures() []Figure {
	return []Figure{
		inverseSquare(), beamAndExponent(), spots(), lightFactors(), mapAndEvenness(), waysToHang(), dimming(), roomLight(), fewestFixtures(),
		luxToPhotons(), spectra(), candelaToPhotons(), photonWeb(), photometricFile(), dailyLight(),
		sunOfDay(), sunPaths(), fao56Sun(), hourSplit(), darkDay(), darkDays(),
	}
}
