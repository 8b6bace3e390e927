package answers

import (
	"fmt"
	"math"

	"cloche.example/examples/internal/fromplan"
	"cloche.example/psychro"
)

// seasonLoss is the loss per kelvin at the mean of the heated months under the
// season's wind and cloud, with the screen drawn for its share of the time. The
// ground counts with its steady coefficient.
func (h *House) seasonLoss(y *Year) error {
	p := h.Plan
	mean, rh, night, cold, n := 0.0, 0.0, 0.0, 0.0, 0.0
	for i, t := range p.Site.Months.Temperature {
		if t < y.SetPoint {
			n++
			mean, rh = mean+t, rh+p.Site.Months.RelativeHumidity[i]
			night += 1 - dayLength(p.Site.Latitude, i+1)/24
			if p.Screen != nil && t < p.Screen.OutsideBelow {
				cold++
			}
		}
	}
	if n == 0 {
		mean, rh, night, n = p.Site.WinterNight.Temperature, p.Site.WinterNight.RelativeHumidity, 0.5, 1
	}
	y.Outside = min(mean/n, y.SetPoint-0.5)
	outside, err := fromplan.Air(p, y.Outside, rh/n)
	if err != nil {
		return err
	}
	drawn := 0.0
	if q := p.Screen; q != nil {
		drawn = map[string]float64{"at night": night / n, "always": 1, "in the cold": cold / n}[q.Drawn]
	}
	of := func(screen bool) (float64, error) { return h.meanLoss(y, outside, night/n, screen) }
	bare, screened := 0.0, 0.0
	if drawn > 0 {
		if screened, err = of(true); err != nil {
			return err
		}
	}
	if drawn < 1 {
		if bare, err = of(false); err != nil {
			return err
		}
	}
	y.Loss = math.Max(0.001, bare*(1-drawn)+screened*drawn)
	return nil
}

// meanLoss is the loss per kelvin in the mean of the heated months. The humidity is
// what the crop's water makes of it, no more than the plan's limit: outside air
// carries the rest away. Heat that evaporates water and warms that air is the
// heater's by night; by day it is the sun's, which loses it in what it gives.
func (h *House) meanLoss(y *Year, outside psychro.State, night float64, screen bool) (float64, error) {
	p := h.Plan
	rise := y.SetPoint - y.Outside
	w := weather{outside, p.Site.HeatingSeason.Wind, p.Site.HeatingSeason.Cloud, 1, screen}
	air, r, _, err := h.settled(w, y.SetPoint)
	if err != nil {
		return 0, fmt.Errorf("the year's loss: %w", err)
	}
	vented, drier := 0.0, 0.0
	if limit := p.SetPoints.Limits.RelativeHumidity; air.Inside.RelativeHumidity() > limit {
		held := air
		if held.Inside, err = fromplan.Air(p, y.SetPoint, limit); err != nil {
			return 0, err
		}
		at, err := h.loss(held, w.month, screen)
		if err != nil {
			return 0, fmt.Errorf("the year's loss: %w", err)
		}
		if drier = held.Inside.HumidityRatio() - outside.HumidityRatio(); drier > 0 {
			air, r = held, at
			vented = max(0, p.Crop.Vapour-Evaporation(&r, air)) / 3600 / drier
		}
	}
	y.Humidity, y.air, y.loss = air.Inside.RelativeHumidity(), air, r
	y.Vented = vented * air.Inside.SpecificVolume()
	latent := r.Latent + vented*drier*psychro.LatentHeat(y.SetPoint)
	warmed := vented * outside.HeatCapacity() * rise
	ground := h.Envelope.Ground().Total
	if p.Assumptions.NoGroundLoss {
		ground = 0
	}
	return (r.Total-r.Latent-r.Ground.Total+night*(latent+warmed))/rise + ground, nil
}
