package main

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"cloche.example/examples/internal/answers"
	"cloche.example/examples/internal/fromplan"
	"cloche.example/internal/constant"
	"cloche.example/internal/domain"
	"cloche.example/ventilation"
)

// downward is the angle, degree, at which air enters at the ridge and by roof
// vents: down along the slope; that of walls is level. Common practice, no source.
const downward = -45

// order is a way to open the vents, one kind after the other.
type order struct {
	name   string
	groups [][]int // of openings; the first opens first
}

// house is the plan's house with the cold at its vents.
type house struct {
	choice
	vents  ventilation.ColdVents
	orders []order
	from   []int // index of the plan's vent, by opening
	volume float64
	leaks  float64   // m³/s, on the plan's winter night
	passed []passage // through doors
}

// house checks what only this program asks, under the names of the flags.
func (c choice) house(given bool) (*house, error) {
	p := c.plan
	inside := p.SetPoints.WinterNight.Temperature
	if len(c.outside) == 0 {
		c.outside = usual(p.Site.WinterNight.Temperature, min(p.Site.WinterMorning.Temperature, inside))
	}
	faults := []error{domain.Range{Min: 0, Max: 45, Unit: "m/s"}.Check("-wind", c.wind)}
	if given {
		faults = append(faults, domain.Range{Min: 1, Max: 1e6, Unit: "m³/h"}.Check("-air", c.air))
	}
	for _, v := range c.outside {
		faults = append(faults, domain.Range{Min: -60, Max: inside, Unit: "°C", Source: "below the house air"}.Check("-outside", v))
	}
	for _, v := range c.opened {
		faults = append(faults, domain.Range{Min: 1, Max: 100, Unit: "per cent", Source: "ajar to wide open"}.Check("-opened", v))
	}
	if limit := p.SetPoints.Limits.Chill; limit > inside {
		faults = append(faults, fmt.Errorf("set_points.limits.chill_c is %g °C, and the house air is colder: set_points.winter_night.temperature_c is %g °C", limit, inside))
	}
	if err := errors.Join(faults...); err != nil {
		return nil, err
	}
	h := &house{choice: c}
	of, err := answers.NewHouse(p)
	if err != nil {
		return nil, err
	}
	h.volume = of.Shape.Volume
	if !given {
		drying, err := of.Drying()
		if err != nil {
			return nil, err
		}
		h.air = 3600 * drying.Flow // none where outside air cannot dry
	}
	if err := h.open(of); err != nil {
		return nil, err
	}
	h.passed, err = h.doors(of)
	return h, err
}

// usual are the outside temperatures of the tables: the coldest and the mildest,
// and round ones between.
func usual(cold, mild float64) []float64 {
	list := []float64{cold}
	for t := 5 * (math.Floor(cold/5) + 1); t < mild; t += 5 {
		list = append(list, t)
	}
	if mild > cold {
		list = append(list, mild)
	}
	return list
}

// Ends of a jet's measures, m: a longer vent's falls no farther, and a wider house's
// air has fallen long before.
const longestJet, farthestJet = 200, 500

// open makes the network of the plan's vents and their jets.
func (h *house) open(of *answers.House) error {
	p := h.plan
	var openings []ventilation.Opening
	var jets []ventilation.InletJet
	var high, low []int
	for i, v := range p.Vents {
		list, err := fromplan.VentOpenings(p, v, 1)
		if err != nil {
			return fmt.Errorf("vents[%d]: %w", i, err)
		}
		width := float64(p.House.Bays) * p.House.Span
		jet := ventilation.DefaultInletJet(ventilation.SlotInlet)
		if v.Length < 3*v.Height {
			jet = ventilation.DefaultInletJet(ventilation.CompactInlet)
		}
		jet.Length, jet.Reach = min(v.Length, longestJet), min(width, farthestJet)
		up := false
		switch {
		case v.Place == "near end", v.Place == "far end":
			jet.Reach = p.House.Length
		case fromplan.High(v.Place):
			jet.Angle, jet.Reach, up = downward, p.House.Span/2, true
		}
		for range list {
			if up {
				high = append(high, len(jets))
			} else {
				low = append(low, len(jets))
			}
			jets, h.from = append(jets, jet), append(h.from, i)
		}
		openings = append(openings, list...)
	}
	switch {
	case len(jets) == 0:
	case len(high) == 0:
		h.orders = []order{{"low vents alone", [][]int{low}}}
	case len(low) == 0:
		h.orders = []order{{"high vents alone", [][]int{high}}}
	default:
		h.orders = []order{{"high vents first", [][]int{high, low}}, {"low vents first", [][]int{low, high}}}
	}
	h.vents = ventilation.ColdVents{Jets: jets, Inside: p.SetPoints.WinterNight.Temperature, Pressure: of.Pressure, Wind: h.wind,
		Crop: p.Crop.Height - p.House.Depth, Limit: p.SetPoints.Limits.Chill}
	loss, err := of.Loss(of.Night, float64(p.Site.WinterNight.Month))
	if h.leaks = loss.Leakage.Volume; err != nil || len(jets) == 0 {
		return err
	}
	h.vents.Network, err = ventilation.NewNetwork(openings, cracks(of, h.leaks), nil)
	return err
}

// cracks are half the house's leaks low and half high, of a size that lets
// through in the calm of the plan's winter night what its leakage says, m³/s.
func cracks(of *answers.House, leaks float64) []ventilation.Leak {
	p := of.Plan
	if leaks <= 0 {
		return nil
	}
	low, high := 0.1*p.House.RidgeHeight, 0.95*p.House.RidgeHeight
	exponent := p.Leakage.Flow
	in, out := ventilation.DryAirDensity(of.Night.Inside.Temperature(), of.Pressure), ventilation.DryAirDensity(of.Night.Outside.Temperature(), of.Pressure)
	at := max(0.1, (out-in)*constant.Gravity*(high-low)/2) // Pa at each
	flow := leaks / math.Pow(at, exponent)
	return []ventilation.Leak{
		{Name: "low", Height: low, Flow: flow, Exponent: exponent, PressureCoefficient: fromplan.PressureCoefficient(p, "near end")},
		{Name: "high", Height: high, Flow: flow, Exponent: exponent, PressureCoefficient: fromplan.PressureCoefficient(p, "ridge")},
	}
}

// at returns the air at the crop with the vents of an order opened so far.
func (h *house) at(outside float64, o order, opened float64) (ventilation.ColdAir, error) {
	v := h.vents
	v.Outside = outside
	a, err := v.Opened(o.groups, opened)
	if err != nil {
		return a, fmt.Errorf("outside %g °C: %w", outside, err)
	}
	return a, nil
}

// coldest is the coldest of the outside temperatures.
func (h *house) coldest() float64 { return slices.Min(h.outside) }

// density of the outside air, kg/m³ of dry air.
func (h *house) density(outside float64) float64 {
	return ventilation.DryAirDensity(outside, h.vents.Pressure)
}
