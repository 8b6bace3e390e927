package ventilation

import "math"

// Slopes returns the slopes of the five balances by Newton's method and by a small
// step of each unknown, at canopy, floor and lining, °C, vapour, Pa, and air, °C;
// with saturated inside air the vapour is that of its temperature and the unknown
// the drip, at is kg/s in its place.
func Slopes(c *Climate, w Weather, s Setting, at [5]float64, wet bool) (exact, steps [5][5]float64, err error) {
	var k climateCase
	if err = c.prepare(&k, &w, &s); err != nil {
		return exact, steps, err
	}
	nodes := func(v [5]float64) climateNodes {
		x := climateNodes{canopy: v[onCanopy], floor: v[onFloor], lining: v[onLining], vapour: v[onWater], air: v[onAir], wet: wet}
		if wet {
			x.drip = v[onWater]
			x.vapour, _ = saturation(x.air)
		}
		return x
	}
	k.lastDrive = math.NaN()
	x := nodes(at)
	m, rate, byPa := k.exchangeAndRate(&x)
	k.evaluate(&x, m, rate, byPa, true)
	exact = k.jacobian
	for i := range at {
		step := 1e-3
		if i == onWater {
			step = 0.1
			if wet {
				step = 1e-5
			}
		}
		sides := [2][5]float64{}
		for j, sign := range [2]float64{-1, 1} {
			v := at
			v[i] += sign * step
			x := nodes(v)
			k.evaluate(&x, k.exchange(&x), 0, 0, false)
			sides[j] = k.residual
		}
		for r := range steps {
			steps[r][i] = (sides[1][r] - sides[0][r]) / (2 * step)
		}
	}
	return exact, steps, nil
}
