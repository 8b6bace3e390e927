package plan

import (
	"math"
)

// The defaults that follow from other keys. Proportions are those of the demo
// house, or common practice without a source.

func zoneRule(p *Plan, _ int) float64 { return math.Round(p.Site.Longitude / 15) }

// ridgeRule gives a gable a slope of 29 degrees, a lean-to one of 22, and
// arches three quarters of a half circle.
func ridgeRule(p *Plan, _ int) float64 {
	rise := map[string]float64{"round arch": 0.375, "pointed arch": 0.42, "lean-to": 0.4, "uneven gable": 0.25}
	share, ok := rise[p.House.Shape]
	if !ok {
		share = 0.28
	}
	return p.House.EaveHeight + math.Max(0.3, share*p.House.Span)
}

func offsetRule(p *Plan, _ int) float64 { return p.House.Span / 3 }

func annexwidthRule(p *Plan, at int) float64 {
	return math.Min(2, 0.5*placeLength(p.House, p.House.Annexes[at].Place))
}

func annexhighRule(p *Plan, at int) float64 {
	return math.Min(2.2, 0.99*wallHeight(p.House, p.House.Annexes[at].Place))
}

func annexlowRule(p *Plan, at int) float64 { return 0.95 * p.House.Annexes[at].High }

func doorheightRule(p *Plan, at int) float64 {
	sill := p.House.Doors[at].Sill
	return math.Min(2, 0.9*(wallHeight(p.House, p.House.Doors[at].Place)-sill))
}

// floorArea is the floor of the house without annexes, m².
func floorArea(h House) float64 {
	bays := float64(h.Bays)
	return h.Length * (bays*h.Span + (bays-1)*h.GutterWidth)
}

func cropheightRule(p *Plan, _ int) float64 {
	return math.Min(1, 0.6*(p.House.RidgeHeight+p.House.Depth))
}

// A crop sets 20 g/(m² h) free in a closed house at night, as measured houses
// do, and several times that on a morning after watering.
func vapourRule(p *Plan, _ int) float64     { return 0.02 * floorArea(p.House) }
func dampRule(p *Plan, _ int) float64       { return 0.074 * floorArea(p.House) }
func powerRule(p *Plan, _ int) float64      { return 360 * floorArea(p.House) }
func heaterflowRule(p *Plan, _ int) float64 { return 0.022 * p.Heater.Power / 1000 }

// priceRule gives fuel a price by heat when it has none.
func priceRule(p *Plan, _ int) float64 {
	if u := p.Heater.Fuel; u.PricePerKg != nil || u.PricePerM3 != nil || u.PricePerL != nil {
		return math.NaN()
	}
	return 0.08
}

// gasvalueRule and oilvalueRule give a fuel that is paid by volume its lower
// heating value, MJ/m³ and MJ/L; from memory.
func gasvalueRule(p *Plan, _ int) float64 {
	return valueOf(p.Heater.Fuel, p.Heater.Fuel.PricePerM3, map[string]float64{"natural gas": 36, "propane": 93})
}

func oilvalueRule(p *Plan, _ int) float64 {
	return valueOf(p.Heater.Fuel, p.Heater.Fuel.PricePerL, map[string]float64{"light oil": 36, "propane": 23.5})
}

func valueOf(f Fuel, price *float64, values map[string]float64) float64 {
	if v, ok := values[f.Name]; ok && price != nil {
		return v
	}
	return math.NaN()
}

func mixingRule(p *Plan, _ int) float64   { return 0.4 * p.Heater.Flow }
func stirringRule(p *Plan, _ int) float64 { return p.Heater.Flow }

// structureRule is that of envelope's default stores.
func structureRule(p *Plan, _ int) float64 { return 120 * floorArea(p.House) }

func watersurfaceRule(p *Plan, at int) float64 {
	return 6 * math.Pow(p.HeatStorage.Water[at].Volume, 2.0/3)
}

func tubelengthRule(p *Plan, _ int) float64 { return p.House.Length }

func storetubesRule(p *Plan, _ int) float64 {
	return 0.9 * float64(p.House.Bays) * p.House.Span / p.SoilStore.Spacing
}

func tuberowsRule(p *Plan, _ int) float64 {
	t := p.PerforatedTube
	return 1 + (0.97*p.House.Length-t.LeadIn)/t.Pitch
}

func perrowRule(p *Plan, _ int) float64    { return math.Round(p.Lights.BedLength / 1.4) }
func bedlengthRule(p *Plan, _ int) float64 { return 0.75 * p.House.Length }
func bedwidthRule(p *Plan, _ int) float64  { return 0.55 * p.House.Span }

func trayheightRule(p *Plan, _ int) float64 {
	return math.Min(0.8, 0.25*(p.House.RidgeHeight+p.House.Depth))
}

func lampheightRule(p *Plan, _ int) float64 {
	l := p.Lights
	room := p.House.RidgeHeight + p.House.Depth - l.TraysAboveFloor - float64(l.Tiers-1)*l.TierRise
	return math.Min(1.15, 0.8*room)
}

func ventlengthRule(p *Plan, at int) float64 { return 0.8 * placeLength(p.House, p.Vents[at].Place) }

func ventheightRule(p *Plan, at int) float64 {
	return math.Min(0.5, 0.8*placeHeight(p.House, p.Vents[at].Place))
}

func ventcentreRule(p *Plan, at int) float64 {
	v, h := p.Vents[at], p.House
	switch v.Place {
	case "left side", "right side":
		return math.Max(v.Height/2, h.EaveHeight-v.Height/2-0.05)
	case "near end", "far end":
		return math.Max(v.Height/2, h.EaveHeight)
	}
	return h.RidgeHeight
}

func fancentreRule(p *Plan, _ int) float64 { return p.House.EaveHeight / 2 }

// placeLength is how long a wall, a slope or the ridge is, m: for the ridge of
// all bays.
func placeLength(h House, place string) float64 {
	bays := float64(h.Bays)
	switch place {
	case "near end", "far end":
		return bays*h.Span + (bays-1)*h.GutterWidth
	case "ridge", "left roof", "right roof":
		return bays * h.Length
	}
	return h.Length
}

// wallHeight is how high a wall reaches above the ground outside, m: a side to
// the eave, an end to the ridge, and so a lean-to's back wall on the left.
func wallHeight(h House, place string) float64 {
	if place == "right side" || place == "left side" && h.Shape != "lean-to" {
		return h.EaveHeight
	}
	return h.RidgeHeight
}

// placeHeight is how high a vent may reach, m: as far as the wall, and in the
// cover of an arch up to the ridge.
func placeHeight(h House, place string) float64 {
	if h.Shape == "round arch" || h.Shape == "pointed arch" {
		return h.RidgeHeight
	}
	return wallHeight(h, place)
}
