package lighting

// band returns the band of that name.
func band(name string) Band {
	ends := map[string][2]float64{"ultraviolet": {100, 400}, "extended 400-750 nm": {400, 750}, "blue": {400, 500}, "green": {500, 600}, "red": {600, 700}}
	return Band{name, ends[name][0], ends[name][1]}
}
