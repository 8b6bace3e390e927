package figures

// airFigures are those of package psychro.
func airFigures() []Figure {
	return []Figure{
		readChart(), wetBulb(), altitude(), altitudes(), rivals(), heatingAir(), coolingCoil(), bypassedCoil(), hotAir(), mixing(), humidifying(),
		recirculation(), bulbs(), supercooled(), hours(), leafDeficit(), condensation(), dryingByHeating(), transport(), wetPad(),
	}
}
