package figures

// heaterFigures are those of package airheat.
func heaterFigures() []Figure {
	return []Figure{
		duty(), heatingPipe(), ridgeReturn(), airOrWater(), flueLoss(), woodMoisture(), fuels(), fireInTheHouse(),
		friction(), ductPieces(), ductSize(), operatingPoint(), dividingTee(), branches(), ductHeat(), sweatingDuct(), tubeEvenness(), jetThrow(),
		warmUp(), frostHours(), freezeOut(), soilStore(), rockBed(), seasonMethods(), degreeDays(), setBack(), yearBudget(),
	}
}
