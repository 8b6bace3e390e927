package envelope

// table readies the rows of I - F r for the exchange between the facets, with r
// what each sends back of what it sees, and as many right-hand sides.
func (c *HouseCovers) table(sides int, back func(i int) float64) {
	n := len(c.facets)
	if cap(c.matrix) < n*(n+seenBy) {
		c.matrix = make([]float64, n*(n+seenBy))
	}
	c.matrix = c.matrix[:n*(n+sides)]
	wide := n + sides
	for j := range c.facets {
		r := back(j)
		for i := range n {
			c.matrix[i*wide+j] = -r * c.house.room.share[i*n+j]
		}
	}
	for i := range n {
		c.matrix[i*wide+i]++
		clear(c.matrix[i*wide+n : (i+1)*wide])
	}
}

// exchange finds how what each facet sees must move for all to agree, and how it
// moves with each drive, of which floor and crop emit glow, W/m².
func (c *HouseCovers) exchange(glow float64) {
	n := len(c.facets)
	wide := n + seenBy
	room := &c.house.room
	c.table(seenBy, func(i int) float64 { return 1 - c.facets[i].slope[glowTakes][glowDrive] })
	for i := range c.facets {
		row := c.matrix[i*wide+n : (i+1)*wide]
		row[0] = room.warm[i]*glow - c.facets[i].seen
		row[1+glowDrive] = room.warm[i]
		for j, share := range room.share[i*n : i*n+n] {
			if share == 0 {
				continue
			}
			f := &c.facets[j]
			row[0] += share * f.sent
			row[1+airDrive] -= share * f.slope[glowTakes][airDrive]
			row[1+vapourDrive] -= share * f.slope[glowTakes][vapourDrive]
		}
		c.Open = max(c.Open, abs(row[0]))
	}
	eliminateRows(c.matrix, n, seenBy)
	for i := range c.facets {
		copy(c.facets[i].by[:], c.matrix[i*wide+n:(i+1)*wide])
	}
}

// spread finds the flux of each facet that sky and sun drive, what they warm or
// cool of one facet felt by the others.
func (c *HouseCovers) spread() {
	const sides, sky, sun = 2, 0, 1
	n := len(c.facets)
	for i := range c.facets {
		f := &c.facets[i]
		f.bySky, f.bySun = f.split.flux[driveSky], f.split.flux[driveSun]
	}
	if len(c.house.room.share) == 0 {
		return
	}
	c.table(sides, func(i int) float64 { return c.facets[i].split.radiosity[driveRoom] })
	wide := n + sides
	for i := range c.facets {
		row := c.matrix[i*wide+n : (i+1)*wide]
		for j, share := range c.house.room.share[i*n : i*n+n] {
			row[sky] += share * c.facets[j].split.radiosity[driveSky]
			row[sun] += share * c.facets[j].split.radiosity[driveSun]
		}
	}
	eliminateRows(c.matrix, n, sides)
	for i := range c.facets {
		f := &c.facets[i]
		f.bySky += f.split.flux[driveRoom] * c.matrix[i*wide+n+sky]
		f.bySun += f.split.flux[driveRoom] * c.matrix[i*wide+n+sun]
	}
}
