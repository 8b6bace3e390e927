package ventilation

// drying is where the search for the humidity ended last, an hour or a turn ago.
type drying struct {
	opening float64 // fraction, of the vents
	warm    float64 // °C, inside
}

// settleSteps ends the search for a humidity; three are usual from near.
const settleSteps = 60

// dry opens the vents up to Dry and then warms by up to Lift, as far as keeps the
// humidity at its limit; it does not warm where that leaves the air no drier, as heat
// that shines on wet floors may.
func (o *keeping) dry(most float64) error {
	limit := o.t.Humidity
	u := o.k.opening
	over := func(u, warm float64) (float64, error) {
		o.short = false
		err := o.warmed(u, warm)
		return o.humidity() - limit, err
	}
	damp := o.humidity() - limit
	top := max(u, min(o.t.Dry, most))
	if top > u {
		f, err := o.settleOn(u, damp, top, &o.drying.opening, func(u float64) (float64, error) { return over(u, o.t.Warm) })
		if err != nil || f <= 0 {
			o.dried = byVents
			return err
		}
		damp = f
	}
	o.topped = true
	warm := max(o.t.Warm, o.x.air)
	high := min(o.t.Warm+o.t.Lift, o.t.Vent)
	if high <= warm {
		o.short = true
		return nil
	}
	f, err := o.settleOn(warm, damp, high, &o.drying.warm, func(t float64) (float64, error) { return over(top, t) })
	if err == nil && f > 0 && f >= damp {
		_, err = over(top, o.t.Warm)
		o.short = true
		return err
	}
	o.short = o.short || f > 0
	if o.lifted = f > 0; !o.lifted {
		o.dried = byHeater
	}
	return err
}

// settleOn finds where f, which is fa above zero at a, falls to zero on the way to
// b, from near where that lies between, and leaves the state a little on its not
// humid side: that at b, with what f is there, where f stays above zero, and
// where one on the way is not found.
func (o *keeping) settleOn(a, fa, b float64, near *float64, f func(float64) (float64, error)) (float64, error) {
	low, high, bracketed := a, b, false
	last, before := a, fa
	x := *near
	if !(x > a && x < b) {
		x = b
	}
	for range settleSteps {
		y, err := f(x)
		if err != nil && x != b {
			break
		}
		if err != nil || x == b && y > 0 {
			*near = b
			return y, err
		}
		if y > 0 {
			low = x
		} else {
			high, bracketed = x, true
		}
		root := x - y*(x-last)/(y-before)
		if y <= 0 && (high-low <= humidTolerance || x-root <= humidTolerance) {
			*near = x
			return y, nil
		}
		last, before = x, y
		x = root + humidTolerance/2
		if !(x > low && x < high) {
			x = b
			if bracketed {
				x = (low + high) / 2
			}
		}
	}
	*near = b
	return f(b)
}
