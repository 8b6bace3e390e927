package envelope

// LossTerm is one term of a house's loss.
type LossTerm struct {
	Name  string  // what loses
	Loss  float64 // W
	Share float64 // fraction of the total; NaN for a total of zero
}

// Terms returns the terms of the loss in W with their shares, the facets
// first; they sum to Total. Latent heat of leakage stands apart.
func (r HouseLoss) Terms() []LossTerm {
	terms := make([]LossTerm, 0, len(r.Facets)+7)
	add := func(name string, loss float64) {
		terms = append(terms, LossTerm{name, loss, quotient(loss, r.Total)})
	}
	for i := range r.Facets {
		add(r.Facets[i].Name, r.Facets[i].Loss)
	}
	add("frame", r.Frame)
	add("doors", r.Doors)
	add("thermal bridges", r.Bridges)
	add("ground and buried walls", r.Ground.Total)
	add("leakage, sensible", r.Leakage.Sensible)
	add("leakage, latent", r.Leakage.Latent)
	if len(r.Annexes) > 0 {
		add("walls to annexes", r.Partitions)
	}
	return terms
}
