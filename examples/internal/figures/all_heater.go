package figures

// heaterFigures are those of package airheat.
func heaterFigures() []Figure {
	return []Figure{
		duty(), flueLoss(), woodMoisture(), fuels(), fireInTheHouse(),
		friction(), ductPieces(), operatingPoint(), branches(), sweatingDuct(), tubeEvenness(), jetThrow(),
		warmUp(), frostHours(), freezeOut(), soilStore(), rockBed(), seasonMethods(),
	}
}
