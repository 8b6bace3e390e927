package figures

// ventFigures are those of package ventilation.
func ventFigures() []Figure {
	return []Figure{
		twoLevelStack(), windAndStack(), hingedVent(), lobbyZones(), windExposure(), ventsAtOneLevel(), insectScreen(), openedAgainstTheWind(), dugInHouse(), coldAirOnTheCrop(),
		pads(), shadePlaces(), doorAndLobby(), grassDay(), carbonDioxide(),
	}
}
