package figures

// ventFigures are those of package ventilation.
func ventFigures() []Figure {
	return []Figure{
		twoLevelStack(), windAndStack(), hingedVent(), lobbyZones(), windExposure(), ventsAtOneLevel(), insectScreen(), openedAgainstTheWind(), dugInHouse(), coldAirOnTheCrop(), openings(),
		pads(), ventsForSummerNoon(), summerNoon(), heatAndVents(), ownController(), fogAndWhitening(), rulesOfPractice(), shadePlaces(), doorAndLobby(), dryingAWinterMorning(), transpiration(), grassDay(), rivalsOfAnHour(), carbonDioxide(),
		realHouseAtNight(), hoursUnderARule(), dayAndNight(), houseJoined(),
	}
}
