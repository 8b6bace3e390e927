package figures

// ventFigures are those of package ventilation.
func ventFigures() []Figure {
	return []Figure{twoLevelStack(), windAndStack(), hingedVent(), lobbyZones(), pads(), shadePlaces(), doorAndLobby(), grassDay(), carbonDioxide()}
}
