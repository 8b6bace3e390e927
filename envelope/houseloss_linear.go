package envelope

// LinearLoss is a house's loss near a state, for transients over hours and
// for other temperatures of a season: coefficients that multiply the inside
// less the outside air, and constants. Coefficients of covers are secants with
// the convection of the state.
type LinearLoss struct {
	Inside      float64 // °C, of the state
	Outside     float64 // °C, of the state
	CoverAir    float64 // W/K, air-driven loss of covers and frame
	Doors       float64 // W/K
	Bridges     float64 // W/K
	Partitions  float64 // W/K, into annexes, from their temperature at the state
	Leakage     float64 // W/K, sensible
	Ground      float64 // W/K, steady coefficient: for annual means, not within hours
	GroundFlow  float64 // W, of the month; over hours the ground does not follow the air
	SkyDriven   float64 // W, of covers and frame
	SunDriven   float64 // W, of covers
	Latent      float64 // W, of leakage
	OtherDriven float64 // W, what remains of covers: latent heat, and an inside radiant temperature that differs from the air
}

// Air returns the coefficient in W/K of all that follows the outside air
// within the hour: covers, doors, bridges, partitions and leakage.
func (l LinearLoss) Air() float64 {
	return l.CoverAir + l.Doors + l.Bridges + l.Partitions + l.Leakage
}

// Constant returns in W what does not follow the air: sky, sun, the month's
// ground flow, vapour.
func (l LinearLoss) Constant() float64 {
	return l.GroundFlow + l.SkyDriven + l.SunDriven + l.Latent + l.OtherDriven
}

// Loss returns the loss in W at other inside and outside temperatures in °C,
// with sky, sun, ground and humidity as at the state. At the state itself it
// is HouseLoss.Total.
func (l LinearLoss) Loss(inside, outside float64) float64 {
	return l.Air()*(inside-outside) + l.Constant()
}

// finish takes the remaining terms from the loss at the state.
func (l *LinearLoss) finish(r *HouseLoss, ground float64) {
	dt := l.Inside - l.Outside
	l.Leakage, l.Ground, l.GroundFlow = r.Leakage.Coefficient, ground, r.Ground.Total
	l.SunDriven, l.Latent = r.CoverSun, r.Leakage.Latent
	if dt != 0 {
		l.Partitions = r.Partitions / dt
	} else {
		l.OtherDriven += r.Partitions
	}
	l.OtherDriven += r.Cover + r.Frame - l.CoverAir*dt - l.SkyDriven - l.SunDriven
}
